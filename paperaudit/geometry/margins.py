"""The margins that a drawing keeps while it is computed, and the turn between two vectors that they are about."""

from dataclasses import dataclass

TURN_MARGIN = 0.04
"""Sine of the turn that a corner keeps at least while the drawing is computed; checked strictly after."""
ORDER_MARGIN = 0.07
"""Share of a segment that a point between its ends keeps from them while the drawing is computed."""
APART_MARGIN = 0.12
"""Least length of a drawn segment while the drawing is computed, in the figure's typical length."""
LETTER_SCALE = 40.0
"""Letters are carried in units of 40 so that they are of the size of coordinates."""


@dataclass(frozen=True, slots=True)
class Turn:
    """The angle from the vector `a`→`b` to `c`→`d`, by point indices."""

    a: int
    b: int
    c: int
    d: int
