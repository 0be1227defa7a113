"""What a figure has a size of: angles, lengths, areas, arcs, circles, sectors, distances, bearings."""

from dataclasses import dataclass, field
from typing import Literal, TypeAlias


@dataclass(frozen=True, slots=True)
class AngleOf:
    """∠ABC by its three points, vertex in the middle; below 180° unless `reflex`."""

    arm: str
    vertex: str
    other: str
    reflex: bool = False
    _hash: int = field(init=False, repr=False, compare=False)
    """Angles and lengths are the keys of every search; to hash one anew each time takes a twentieth of it."""

    def __post_init__(self) -> None:
        object.__setattr__(self, "_hash", hash((self.arm, self.vertex, self.other, self.reflex)))

    def __hash__(self) -> int:
        return self._hash


@dataclass(frozen=True, slots=True)
class AngleAt:
    """∠B or B̂₁: an angle named by its vertex alone, or with the number that the figure gives it."""

    vertex: str
    number: int = 0
    reflex: bool = False


@dataclass(frozen=True, slots=True)
class LengthOf:
    """The length of segment AB."""

    start: str
    end: str
    _hash: int = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "_hash", hash((self.start, self.end)))

    def __hash__(self) -> int:
        return self._hash


@dataclass(frozen=True, slots=True)
class AreaOf:
    """The area of the polygon with these corners."""

    points: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class PerimeterOf:
    """The perimeter of the polygon with these corners."""

    points: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ArcOf:
    """The measure in degrees of the arc from `start` to `end` of a circle.

    `through` is a point of the arc that tells which of the two is meant; without one it is the
    minor arc, or the `major` one. `centre` is "" where the statement does not name the circle.
    """

    start: str
    end: str
    through: str = ""
    major: bool = False
    centre: str = ""


@dataclass(frozen=True, slots=True)
class ArcLengthOf:
    """The length of an arc."""

    arc: ArcOf


CircleKind: TypeAlias = Literal["radius", "diameter", "circumference", "area"]


AMONG = "/"
"""Stands in the name of one of several circles about a centre, between the centre and which of them is meant."""


def centre_of_circle(circle: str) -> str:
    """The centre of a circle by the circle's name, which is the centre's letter unless several circles share it.

    >>> centre_of_circle("O"), centre_of_circle("O/larger")
    ('O', 'O')
    """
    return circle.partition(AMONG)[0]


def of_circle(circle: str) -> str:
    """What says of which circle a size is, by the circle's name.

    >>> of_circle("O"), of_circle("O/larger"), of_circle("")
    (' of circle O', ' of the larger circle', ' of the circle')
    """
    middle, _, which = circle.partition(AMONG)
    return f" of the {which} circle" if which else f" of circle {middle}" if middle else " of the circle"


@dataclass(frozen=True, slots=True)
class CircleSize:
    """The radius, diameter, circumference or area of a circle; `centre` is "" for the only circle there is.

    Of several circles about one centre `centre` is the circle's name: O/larger.
    """

    kind: CircleKind
    centre: str = ""


@dataclass(frozen=True, slots=True)
class SectorOf:
    """The area or the perimeter of the sector between an arc and the two radii to its ends."""

    kind: Literal["area", "perimeter"]
    arc: ArcOf


@dataclass(frozen=True, slots=True)
class SegmentOf:
    """The area or the perimeter of the segment of a circle between an arc and its chord."""

    kind: Literal["area", "perimeter"]
    arc: ArcOf


@dataclass(frozen=True, slots=True)
class DistanceOf:
    """The distance from a point to a line, the height of a figure over a side."""

    point: str
    path: tuple[str, str]


@dataclass(frozen=True, slots=True)
class BearingOf:
    """The three-figure bearing of `end` from `start`: degrees clockwise from north, from 0 up to 360."""

    start: str
    end: str


RoundSize: TypeAlias = ArcOf | ArcLengthOf | CircleSize | SectorOf | SegmentOf
"""What a circle has a size of."""

Quantity: TypeAlias = AngleOf | AngleAt | LengthOf | AreaOf | PerimeterOf | DistanceOf | BearingOf | RoundSize
"""What a figure has a size of."""
