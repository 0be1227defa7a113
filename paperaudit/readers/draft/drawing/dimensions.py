"""Dimension lines: drawn beside a figure, with arrows, ticks or thin lines to the two points that they measure."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from paperaudit.readers.draft.drawing.lines import Line
from paperaudit.readers.draft.drawing.plane import off_line, share_of, slant
from paperaudit.readers.draft.drawing.small_marks import Head, SmallMarks, Tick
from paperaudit.readers.draft.drawing.spots import Skeleton, Spot
from paperaudit.readers.draft.page import Point

ALIGNED = 3.6
"""Points by which an end may miss the perpendicular through its point."""
UPRIGHT = 12.0
"""Degrees by which the lines to the points may miss a right angle."""
END = 3.5
"""Points between an end and the tick, the arrow or the thin line that is drawn there."""


@dataclass(frozen=True, slots=True)
class Dimension:
    """A dimension line from `start` to `end` for the distance of two points; `lines` are its strokes."""

    start: Point
    end: Point
    points: tuple[Spot, Spot]
    lines: frozenset[int]


def dimensions(skeleton: Skeleton, ticks: Sequence[Tick], heads: Sequence[Head]) -> list[Dimension]:
    """The dimension lines of a figure whose points have their letters."""
    named = [spot for spot in skeleton.spots if spot.name]
    found: list[Dimension] = []
    for number, line in enumerate(skeleton.lines):
        if any(number in spot.lines for spot in named):
            continue
        ends = [_witness(line, end, number, skeleton) for end in line.ends]
        marked = [
            witness is not None
            or any(math.dist(tick.at, end) <= END for tick in ticks)
            or any(head.line == number and math.dist(head.at, end) <= 2 * head.size for head in heads)
            for end, witness in zip(line.ends, ends, strict=True)
        ]
        points = [_point_across(line, end, named) for end in line.ends]
        if all(marked) and points[0] and points[1] and points[0] is not points[1]:
            strokes = frozenset({number, *(one for one in ends if one is not None)})
            found.append(Dimension(line.start, line.end, (points[0], points[1]), strokes))
    return found


def _witness(line: Line, end: Point, number: int, skeleton: Skeleton) -> int | None:
    """The thin line at an end of a dimension line, at right angles to it."""
    for other, candidate in enumerate(skeleton.lines):
        if other == number or slant(candidate.direction, line.direction) < 90 - UPRIGHT:
            continue
        share = share_of(end, *candidate.ends)
        on_it = abs(off_line(end, *candidate.ends)) <= END and -0.05 <= share <= 1.05
        if on_it and not any(other in spot.lines and spot.name for spot in skeleton.spots):
            return other
    return None


def _point_across(line: Line, end: Point, named: Sequence[Spot]) -> Spot | None:
    """The nearest named point on the perpendicular through an end."""
    near = [
        (abs(off_line(spot.at, *line.ends)), at)
        for at, spot in enumerate(named)
        if abs(share_of(spot.at, *line.ends) - share_of(end, *line.ends)) * line.length <= ALIGNED
    ]
    near = [one for one in near if one[0] <= max(40.0, 0.9 * line.length)]
    return named[min(near)[1]] if near else None


def without(found: Sequence[Dimension], marks: SmallMarks) -> SmallMarks:
    """The lines and marks of a figure without those of its dimension lines."""
    gone = frozenset().union(*(one.lines for one in found))
    kept = [number for number in range(len(marks.lines)) if number not in gone]
    ends = [end for one in found for end in (one.start, one.end)]
    return SmallMarks(
        [marks.lines[number] for number in kept],
        [tick for tick in marks.ticks if all(math.dist(tick.at, end) > END for end in ends)],
        marks.corners,
        [replace(head, line=kept.index(head.line)) for head in marks.heads if head.line in kept],
    )


def in_skeleton(dimension: Dimension, skeleton: Skeleton) -> Dimension | None:
    """The dimension with the spots of another skeleton, by their letters."""
    by_name = {spot.name: spot for spot in skeleton.spots if spot.name}
    start, end = (by_name.get(spot.name) for spot in dimension.points)
    return replace(dimension, points=(start, end)) if start and end else None
