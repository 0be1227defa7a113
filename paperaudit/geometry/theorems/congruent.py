"""Congruent triangles: the four cases, and what follows for their parts."""

from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.theorems.like_triangles import (
    CLOSE,
    corner_of,
    equal_corners,
    equal_sides,
    like_triangles,
    pair_text,
    side_of,
)
from paperaudit.geometry.theorems.points import difference
from paperaudit.geometry.theorems.theorem import NO_RELATION, AngleIs, Instance, Theorem, alike, segments_equal

RIGHT = Fraction(90)


def _congruent(arrangement: Arrangement) -> Iterator[Instance]:
    for one, two, same in like_triangles(arrangement):
        if not same:
            continue
        conclusion, about = alike(one, two, congruent=True), pair_text(one, two, "≡")
        sides = tuple(equal_sides(one, two, place) for place in range(3))
        angles = tuple(equal_corners(arrangement, one, two, place) for place in range(3))
        yield Instance("congruent-sss", sides, NO_RELATION, conclusion, about, 14)
        for place in range(3):
            before, after = (place + 1) % 3, (place + 2) % 3
            between = (sides[before], angles[place], sides[after])
            yield Instance("congruent-sas", between, NO_RELATION, conclusion, about, 14)
            for first, second in combinations(range(3), 2):
                premises = (angles[first], angles[second], sides[place])
                yield Instance("congruent-asa", premises, NO_RELATION, conclusion, about, 14)


def _right_angled(arrangement: Arrangement) -> Iterator[Instance]:
    """A right angle each, equal hypotenuses and one more pair of equal sides."""
    for one, two, same in like_triangles(arrangement):
        for place in range(3) if same else ():
            corners = tuple(corner_of(arrangement, triangle, place) for triangle in (one, two))
            if abs(arrangement.measured(corners[0]) - RIGHT) > CLOSE:
                continue
            right = tuple(AngleIs(corner, RIGHT) for corner in corners)
            conclusion, about = alike(one, two, congruent=True), pair_text(one, two, "≡")
            for leg in ((place + 1) % 3, (place + 2) % 3):
                premises = (*right, equal_sides(one, two, place), equal_sides(one, two, leg))
                yield Instance("congruent-rhs", premises, NO_RELATION, conclusion, about, 14)


def _common(arrangement: Arrangement) -> Iterator[Instance]:
    """A side or an angle that both triangles have."""
    for one, two, _ in like_triangles(arrangement):
        for place in range(3):
            if side_of(one, place) == side_of(two, place):
                yield Instance("common-side", (), NO_RELATION, equal_sides(one, two, place), weight=2)
            if corner_of(arrangement, one, place) == corner_of(arrangement, two, place):
                yield Instance("common-side", (), NO_RELATION, equal_corners(arrangement, one, two, place), weight=2)


def _parts(arrangement: Arrangement) -> Iterator[Instance]:
    """Corresponding angles and sides are equal."""
    for one, two, same in like_triangles(arrangement):
        if not same:
            continue
        premise, about = (alike(one, two, congruent=True),), pair_text(one, two, "≡")
        for place in range(3):
            first, second = corner_of(arrangement, one, place), corner_of(arrangement, two, place)
            if first != second:
                yield Instance("congruent-triangles-parts", premise, difference(first, second), about=about)
            here, there = side_of(one, place), side_of(two, place)
            if here != there:
                equal = segments_equal((here.start, here.end), (there.start, there.end))
                yield Instance("congruent-triangles-parts", premise, NO_RELATION, equal, about)


_HALVES = ("parallelogram ABCD", "segment AC")

THEOREMS = (
    Theorem(
        "congruent-sss",
        "Triangles with three pairs of equal sides are congruent.",
        "congruent triangles",
        "Euclid I.8",
        _congruent,
        fires=_HALVES,
        silent=("triangle ABC",),
    ),
    Theorem(
        "congruent-sas",
        "Triangles with two pairs of equal sides and the angles between them equal are congruent.",
        "congruent triangles",
        "Euclid I.4",
        _congruent,
        fires=_HALVES,
        silent=("triangle ABC",),
    ),
    Theorem(
        "congruent-asa",
        "Triangles with two pairs of equal angles and a pair of corresponding sides equal are congruent.",
        "congruent triangles",
        "Euclid I.26",
        _congruent,
        fires=_HALVES,
        silent=("triangle ABC",),
    ),
    Theorem(
        "congruent-rhs",
        "Right-angled triangles with equal hypotenuses and another pair of equal sides are congruent.",
        "congruent triangles",
        "Euclid I.47 with I.8",
        _right_angled,
        fires=("rectangle ABCD", "segment AC"),
        silent=_HALVES,
    ),
    Theorem(
        "common-side",
        "A side or an angle that two triangles share is equal to itself.",
        "congruent triangles",
        "Euclid, common notion 4",
        _common,
        fires=_HALVES,
        silent=("triangle ABC",),
    ),
    Theorem(
        "congruent-triangles-parts",
        "Corresponding parts of congruent triangles are equal.",
        "congruent triangles",
        "Euclid I.4",
        _parts,
        fires=_HALVES,
        silent=("triangle ABC",),
    ),
)
