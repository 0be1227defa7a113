"""Figures: whether one exists, what follows from its givens, and how it is drawn."""
