"""What follows for quadrilaterals that were shown to be of a kind: sides, angles, diagonals."""

from collections.abc import Iterator
from fractions import Fraction

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.theorems.like_quadrilaterals import (
    Corners,
    is_right,
    isosceles_trapeziums,
    kites,
    parallelograms,
    same_length,
)
from paperaudit.geometry.theorems.points import difference, total
from paperaudit.geometry.theorems.quadrilaterals import bisected_corner, crossing_of, diagonal_halves
from paperaudit.geometry.theorems.theorem import Instance, Theorem, is_shape, lines_parallel, segments_equal
from paperaudit.maths.linear import LinearForm

RIGHT = Fraction(90)
_SPECIAL = {
    "parallelogram": ("parallelogram", "rectangle", "rhombus", "square"),
    "rectangle": ("rectangle", "square"),
    "rhombus": ("rhombus", "square"),
    "kite": ("kite",),
    "isosceles trapezium": ("trapezium",),
}


def _unnamed(arrangement: Arrangement, kind: str, corners: Corners) -> bool:
    """Whether the paper does not name the shape so itself: then its theorems hold by the name."""
    named = [shape for shape, _ in arrangement.figure.shapes if set(shape.points) == set(corners)]
    return not any(shape.kind in _SPECIAL[kind] for shape in named)


def _turned(corners: Corners) -> tuple[Corners, ...]:
    a, b, c, d = corners
    return (a, b, c, d), (b, c, d, a), (c, d, a, b), (d, a, b, c)


def _parallelogram(arrangement: Arrangement) -> Iterator[Instance]:
    for corners in parallelograms(arrangement):
        if not _unnamed(arrangement, "parallelogram", corners):
            continue
        a, b, c, d = corners
        shape, about = (is_shape("parallelogram", corners),), "".join(corners)
        for one, two in (((a, b), (d, c)), ((b, c), (a, d))):
            parallel = lines_parallel(arrangement.ray(*one).line, arrangement.ray(*two).line)
            text = f"{''.join(one)} ∥ {''.join(two)}"
            yield Instance("parallelogram-definition", shape, LinearForm(), parallel, text)
            yield Instance("parallelogram-opposite-sides", shape, LinearForm(), segments_equal(one, two), about)
        for pair in (
            (arrangement.corner(d, a, b), arrangement.corner(b, c, d)),
            (arrangement.corner(a, b, c), arrangement.corner(c, d, a)),
        ):
            yield Instance("parallelogram-opposite-angles", shape, difference(*pair), about=about)
        middle = crossing_of(arrangement, (a, c), (b, d))
        for start, end in ((a, c), (b, d)) if middle else ():
            halves = segments_equal((start, middle or ""), (middle or "", end))
            yield Instance("parallelogram-diagonals", shape, LinearForm(), halves, about)


def _rectangle(arrangement: Arrangement) -> Iterator[Instance]:
    for corners in parallelograms(arrangement):
        a, b, c, d = corners
        if not is_right(arrangement, d, a, b) or not _unnamed(arrangement, "rectangle", corners):
            continue
        shape, about = (is_shape("rectangle", corners),), "".join(corners)
        for before, vertex, after, _ in _turned(corners):
            right = total((arrangement.corner(before, vertex, after),), 90)
            yield Instance("rectangle-angles", shape, right, about=about)
        diagonals = segments_equal((a, c), (b, d))
        yield Instance("rectangle-diagonals", shape, LinearForm(), diagonals, about)


def _rhombus(arrangement: Arrangement) -> Iterator[Instance]:
    for corners in parallelograms(arrangement):
        a, b, c, d = corners
        if not same_length(arrangement, (a, b), (b, c)) or not _unnamed(arrangement, "rhombus", corners):
            continue
        shape, about = (is_shape("rhombus", corners),), "".join(corners)
        middle = crossing_of(arrangement, (a, c), (b, d))
        for one, two, three, _ in _turned(corners):
            equal = segments_equal((one, two), (two, three))
            yield Instance("rhombus-sides", shape, LinearForm(), equal, about)
            if middle:
                right = total((arrangement.corner(one, middle, two),), 90)
                yield Instance("rhombus-diagonals-perpendicular", shape, right, about=about)
        for start, end, sides in ((a, c, (b, d)), (c, a, (b, d)), (b, d, (a, c)), (d, b, (a, c))):
            halves = diagonal_halves(arrangement, start, end, sides)
            if halves:
                yield from bisected_corner(arrangement, (sides[0], start, sides[1]), halves, shape, about)


def _kite(arrangement: Arrangement) -> Iterator[Instance]:
    for corners in kites(arrangement):
        if not _unnamed(arrangement, "kite", corners):
            continue
        a, b, c, d = corners
        shape, about = (is_shape("kite", corners),), "".join(corners)
        opposite = difference(arrangement.corner(a, b, c), arrangement.corner(c, d, a))
        yield Instance("kite-opposite-angles", shape, opposite, about=about)
        for start, end in ((a, c), (c, a)):
            halves = diagonal_halves(arrangement, start, end, (b, d))
            if halves:
                yield Instance("kite-axis", shape, difference(*halves), about=about)
        middle = crossing_of(arrangement, (a, c), (b, d))
        if middle:
            yield Instance("kite-axis", shape, LinearForm(), segments_equal((b, middle), (middle, d)), about)
            right = total((arrangement.corner(a, middle, b),), 90)
            yield Instance("kite-diagonals", shape, right, about=about)


