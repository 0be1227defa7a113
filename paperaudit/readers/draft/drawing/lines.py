"""Puts straight strokes together to lines as long as they run: drawn twice, in pieces, produced, dashed."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from paperaudit.readers.draft.drawing.plane import between, off_line, share_of, slant, towards
from paperaudit.readers.draft.drawing.strokes import Straight
from paperaudit.readers.draft.page import Point

ON_LINE = 0.75
"""Points that a stroke may lie off a line and still be part of it."""
TOUCH = 1.2
"""Points between two strokes of one line that meet."""
DASH = 9.0
"""Points: the longest dash, and the longest gap between two."""
LEAST_DASHES = 3


@dataclass(frozen=True, slots=True)
class Line:
    """A straight line as far as it is drawn."""

    start: Point
    end: Point
    width: float = 1.0
    dashed: bool = False
    paths: frozenset[int] = frozenset()

    @property
    def length(self) -> float:
        """From end to end, in points."""
        return math.dist(self.start, self.end)

    @property
    def direction(self) -> float:
        """From its start to its end, in degrees."""
        return towards(self.start, self.end)

    @property
    def ends(self) -> tuple[Point, Point]:
        """Where it begins and where it ends."""
        return self.start, self.end

    def at(self, share: float) -> Point:
        """The point at a share of its way."""
        return between(self.start, self.end, share)


def dashes_joined(straights: Sequence[Straight]) -> list[Straight]:
    """The strokes with rows of short ones, drawn one after the other at like distances, put together to dashed ones."""
    found: list[Straight] = []
    row: list[Straight] = []
    for stroke in straights:
        if row and not _next_dash(row, stroke):
            found += _as_dashed(row)
            row = []
        if stroke.length <= DASH and (row or stroke.length > 0):
            row.append(stroke)
        else:
            found.append(stroke)
    return found + _as_dashed(row)


def _next_dash(row: Sequence[Straight], stroke: Straight) -> bool:
    last = row[-1]
    if stroke.length > DASH:
        return False
    gap = min(math.dist(one, other) for one in (last.start, last.end) for other in (stroke.start, stroke.end))
    first, far = row[0].start, stroke.end if math.dist(row[0].start, stroke.end) > 1 else stroke.start
    return 0.3 < gap <= DASH and all(
        abs(off_line(point, first, far)) <= ON_LINE for one in (*row, stroke) for point in (one.start, one.end)
    )


def _as_dashed(row: list[Straight]) -> list[Straight]:
    if len(row) < LEAST_DASHES:
        return row
    points = [point for one in row for point in (one.start, one.end)]
    start = max(points, key=lambda point: math.dist(point, points[0]))
    end = max(points, key=lambda point: math.dist(point, start))
    return [Straight(start, end, row[0].width, row[0].path, True)]


def lines_of(straights: Iterable[Straight]) -> list[Line]:
    """The maximal lines that strokes make, longest first."""
    lines = [
        Line(one.start, one.end, one.width, one.dashed, frozenset({one.path})) for one in straights if one.length > 0.2
    ]
    while True:
        lines.sort(key=lambda line: -line.length)
        merged: list[Line] = []
        for line in lines:
            for at, other in enumerate(merged):
                if _one_line(other, line):
                    merged[at] = _union(other, line)
                    break
            else:
                merged.append(line)
        if len(merged) == len(lines):
            return merged
        lines = merged


def _one_line(longer: Line, shorter: Line) -> bool:
    """Whether two strokes lie on one line and touch or overlap."""
    if shorter.length > 3 and slant(longer.direction, shorter.direction) > 4:
        return False
    if any(abs(off_line(point, longer.start, longer.end)) > ON_LINE for point in shorter.ends):
        return False
    if shorter.length > 0.5 * ON_LINE and slant(longer.direction, shorter.direction) > 20:
        return False
    first, last = sorted(share_of(point, longer.start, longer.end) for point in shorter.ends)
    slack = TOUCH / longer.length
    return first <= 1 + slack and last >= -slack


def _union(longer: Line, shorter: Line) -> Line:
    shares = [(share_of(point, longer.start, longer.end), point) for point in shorter.ends]
    low, high = min(shares), max(shares)
    start = low[1] if low[0] < 0 else longer.start
    end = high[1] if high[0] > 1 else longer.end
    return Line(
        start, end, max(longer.width, shorter.width), longer.dashed and shorter.dashed, longer.paths | shorter.paths
    )
