"""Quadrilaterals: angle sum, and what parallelograms, rhombuses, rectangles, squares, kites and trapeziums add."""

from collections.abc import Callable, Iterator
from fractions import Fraction

from paperaudit.geometry.arrangement import Arrangement
from paperaudit.geometry.figure import EqualLengths, ParallelPair, Size
from paperaudit.geometry.theorems.points import difference, total
from paperaudit.geometry.theorems.theorem import Instance, Predicate, Stated, Theorem, segments_equal
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import AngleOf
from paperaudit.model.fact import Shape

Corners = tuple[str, str, str, str]
_PARALLELOGRAMS = ("parallelogram", "rectangle", "rhombus", "square")


def _shapes(arrangement: Arrangement, *kinds: str) -> Iterator[tuple[Corners, tuple[Predicate, ...], Shape]]:
    for shape, label in arrangement.figure.shapes:
        if shape.kind in kinds and len(shape.points) == 4:
            a, b, c, d = shape.points
            yield (a, b, c, d), (Stated(label),), shape


def crossing_of(arrangement: Arrangement, one: tuple[str, str], two: tuple[str, str]) -> str | None:
    """The labelled point where the drawn lines of two diagonals meet."""
    if one not in arrangement._ray_to or two not in arrangement._ray_to:
        return None
    return arrangement.meet(arrangement.ray(*one).line, arrangement.ray(*two).line)


def _opposite_angles(arrangement: Arrangement) -> Iterator[Instance]:
    for (a, b, c, d), stated, shape in _shapes(arrangement, *_PARALLELOGRAMS):
        about = "".join(shape.points)
        for pair in ((arrangement.corner(d, a, b), arrangement.corner(b, c, d)),
                     (arrangement.corner(a, b, c), arrangement.corner(c, d, a))):
            yield Instance("parallelogram-opposite-angles", stated, difference(*pair), about=about)


def _opposite_sides(arrangement: Arrangement) -> Iterator[Instance]:
    for (a, b, c, d), stated, shape in _shapes(arrangement, *_PARALLELOGRAMS):
        for one, two in (((a, b), (d, c)), ((b, c), (a, d))):
            about = "".join(shape.points)
            yield Instance("parallelogram-opposite-sides", stated, LinearForm(), segments_equal(one, two), about)


def _diagonals_bisect(arrangement: Arrangement) -> Iterator[Instance]:
    for (a, b, c, d), stated, shape in _shapes(arrangement, *_PARALLELOGRAMS):
        middle = crossing_of(arrangement, (a, c), (b, d))
        if middle:
            for start, end in ((a, c), (b, d)):
                halves = segments_equal((start, middle), (middle, end))
                yield Instance("parallelogram-diagonals", stated, LinearForm(), halves, "".join(shape.points))


def _rectangle_diagonals(arrangement: Arrangement) -> Iterator[Instance]:
    for (a, b, c, d), stated, shape in _shapes(arrangement, "rectangle", "square"):
        about = "".join(shape.points)
        yield Instance("rectangle-diagonals", stated, LinearForm(), segments_equal((a, c), (b, d)), about)
        middle = crossing_of(arrangement, (a, c), (b, d))
        if middle:
            for one, two in ((a, b), (b, c), (c, d), (d, a)):
                equal = segments_equal((middle, one), (middle, two))
                yield Instance("rectangle-diagonals", stated, LinearForm(), equal, about)


def _diagonal_halves(arrangement: Arrangement, start: str, end: str, sides: tuple[str, str]) -> tuple[AngleOf, AngleOf] | None:
    if (start, end) not in arrangement._ray_to:
        return None
    return arrangement.corner(sides[0], start, end), arrangement.corner(end, start, sides[1])


def _rhombus_diagonals(arrangement: Arrangement) -> Iterator[Instance]:
    for (a, b, c, d), stated, shape in _shapes(arrangement, "rhombus", "square"):
        about = "".join(shape.points)
        for start, end, sides in ((a, c, (b, d)), (c, a, (b, d)), (b, d, (a, c)), (d, b, (a, c))):
            halves = _diagonal_halves(arrangement, start, end, sides)
            if halves:
                yield Instance("rhombus-diagonals-bisect-angles", stated, difference(*halves), about=about)


