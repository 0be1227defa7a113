"""The marks of a figure as values, before they have a place: angles, sides, parallels, and classes of equals."""

from collections.abc import Hashable, Sequence
from dataclasses import dataclass
from typing import Literal, TypeAlias, TypeVar

from paperaudit.model.expression import (
    AngleOf,
    ArcOf,
    AreaOf,
    CircleSize,
    LengthOf,
    PerimeterOf,
    SectorOf,
    SegmentOf,
)
from paperaudit.model.fact import Path

Surface: TypeAlias = AreaOf | CircleSize | SectorOf | SegmentOf
"""What is shaded where its area is asked for."""
Outline: TypeAlias = PerimeterOf | CircleSize | SectorOf | SegmentOf
"""What is drawn in heavy lines where its perimeter is asked for."""

Item = TypeVar("Item", bound=Hashable)


@dataclass(frozen=True, slots=True)
class AngleMark:
    """An angle with an arc (or a square): its label, how many strokes cross the arc, its number in the figure."""

    angle: AngleOf
    label: str = ""
    strokes: int = 0
    is_right: bool = False
    is_asked: bool = False
    number: int = 0


@dataclass(frozen=True, slots=True)
class SideMark:
    """A segment with its length beside it, and ticks for the class of its equals."""

    side: LengthOf
    label: str = ""
    ticks: int = 0
    is_asked: bool = False


@dataclass(frozen=True, slots=True)
class ParallelMark:
    """A line with `arrows` arrow heads, the same number for all that are parallel to it."""

    path: Path
    arrows: int


@dataclass(frozen=True, slots=True)
class ArcMark:
    """An arc with its degrees or its length beside it, and strokes across it for the class of its equals.

    `is_further` says that another mark shows where the arc begins and ends.
    """

    arc: ArcOf
    label: str = ""
    strokes: int = 0
    is_asked: bool = False
    is_further: bool = False


@dataclass(frozen=True, slots=True)
class RadiusMark:
    """The radius or the diameter of a circle, by its centre, where no drawn line shows it."""

    kind: Literal["radius", "diameter"]
    centre: str
    label: str
    is_asked: bool = False


@dataclass(frozen=True, slots=True)
class HeightMark:
    """The distance from a point to a line."""

    point: str
    path: Path
    label: str
    is_asked: bool = False


@dataclass(frozen=True, slots=True)
class BearingMark:
    """The bearing of one point from another, clockwise from a north arrow."""

    start: str
    end: str
    label: str
    is_asked: bool = False


@dataclass(frozen=True, slots=True)
class Marks:
    """Everything that a figure shows beside its lines and letters.

    `squares` are pairs of lines at right angles that share no letter; `shaded` and `heavy` what has
    its area or its perimeter asked for, `holes` what is taken away from such an area.
    """

    angles: tuple[AngleMark, ...] = ()
    sides: tuple[SideMark, ...] = ()
    parallels: tuple[ParallelMark, ...] = ()
    squares: tuple[tuple[Path, Path], ...] = ()
    arcs: tuple[ArcMark, ...] = ()
    radii: tuple[RadiusMark, ...] = ()
    heights: tuple[HeightMark, ...] = ()
    bearings: tuple[BearingMark, ...] = ()
    shaded: tuple[Surface, ...] = ()
    holes: tuple[Surface, ...] = ()
    heavy: tuple[Outline, ...] = ()


def classed(pairs: Sequence[tuple[Item, Item]]) -> dict[Item, int]:
    """Each item with the number, from 1, of the class of equals that it belongs to, in order of mention.

    >>> classed([("AB", "AC"), ("PQ", "PR"), ("AC", "AD")])
    {'AB': 1, 'AC': 1, 'PQ': 2, 'PR': 2, 'AD': 1}
    """
    leader: dict[Item, Item] = {}

    def lead(item: Item) -> Item:
        while leader.setdefault(item, item) != item:
            item = leader[item]
        return item

    for one, other in pairs:
        first, second = lead(one), lead(other)
        leader[second] = first
    numbers: dict[Item, int] = {}
    return {item: numbers.setdefault(lead(item), len(numbers) + 1) for item in leader}
