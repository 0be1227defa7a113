"""Claims about a figure: proved by a derivation, or answered by a figure in which they fail."""
