"""Numbers themselves: factors, places, order, bounds, bases and sets; each question with its lines and its check."""
