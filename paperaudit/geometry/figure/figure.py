"""A figure as its givens state it: points, lines, and the conditions that bind them."""

from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal, TypeAlias

from paperaudit.geometry.figure.rounds import OnCircle as OnCircle
from paperaudit.geometry.figure.rounds import TangentAt as TangentAt
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import (
    AngleOf,
    ArcOf,
    AreaOf,
    BearingOf,
    DistanceOf,
    Expression,
    LengthOf,
    Letter,
    PerimeterOf,
    RelationSign,
    RoundSize,
)
from paperaudit.model.fact import Path, Shape
from paperaudit.model.quantity import centre_of_circle

Measurable: TypeAlias = AngleOf | LengthOf | AreaOf | PerimeterOf | DistanceOf | BearingOf | RoundSize
"""What a drawing has a size of; in degrees, in the paper's unit of length, or in its square."""

Angular: TypeAlias = AngleOf | ArcOf | BearingOf
"""What is measured in degrees."""

Size: TypeAlias = Measurable | Letter
"""What a relation of a figure is about; a linear one is about angles and arcs, lengths, and letters."""


def angle(arm: str, vertex: str, other: str, reflex: bool = False) -> AngleOf:
    """∠(arm, vertex, other) with its arms in a fixed order, so that ∠ABC and ∠CBA are one value."""
    return AngleOf(arm, vertex, other, reflex) if arm <= other else AngleOf(other, vertex, arm, reflex)


def length(start: str, end: str) -> LengthOf:
    """The length between two points with its ends in a fixed order."""
    return LengthOf(start, end) if start <= end else LengthOf(end, start)


def arc(start: str, end: str, centre: str, through: str = "", major: bool = False) -> ArcOf:
    """An arc with its ends in a fixed order and its circle's centre named."""
    first, second = sorted((start, end))
    return ArcOf(first, second, through, major and not through, centre)


@dataclass(frozen=True, slots=True)
class Ordered:
    """`middle` lies between `first` and `last` on one line."""

    first: str
    middle: str
    last: str
    label: int


@dataclass(frozen=True, slots=True)
class InLine:
    """Three points on one line, in no stated order."""

    points: tuple[str, str, str]
    label: int


@dataclass(frozen=True, slots=True)
class ParallelPair:
    """Two parallel lines; `same_way` says whether the paths name them in the same direction, None if not known."""

    first: Path
    second: Path
    label: int
    same_way: bool | None = True
    reason: str = "given"


@dataclass(frozen=True, slots=True)
class RightAngle:
    """Two perpendicular lines."""

    first: Path
    second: Path
    label: int
    reason: str = "perpendicular-given"


@dataclass(frozen=True, slots=True)
class EqualLengths:
    """Two equal segments."""

    first: LengthOf
    second: LengthOf
    label: int
    reason: str = "equal-sides-given"


@dataclass(frozen=True, slots=True)
class SizeRelation:
    """A linear relation of sizes, `form` = 0; `play` is what its decimals may be rounded by: 0.005 for AB = 8.66."""

    form: LinearForm[Size]
    kind: Literal["angle", "length", "letters"]
    label: int
    reason: str = "given"
    play: Fraction = Fraction(0)


@dataclass(frozen=True, slots=True)
class Balance:
    """A relation that is not linear, `left` = `right`: AB·BC = 24, area of △ABC = 24 cm², sin ∠A = 3/5.

    Angles have three points, arcs and circles their centre, numbers the figure's unit of length or its square.
    `play` is the share by which its decimals may be rounded."""

    left: Expression
    right: Expression
    label: int
    reason: str = "given"
    play: float = 0.0


@dataclass(frozen=True, slots=True)
class Compared:
    """An inequality of sizes, or that two of them differ; checked on the drawing, no lines follow from it."""

    left: Expression
    sign: RelationSign
    right: Expression
    label: int


@dataclass(frozen=True, slots=True)
class Convex:
    """A polygon whose corners all turn the same way, but for those that are `reflex`."""

    points: tuple[str, ...]
    label: int
    reflex: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class RoundOrder:
    """Rays from `centre` to these points follow one another round it, each less than half a turn from the last."""

    centre: str
    points: tuple[str, ...]
    label: int


