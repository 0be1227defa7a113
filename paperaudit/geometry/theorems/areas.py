"""Areas of triangles: half base times height, with a sine, of equilateral ones, Heron; areas as sums of parts."""

from collections.abc import Iterator
from fractions import Fraction

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.canonical import distance
from paperaudit.geometry.figure.figure import SizeRelation, length
from paperaudit.geometry.figure.notation import number
from paperaudit.geometry.theorems.area_polygons import cuts, feet, polygons
from paperaudit.geometry.theorems.like_triangles import CLOSE
from paperaudit.geometry.theorems.right_triangles import RIGHT, squared
from paperaudit.geometry.theorems.theorem import AngleIs, Equation, Stated, Theorem, segments_equal
from paperaudit.geometry.theorems.triangles import triangle_text
from paperaudit.geometry.theorems.trigonometry import times, whole
from paperaudit.model.expression import (
    AngleOf,
    AreaOf,
    DistanceOf,
    Expression,
    Function,
    Negative,
    Number,
    NumberForm,
    PerimeterOf,
    Quotient,
    Root,
    Sum,
)

SKILL = "area"
HALF = Number(Fraction(1, 2), NumberForm.FRACTION)
BASE, SINE, EQUILATERAL, HERON, PARTS = 14, 18, 17, 45, 10
Turned = tuple[str, str, str]


def triangles_with_area(arrangement: Arrangement) -> Iterator[tuple[AreaOf, Turned]]:
    """The triangles whose area matters and whose sides are drawn, each corner in turn in front."""
    for corners in polygons(arrangement):
        if len(corners) != 3:
            continue
        a, b, c = corners
        if arrangement.joined(a, b) and arrangement.joined(b, c) and arrangement.joined(c, a):
            for turned in ((a, b, c), (b, c, a), (c, a, b)):
                yield AreaOf(corners), turned


def upright(arrangement: Arrangement, point: str, foot: str, start: str, end: str) -> Iterator[AngleIs]:
    """The premises, each enough alone, that a segment from a point meets a line at right angles."""
    for other in dict.fromkeys((start, end)):
        if other != foot:
            yield AngleIs(arrangement.corner(point, foot, other), RIGHT)


def _base_and_height(arrangement: Arrangement) -> Iterator[Equation]:
    for size, (a, b, c) in triangles_with_area(arrangement):
        about = triangle_text(arrangement, (a, b, c))
        for foot in feet(arrangement, a, b, c):
            if foot == c:
                continue
            for premise in upright(arrangement, a, foot, b, c):
                right = times(HALF, length(b, c), length(a, foot))
                yield Equation("triangle-area", (premise,), size, right, about, BASE)


def distances(arrangement: Arrangement) -> tuple[DistanceOf, ...]:
    """The distances from a point to a line that the paper names, the lines by their first and last points."""
    named = [size for size in arrangement.figure.named_sizes if isinstance(size, DistanceOf)]
    return tuple(dict.fromkeys(distance(arrangement, size.point, size.path) for size in named))


def _distance(arrangement: Arrangement) -> Iterator[Equation]:
    """A distance is a height of every triangle on the line, and the length of a perpendicular that is drawn."""
    for size in distances(arrangement):
        if not arrangement.joined(*size.path):
            continue
        line = arrangement.lines[arrangement.ray(*size.path).line]
        for foot in feet(arrangement, size.point, line[0], line[-1]):
            for premise in upright(arrangement, size.point, foot, line[0], line[-1]):
                yield Equation("distance-perpendicular", (premise,), size, length(size.point, foot), weight=4)
        for area, (a, b, c) in triangles_with_area(arrangement):
            if a == size.point and {b, c} <= set(line):
                about = triangle_text(arrangement, (a, b, c))
                yield Equation("triangle-area", (), area, times(HALF, length(b, c), size), about, BASE)
        yield from _slanting(arrangement, size, line)


def _slanting(arrangement: Arrangement, size: DistanceOf, line: tuple[str, ...]) -> Iterator[Equation]:
    """The distance as the leg of the right-angled triangle on a slanting segment."""
    for end in line:
        if not arrangement.joined(size.point, end):
            continue
        other = line[-1] if end != line[-1] else line[0]
        slope = arrangement.corner(size.point, end, other)
        if not _is_right(arrangement, slope):
            leg = times(length(size.point, end), Function("sin", slope))
            yield Equation("trigonometric-ratio", (), size, leg, weight=18)


def _sine(arrangement: Arrangement) -> Iterator[Equation]:
    for size, (a, b, c) in triangles_with_area(arrangement):
        angle = arrangement.corner(b, a, c)
        if not _is_right(arrangement, angle):
            right = times(HALF, length(a, b), length(a, c), Function("sin", angle))
            yield Equation("area-rule", (), size, right, triangle_text(arrangement, (a, b, c)), SINE)


def _is_right(arrangement: Arrangement, angle: AngleOf) -> bool:
    return abs(arrangement.measured(angle) - 90) < CLOSE


