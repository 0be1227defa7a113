"""Stories that come to one calculation: their few forms of sentences, family by family."""