def _perpendicular_diagonals(kinds: tuple[str, ...], reason: str) -> Callable[[Arrangement], Iterator[Instance]]:
    def find(arrangement: Arrangement) -> Iterator[Instance]:
        for (a, b, c, d), stated, shape in _shapes(arrangement, *kinds):
            middle = crossing_of(arrangement, (a, c), (b, d))
            if middle:
                for one, two in ((a, b), (b, c), (c, d), (d, a)):
                    right: LinearForm[Size] = LinearForm({arrangement.corner(one, middle, two): Fraction(1)}, Fraction(-90))
                    yield Instance(reason, stated, right, about="".join(shape.points))

    return find


def _square_diagonals(arrangement: Arrangement) -> Iterator[Instance]:
    for (a, b, c, d), stated, shape in _shapes(arrangement, "square"):
        for start, end, sides in ((a, c, (b, d)), (c, a, (b, d)), (b, d, (a, c)), (d, b, (a, c))):
            for half in _diagonal_halves(arrangement, start, end, sides) or ():
                form: LinearForm[Size] = LinearForm({half: Fraction(1)}, Fraction(-45))
                yield Instance("square-diagonals", stated, form, about="".join(shape.points))


def _kites(arrangement: Arrangement) -> Iterator[tuple[Corners, tuple[Predicate, ...], str]]:
    """Kites with the ends of their axis first and third, as their sides were taken to be equal."""
    for (a, b, c, d), stated, shape in _shapes(arrangement, "kite"):
        label = stated[0]
        axis_ac = any(
            isinstance(condition, EqualLengths) and Stated(condition.label) == label
            and {condition.first, condition.second} == set(_pair(a, b, d))
            for condition in arrangement.figure.conditions
        )
        yield ((a, b, c, d) if axis_ac else (b, c, d, a)), stated, "".join(shape.points)


def _pair(vertex: str, one: str, two: str) -> tuple[object, object]:
    equal = segments_equal((vertex, one), (vertex, two))
    return equal.first, equal.second


def _kite_angles(arrangement: Arrangement) -> Iterator[Instance]:
    for (a, b, c, d), stated, about in _kites(arrangement):
        relation = difference(arrangement.corner(a, b, c), arrangement.corner(c, d, a))
        yield Instance("kite-opposite-angles", stated, relation, about=about)


def _kite_from_other_angles(arrangement: Arrangement) -> Iterator[Instance]:
    """The equal angles of a kite at one stroke from the other two, as pupils write it."""
    for (a, b, c, d), stated, about in _kites(arrangement):
        equal = (arrangement.corner(a, b, c), arrangement.corner(c, d, a))
        lead = Instance("kite-opposite-angles", stated, difference(*equal), about=about)
        others = total((arrangement.corner(d, a, b), arrangement.corner(b, c, d)), 360)
        for corner in equal:
            double: LinearForm[Size] = LinearForm({corner: Fraction(2)})
            yield Instance("angle-sum-quadrilateral", stated, double + others, about=about, weight=20, lead=lead)


def _kite_axis(arrangement: Arrangement) -> Iterator[Instance]:
    for (a, b, c, d), stated, about in _kites(arrangement):
        for start, end in ((a, c), (c, a)):
            halves = _diagonal_halves(arrangement, start, end, (b, d))
            if halves:
                yield Instance("kite-axis", stated, difference(*halves), about=about)
        middle = crossing_of(arrangement, (a, c), (b, d))
        if middle:
            yield Instance("kite-axis", stated, LinearForm(), segments_equal((b, middle), (middle, d)), about)


