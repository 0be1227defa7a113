"""Points, lines and curves on the coordinate plane."""