def _isosceles_trapezium(arrangement: Arrangement) -> Iterator[Instance]:
    for corners, _ in isosceles_trapeziums(arrangement):
        if not _unnamed(arrangement, "isosceles trapezium", corners):
            continue
        a, b, c, d = corners
        shape, about = (is_shape("isosceles trapezium", corners),), "".join(corners)
        for pair in (
            (arrangement.corner(d, a, b), arrangement.corner(a, b, c)),
            (arrangement.corner(b, c, d), arrangement.corner(c, d, a)),
        ):
            yield Instance("isosceles-trapezium", shape, difference(*pair), about=about)
        for equal in (segments_equal((a, d), (b, c)), segments_equal((a, c), (b, d))):
            yield Instance("isosceles-trapezium-legs", shape, LinearForm(), equal, about)


_PLAIN = ("quadrilateral ABCD", "AC and BD intersect at E")
_COMMON = "common practice, no source"


def _of(name: str, says: str, skill: str, source: str, find: object, *fires: str) -> Theorem:
    return Theorem(name, says, skill, source, find, fires, _PLAIN)  # type: ignore[arg-type]


_PARALLELS = ("quadrilateral ABCD", "AB ∥ DC", "AD ∥ BC", "AC and BD intersect at E")
_FOUR_EQUAL = ("quadrilateral ABCD", "AB = BC = CD = DA", "AC and BD intersect at E")
_RIGHT_ANGLES = ("quadrilateral ABCD", "∠A = 90°", "∠B = 90°", "∠C = 90°", "AC and BD intersect at E")
_TWO_PAIRS = ("quadrilateral ABCD", "AB = AD", "CB = CD", "AC and BD intersect at E")
_EQUAL_BASE = ("quadrilateral ABCD", "AB ∥ DC", "∠A = ∠B", "segments AC, BD")

THEOREMS = (
    _of(
        "parallelogram-definition",
        "Opposite sides of a parallelogram are parallel.",
        "parallelograms",
        "Euclid I.34 (definition)",
        _parallelogram,
        *_PARALLELS,
    ),
    _of(
        "parallelogram-opposite-sides",
        "Opposite sides of what was shown to be a parallelogram are equal.",
        "parallelograms",
        "Euclid I.34",
        _parallelogram,
        *_PARALLELS,
    ),
    _of(
        "parallelogram-opposite-angles",
        "Opposite angles of what was shown to be a parallelogram are equal.",
        "parallelograms",
        "Euclid I.34",
        _parallelogram,
        *_PARALLELS,
    ),
    _of(
        "parallelogram-diagonals",
        "The diagonals of what was shown to be a parallelogram bisect each other.",
        "parallelograms",
        "Euclid I.34, corollary",
        _parallelogram,
        *_PARALLELS,
    ),
    _of(
        "rectangle-angles",
        "Each angle of what was shown to be a rectangle is right.",
        "rectangles and squares",
        "definition",
        _rectangle,
        *_RIGHT_ANGLES,
    ),
    _of(
        "rectangle-diagonals",
        "The diagonals of what was shown to be a rectangle are equal.",
        "rectangles and squares",
        "Euclid I.4",
        _rectangle,
        *_RIGHT_ANGLES,
    ),
    _of("rhombus-sides", "All sides of a rhombus are equal.", "rhombuses", "definition", _rhombus, *_FOUR_EQUAL),
    _of(
        "rhombus-diagonals-perpendicular",
        "The diagonals of what was shown to be a rhombus cross at right angles.",
        "rhombuses",
        "Euclid I.8",
        _rhombus,
        *_FOUR_EQUAL,
    ),
    _of(
        "rhombus-diagonals-bisect-angles",
        "The diagonals of what was shown to be a rhombus bisect its angles.",
        "rhombuses",
        "Euclid I.8",
        _rhombus,
        *_FOUR_EQUAL,
    ),
    _of(
        "kite-opposite-angles",
        "One pair of opposite angles of what was shown to be a kite are equal.",
        "kites",
        "Euclid I.8",
        _kite,
        *_TWO_PAIRS,
    ),
    _of(
        "kite-axis",
        "The axis of what was shown to be a kite bisects its angles and the other diagonal.",
        "kites",
        "Euclid I.8 with I.4",
        _kite,
        *_TWO_PAIRS,
    ),
    _of(
        "kite-diagonals",
        "The diagonals of what was shown to be a kite cross at right angles.",
        "kites",
        "Euclid I.8 with I.4",
        _kite,
        *_TWO_PAIRS,
    ),
    _of(
        "isosceles-trapezium",
        "The base angles of what was shown to be an isosceles trapezium are equal.",
        "trapeziums",
        _COMMON,
        _isosceles_trapezium,
        *_EQUAL_BASE,
    ),
    _of(
        "isosceles-trapezium-legs",
        "The legs, and the diagonals, of what was shown to be an isosceles trapezium are equal.",
        "trapeziums",
        _COMMON,
        _isosceles_trapezium,
        *_EQUAL_BASE,
    ),
)
