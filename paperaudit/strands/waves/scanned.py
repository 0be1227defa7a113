"""Angles put into an equation as it is given, and the crossings of its sides between the bounds, in floating point."""

from fractions import Fraction
from itertools import pairwise
from math import cos, radians, sin, tan

from paperaudit.maths.near import float_value
from paperaudit.model.expression import Expression
from paperaudit.model.trig_task import SolveTrig
from paperaudit.strands.numbers.working import require

CLOSE = 1e-9
"""Sides of an equation that differ by less, with angles of sixteen figures, are equal."""
_RATIOS = {"sin": sin, "cos": cos, "tan": tan}


def confirm_angles(task: SolveTrig, angles: list[Fraction], bounds: tuple[Fraction, Fraction]) -> None:
    """Every angle put into the equation as given, in floating point; every place where the sides cross is one."""
    for angle in angles:
        require(abs(apart(task, float(angle))) < CLOSE, "an angle that was found")
    low, high = (float(bound) for bound in bounds)
    steps = 7_201
    places = [low + (high - low) * (place + 0.5) / steps for place in range(-1, steps)]
    heights = [apart(task, place) for place in places]
    for (one, other), (a, b) in zip(pairwise(heights), pairwise(places), strict=True):
        crosses = (one < 0 < other or other < 0 < one) and abs(one - other) < 1
        inside = low + CLOSE < (a + b) / 2 < high - CLOSE
        if crosses and inside:
            near = any(a - 0.1 <= float(angle) <= b + 0.1 for angle in angles)
            require(near or a <= low or b >= high, "the angles, of which one is missing")


def apart(task: SolveTrig, degrees: float) -> float:
    """Left side less right side at an angle."""
    return _float(task.relation.left, degrees) - _float(task.relation.right, degrees)


def _float(expression: Expression, degrees: float) -> float:
    return float_value(expression, degrees, _RATIOS, radians)
