"""How a quadrilateral is shown to be a parallelogram, a kite or an isosceles trapezium."""

from collections.abc import Iterator

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.theorems.kites import named_kites
from paperaudit.geometry.theorems.like_quadrilaterals import isosceles_trapeziums, kites, parallelograms, shown
from paperaudit.geometry.theorems.quadrilaterals import crossing_of, named_shapes
from paperaudit.geometry.theorems.theorem import (
    Instance,
    Predicate,
    Stated,
    Theorem,
    angles_equal,
    lines_parallel,
    segments_equal,
)


def _parallelogram(arrangement: Arrangement) -> Iterator[Instance]:
    """Two pairs of parallel or equal sides, of equal angles; diagonals that bisect; one pair equal and parallel."""
    for corners in parallelograms(arrangement):
        a, b, c, d = corners
        lines = {side: arrangement.ray(*side).line for side in ((a, b), (b, c), (d, c), (a, d))}
        parallel = (lines_parallel(lines[a, b], lines[d, c]), lines_parallel(lines[b, c], lines[a, d]))
        equal = (segments_equal((a, b), (d, c)), segments_equal((b, c), (a, d)))
        yield shown("parallelogram-definition", parallel, "parallelogram", corners)
        yield shown("parallelogram-opposite-sides-converse", equal, "parallelogram", corners)
        angles = (
            angles_equal(arrangement.corner(d, a, b), arrangement.corner(b, c, d)),
            angles_equal(arrangement.corner(a, b, c), arrangement.corner(c, d, a)),
        )
        yield shown("parallelogram-opposite-angles-converse", angles, "parallelogram", corners)
        for one, two in zip(equal, parallel, strict=True):
            yield shown("parallelogram-equal-parallel-sides", (one, two), "parallelogram", corners)
        middle = crossing_of(arrangement, (a, c), (b, d))
        if middle:
            halves = (segments_equal((a, middle), (middle, c)), segments_equal((b, middle), (middle, d)))
            yield shown("parallelogram-diagonals-converse", halves, "parallelogram", corners)


def _kite(arrangement: Arrangement) -> Iterator[Instance]:
    for a, b, c, d in kites(arrangement):
        premises = (segments_equal((a, b), (a, d)), segments_equal((c, b), (c, d)))
        yield shown("kite-converse", premises, "kite", (a, b, c, d))


def _isosceles_trapezium(arrangement: Arrangement) -> Iterator[Instance]:
    """A trapezium with equal base angles or equal diagonals; with equal legs, where the paper calls it a trapezium.

    Two parallel sides and two equal ones alone may as well be a parallelogram.
    """
    called = {frozenset(shape.points): label for shape, label in arrangement.figure.shapes if shape.kind == "trapezium"}
    for corners, parallel in isosceles_trapeziums(arrangement):
        a, b, c, d = corners
        equal: list[tuple[Predicate, ...]] = [
            (segments_equal((a, c), (b, d)),),
            (angles_equal(arrangement.corner(d, a, b), arrangement.corner(a, b, c)),),
            (angles_equal(arrangement.corner(b, c, d), arrangement.corner(c, d, a)),),
        ]
        if frozenset(corners) in called:
            equal.append((segments_equal((a, d), (b, c)), Stated(called[frozenset(corners)])))
        for premises in equal:
            yield shown("isosceles-trapezium-converse", (parallel, *premises), "isosceles trapezium", corners)


def _named(arrangement: Arrangement) -> Iterator[Instance]:
    """Shapes that the paper names."""
    for kind in ("parallelogram", "rectangle", "rhombus", "square"):
        for corners, stated, _ in named_shapes(arrangement, kind):
            yield shown("given", stated, kind, corners, 1)
    for corners, stated, _ in named_kites(arrangement):
        yield shown("given", stated, "kite", corners, 1)


_DIAGONALS = ("quadrilateral ABCD", "AC and BD intersect at E")
_PARALLELOGRAM = ("parallelogram ABCD", "AC and BD intersect at E")

THEOREMS = (
    Theorem(
        "given",
        "A shape that the paper names is of that kind.",
        "parallelograms",
        "the paper itself",
        _named,
        _PARALLELOGRAM,
        _DIAGONALS,
    ),
    Theorem(
        "parallelogram-definition",
        "A quadrilateral with two pairs of parallel sides is a parallelogram.",
        "proving parallelograms",
        "Euclid I.34 (definition)",
        _parallelogram,
        _PARALLELOGRAM,
        _DIAGONALS,
    ),
    Theorem(
        "parallelogram-opposite-sides-converse",
        "A quadrilateral with both pairs of opposite sides equal is a parallelogram.",
        "proving parallelograms",
        "Euclid I.8 with I.27",
        _parallelogram,
        _PARALLELOGRAM,
        _DIAGONALS,
    ),
    Theorem(
        "parallelogram-opposite-angles-converse",
        "A quadrilateral with both pairs of opposite angles equal is a parallelogram.",
        "proving parallelograms",
        "Euclid I.32 with I.28",
        _parallelogram,
        _PARALLELOGRAM,
        _DIAGONALS,
    ),
    Theorem(
        "parallelogram-equal-parallel-sides",
        "A quadrilateral with one pair of sides equal and parallel is a parallelogram.",
        "proving parallelograms",
        "Euclid I.33",
        _parallelogram,
        _PARALLELOGRAM,
        _DIAGONALS,
    ),
    Theorem(
        "parallelogram-diagonals-converse",
        "A quadrilateral whose diagonals bisect each other is a parallelogram.",
        "proving parallelograms",
        "Euclid I.4 with I.27",
        _parallelogram,
        _PARALLELOGRAM,
        _DIAGONALS,
    ),
    Theorem(
        "kite-converse",
        "A quadrilateral with two pairs of adjacent sides equal is a kite.",
        "kites",
        "definition",
        _kite,
        ("kite ABCD",),
        _DIAGONALS,
    ),
    Theorem(
        "isosceles-trapezium-converse",
        "A trapezium with equal legs, base angles or diagonals is isosceles.",
        "trapeziums",
        "common practice, no source",
        _isosceles_trapezium,
        ("isosceles trapezium ABCD", "segments AC, BD"),
        ("trapezium ABCD",),
    ),
)
