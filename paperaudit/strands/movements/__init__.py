"""Images of points under movements, and vectors."""
