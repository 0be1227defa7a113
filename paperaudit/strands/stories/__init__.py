"""Word problems: equations from sentences, solved in lines, the answer put back into the sentences."""
