"""Statistics: one file a family of measures."""
