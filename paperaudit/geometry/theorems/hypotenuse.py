"""Right-angled triangles without functions: acute angles, the altitude and the median to the hypotenuse."""

from collections.abc import Iterator

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import Size, length
from paperaudit.geometry.theorems.like_triangles import CLOSE
from paperaudit.geometry.theorems.points import total
from paperaudit.geometry.theorems.right_triangles import RIGHT, right_corners, squared
from paperaudit.geometry.theorems.theorem import AngleIs, Balanced, Equation, Instance, Theorem, segments_equal
from paperaudit.geometry.theorems.triangles import triangle_text
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import AngleOf, Product, Sum


def _acute(arrangement: Arrangement) -> Iterator[Instance]:
    for a, b, c, right in right_corners(arrangement):
        others = total((arrangement.corner(a, b, c), arrangement.corner(b, c, a)), 90)
        about = triangle_text(arrangement, (a, b, c))
        yield Instance("right-triangle-acute-angles", (AngleIs(right, RIGHT),), others, about=about, weight=10)


def _pythagoras_converse(arrangement: Arrangement) -> Iterator[Instance]:
    for a, b, c, right in right_corners(arrangement):
        legs = Sum((squared(length(a, b)), squared(length(a, c))))
        premises = (Balanced(squared(length(b, c)), legs),)
        about = triangle_text(arrangement, (a, b, c))
        yield Instance("pythagoras-converse", premises, total((right,), 90), None, about, 14)


def _complementary(arrangement: Arrangement) -> Iterator[Instance]:
    """A ray inside a right angle cuts it into parts that add up to 90°."""
    for rays in arrangement.rays.values():
        for first in rays:
            for last in rays:
                if arrangement.turn(first.vertex, first.points[0], last.points[0]) < 0 or first.line == last.line:
                    continue
                whole = arrangement.between(first, last)
                if abs(arrangement.measured(whole) - 90) > CLOSE:
                    continue
                for ray in rays:
                    if 0 < arrangement.turn(first.vertex, first.points[0], ray.points[0]) < 90 - CLOSE:
                        parts = (arrangement.between(first, ray), arrangement.between(ray, last))
                        yield Instance("complementary-angles", (AngleIs(whole, RIGHT),), total(parts, 90))


def _feet(arrangement: Arrangement) -> Iterator[tuple[str, str, str, str, AngleOf, AngleOf]]:
    """The right-angled corner, the ends of the hypotenuse, the foot of the altitude, and the two right angles."""
    for a, b, c, right in right_corners(arrangement):
        for foot in arrangement.lines[arrangement.ray(b, c).line]:
            if foot not in (b, c) and arrangement.joined(a, foot):
                upright = arrangement.corner(a, foot, b)
                if abs(arrangement.measured(upright) - 90) < CLOSE:
                    yield a, b, c, foot, right, upright


def _altitude(arrangement: Arrangement) -> Iterator[Equation]:
    for a, b, c, foot, right, upright in _feet(arrangement):
        premises = (AngleIs(right, RIGHT), AngleIs(upright, RIGHT))
        about = triangle_text(arrangement, (a, b, c))
        height, whole = length(a, foot), length(b, c)
        one, two = length(b, foot), length(foot, c)
        for left, right_side in (
            (squared(height), Product((one, two), "×")),
            (squared(length(a, b)), Product((one, whole), "×")),
            (squared(length(a, c)), Product((two, whole), "×")),
            (Product((height, whole), "×"), Product((length(a, b), length(a, c)), "×")),
        ):
            yield Equation("altitude-to-hypotenuse", premises, left, right_side, about, 15)


def _middles(arrangement: Arrangement) -> Iterator[tuple[str, str, str, str, AngleOf]]:
    for a, b, c, right in right_corners(arrangement):
        line = arrangement.lines[arrangement.ray(b, c).line]
        for middle in line:
            if middle in (b, c) or not arrangement.joined(a, middle):
                continue
            one, two = (arrangement.measured(length(middle, end)) for end in (b, c))
            if abs(one - two) < CLOSE * one:
                yield a, b, c, middle, right


def _median(arrangement: Arrangement) -> Iterator[Instance]:
    for a, b, c, middle, right in _middles(arrangement):
        premises = (AngleIs(right, RIGHT), segments_equal((b, middle), (middle, c)))
        about = triangle_text(arrangement, (a, b, c))
        for end in (b, c):
            equal = segments_equal((a, middle), (middle, end))
            yield Instance("median-to-hypotenuse", premises, LinearForm(), equal, about, 12)
        half: LinearForm[Size] = LinearForm({length(a, middle): 2, length(b, c): -1})
        yield Instance("median-to-hypotenuse", premises, half, None, about, 12)


def _median_converse(arrangement: Arrangement) -> Iterator[Instance]:
    """A point of the side as far from all three corners."""
    for a, b, c, middle, right in _middles(arrangement):
        equal = [segments_equal((middle, one), (middle, two)) for one, two in ((a, b), (a, c), (b, c))]
        about = triangle_text(arrangement, (a, b, c))
        for premises in ((equal[0], equal[1]), (equal[0], equal[2]), (equal[1], equal[2])):
            yield Instance("median-to-hypotenuse-converse", premises, total((right,), 90), None, about, 13)


_RIGHT = ("triangle ABC", "∠BAC = 90°")
_ALTITUDE = ("triangle ABC", "D lies on BC", "AD ⊥ BC", "∠BAC = 90°")
_MEDIAN = ("triangle ABC", "D is the midpoint of BC", "segment AD", "∠BAC = 90°")

THEOREMS = (
    Theorem(
        "right-triangle-acute-angles",
        "The acute angles of a right-angled triangle add up to 90°.",
        "right-angled triangles",
        "Euclid I.32, corollary",
        _acute,
        fires=_RIGHT,
        silent=("triangle ABC", "∠BAC = 80°"),
    ),
    Theorem(
        "pythagoras-converse",
        "If the square of a side is the sum of the squares of the others, the angle opposite it is right.",
        "Pythagoras' theorem",
        "Euclid I.48",
        _pythagoras_converse,
        fires=_RIGHT,
        silent=("triangle ABC", "∠BAC = 80°"),
    ),
    Theorem(
        "complementary-angles",
        "The parts of a right angle add up to 90°.",
        "adding angles",
        "Euclid, common notion 2",
        _complementary,
        fires=("triangle ABC", "D lies on BC", "segment AD", "∠BAC = 90°"),
        silent=("triangle ABC", "D lies on BC", "segment AD", "∠BAC = 80°"),
    ),
    Theorem(
        "altitude-to-hypotenuse",
        "The altitude to the hypotenuse is the mean of its parts; each leg is the mean of its part and the whole.",
        "similar triangles",
        "Euclid VI.8, corollary",
        _altitude,
        fires=_ALTITUDE,
        silent=_MEDIAN,
    ),
    Theorem(
        "median-to-hypotenuse",
        "The median to the hypotenuse is half of it.",
        "right-angled triangles",
        "Euclid III.31 (the mid-point is the centre of the circle)",
        _median,
        fires=_MEDIAN,
        silent=_ALTITUDE,
    ),
    Theorem(
        "median-to-hypotenuse-converse",
        "If a point of one side is as far from all three corners, the angle opposite the side is right.",
        "right-angled triangles",
        "Euclid I.5 with I.32",
        _median_converse,
        fires=_MEDIAN,
        silent=_ALTITUDE,
    ),
)
