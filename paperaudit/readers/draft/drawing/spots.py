"""The points of a figure: ends and crossings of lines, contacts and crossings with circles, dots, centres."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from paperaudit.readers.draft.drawing.lines import Line
from paperaudit.readers.draft.drawing.plane import (
    between,
    crossing,
    off_line,
    off_segment,
    share_of,
    slant,
    towards,
)
from paperaudit.readers.draft.drawing.rounds import Bow
from paperaudit.readers.draft.drawing.strokes import Dot
from paperaudit.readers.draft.page import Point

MEET = 3.0
"""Points that the ends of strokes may miss each other by and still meet, as where they are placed by hand."""
PASSING = 2.0
"""Points that a line may miss a spot by and still pass through it."""
AGAIN = 9.0
"""Two lines that meet at a spot do not cross once more within so many points."""
ON_CIRCLE = 1.8
"""Points that a spot may lie off a circle and still be on it."""
FLATTEST = 3.0
"""Degrees between two lines that cross somewhere, at least."""
TOUCHING, TOUCHING_POINTS = 0.012, 0.7
"""A line touches a circle where its distance from the centre differs from the radius by this share and so many points
at most."""


@dataclass
class Spot:
    """A place where something meets; `ends` are the lines that end there, `lines` and `circles` all that pass.

    `faint` is a place that counts only if a letter names it: a centre without a dot, say.
    """

    at: Point
    lines: list[int] = field(default_factory=list)
    ends: set[int] = field(default_factory=set)
    circles: list[int] = field(default_factory=list)
    contacts: set[int] = field(default_factory=set)
    centre_of: list[int] = field(default_factory=list)
    dot: bool = False
    faint: bool = False
    name: str = ""
    north: bool = False
    """Whether it is the tip of an arrow to the north."""
    given_here: bool = False
    """Whether its name is ours: the drawing has none."""


@dataclass(frozen=True, slots=True)
class Ray:
    """What leaves a spot in one direction: a line, and how far it goes."""

    line: int
    direction: float
    reach: float


@dataclass
class Skeleton:
    """Lines, circles and the spots where they meet."""

    lines: list[Line]
    circles: list[Bow]
    spots: list[Spot]

    def rays(self, spot: Spot) -> list[Ray]:
        """What leaves a spot, in order of direction."""
        rays = []
        for number in spot.lines:
            for end in self.lines[number].ends:
                reach = math.dist(spot.at, end)
                if reach > 2 * MEET:
                    rays.append(Ray(number, towards(spot.at, end), reach))
        return sorted(rays, key=lambda ray: ray.direction)

    def on_line(self, number: int) -> list[Spot]:
        """The spots of a line from its start to its end."""
        line = self.lines[number]
        passed = [spot for spot in self.spots if number in spot.lines]
        return sorted(passed, key=lambda spot: share_of(spot.at, line.start, line.end))

    def along(self, spot: Spot, ray: Ray) -> list[Spot]:
        """The spots on a ray from a spot outwards."""
        passed = [other for other in self.on_line(ray.line) if other is not spot]
        passed = [other for other in passed if abs((towards(spot.at, other.at) - ray.direction + 180) % 360 - 180) < 90]
        return sorted(passed, key=lambda other: math.dist(spot.at, other.at))


def skeleton_of(lines: Sequence[Line], circles: Sequence[Bow], dots: Sequence[Dot]) -> Skeleton:
    """All spots of a figure with what passes through them.

    Ends come first: where lines end near each other, or on a line, they do not cross a second time near by.
    """
    skeleton = Skeleton(list(lines), list(circles), [])
    spots = skeleton.spots
    for at in _ends(lines, circles):
        _spot_at(spots, at)
    for spot in spots:
        _lines_through(spot, skeleton)
    for at, first, second in _crossings(lines):
        if not any(math.dist(spot.at, at) <= AGAIN and {first, second} <= set(spot.lines) for spot in spots):
            _lines_through(_spot_at(spots, at), skeleton)
    for line in lines:
        for circle in circles:
            for at in meetings(line, circle):
                _spot_at(spots, at)
    for dot in dots:
        _spot_at(spots, dot.centre, max(MEET, 0.8 * dot.radius)).dot = True
    for circle in circles:
        if all(math.dist(spot.at, circle.centre) > max(MEET, 0.02 * circle.radius) for spot in spots):
            spots.append(Spot(circle.centre, faint=True))
    for spot in spots:
        _lines_through(spot, skeleton)
        _circles_through(spot, skeleton)
    return skeleton


def _spot_at(spots: list[Spot], at: Point, slack: float = MEET) -> Spot:
    nearest = min(spots, key=lambda spot: math.dist(spot.at, at), default=None)
    if nearest is not None and math.dist(nearest.at, at) <= slack:
        return nearest
    spots.append(Spot(at))
    return spots[-1]


def _ends(lines: Sequence[Line], circles: Sequence[Bow]) -> Iterator[Point]:
    """Ends, moved to the corner where several lines end near each other."""
    ends = [(end, number) for number, line in enumerate(lines) for end in line.ends]
    for end, number in ends:
        near = [other for other, its in ends if its != number and math.dist(other, end) <= MEET]
        across = (end[0] + sum(x for x, _ in near)) / (len(near) + 1)
        down = (end[1] + sum(y for _, y in near)) / (len(near) + 1)
        yield across, down
    for circle in circles:
        if not circle.whole:
            yield from circle.ends


def _crossings(lines: Sequence[Line]) -> Iterator[tuple[Point, int, int]]:
    for number, line in enumerate(lines):
        for second, other in enumerate(lines[number + 1 :], number + 1):
            if slant(line.direction, other.direction) < FLATTEST:
                continue
            found = crossing(line.ends, other.ends)
            if found and _on(found[1], line) and _on(found[2], other):
                yield found[0], number, second


def _on(share: float, line: Line) -> bool:
    slack = MEET / max(line.length, MEET)
    return -slack <= share <= 1 + slack


def meetings(line: Line, circle: Bow) -> Iterator[Point]:
    """Where a line meets a circle: at one point if it touches it within tolerance."""
    share = share_of(circle.centre, line.start, line.end)
    foot = between(line.start, line.end, share)
    away = math.dist(foot, circle.centre)
    if touches(line, circle):
        if _on(share, line):
            yield foot
        return
    if away >= circle.radius or line.length == 0:
        return
    half = math.sqrt(circle.radius**2 - away**2) / line.length
    for at in (share - half, share + half):
        if _on(at, line):
            point = between(line.start, line.end, at)
            if circle.whole or _on_arc(point, circle):
                yield point


def _on_arc(point: Point, arc: Bow) -> bool:
    slack = math.degrees(MEET / arc.radius)
    return (towards(arc.centre, point) - arc.start + slack) % 360 <= arc.sweep + 2 * slack


def touches(line: Line, circle: Bow) -> bool:
    """Whether a line touches a circle, within tolerance."""
    away = abs(off_line(circle.centre, line.start, line.end))
    return abs(away - circle.radius) <= TOUCHING * circle.radius + TOUCHING_POINTS


def _lines_through(spot: Spot, skeleton: Skeleton) -> None:
    spot.lines.clear()
    spot.ends.clear()
    for number, line in enumerate(skeleton.lines):
        if off_segment(spot.at, line.start, line.end) <= PASSING:
            spot.lines.append(number)
            if min(math.dist(spot.at, end) for end in line.ends) <= MEET:
                spot.ends.add(number)
        elif min(math.dist(spot.at, end) for end in line.ends) <= MEET:
            spot.lines.append(number)
            spot.ends.add(number)


def _circles_through(spot: Spot, skeleton: Skeleton) -> None:
    for number, circle in enumerate(skeleton.circles):
        if _is_on(spot, circle, skeleton):
            spot.circles.append(number)
            spot.contacts |= {line for line in spot.lines if touches(skeleton.lines[line], circle)}
        if math.dist(spot.at, circle.centre) <= max(MEET, 0.02 * circle.radius):
            spot.centre_of.append(number)


def _is_on(spot: Spot, circle: Bow, skeleton: Skeleton) -> bool:
    """Whether a spot lies on a circle; on a line that touches it, only by the point where it does."""
    off = abs(math.dist(spot.at, circle.centre) - circle.radius)
    if off > ON_CIRCLE + 0.004 * circle.radius or not (circle.whole or _on_arc(spot.at, circle)):
        return False
    for number in spot.lines:
        line = skeleton.lines[number]
        if touches(line, circle):
            foot = between(line.start, line.end, share_of(circle.centre, *line.ends))
            if math.dist(spot.at, foot) > MEET and (off > 0.3 or len(spot.lines) == 1):
                return False
    return True
