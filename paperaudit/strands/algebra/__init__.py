"""Algebra beyond the first degree, in the lines that a pupil writes."""
