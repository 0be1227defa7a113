"""From the teacher's file to a paper, every value with the place it was read from."""
