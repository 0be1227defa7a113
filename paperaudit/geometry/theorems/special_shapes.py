"""How a quadrilateral is shown to be a rectangle, a rhombus or a square, and what these are besides."""

from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.theorems.like_quadrilaterals import is_right, parallelograms, same_length, shown
from paperaudit.geometry.theorems.quadrilaterals import crossing_of, diagonal_halves
from paperaudit.geometry.theorems.theorem import AngleIs, Instance, Theorem, angles_equal, is_shape, segments_equal

RIGHT = Fraction(90)


def _rectangle(arrangement: Arrangement) -> Iterator[Instance]:
    """A parallelogram with a right angle or with equal diagonals; three right angles."""
    for corners in parallelograms(arrangement):
        a, b, c, d = corners
        if not is_right(arrangement, d, a, b):
            continue
        shape = is_shape("parallelogram", corners)
        right = [AngleIs(arrangement.corner(*corner), RIGHT) for corner in ((d, a, b), (a, b, c), (b, c, d), (c, d, a))]
        for angle in right:
            yield shown("rectangle-one-right-angle", (shape, angle), "rectangle", corners)
        for trio in combinations(right, 3):
            yield shown("rectangle-three-right-angles", trio, "rectangle", corners)
        yield shown("rectangle-equal-diagonals", (shape, segments_equal((a, c), (b, d))), "rectangle", corners)


def _rhombus(arrangement: Arrangement) -> Iterator[Instance]:
    """Four equal sides; a parallelogram with adjacent sides equal, diagonals at right angles, or one that bisects."""
    for corners in parallelograms(arrangement):
        a, b, c, d = corners
        if not same_length(arrangement, (a, b), (b, c)):
            continue
        shape = is_shape("parallelogram", corners)
        around = [
            segments_equal(*pair) for pair in (((a, b), (b, c)), ((b, c), (c, d)), ((c, d), (d, a)), ((d, a), (a, b)))
        ]
        for trio in combinations(around, 3):
            yield shown("rhombus-four-equal-sides", trio, "rhombus", corners)
        for equal in around:
            yield shown("rhombus-adjacent-sides", (shape, equal), "rhombus", corners)
        middle = crossing_of(arrangement, (a, c), (b, d))
        if middle:
            for one, two in ((a, b), (b, c), (c, d), (d, a)):
                upright = AngleIs(arrangement.corner(one, middle, two), RIGHT)
                yield shown("rhombus-diagonals-converse", (shape, upright), "rhombus", corners)
        for start, end, sides in ((a, c, (b, d)), (c, a, (b, d)), (b, d, (a, c)), (d, b, (a, c))):
            halves = diagonal_halves(arrangement, start, end, sides)
            if halves:
                premises = (shape, angles_equal(*halves))
                yield shown("rhombus-diagonals-converse", premises, "rhombus", corners)


def _square(arrangement: Arrangement) -> Iterator[Instance]:
    """A rectangle that is a rhombus: one with adjacent sides equal, or the other with a right angle."""
    for corners in parallelograms(arrangement):
        a, b, c, d = corners
        if not same_length(arrangement, (a, b), (b, c)) or not is_right(arrangement, d, a, b):
            continue
        rectangle, rhombus = is_shape("rectangle", corners), is_shape("rhombus", corners)
        for one, two in (((a, b), (b, c)), ((b, c), (c, d)), ((c, d), (d, a)), ((d, a), (a, b))):
            yield shown("square-converse", (rectangle, segments_equal(one, two)), "square", corners)
        for corner in ((d, a, b), (a, b, c), (b, c, d), (c, d, a)):
            premises = (rhombus, AngleIs(arrangement.corner(*corner), RIGHT))
            yield shown("square-converse", premises, "square", corners)
        yield shown("square-converse", (rhombus, segments_equal((a, c), (b, d))), "square", corners)
        yield shown("square-converse", (rectangle, rhombus), "square", corners, 13)


def _special(arrangement: Arrangement) -> Iterator[Instance]:
    """What each kind is besides: a square is a rectangle."""
    for corners in parallelograms(arrangement):
        a, b, c, d = corners
        for kind, wider in (
            ("square", "rectangle"),
            ("square", "rhombus"),
            ("rectangle", "parallelogram"),
            ("rhombus", "parallelogram"),
        ):
            yield shown("special-shape", (is_shape(kind, corners),), wider, corners, 3)
        for turned in ((a, b, c, d), (b, c, d, a)):
            yield shown("special-shape", (is_shape("rhombus", corners),), "kite", turned, 3)


_DIAGONALS = ("quadrilateral ABCD", "AC and BD intersect at E")
_PARALLELOGRAM = ("parallelogram ABCD", "AC and BD intersect at E")
_RECTANGLE = ("rectangle ABCD", "AC and BD intersect at E")
_RHOMBUS = ("rhombus ABCD", "AC and BD intersect at E")

THEOREMS = (
    Theorem(
        "rectangle-one-right-angle",
        "A parallelogram with a right angle is a rectangle.",
        "rectangles and squares",
        "Euclid I.29 with I.34",
        _rectangle,
        _RECTANGLE,
        _PARALLELOGRAM,
    ),
    Theorem(
        "rectangle-three-right-angles",
        "A quadrilateral with three right angles is a rectangle.",
        "rectangles and squares",
        "Euclid I.32, corollary",
        _rectangle,
        _RECTANGLE,
        _PARALLELOGRAM,
    ),
    Theorem(
        "rectangle-equal-diagonals",
        "A parallelogram with equal diagonals is a rectangle.",
        "rectangles and squares",
        "Euclid I.8 with I.29",
        _rectangle,
        _RECTANGLE,
        _PARALLELOGRAM,
    ),
    Theorem(
        "rhombus-four-equal-sides",
        "A quadrilateral with four equal sides is a rhombus.",
        "rhombuses",
        "Euclid, definition I.22",
        _rhombus,
        _RHOMBUS,
        _PARALLELOGRAM,
    ),
    Theorem(
        "rhombus-adjacent-sides",
        "A parallelogram with adjacent sides equal is a rhombus.",
        "rhombuses",
        "Euclid I.34",
        _rhombus,
        _RHOMBUS,
        _PARALLELOGRAM,
    ),
    Theorem(
        "rhombus-diagonals-converse",
        "A parallelogram whose diagonals cross at right angles, or bisect an angle, is a rhombus.",
        "rhombuses",
        "common practice, no source",
        _rhombus,
        _RHOMBUS,
        _PARALLELOGRAM,
    ),
    Theorem(
        "square-converse",
        "A rectangle that is a rhombus is a square.",
        "rectangles and squares",
        "Euclid, definition I.22",
        _square,
        ("square ABCD",),
        _RECTANGLE,
    ),
    Theorem(
        "special-shape",
        "A square is a rectangle and a rhombus, and these are parallelograms.",
        "parallelograms",
        "definitions",
        _special,
        ("square ABCD",),
        _DIAGONALS,
    ),
)
