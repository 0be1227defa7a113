"""Lines at right angles that need not meet in a named point: used for claims alone."""

from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.theorems.like_triangles import CLOSE
from paperaudit.geometry.theorems.theorem import (
    NO_RELATION,
    AngleIs,
    Instance,
    LinesPerpendicular,
    Theorem,
    lines_parallel,
)
from paperaudit.model.expression import AngleOf

RIGHT = Fraction(90)


def right_angle(arrangement: Arrangement, first: int, second: int) -> AngleOf | None:
    """The angle in which two lines meet in a named point, where it is right in the drawing."""
    vertex = arrangement.meet(first, second)
    if vertex is None:
        return None
    rays = [next(ray for ray in arrangement.rays[vertex] if ray.line == line) for line in (first, second)]
    angle = arrangement.between(rays[0], rays[1])
    return angle if abs(arrangement.measured(angle) - 90) < CLOSE else None


def _text(arrangement: Arrangement, first: int, second: int) -> str:
    one, two = arrangement.lines[first], arrangement.lines[second]
    return f"{one[0]}{one[-1]} ⊥ {two[0]}{two[-1]}"


def _meeting(arrangement: Arrangement) -> Iterator[Instance]:
    """Lines that meet at a right angle."""
    for first, second in combinations(range(len(arrangement.lines)), 2):
        angle = right_angle(arrangement, first, second)
        if angle is not None:
            upright, about = LinesPerpendicular(first, second), _text(arrangement, first, second)
            yield Instance("right-angle", (AngleIs(angle, RIGHT),), NO_RELATION, upright, about, 4)


def _by_a_parallel(arrangement: Arrangement) -> Iterator[Instance]:
    """A line perpendicular to one of two parallels is perpendicular to the other."""
    for first, second in combinations(range(len(arrangement.lines)), 2):
        for third in range(len(arrangement.lines)):
            for near, far in ((first, second), (second, first)):
                if third in (near, far) or not arrangement.parallel_way(third, near):
                    continue
                angle = right_angle(arrangement, third, far)
                if angle is not None and arrangement.meet(third, near) is None:
                    premises = (lines_parallel(third, near), AngleIs(angle, RIGHT))
                    upright, about = LinesPerpendicular(first, second), _text(arrangement, first, second)
                    yield Instance("perpendicular-to-parallel", premises, NO_RELATION, upright, about, 12)


THEOREMS = (
    Theorem(
        "right-angle",
        "Lines that meet at a right angle are perpendicular.",
        "adding angles",
        "Euclid, definition I.10",
        _meeting,
        fires=("triangle ABC", "∠ABC = 90°"),
        silent=("triangle ABC", "∠ABC = 80°"),
    ),
    Theorem(
        "perpendicular-to-parallel",
        "A line perpendicular to one of two parallels is perpendicular to the other.",
        "proving lines parallel",
        "Euclid I.29",
        _by_a_parallel,
        fires=("AB ∥ CD", "segments AC, BD, AE", "E lies on CD", "AE ⊥ CD"),
        silent=("triangle ABC", "∠ABC = 80°"),
    ),
)
