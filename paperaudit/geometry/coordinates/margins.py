"""The margins that a drawing keeps while it is computed."""

TURN_MARGIN = 0.04
"""Sine of the turn that a corner keeps at least while the drawing is computed; checked strictly after."""
ORDER_MARGIN = 0.07
"""Share of a segment that a point between its ends keeps from them while the drawing is computed."""
APART_MARGIN = 0.12
"""Least length of a drawn segment while the drawing is computed, in the smallest length that is stated."""
EXCESS_MARGIN = 0.03
"""By what share a size that has to be larger than another stands above it at least while the drawing is computed."""
SAME_WAY_MARGIN = 0.3
"""Cosine of the turn that two lines named in the same direction keep at least while the drawing is computed."""
LETTER_SCALE = 40.0
"""Letters that stand for degrees are carried in units of 40 so that they are of the size of coordinates."""
