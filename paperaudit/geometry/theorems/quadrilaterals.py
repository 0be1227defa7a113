"""Quadrilaterals: angle sum, and what parallelograms, rhombuses, rectangles, squares and trapeziums add."""

from collections.abc import Callable, Iterator
from fractions import Fraction

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import ParallelPair, Size
from paperaudit.geometry.theorems.like_quadrilaterals import same_length
from paperaudit.geometry.theorems.points import difference, total
from paperaudit.geometry.theorems.polygons import corner_angles
from paperaudit.geometry.theorems.theorem import Instance, Predicate, Stated, Theorem, segments_equal
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import AngleOf
from paperaudit.model.fact import Shape

Corners = tuple[str, str, str, str]
_PARALLELOGRAMS = ("parallelogram", "rectangle", "rhombus", "square")


def named_shapes(arrangement: Arrangement, *kinds: str) -> Iterator[tuple[Corners, tuple[Predicate, ...], Shape]]:
    """Quadrilaterals of some kinds that the paper names: their corners in order, the premise, the shape."""
    for shape, label in arrangement.figure.shapes:
        if shape.kind in kinds and len(shape.points) == 4:
            a, b, c, d = shape.points
            yield (a, b, c, d), (Stated(label),), shape


def crossing_of(arrangement: Arrangement, one: tuple[str, str], two: tuple[str, str]) -> str | None:
    """The labelled point where the drawn lines of two diagonals meet."""
    if not arrangement.joined(*one) or not arrangement.joined(*two):
        return None
    return arrangement.meet(arrangement.ray(*one).line, arrangement.ray(*two).line)


def _opposite_angles(arrangement: Arrangement) -> Iterator[Instance]:
    for (a, b, c, d), stated, shape in named_shapes(arrangement, *_PARALLELOGRAMS):
        about = "".join(shape.points)
        for pair in (
            (arrangement.corner(d, a, b), arrangement.corner(b, c, d)),
            (arrangement.corner(a, b, c), arrangement.corner(c, d, a)),
        ):
            yield Instance("parallelogram-opposite-angles", stated, difference(*pair), about=about)


def _opposite_sides(arrangement: Arrangement) -> Iterator[Instance]:
    for (a, b, c, d), stated, shape in named_shapes(arrangement, *_PARALLELOGRAMS):
        for one, two in (((a, b), (d, c)), ((b, c), (a, d))):
            about = "".join(shape.points)
            yield Instance("parallelogram-opposite-sides", stated, LinearForm(), segments_equal(one, two), about)


def _diagonals_bisect(arrangement: Arrangement) -> Iterator[Instance]:
    for (a, b, c, d), stated, shape in named_shapes(arrangement, *_PARALLELOGRAMS):
        middle = crossing_of(arrangement, (a, c), (b, d))
        if middle:
            for start, end in ((a, c), (b, d)):
                halves = segments_equal((start, middle), (middle, end))
                yield Instance("parallelogram-diagonals", stated, LinearForm(), halves, "".join(shape.points))


def _rectangle_diagonals(arrangement: Arrangement) -> Iterator[Instance]:
    for (a, b, c, d), stated, shape in named_shapes(arrangement, "rectangle", "square"):
        about = "".join(shape.points)
        yield Instance("rectangle-diagonals", stated, LinearForm(), segments_equal((a, c), (b, d)), about)
        middle = crossing_of(arrangement, (a, c), (b, d))
        if middle:
            for one, two in ((a, b), (b, c), (c, d), (d, a)):
                equal = segments_equal((middle, one), (middle, two))
                yield Instance("rectangle-diagonals", stated, LinearForm(), equal, about)


def diagonal_halves(
    arrangement: Arrangement, start: str, end: str, sides: tuple[str, str]
) -> tuple[AngleOf, AngleOf] | None:
    """The two angles at `start` that the diagonal to `end` makes with the sides, None if it is not drawn."""
    if not arrangement.joined(start, end):
        return None
    return arrangement.corner(sides[0], start, end), arrangement.corner(end, start, sides[1])


def bisected_corner(
    arrangement: Arrangement,
    corner: tuple[str, str, str],
    halves: tuple[AngleOf, AngleOf],
    premises: tuple[Predicate, ...],
    about: str,
) -> Iterator[Instance]:
    """What a rhombus' diagonal does to a corner: its halves are equal, and each is half of the whole."""
    reason = "rhombus-diagonals-bisect-angles"
    yield Instance(reason, premises, difference(*halves), about=about)
    whole: LinearForm[Size] = LinearForm.of(arrangement.corner(*corner))
    for half in halves:
        twice: LinearForm[Size] = LinearForm({half: 2})
        yield Instance(reason, premises, twice - whole, weight=10, about=about)


def _rhombus_diagonals(arrangement: Arrangement) -> Iterator[Instance]:
    for (a, b, c, d), stated, shape in named_shapes(arrangement, "rhombus", "square"):
        about = "".join(shape.points)
        for start, end, sides in ((a, c, (b, d)), (c, a, (b, d)), (b, d, (a, c)), (d, b, (a, c))):
            halves = diagonal_halves(arrangement, start, end, sides)
            if halves:
                yield from bisected_corner(arrangement, (sides[0], start, sides[1]), halves, stated, about)


