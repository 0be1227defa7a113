"""What follows from linear relations alone: consistency, values, derivations and their lines."""
