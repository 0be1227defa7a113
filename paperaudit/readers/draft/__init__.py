"""Reads a teacher's own draft as a PDF: what is printed, where, and the question file that it amounts to."""
