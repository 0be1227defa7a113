"""The wording of word problems: one grammar of sentences for each kind of story."""
