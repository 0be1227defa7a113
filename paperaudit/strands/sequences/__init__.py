"""Sequences and series."""
