"""Bisectors: the ratio in which one cuts the opposite side, equal distances from arms and from ends."""

from collections.abc import Iterator
from fractions import Fraction

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import Size, length
from paperaudit.geometry.theorems.like_triangles import CLOSE, corner_of, like_triangles
from paperaudit.geometry.theorems.points import total
from paperaudit.geometry.theorems.theorem import (
    AngleIs,
    AnglesEqual,
    Equation,
    Instance,
    Predicate,
    Theorem,
    angles_equal,
    proportional,
    segments_equal,
)
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import AngleOf, LengthOf, Quotient

RIGHT = Fraction(90)
Bisector = tuple[str, str, str, str, AnglesEqual, str]
"""The vertex, the ends of the opposite side, the point on it, the equal angles, and what it is about."""


def bisectors(arrangement: Arrangement) -> Iterator[Bisector]:
    """Lines from a corner of a triangle that bisect it, or its exterior angle, in the drawing."""
    for triangle in arrangement.triangles:
        for a, b, c in triangle.turned():
            for point in arrangement.lines[arrangement.ray(b, c).line]:
                if point in (b, c) or not arrangement.joined(a, point):
                    continue
                halves = _halves(arrangement, a, b, c, point)
                if halves and abs(arrangement.measured(halves[0]) - arrangement.measured(halves[1])) < CLOSE:
                    yield a, b, c, point, angles_equal(*halves), f"{a}{point}"


def _halves(arrangement: Arrangement, a: str, b: str, c: str, point: str) -> tuple[AngleOf, AngleOf] | None:
    """The two angles that a line from `a` to a point of line bc makes with the arms, one produced if it lies outside.

    None where the arm is not drawn beyond `a`.
    """
    to_b, to_c, to_point = (length(point, b), length(point, c), length(b, c))
    parts = [arrangement.measured(size) for size in (to_b, to_c, to_point)]
    if parts[2] > max(parts[:2]):
        return arrangement.corner(b, a, point), arrangement.corner(point, a, c)
    near, far = (c, b) if parts[1] < parts[0] else (b, c)
    beyond = arrangement.opposite(arrangement.ray(a, far))
    if beyond is None:
        return None
    return arrangement.corner(near, a, point), arrangement.between(arrangement.ray(a, point), beyond)


def _sides(a: str, b: str, c: str, point: str) -> tuple[LengthOf, LengthOf, LengthOf, LengthOf]:
    return length(b, point), length(point, c), length(a, b), length(a, c)


def _ratio(arrangement: Arrangement) -> Iterator[Equation]:
    for a, b, c, point, equal, about in bisectors(arrangement):
        bd, dc, ab, ac = _sides(a, b, c, point)
        yield Equation("angle-bisector-ratio", (equal,), Quotient(bd, dc), Quotient(ab, ac), about, 14)


def _ratio_converse(arrangement: Arrangement) -> Iterator[Instance]:
    for a, b, c, point, equal, about in bisectors(arrangement):
        premises = (proportional(*_sides(a, b, c, point)),)
        yield Instance("angle-bisector-ratio-converse", premises, LinearForm(), equal, about, 14)


def _uprights(arrangement: Arrangement) -> Iterator[tuple[str, str, str, str, AngleOf]]:
    """A point, a mid-point it is joined to, the ends, and the angle there that is right in the drawing."""
    for line in arrangement.lines:
        for spot in range(1, len(line) - 1):
            for before in line[:spot]:
                for after in line[spot + 1 :]:
                    middle = line[spot]
                    halves = [arrangement.measured(length(middle, end)) for end in (before, after)]
                    if abs(halves[0] - halves[1]) > CLOSE * halves[0]:
                        continue
                    for ray in arrangement.rays[middle]:
                        if before in ray.points or after in ray.points:
                            continue
                        angle = arrangement.between(arrangement.ray(middle, before), ray)
                        if abs(arrangement.measured(angle) - 90) < CLOSE:
                            for point in ray.points:
                                yield point, middle, before, after, angle


def _perpendicular_bisector(arrangement: Arrangement) -> Iterator[Instance]:
    for point, middle, start, end, right in _uprights(arrangement):
        if arrangement.joined(point, start) and arrangement.joined(point, end):
            premises = (segments_equal((start, middle), (middle, end)), AngleIs(right, RIGHT))
            equal = segments_equal((point, start), (point, end))
            yield Instance("perpendicular-bisector", premises, LinearForm(), equal, f"{point}{middle}", 12)


