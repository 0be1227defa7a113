"""What a figure on paper is made of, with page coordinates: y runs down, a unit is about a point of print."""

import math
from dataclasses import dataclass
from typing import Literal, TypeAlias

from paperaudit.geometry.figure.plane import Spot, along

Box: TypeAlias = tuple[float, float, float, float]
"""Left, top, right, bottom."""

StrokeKind: TypeAlias = Literal["line", "triangle side", "produced side", "heavy", "mark", "thin", "dashed"]
LabelKind: TypeAlias = Literal["letter", "size", "asked", "number", "north", "caption"]


@dataclass(frozen=True, slots=True)
class Stroke:
    """A chain of straight pieces: a drawn line, a tick, an arrow head, the square of a right angle."""

    spots: tuple[Spot, ...]
    kind: StrokeKind = "line"


@dataclass(frozen=True, slots=True)
class Arc:
    """A part of a circle: `turn` degrees from the bearing `start`, both clockwise as y runs down."""

    centre: Spot
    radius: float
    start: float
    turn: float
    kind: StrokeKind = "mark"

    def spot(self, share: float) -> Spot:
        """The point at a share of the way along the arc."""
        return polar(self.centre, self.start + share * self.turn, self.radius)

    @property
    def is_large(self) -> bool:
        """Whether the arc is longer than a half turn."""
        return abs(self.turn) > 180


@dataclass(frozen=True, slots=True)
class Circle:
    """The whole outline of a circle."""

    centre: Spot
    radius: float

    @property
    def box(self) -> Box:
        """The square round it."""
        (x, y), reach = self.centre, self.radius
        return x - reach, y - reach, x + reach, y + reach

    def off(self, spot: Spot) -> float:
        """How far a spot is from the outline, inside it or outside."""
        return abs(math.dist(spot, self.centre) - self.radius)


@dataclass(frozen=True, slots=True)
class Leg:
    """One side of a region, straight to `end`, or along an arc there: `turn` degrees, clockwise as y runs down."""

    end: Spot
    radius: float = 0.0
    turn: float = 0.0

    @property
    def is_large(self) -> bool:
        """Whether an arc is longer than a half turn."""
        return abs(self.turn) > 180


@dataclass(frozen=True, slots=True)
class Region:
    """A part of the page that is shaded lightly, or white again, bounded by legs one after another from `start`."""

    start: Spot
    legs: tuple[Leg, ...]
    is_hole: bool = False

    def outline(self) -> list[Spot]:
        """Spots all along the boundary."""
        found, here = [self.start], self.start
        for leg in self.legs:
            found += _followed(here, leg)
            here = leg.end
        return found


def _followed(start: Spot, leg: Leg) -> list[Spot]:
    """Spots along a leg, its end included; an arc of half a turn at most."""
    if not leg.radius:
        return [leg.end]
    half = math.radians(leg.turn) / 2
    middle, reach = along(start, leg.end, 0.5), math.dist(start, leg.end) or 1.0
    off = leg.radius * math.cos(half) * math.copysign(1.0, leg.turn)
    u, v = (leg.end[0] - start[0]) / reach, (leg.end[1] - start[1]) / reach
    centre = (middle[0] - off * v, middle[1] + off * u)
    first = bearing(centre, start)
    return [polar(centre, first + leg.turn * step / 12, leg.radius) for step in range(1, 13)]


@dataclass(frozen=True, slots=True)
class Label:
    """A text centred on a spot, with the box that its ink needs; `baseline` is the height on which it stands."""

    text: str
    centre: Spot
    box: Box
    kind: LabelKind
    baseline: float


@dataclass(frozen=True, slots=True)
class Layout:
    """A whole figure. `frame` is what a page shows of it; `note` is a remark under it, or ""."""

    frame: Box
    strokes: tuple[Stroke, ...]
    arcs: tuple[Arc, ...]
    dots: tuple[Spot, ...]
    labels: tuple[Label, ...]
    note: str = ""
    circles: tuple[Circle, ...] = ()
    regions: tuple[Region, ...] = ()


def polar(centre: Spot, bearing: float, reach: float) -> Spot:
    """The point at a distance from `centre`, in the direction `bearing` (degrees).

    >>> polar((1.0, 1.0), 0.0, 2.0)
    (3.0, 1.0)
    """
    turned = math.radians(bearing)
    return centre[0] + reach * math.cos(turned), centre[1] + reach * math.sin(turned)


def bearing(start: Spot, end: Spot) -> float:
    """The direction from one point to another in degrees, −180 to 180.

    >>> bearing((0.0, 0.0), (0.0, 2.0))
    90.0
    """
    return math.degrees(math.atan2(end[1] - start[1], end[0] - start[0]))


def distance(point: Spot, start: Spot, end: Spot) -> float:
    """The distance of a point from a segment.

    >>> distance((3.0, 4.0), (-1.0, 0.0), (0.0, 0.0))
    5.0
    """
    square = math.dist(start, end) ** 2
    across = (point[0] - start[0]) * (end[0] - start[0]) + (point[1] - start[1]) * (end[1] - start[1])
    share = min(1.0, max(0.0, across / square)) if square else 0.0
    return math.dist(point, along(start, end, share))
