"""Kites: equal opposite angles, the axis, diagonals at right angles."""

from collections.abc import Iterator

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import EqualLengths, Size
from paperaudit.geometry.theorems.points import difference, total
from paperaudit.geometry.theorems.polygons import corner_angles
from paperaudit.geometry.theorems.quadrilaterals import (
    Corners,
    crossing_of,
    diagonal_halves,
    named_shapes,
    perpendicular_diagonals,
    shape_theorem,
)
from paperaudit.geometry.theorems.theorem import Instance, Predicate, Stated, segments_equal
from paperaudit.maths.linear import LinearForm


def named_kites(arrangement: Arrangement) -> Iterator[tuple[Corners, tuple[Predicate, ...], str]]:
    """Kites with the ends of their axis first and third, as their sides were taken to be equal."""
    for (a, b, c, d), stated, shape in named_shapes(arrangement, "kite"):
        label = stated[0]
        axis_ac = any(
            isinstance(condition, EqualLengths)
            and Stated(condition.label) == label
            and {condition.first, condition.second} == set(_pair(a, b, d))
            for condition in arrangement.figure.conditions
        )
        yield ((a, b, c, d) if axis_ac else (b, c, d, a)), stated, "".join(shape.points)


def _pair(vertex: str, one: str, two: str) -> tuple[object, object]:
    equal = segments_equal((vertex, one), (vertex, two))
    return equal.first, equal.second


def _kite_angles(arrangement: Arrangement) -> Iterator[Instance]:
    for (a, b, c, d), stated, about in named_kites(arrangement):
        relation = difference(arrangement.corner(a, b, c), arrangement.corner(c, d, a))
        yield Instance("kite-opposite-angles", stated, relation, about=about)


def _kite_from_other_angles(arrangement: Arrangement) -> Iterator[Instance]:
    """The equal angles of a kite at one stroke from the other two, as pupils write it."""
    for (a, b, c, d), stated, about in named_kites(arrangement):
        equal = (arrangement.corner(a, b, c), arrangement.corner(c, d, a))
        lead = Instance("kite-opposite-angles", stated, difference(*equal), about=about)
        corners = corner_angles(arrangement, (a, b, c, d))
        if corners is None or any(corner.reflex for corner in (corners[1], corners[3])):
            continue
        others = total((corners[0], corners[2]), 360)
        for corner in equal:
            double: LinearForm[Size] = LinearForm({corner: 2})
            yield Instance("angle-sum-quadrilateral", stated, double + others, about=about, weight=20, lead=lead)


def _kite_axis(arrangement: Arrangement) -> Iterator[Instance]:
    for (a, b, c, d), stated, about in named_kites(arrangement):
        for start, end in ((a, c), (c, a)):
            halves = diagonal_halves(arrangement, start, end, (b, d))
            if halves:
                yield Instance("kite-axis", stated, difference(*halves), about=about)
        middle = crossing_of(arrangement, (a, c), (b, d))
        if middle:
            yield Instance("kite-axis", stated, LinearForm(), segments_equal((b, middle), (middle, d)), about)


THEOREMS = (
    shape_theorem(
        "kite-opposite-angles",
        "One pair of opposite angles of a kite are equal.",
        "kites",
        "common practice, no source",
        _kite_angles,
        "kite",
    ),
    shape_theorem(
        "angle-sum-quadrilateral",
        "The equal angles of a kite share what the other two leave of 360°.",
        "kites",
        "Euclid I.32, corollary",
        _kite_from_other_angles,
        "kite",
    ),
    shape_theorem(
        "kite-axis",
        "The axis of a kite bisects its angles and the other diagonal.",
        "kites",
        "common practice, no source",
        _kite_axis,
        "kite",
        True,
    ),
    shape_theorem(
        "kite-diagonals",
        "The diagonals of a kite cross at right angles.",
        "kites",
        "common practice, no source",
        perpendicular_diagonals(("kite",), "kite-diagonals"),
        "kite",
        True,
    ),
)
