"""What the givens of a question say about points, lines and sizes, before anything is drawn."""
