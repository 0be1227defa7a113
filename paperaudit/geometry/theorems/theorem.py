"""The form that every theorem has: one value, with the instances that it finds in an arrangement."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import TypeAlias

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import Size, length
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import AngleOf, Expression, LengthOf


@dataclass(frozen=True, slots=True)
class Stated:
    """Holds because the paper says so: the index of the given."""

    label: int


@dataclass(frozen=True, slots=True)
class LinesParallel:
    """Two lines, by index with the lower first, are parallel."""

    first: int
    second: int


@dataclass(frozen=True, slots=True)
class SegmentsEqual:
    """Two segments are equal; use `segments_equal` to build one with its ends in order."""

    first: LengthOf
    second: LengthOf


@dataclass(frozen=True, slots=True)
class Claimed:
    """A claim that the question asks to establish, by its place in the ask."""

    number: int


@dataclass(frozen=True, slots=True)
class AnglesEqual:
    """Two angles are equal; use `angles_equal` to build one in a fixed order."""

    first: AngleOf
    second: AngleOf


@dataclass(frozen=True, slots=True)
class AngleIs:
    """An angle has a size in degrees: a right angle, for one."""

    angle: AngleOf
    degrees: Fraction


@dataclass(frozen=True, slots=True)
class Proportional:
    """The lengths a : b = c : d."""

    lengths: tuple[LengthOf, LengthOf, LengthOf, LengthOf]


@dataclass(frozen=True, slots=True)
class Balanced:
    """Two expressions of sizes come to the same: BC² = AB² + AC²."""

    left: Expression
    right: Expression


@dataclass(frozen=True, slots=True)
class LinesPerpendicular:
    """Two lines, by index with the lower first, are at right angles, whether or not they meet in a named point."""

    first: int
    second: int


@dataclass(frozen=True, slots=True)
class Greater:
    """One size, or a sum of sizes, is greater than another."""

    left: Expression
    right: Expression


@dataclass(frozen=True, slots=True)
class TrianglesAlike:
    """Two triangles similar, or `congruent`, corresponding corners in order; `alike` builds one in a fixed order."""

    first: tuple[str, ...]
    second: tuple[str, ...]
    congruent: bool = False


@dataclass(frozen=True, slots=True)
class IsShape:
    """A quadrilateral is of a kind; `is_shape` builds one with its corners in a fixed order.

    A kite's axis is from its first corner to its third; an "isosceles trapezium" has its parallel
    sides from the first corner to the second and from the third to the fourth.
    """

    kind: str
    points: tuple[str, str, str, str]


@dataclass(frozen=True, slots=True)
class OnOneLine:
    """Three points, the middle one in the middle, are on one straight line though no line is drawn through all."""

    points: tuple[str, str, str]


@dataclass(frozen=True, slots=True)
class Concyclic:
    """Four points are on one circle; `concyclic` builds one with its points in order."""

    points: tuple[str, str, str, str]


@dataclass(frozen=True, slots=True)
class IsDiameter:
    """A chord of the circle about `centre` is a diameter; `is_diameter` builds one with its ends in order."""

    centre: str
    start: str
    end: str


@dataclass(frozen=True, slots=True)
class Touches:
    """The drawn line through `at` with this index touches the circle about `centre` there."""

    line: int
    at: str
    centre: str


Predicate: TypeAlias = (
    Stated
    | LinesParallel
    | SegmentsEqual
    | Claimed
    | AnglesEqual
    | AngleIs
    | Proportional
    | Balanced
    | LinesPerpendicular
    | Greater
    | TrianglesAlike
    | IsShape
    | OnOneLine
    | Concyclic
    | IsDiameter
    | Touches
)


def lines_parallel(first: int, second: int) -> LinesParallel:
    """The predicate with the lower index first."""
    return LinesParallel(min(first, second), max(first, second))


def segments_equal(one: tuple[str, str], two: tuple[str, str]) -> SegmentsEqual:
    """The predicate with ends and segments in a fixed order."""
    first, second = sorted((length(*one), length(*two)), key=lambda size: (size.start, size.end))
    return SegmentsEqual(first, second)


def angles_equal(one: AngleOf, two: AngleOf) -> AnglesEqual:
    """The predicate with the angles in a fixed order; both named canonically."""
    first, second = sorted((one, two), key=lambda size: (size.vertex, size.arm, size.other, size.reflex))
    return AnglesEqual(first, second)


def proportional(a: LengthOf, b: LengthOf, c: LengthOf, d: LengthOf) -> Proportional:
    """The predicate a : b = c : d in a fixed order: what says the same of the four lengths is one value."""

    def key(size: LengthOf) -> tuple[str, str]:
        return size.start, size.end

    outer, inner = sorted((a, d), key=key), sorted((b, c), key=key)
    if [key(size) for size in inner] < [key(size) for size in outer]:
        outer, inner = inner, outer
    return Proportional((outer[0], inner[0], inner[1], outer[1]))


def alike(first: tuple[str, ...], second: tuple[str, ...], congruent: bool = False) -> TrianglesAlike:
    """The predicate with the pairs of corners, and the two triangles, in a fixed order."""
    pairs = sorted(zip(first, second, strict=True))
    one, two = tuple(pair[0] for pair in pairs), tuple(pair[1] for pair in pairs)
    turned = sorted(zip(second, first, strict=True))
    if (tuple(pair[0] for pair in turned), tuple(pair[1] for pair in turned)) < (one, two):
        one, two = tuple(pair[0] for pair in turned), tuple(pair[1] for pair in turned)
    return TrianglesAlike(one, two, congruent)


def is_shape(kind: str, points: tuple[str, ...]) -> IsShape:
    """The predicate with the corners in a fixed order: the least of those that say the same.

    >>> is_shape("parallelogram", ("C", "B", "A", "D")).points
    ('A', 'B', 'C', 'D')
    """
    a, b, c, d = points
    orders = [(a, b, c, d), (a, d, c, b), (c, b, a, d), (c, d, a, b)]
    if kind == "isosceles trapezium":
        orders = [(a, b, c, d), (b, a, d, c), (c, d, a, b), (d, c, b, a)]
    elif kind != "kite":
        orders += [(b, c, d, a), (b, a, d, c), (d, c, b, a), (d, a, b, c)]
    return IsShape(kind, min(orders))


def concyclic(points: Iterable[str]) -> Concyclic:
    """The predicate with the points in the order of the alphabet."""
    a, b, c, d = sorted(points)
    return Concyclic((a, b, c, d))


def on_one_line(points: tuple[str, str, str]) -> OnOneLine:
    """The predicate with the ends in a fixed order."""
    return OnOneLine(min(points, points[::-1]))


def is_diameter(centre: str, start: str, end: str) -> IsDiameter:
    """The predicate with the ends in the order of the alphabet."""
    return IsDiameter(centre, min(start, end), max(start, end))


@dataclass(frozen=True, slots=True)
class Equation:
    """A theorem at one place of a figure that says `left` = `right` where its premises hold.

    The sides are written as a pupil writes them: AC² = AB² + BC², AB/DE = BC/EF. Angles in them are
    named canonically, lengths with their ends in order. `weight` and `about` as for `Instance`.
    """

    theorem: str
    premises: tuple[Predicate, ...]
    left: Expression
    right: Expression
    about: str = ""
    weight: int = 15
    skill: str = ""


NO_RELATION: LinearForm[Size] = LinearForm()
"""The relation of an instance whose premises alone make its conclusion."""


@dataclass(frozen=True, slots=True)
class Instance:
    """A theorem at one place of a figure.

    Without `conclusion`: where the premises hold, `relation` = 0 holds. With one: where the
    premises hold and `relation` is found to be 0, the conclusion holds. `weight` is the number of
    lines that it costs a pupil, in tenths. `about` fills the slot of its reason.
    """

    theorem: str
    premises: tuple[Predicate, ...]
    relation: LinearForm[Size]
    conclusion: Predicate | None = None
    about: str = ""
    weight: int = 10
    skill: str = ""
    lead: "Instance | None" = None


@dataclass(frozen=True, slots=True)
class Theorem:
    """What a theorem says, where it comes from, what it trains, and where it fires.

    `name` is the key of its reason in `schemes/reasons/`. `fires` are the statements of a figure in
    which it has an instance, `silent` those of one in which it must have none.
    """

    name: str
    says: str
    skill: str
    source: str
    find: Callable[[Arrangement], Iterator[Instance]] | Callable[[Arrangement], Iterator[Instance | Equation]]
    fires: tuple[str, ...]
    silent: tuple[str, ...]
