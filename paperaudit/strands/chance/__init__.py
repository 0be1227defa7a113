"""Probability and counting: one file a family of questions."""
