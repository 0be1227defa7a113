"""Reads the figures of a draft from the drawing itself: points, lines, circles, marks, labels."""