def perpendicular_diagonals(kinds: tuple[str, ...], reason: str) -> Callable[[Arrangement], Iterator[Instance]]:
    """The rule, for shapes of some kinds, that their diagonals cross at right angles."""

    def find(arrangement: Arrangement) -> Iterator[Instance]:
        for (a, b, c, d), stated, shape in named_shapes(arrangement, *kinds):
            middle = crossing_of(arrangement, (a, c), (b, d))
            if middle:
                for one, two in ((a, b), (b, c), (c, d), (d, a)):
                    right: LinearForm[Size] = LinearForm(
                        {arrangement.corner(one, middle, two): Fraction(1)}, Fraction(-90)
                    )
                    yield Instance(reason, stated, right, about="".join(shape.points))

    return find


def _square_diagonals(arrangement: Arrangement) -> Iterator[Instance]:
    for (a, b, c, d), stated, shape in named_shapes(arrangement, "square"):
        for start, end, sides in ((a, c, (b, d)), (c, a, (b, d)), (b, d, (a, c)), (d, b, (a, c))):
            for half in diagonal_halves(arrangement, start, end, sides) or ():
                form: LinearForm[Size] = LinearForm({half: 1}, -45)
                yield Instance("square-diagonals", stated, form, about="".join(shape.points))


def _isosceles_trapezium(arrangement: Arrangement) -> Iterator[Instance]:
    """A trapezium that is called isosceles or has equal legs; drawn as a parallelogram it is neither."""
    for (a, b, c, d), named, shape in named_shapes(arrangement, "trapezium"):
        upright = any(
            isinstance(condition, ParallelPair)
            and {frozenset(condition.first), frozenset(condition.second)} == {frozenset((a, d)), frozenset((b, c))}
            for condition in arrangement.figure.conditions
        )
        legs, parallel = (((a, b), (d, c)), ((a, d), (b, c))) if upright else (((a, d), (b, c)), ((a, b), (d, c)))
        stated: tuple[Predicate, ...] = named
        if "isosceles" not in shape.qualities:
            if not same_length(arrangement, *legs) or same_length(arrangement, *parallel):
                continue
            stated = (*named, segments_equal(*legs))
        bases = (
            (((d, a, b), (a, d, c)), ((a, b, c), (b, c, d)))
            if upright
            else (((d, a, b), (a, b, c)), ((b, c, d), (c, d, a)))
        )
        for one, two in bases:
            relation = difference(arrangement.corner(*one), arrangement.corner(*two))
            yield Instance("isosceles-trapezium", stated, relation, about="".join(shape.points))
        yield Instance(
            "isosceles-trapezium", stated, LinearForm(), segments_equal((a, c), (b, d)), "".join(shape.points)
        )


def _angle_sum(arrangement: Arrangement) -> Iterator[Instance]:
    for shape, _ in arrangement.figure.shapes:
        if len(shape.points) == 4:
            parts = corner_angles(arrangement, shape.points)
            if parts:
                about = "".join(shape.points)
                yield Instance("angle-sum-quadrilateral", (), total(parts, 360), about=about, weight=12)


_DIAGONALS = ("AC and BD intersect at E",)


def shape_theorem(
    name: str,
    says: str,
    skill: str,
    source: str,
    find: Callable[[Arrangement], Iterator[Instance]],
    shape: str,
    diagonals: bool = False,
) -> Theorem:
    """A theorem about one kind of quadrilateral, named ABCD where it fires, with its diagonals drawn or not."""
    fires = (f"{shape} ABCD", *(_DIAGONALS if diagonals else ()))
    return Theorem(name, says, skill, source, find, fires, silent=("triangle ABC",))


THEOREMS = (
    shape_theorem(
        "angle-sum-quadrilateral",
        "The angles of a quadrilateral add up to 360°.",
        "angles in a quadrilateral",
        "Euclid I.32, corollary",
        _angle_sum,
        "quadrilateral",
    ),
    shape_theorem(
        "parallelogram-opposite-angles",
        "Opposite angles of a parallelogram are equal.",
        "parallelograms",
        "Euclid I.34",
        _opposite_angles,
        "parallelogram",
    ),
    shape_theorem(
        "parallelogram-opposite-sides",
        "Opposite sides of a parallelogram are equal.",
        "parallelograms",
        "Euclid I.34",
        _opposite_sides,
        "parallelogram",
    ),
    shape_theorem(
        "parallelogram-diagonals",
        "The diagonals of a parallelogram bisect each other.",
        "parallelograms",
        "Euclid I.34, corollary",
        _diagonals_bisect,
        "parallelogram",
        True,
    ),
    shape_theorem(
        "rectangle-diagonals",
        "The diagonals of a rectangle are equal and bisect each other.",
        "rectangles and squares",
        "common practice, no source",
        _rectangle_diagonals,
        "rectangle",
        True,
    ),
    shape_theorem(
        "rhombus-diagonals-bisect-angles",
        "The diagonals of a rhombus bisect its angles.",
        "rhombuses",
        "common practice, no source",
        _rhombus_diagonals,
        "rhombus",
        True,
    ),
    shape_theorem(
        "rhombus-diagonals-perpendicular",
        "The diagonals of a rhombus cross at right angles.",
        "rhombuses",
        "common practice, no source",
        perpendicular_diagonals(("rhombus", "square"), "rhombus-diagonals-perpendicular"),
        "rhombus",
        True,
    ),
    shape_theorem(
        "square-diagonals",
        "A diagonal of a square makes 45° with its sides.",
        "rectangles and squares",
        "common practice, no source",
        _square_diagonals,
        "square",
        True,
    ),
    shape_theorem(
        "isosceles-trapezium",
        "The base angles of an isosceles trapezium are equal.",
        "trapeziums",
        "common practice, no source",
        _isosceles_trapezium,
        "isosceles trapezium",
    ),
)
