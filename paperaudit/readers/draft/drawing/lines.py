"""Puts straight strokes together to lines as long as they run: drawn twice, in pieces, produced, dashed."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from paperaudit.readers.draft.drawing.plane import between, crossing, off_line, off_segment, share_of, slant, towards
from paperaudit.readers.draft.drawing.rounds import MARK_RADIUS, Bow
from paperaudit.readers.draft.drawing.strokes import Straight
from paperaudit.readers.draft.page import Point

ON_LINE = 1.5
"""Points that a stroke may lie off a line and still be part of it, half of that for short strokes."""
STEADY = 14.0
"""Points from which on a stroke's direction tells whether it is part of a line."""
BEND = 3.0
"""Degrees by which the strokes of one line differ at most."""
BENT = 0.011
"""So far off, as a share of the line, the joint of two strokes end to end lies at most."""
TOUCH = 2.5
"""Points between two strokes of one line that meet."""
DASH = 9.0
"""Points: the longest dash, and the longest gap between two."""
ALONG = 3.0
"""Points that the side of a wedge may lie off the arm of its angle."""
LAST_GAP = 5.0
"""Points by which a dashed line may end too early."""
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
        abs(off_line(point, first, far)) <= ON_LINE / 2 for one in (*row, stroke) for point in (one.start, one.end)
    )


def _as_dashed(row: list[Straight]) -> list[Straight]:
    if len(row) < LEAST_DASHES:
        return row
    points = [point for one in row for point in (one.start, one.end)]
    start = max(points, key=lambda point: math.dist(point, points[0]))
    end = max(points, key=lambda point: math.dist(point, start))
    return [Straight(start, end, row[0].width, row[0].path, True)]


def without_wedges(straights: Sequence[Straight], bows: Sequence[Bow]) -> list[Straight]:
    """The strokes without the sides of wedges that mark angles: these lie along the arms, more or less."""
    wedges = {bow.path: bow for bow in bows if bow.radius <= MARK_RADIUS and not bow.whole}
    own = [one for one in straights if one.path in wedges]
    return [one for one in straights if one not in own or not _is_on_arm(one, wedges[one.path], straights)]


def _is_on_arm(side: Straight, wedge: Bow, straights: Sequence[Straight]) -> bool:
    if abs(side.length - wedge.radius) > 0.2 * wedge.radius + 1:
        return False
    return any(
        arm.path != side.path
        and arm.length > side.length
        and all(off_segment(end, arm.start, arm.end) <= ALONG for end in (side.start, side.end))
        for arm in straights
    )


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
            return [_reaching(line, merged) if line.dashed else line for line in merged]
        lines = merged


def _reaching(line: Line, lines: Sequence[Line]) -> Line:
    """A dashed line drawn on to the lines before which its last gap makes it end."""
    start, end = line.ends
    gap = LAST_GAP / line.length
    for other in lines:
        met = crossing(line.ends, other.ends)
        if other is line or met is None or not -0.01 <= met[2] <= 1.01:
            continue
        if -gap <= met[1] < 0:
            start = met[0]
        elif 1 < met[1] <= 1 + gap:
            end = met[0]
    return replace(line, start=start, end=end)


def _one_line(longer: Line, shorter: Line) -> bool:
    """Whether two strokes lie on one line and touch or overlap."""
    if slant(longer.direction, shorter.direction) > (BEND if shorter.length > STEADY else 20):
        return False
    slack = ON_LINE if shorter.length > STEADY else ON_LINE / 2
    near, far = sorted(shorter.ends, key=lambda point: abs(off_line(point, longer.start, longer.end)))
    if abs(off_line(near, longer.start, longer.end)) > slack:
        return False
    first, last = sorted(share_of(point, longer.start, longer.end) for point in shorter.ends)
    touch = TOUCH / longer.length
    if not (first <= 1 + touch and last >= -touch):
        return False
    if first >= 1 - touch or last <= touch:
        # End to end: the joint may lie a little off the line from the one far end to the other.
        start = longer.end if last <= touch else longer.start
        far = max(shorter.ends, key=lambda point: math.dist(point, start))
        joint = longer.start if last <= touch else longer.end
        return abs(off_line(joint, start, far)) <= min(slack, BENT * math.dist(start, far))
    return abs(off_line(far, longer.start, longer.end)) <= slack


def _union(longer: Line, shorter: Line) -> Line:
    shares = [(share_of(point, longer.start, longer.end), point) for point in shorter.ends]
    low, high = min(shares), max(shares)
    start = low[1] if low[0] < 0 else longer.start
    end = high[1] if high[0] > 1 else longer.end
    return Line(
        start, end, max(longer.width, shorter.width), longer.dashed and shorter.dashed, longer.paths | shorter.paths
    )