@dataclass(frozen=True, slots=True)
class RayBetween:
    """The ray from `vertex` to `point` runs inside the angle of the two arms; `halves` says that it bisects it."""

    vertex: str
    arm: str
    point: str
    other: str
    label: int
    halves: bool = False


@dataclass(frozen=True, slots=True)
class InsidePolygon:
    """`point` lies inside a convex polygon."""

    point: str
    polygon: tuple[str, ...]
    label: int


@dataclass(frozen=True, slots=True)
class SideOfLine:
    """Two points on the same side of a line, or on opposite sides; a sketch overrules a mere `convention`."""

    first: str
    second: str
    line: Path
    same: bool
    label: int
    convention: bool = False


@dataclass(frozen=True, slots=True)
class DrawnTurn:
    """The way (+1 anticlockwise) in which a sketch turns from one arm of an angle to the other."""

    vertex: str
    arm: str
    other: str
    way: int
    label: int


@dataclass(frozen=True, slots=True)
class SameWay:
    """Two lines that a question names in the same direction, parallel or not."""

    first: Path
    second: Path
    label: int


HIDDEN = "⊙"
"""How the names of centres begin that the paper gives no letter; they are never drawn or printed."""


@dataclass(frozen=True, slots=True)
class OutsidePolygon:
    """`point` lies outside a polygon; checked on the drawing."""

    point: str
    polygon: tuple[str, ...]
    label: int


Condition: TypeAlias = (
    Ordered
    | InLine
    | ParallelPair
    | RightAngle
    | EqualLengths
    | SizeRelation
    | Balance
    | Compared
    | Convex
    | RoundOrder
    | RayBetween
    | InsidePolygon
    | SideOfLine
    | DrawnTurn
    | SameWay
    | OnCircle
    | TangentAt
    | OutsidePolygon
)


@dataclass(frozen=True, slots=True)
class Figure:
    """Points, the lines that they lie on, shapes by name, and every condition.

    Each line is the set of its points in order of first mention; their order along it is settled by the drawing
    (`Arrangement`). `label` of a condition is the index of its given. `sketch` gives the rough positions of points,
    `fixed_names` the angle names that the paper itself uses, `named_sizes` every size that it names (CA, not AC).
    `context` holds the labels of statements that only set the figure up. `arcs` says that lines may name arcs: the
    paper does, or nothing else leads on. `rounded` says that decimals stand for whatever is rounded to them.
    """

    points: tuple[str, ...]
    lines: tuple[tuple[str, ...], ...]
    shapes: tuple[tuple[Shape, int], ...]
    conditions: tuple[Condition, ...]
    letters: tuple[str, ...] = ()
    sketch: tuple[tuple[str, float, float], ...] = ()
    fixed_names: tuple[AngleOf, ...] = ()
    named_sizes: tuple[Expression, ...] = ()
    alike: tuple[tuple[tuple[str, ...], tuple[str, ...], bool, int], ...] = ()
    midpoints: tuple[tuple[str, str, str, int], ...] = field(default=())
    context: frozenset[int] = frozenset()
    arcs: bool = False
    rounded: bool = False

    @property
    def circles(self) -> dict[str, tuple[str, ...]]:
        """Every circle by its centre or its own name, hidden ones too, with the points that the figure names on it."""
        found = {one.key: one.points for one in self.conditions if isinstance(one, OnCircle)}
        for one in self.conditions:
            if isinstance(one, TangentAt) and one.at not in found.get(one.key, ()):
                found[one.key] = (*found.get(one.key, ()), one.at)
        return found

    @property
    def radii(self) -> frozenset[tuple[str, str]]:
        """Every centre with every point of a circle about it."""
        return frozenset((centre_of_circle(name), point) for name, on in self.circles.items() for point in on)

    def line_of(self, start: str, end: str) -> int:
        """The index of the line through two points; KeyError if none is drawn through both."""
        for index, points in enumerate(self.lines):
            if start in points and end in points:
                return index
        raise KeyError((start, end))
