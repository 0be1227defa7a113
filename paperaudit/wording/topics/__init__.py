"""What the topics of the syllabus add to the language: their own asks, statements and stories, one file a topic."""