def _equilateral(arrangement: Arrangement) -> Iterator[Equation]:
    for size, (a, b, c) in triangles_with_area(arrangement):
        sides = [arrangement.measured(length(*pair)) for pair in ((a, b), (b, c), (c, a))]
        if max(sides) - min(sides) < CLOSE * max(sides):
            premises = (segments_equal((a, b), (b, c)), segments_equal((a, b), (c, a)))
            right = times(Quotient(Root(whole(3)), whole(4)), squared(length(a, b)))
            about = triangle_text(arrangement, (a, b, c))
            yield Equation("equilateral-area", premises, size, right, about, EQUILATERAL)


def _heron(arrangement: Arrangement) -> Iterator[Equation]:
    """By the perimeter and the sides, which are found in lines of their own."""
    for size in dict.fromkeys(size for size, _ in triangles_with_area(arrangement)):
        a, b, c = size.points
        sides = (length(a, b), length(b, c), length(c, a))
        around, about = PerimeterOf(size.points), triangle_text(arrangement, size.points)
        half = Quotient(around, whole(2))
        yield from perimeters(arrangement, size.points)
        rest = (Sum((half, Negative(side))) for side in sides)
        yield Equation("heron", (), size, Root(times(half, *rest)), about, HERON)


def perimeters(arrangement: Arrangement, corners: tuple[str, ...]) -> Iterator[Equation]:
    """The perimeter of a polygon as the sum of its sides, and as the paper states it."""
    around = PerimeterOf(corners)
    sides = [length(*pair) for pair in zip(corners, corners[1:] + corners[:1], strict=True)]
    yield Equation("perimeter", (), around, Sum(tuple(sides)), "".join(corners), 8, "perimeter")
    for condition in arrangement.figure.conditions:
        if isinstance(condition, SizeRelation) and set(condition.form.terms) == set(sides):
            shares = set(condition.form.terms.values())
            if len(shares) == 1:
                stated = number(-Fraction(condition.form.constant) / shares.pop())
                yield Equation("given", (Stated(condition.label),), around, stated, weight=1)


def _parts(arrangement: Arrangement) -> Iterator[Equation]:
    known = set(polygons(arrangement))
    for corners in polygons(arrangement):
        for parts in cuts(arrangement, corners):
            if set(parts) <= known:
                total: Expression = Sum(tuple(AreaOf(part) for part in parts))
                yield Equation("area-addition", (), AreaOf(corners), total, weight=PARTS)


_ALTITUDE = ("triangle ABC", "D lies on BC", "AD ⊥ BC", "area of △ABC = 24")
_AREA = ("triangle ABC", "area of △ABC = 24")
_NO_AREA = ("triangle ABC", "D lies on BC", "AD ⊥ BC")

THEOREMS = (
    Theorem(
        "triangle-area",
        "The area of a triangle is half its base times its height.",
        SKILL,
        "Euclid I.41",
        _base_and_height,
        fires=_ALTITUDE,
        silent=_NO_AREA,
    ),
    Theorem(
        "triangle-area",
        "The area of a triangle is half a side times the distance of the opposite corner from it.",
        SKILL,
        "Euclid I.41",
        _distance,
        fires=("triangle ABC", "the distance from A to BC is 5"),
        silent=_NO_AREA,
    ),
    Theorem(
        "distance-perpendicular",
        "The distance of a point from a line is measured along the perpendicular.",
        SKILL,
        "Euclid I.12 with I.19",
        _distance,
        fires=("triangle ABC", "D lies on BC", "AD ⊥ BC", "the distance from A to BC is 5"),
        silent=("triangle ABC", "the distance from A to BC is 5"),
    ),
    Theorem(
        "area-rule",
        "The area of a triangle is half the product of two sides and the sine of the angle between them.",
        SKILL,
        "Euclid I.41 with the definition of the sine; Regiomontanus, De triangulis II.26 (from memory)",
        _sine,
        fires=_AREA,
        silent=_NO_AREA,
    ),
    Theorem(
        "equilateral-area",
        "The area of an equilateral triangle is √3/4 times the square of its side.",
        SKILL,
        "Heron, Metrica I.17 (from memory)",
        _equilateral,
        fires=("equilateral triangle ABC", "area of △ABC = 24"),
        silent=_AREA,
    ),
    Theorem(
        "heron",
        "The area of a triangle from its three sides by half the perimeter.",
        SKILL,
        "Heron, Metrica I.8",
        _heron,
        fires=_AREA,
        silent=_NO_AREA,
    ),
    Theorem(
        "area-addition",
        "The area of a figure is the sum of the areas of its parts.",
        SKILL,
        "Euclid, common notion 2",
        _parts,
        fires=("quadrilateral ABCD", "segment AC", "area of ABCD = 24"),
        silent=("quadrilateral ABCD", "area of ABCD = 24"),
    ),
)
