"""Two circles that cross: the line of their centres is the axis of their common chord."""

from collections.abc import Iterator
from itertools import combinations

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.theorems.circles import SKILL, circles, on_circle, seen, together
from paperaudit.geometry.theorems.points import difference, total
from paperaudit.geometry.theorems.theorem import Instance, Theorem, segments_equal
from paperaudit.maths.linear import LinearForm


def _common_chord(arrangement: Arrangement) -> Iterator[Instance]:
    """The line of centres halves the common chord at right angles, and the angles of the radii to its ends."""
    for first, second in combinations(circles(arrangement), 2):
        if not arrangement.joined(first.centre, second.centre):
            continue
        axis = arrangement.ray(first.centre, second.centre).line
        shared = [point for point in first.points if point in second.points]
        for start, end in combinations(shared, 2):
            premises = together(on_circle(first, start, end), on_circle(second, start, end))
            about = f"chord {start}{end}"
            for centre, other in ((first.centre, second.centre), (second.centre, first.centre)):
                halves = [seen(arrangement, point, centre, other) for point in (start, end)]
                if halves[0] and halves[1]:
                    yield Instance("common-chord", premises, difference(halves[0], halves[1]), None, about)
            foot = arrangement.meet(axis, arrangement.ray(start, end).line) if arrangement.joined(start, end) else None
            if foot is None:
                continue
            equal = segments_equal((start, foot), (foot, end))
            yield Instance("common-chord", premises, LinearForm(), equal, about)
            centre = second.centre if foot == first.centre else first.centre
            upright = seen(arrangement, centre, foot, start)
            if upright:
                yield Instance("common-chord", premises, total((upright,), 90), None, about)


_CROSSING = ("circle with centre O through A and B", "circle with centre P through A and B", "segments OA, OB, PA, PB")

THEOREMS = (
    Theorem(
        "common-chord",
        "The line of the centres of two circles is the perpendicular bisector of their common chord.",
        SKILL,
        "Euclid III.1, porism",
        _common_chord,
        fires=(*_CROSSING, "OP and AB intersect at M"),
        silent=_CROSSING,
    ),
)
