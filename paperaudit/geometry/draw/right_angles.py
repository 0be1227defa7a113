"""Squares at right angles: at a vertex, or where two perpendicular lines cross without a letter."""

import math
from collections.abc import Mapping, Sequence

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.draw.elements import Stroke, bearing, polar
from paperaudit.geometry.draw.marks import AngleMark
from paperaudit.geometry.figure.plane import Spot, side
from paperaudit.model.fact import Path

SQUARE = 8.5
LARGEST_SHARE = 0.4
"""The side of the square, and the share of the way to the next letter that it takes at most."""
ENDS = 1e-6
"""Share of a segment by which two may miss each other and still meet."""


def squares(
    arrangement: Arrangement,
    spots: Mapping[str, Spot],
    marks: Sequence[AngleMark],
    crossings: Sequence[tuple[Path, Path]],
) -> list[Stroke]:
    """The squares of the right angles among `marks`, and of the pairs of lines in `crossings` that meet on the page."""
    found = [
        square_at(spots[mark.angle.vertex], spots[mark.angle.arm], spots[mark.angle.other])
        for mark in marks
        if mark.is_right
    ]
    for first, second in crossings:
        i, j = arrangement.figure.line_of(*first), arrangement.figure.line_of(*second)
        one, two = ((spots[line[0]], spots[line[-1]]) for line in (arrangement.lines[i], arrangement.lines[j]))
        centre = _meeting(one, two)
        if centre:
            found.append(square_at(centre, *_emptiest(centre, one, two, list(spots.values()))))
    return found


def square_at(centre: Spot, one: Spot, other: Spot) -> Stroke:
    """The square of the right angle at `centre` between the directions to two other spots."""
    size = min(SQUARE, *(LARGEST_SHARE * math.dist(centre, spot) for spot in (one, other)))
    begin, end = (polar(centre, bearing(centre, spot), size) for spot in (one, other))
    return Stroke((begin, (begin[0] + end[0] - centre[0], begin[1] + end[1] - centre[1]), end), "mark")


def _emptiest(centre: Spot, one: tuple[Spot, Spot], two: tuple[Spot, Spot], spots: Sequence[Spot]) -> tuple[Spot, Spot]:
    """The ends of the quadrant in which fewest points lie; the one on the right and at the top among equals."""

    def crowd(quadrant: tuple[Spot, Spot]) -> tuple[int, float]:
        p, q = quadrant
        inside = sum(
            side(spot, centre, p) * side(q, centre, p) > ENDS and side(spot, centre, q) * side(p, centre, q) > ENDS
            for spot in spots
        )
        return inside, round(p[1] + q[1] - p[0] - q[0], 3)

    apart = [[spot for spot in ends if math.dist(spot, centre) > ENDS] for ends in (one, two)]
    return min(((p, q) for p in apart[0] for q in apart[1]), key=crowd)


def _meeting(one: tuple[Spot, Spot], other: tuple[Spot, Spot]) -> Spot | None:
    """Where two segments meet, their ends included; None where they don't."""
    (a, b), (c, d) = one, other
    first, second = side(a, c, d), side(b, c, d)
    third, fourth = side(c, a, b), side(d, a, b)
    if abs(first - second) < ENDS or abs(third - fourth) < ENDS:
        return None
    share, other_share = first / (first - second), third / (third - fourth)
    if not (-ENDS < share < 1 + ENDS and -ENDS < other_share < 1 + ENDS):
        return None
    return a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])
