"""Bearings: turned back, along one line, and the angle between two of them from one point."""

from collections.abc import Iterator
from itertools import combinations

from paperaudit.geometry.coordinates.arrangement import Arrangement, Ray
from paperaudit.geometry.figure.north import has_north
from paperaudit.geometry.theorems.theorem import Equation, Theorem
from paperaudit.geometry.theorems.trigonometry import whole
from paperaudit.model.expression import BearingOf, Expression, Measured, Negative, Sum

SKILL = "bearings"
BACK, SAME, BETWEEN = 12, 6, 12
HALF_TURN, FULL_TURN = Measured(whole(180), "°"), Measured(whole(360), "°")


def along(ray: Ray) -> BearingOf:
    """The bearing of a ray's points from its vertex, by the nearest of them."""
    return BearingOf(ray.vertex, ray.points[0])


def less(first: Expression, second: Expression) -> Sum:
    """The difference of two sizes."""
    return Sum((first, Negative(second)))


def _back(arrangement: Arrangement) -> Iterator[Equation]:
    """From the other end one looks back the opposite way: the north lines are parallel."""
    for line in arrangement.lines if has_north(arrangement.figure) else ():
        for start, end in combinations(line, 2):
            there, back = along(arrangement.ray(start, end)), along(arrangement.ray(end, start))
            small, large = sorted((there, back), key=arrangement.measured)
            about = f"north lines at {start} and {end} are parallel"
            yield Equation("back-bearing", (), large, Sum((small, HALF_TURN)), about, BACK)


def _onward(arrangement: Arrangement) -> Iterator[Equation]:
    """A point further along the same line has the same bearing from every point before it."""
    for size in arrangement.figure.named_sizes:
        if isinstance(size, BearingOf) and arrangement.joined(size.start, size.end):
            nearest = along(arrangement.ray(size.start, size.end))
            if nearest != size:
                yield Equation("bearing-along-line", (), size, nearest, f"{size.start}{nearest.end}{size.end}", SAME)
    for line in arrangement.lines if has_north(arrangement.figure) else ():
        for first, middle, last in combinations(line, 3):
            for a, b, c in ((first, middle, last), (last, middle, first)):
                one, two = along(arrangement.ray(a, b)), along(arrangement.ray(b, c))
                yield Equation("bearing-along-line", (), two, one, f"{a}{b}{c}", SAME)


def _between(arrangement: Arrangement) -> Iterator[Equation]:
    """The angle of two rays is the difference of their bearings, or what that leaves of the full turn."""
    for rays in arrangement.rays.values() if has_north(arrangement.figure) else ():
        for one, two in combinations(rays, 2):
            if one.line == two.line:
                continue
            angle = arrangement.between(one, two)
            small, large = sorted((along(one), along(two)), key=arrangement.measured)
            apart = arrangement.measured(large) - arrangement.measured(small)
            difference: Expression = less(large, small)
            if apart > 180:
                difference = less(FULL_TURN, difference)
            yield Equation("angle-between-bearings", (), angle, difference, f"at {one.vertex}", BETWEEN)


_SHIP = ("triangle ABC", "bearing of B from A = 050°")

THEOREMS = (
    Theorem(
        "back-bearing",
        "The bearing back is half a turn more or less, since north lines are parallel.",
        SKILL,
        "Euclid I.29",
        _back,
        fires=_SHIP,
        silent=("triangle ABC",),
    ),
    Theorem(
        "bearing-along-line",
        "Along a straight line the bearing stays the same.",
        SKILL,
        "Euclid I.29",
        _onward,
        fires=(*_SHIP, "A-B-D"),
        silent=_SHIP,
    ),
    Theorem(
        "angle-between-bearings",
        "The angle between two directions is the difference of their bearings, or 360° without it.",
        SKILL,
        "Euclid, common notion 3",
        _between,
        fires=_SHIP,
        silent=("triangle ABC",),
    ),
)