def _perpendicular_bisector_converse(arrangement: Arrangement) -> Iterator[Instance]:
    """Two points as far from one end as from the other: the line through them bisects at right angles."""
    for one, middle, start, end, right in _uprights(arrangement):
        for two in arrangement.lines[arrangement.ray(one, middle).line]:
            if two == middle or two <= one or not all(arrangement.joined(two, other) for other in (start, end)):
                continue
            if not all(arrangement.joined(one, other) for other in (start, end)):
                continue
            premises = tuple(segments_equal((point, start), (point, end)) for point in (one, two))
            upright: LinearForm[Size] = total((right,), 90)
            halves = segments_equal((start, middle), (middle, end))
            reason = "perpendicular-bisector-converse"
            yield Instance(reason, premises, upright, None, f"{one}{two}", 14)
            yield Instance(reason, premises, LinearForm(), halves, f"{one}{two}", 14)


def _arms(arrangement: Arrangement) -> Iterator[tuple[str, str, str, str, tuple[AngleIs, ...], AnglesEqual]]:
    """A vertex, a point, its feet on the two arms, the right angles there, and the two halves of the angle."""
    for one, two, same in like_triangles(arrangement):
        common = [place for place in range(3) if one[place] == two[place]]
        if not same or len(common) != 2:
            continue
        (place,) = {0, 1, 2} - set(common)
        corners = [corner_of(arrangement, triangle, place) for triangle in (one, two)]
        if abs(arrangement.measured(corners[0]) - 90) > CLOSE:
            continue
        right = tuple(AngleIs(corner, RIGHT) for corner in corners)
        for vertex, point in ((common[0], common[1]), (common[1], common[0])):
            halves = angles_equal(*(corner_of(arrangement, triangle, vertex) for triangle in (one, two)))
            yield one[vertex], one[point], one[place], two[place], right, halves


def _distances(arrangement: Arrangement) -> Iterator[Instance]:
    for vertex, point, one, two, right, halves in _arms(arrangement):
        equal = segments_equal((point, one), (point, two))
        premises: tuple[Predicate, ...] = (halves, *right)
        yield Instance("bisector-distances", premises, LinearForm(), equal, f"{vertex}{point}", 14)


def _distances_converse(arrangement: Arrangement) -> Iterator[Instance]:
    for vertex, point, one, two, right, halves in _arms(arrangement):
        premises: tuple[Predicate, ...] = (segments_equal((point, one), (point, two)), *right)
        yield Instance("bisector-distances-converse", premises, LinearForm(), halves, f"{vertex}{point}", 14)


_BISECTED = ("triangle ABC", "D lies on BC", "AD bisects ∠BAC")
_UPRIGHT = ("triangle ABC", "D is the midpoint of BC", "AD ⊥ BC")
_FEET = ("triangle ABC", "P lies inside ABC", "AP bisects ∠BAC", "D lies on AB", "E lies on AC", "PD ⊥ AB", "PE ⊥ AC")

THEOREMS = (
    Theorem(
        "angle-bisector-ratio",
        "The bisector of an angle of a triangle cuts the opposite side in the ratio of the other two.",
        "proportion in triangles",
        "Euclid VI.3 (the exterior one: VI.A in later editions)",
        _ratio,
        fires=_BISECTED,
        silent=("triangle ABC", "D lies on BC", "segment AD"),
    ),
    Theorem(
        "angle-bisector-ratio-converse",
        "A line from a corner that cuts the opposite side in the ratio of the other two bisects the angle.",
        "proportion in triangles",
        "Euclid VI.3",
        _ratio_converse,
        fires=_BISECTED,
        silent=("triangle ABC", "D lies on BC", "segment AD"),
    ),
    Theorem(
        "perpendicular-bisector",
        "A point of the perpendicular bisector of a segment is as far from one end as from the other.",
        "perpendicular bisectors",
        "Euclid I.4",
        _perpendicular_bisector,
        fires=_UPRIGHT,
        silent=("triangle ABC", "D is the midpoint of BC", "segment AD"),
    ),
    Theorem(
        "perpendicular-bisector-converse",
        "Two points that are as far from one end of a segment as from the other are on its perpendicular bisector.",
        "perpendicular bisectors",
        "Euclid I.8 and I.4",
        _perpendicular_bisector_converse,
        fires=("triangle ABC", "triangle DBC", "AB = AC", "DB = DC", "AD and BC intersect at E"),
        silent=_UPRIGHT,
    ),
    Theorem(
        "bisector-distances",
        "A point of the bisector of an angle is as far from one arm as from the other.",
        "angle bisectors",
        "Euclid I.26",
        _distances,
        fires=_FEET,
        silent=_BISECTED,
    ),
    Theorem(
        "bisector-distances-converse",
        "A point as far from one arm of an angle as from the other is on its bisector.",
        "angle bisectors",
        "Euclid I.47 with I.8",
        _distances_converse,
        fires=_FEET,
        silent=_BISECTED,
    ),
)
