"""The marked angles of a figure: arcs, wedges and square corners with the rays that they stand between."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, field

from paperaudit.readers.draft.drawing.plane import apart, polar, towards, within
from paperaudit.readers.draft.drawing.rounds import Bow
from paperaudit.readers.draft.drawing.small_marks import Corner, Tick
from paperaudit.readers.draft.drawing.spots import Ray, Skeleton, Spot
from paperaudit.readers.draft.page import Point

WIDEST = 75.0
"""Points: the largest radius of an arc that marks an angle."""
OFF_CENTRE = 0.3
"""An arc's centre lies off its vertex by this share of its radius at most, a bent one's by twice as much."""
UNEQUAL = 0.16
"""Its ends' distances from the vertex differ by this share at most."""
OFF_ARM, OFF_ARM_POINTS = 0.05, 1.3
"""Its ends lie off the arms by this share of its radius and so many points at most."""
SAME_ARC = 1.1
"""Points: arcs whose radii differ by less are one arc drawn twice."""


@dataclass
class AngleMark:
    """A marked angle, from `first` clockwise to `second` as the page is looked at.

    `radii` are those of its arcs, `strokes` counts the short strokes across them.
    """

    vertex: Spot
    first: Ray
    second: Ray
    radii: list[float]
    right: bool = False
    strokes: int = 0
    paths: list[int] = field(default_factory=list)

    @property
    def sweep(self) -> float:
        """The size of the angle as drawn, in degrees."""
        return (self.second.direction - self.first.direction) % 360

    @property
    def bisector(self) -> float:
        """The direction of the bisector."""
        return self.first.direction + self.sweep / 2

    @property
    def middle(self) -> Point:
        """The middle of its outer arc."""
        return polar(self.vertex.at, self.bisector, max(self.radii))


def angle_marks(
    skeleton: Skeleton, bows: Sequence[Bow], corners: Sequence[Corner], ticks: Sequence[Tick]
) -> tuple[list[AngleMark], list[Bow]]:
    """The angles that arcs and square corners mark, and the arcs that mark none."""
    marks: list[AngleMark] = []
    left: list[Bow] = []
    for bow in bows:
        mark = _mark(bow, skeleton)
        if mark is None:
            left.append(bow)
        else:
            _add(marks, mark)
    for corner in corners:
        mark = _square(corner, skeleton)
        if mark is not None:
            _add(marks, mark)
    for tick in ticks:
        _count_stroke(marks, tick)
    return marks, left


def _add(marks: list[AngleMark], new: AngleMark) -> None:
    for mark in marks:
        if mark.vertex is new.vertex and (mark.first, mark.second) == (new.first, new.second):
            mark.right = mark.right or new.right
            mark.paths += new.paths
            if not new.right and all(abs(new.radii[0] - radius) > SAME_ARC for radius in mark.radii):
                mark.radii += new.radii
            return
    marks.append(new)


def _mark(bow: Bow, skeleton: Skeleton) -> AngleMark | None:
    if bow.radius > WIDEST or bow.whole:
        return None
    best: tuple[float, Spot, Ray, Ray] | None = None
    for spot in skeleton.spots:
        away = math.dist(spot.at, bow.centre)
        if away > max(1.6, OFF_CENTRE * bow.radius * (1 if bow.exact else 2)):
            continue
        reaches = [math.dist(spot.at, end) for end in bow.ends]
        if abs(reaches[0] - reaches[1]) > UNEQUAL * max(reaches) + 0.8:
            continue
        arms = [_arm(spot, end, reach, skeleton) for end, reach in zip(bow.ends, reaches, strict=True)]
        if arms[0] is None or arms[1] is None or arms[0][1] == arms[1][1]:
            continue
        misfit = away + arms[0][0] + arms[1][0]
        if best is None or misfit < best[0]:
            best = misfit, spot, arms[0][1], arms[1][1]
    if best is None:
        return None
    _, spot, first, second = best
    return AngleMark(spot, first, second, [math.dist(spot.at, bow.middle)], paths=[bow.path])


def _arm(spot: Spot, end: Point, reach: float, skeleton: Skeleton) -> tuple[float, Ray] | None:
    """The ray from a spot on which an end of an arc lies, with how far it lies off."""
    way = towards(spot.at, end)
    found = []
    for ray in skeleton.rays(spot):
        turn = apart(ray.direction, way)
        off = reach * math.sin(math.radians(min(turn, 90)))
        if off <= OFF_ARM * reach + OFF_ARM_POINTS and turn < 20 and ray.reach > 0.75 * reach:
            found.append((off, ray))
    return min(found, key=lambda one: one[0], default=None)


def _square(corner: Corner, skeleton: Skeleton) -> AngleMark | None:
    spot = min(skeleton.spots, key=lambda one: math.dist(one.at, corner.vertex), default=None)
    if spot is None or math.dist(spot.at, corner.vertex) > 2.5:
        return None
    arms = [_arm(spot, foot, math.dist(spot.at, foot), skeleton) for foot in corner.feet]
    if arms[0] is None or arms[1] is None or arms[0][1] == arms[1][1]:
        return None
    first, second = arms[0][1], arms[1][1]
    if not within(towards(spot.at, corner.outer), first.direction, (second.direction - first.direction) % 360):
        first, second = second, first
    return AngleMark(spot, first, second, [math.dist(spot.at, corner.outer)], right=True)


def _count_stroke(marks: Sequence[AngleMark], tick: Tick) -> None:
    for mark in marks:
        away = math.dist(mark.vertex.at, tick.at)
        way = towards(mark.vertex.at, tick.at)
        if (
            not mark.right
            and min(abs(away - radius) for radius in mark.radii) <= 0.4 * tick.length + 0.6
            and within(way, mark.first.direction, mark.sweep, -2)
            and apart(way, tick.direction) % 180 < 90
        ):
            mark.strokes += 1
            return
