"""Algebra beyond the first degree: terms, brackets, factors, fractions, roots of equations."""