def _isosceles_trapezium(arrangement: Arrangement) -> Iterator[Instance]:
    for (a, b, c, d), stated, shape in _shapes(arrangement, "trapezium"):
        if "isosceles" not in shape.qualities:
            continue
        upright = any(
            isinstance(condition, ParallelPair) and {frozenset(condition.first), frozenset(condition.second)} == {frozenset((a, d)), frozenset((b, c))}
            for condition in arrangement.figure.conditions
        )
        bases = (((d, a, b), (a, d, c)), ((a, b, c), (b, c, d))) if upright else (((d, a, b), (a, b, c)), ((b, c, d), (c, d, a)))
        for one, two in bases:
            relation = difference(arrangement.corner(*one), arrangement.corner(*two))
            yield Instance("isosceles-trapezium", stated, relation, about="".join(shape.points))
        yield Instance("isosceles-trapezium", stated, LinearForm(), segments_equal((a, c), (b, d)), "".join(shape.points))


def _angle_sum(arrangement: Arrangement) -> Iterator[Instance]:
    for shape, _ in arrangement.figure.shapes:
        if len(shape.points) == 4:
            a, b, c, d = shape.points
            parts = [arrangement.corner(*trio) for trio in ((d, a, b), (a, b, c), (b, c, d), (c, d, a))]
            yield Instance("angle-sum-quadrilateral", (), total(parts, 360), about="".join(shape.points), weight=12)


_DIAGONALS = ("AC and BD intersect at E",)


def _theorem(
    name: str, says: str, skill: str, source: str, find: Callable[[Arrangement], Iterator[Instance]],
    shape: str, diagonals: bool = False,
) -> Theorem:
    fires = (f"{shape} ABCD", *(_DIAGONALS if diagonals else ()))
    return Theorem(name, says, skill, source, find, fires, silent=("triangle ABC",))


THEOREMS = (
    _theorem("angle-sum-quadrilateral", "The angles of a quadrilateral add up to 360°.", "angles in a quadrilateral",
             "Euclid I.32, corollary", _angle_sum, "quadrilateral"),
    _theorem("parallelogram-opposite-angles", "Opposite angles of a parallelogram are equal.", "parallelograms",
             "Euclid I.34", _opposite_angles, "parallelogram"),
    _theorem("parallelogram-opposite-sides", "Opposite sides of a parallelogram are equal.", "parallelograms",
             "Euclid I.34", _opposite_sides, "parallelogram"),
    _theorem("parallelogram-diagonals", "The diagonals of a parallelogram bisect each other.", "parallelograms",
             "Euclid I.34, corollary", _diagonals_bisect, "parallelogram", True),
    _theorem("rectangle-diagonals", "The diagonals of a rectangle are equal and bisect each other.",
             "rectangles and squares", "common practice, no source", _rectangle_diagonals, "rectangle", True),
    _theorem("rhombus-diagonals-bisect-angles", "The diagonals of a rhombus bisect its angles.", "rhombuses",
             "common practice, no source", _rhombus_diagonals, "rhombus", True),
    _theorem("rhombus-diagonals-perpendicular", "The diagonals of a rhombus cross at right angles.", "rhombuses",
             "common practice, no source",
             _perpendicular_diagonals(("rhombus", "square"), "rhombus-diagonals-perpendicular"), "rhombus", True),
    _theorem("square-diagonals", "A diagonal of a square makes 45° with its sides.", "rectangles and squares",
             "common practice, no source", _square_diagonals, "square", True),
    _theorem("kite-opposite-angles", "One pair of opposite angles of a kite are equal.", "kites",
             "common practice, no source", _kite_angles, "kite"),
    _theorem("angle-sum-quadrilateral", "The equal angles of a kite share what the other two leave of 360°.", "kites",
             "Euclid I.32, corollary", _kite_from_other_angles, "kite"),
    _theorem("kite-axis", "The axis of a kite bisects its angles and the other diagonal.", "kites",
             "common practice, no source", _kite_axis, "kite", True),
    _theorem("kite-diagonals", "The diagonals of a kite cross at right angles.", "kites",
             "common practice, no source", _perpendicular_diagonals(("kite",), "kite-diagonals"), "kite", True),
    _theorem("isosceles-trapezium", "The base angles of an isosceles trapezium are equal.", "trapeziums",
             "common practice, no source", _isosceles_trapezium, "isosceles trapezium"),
)
