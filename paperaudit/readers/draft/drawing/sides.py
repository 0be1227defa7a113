"""The marked sides of a figure: ticks that tell equal ones, arrows that tell parallel ones."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import combinations

from paperaudit.readers.draft.drawing.plane import apart, off_segment, share_of, slant
from paperaudit.readers.draft.drawing.small_marks import Head, Tick
from paperaudit.readers.draft.drawing.spots import Skeleton, Spot
from paperaudit.readers.draft.page import Point

BESIDE = 0.85
"""Sizes of print between the strokes of a double tick, and between the heads of a double arrow, at most."""
OFF_MIDDLE = 0.22
"""A tick stands off the middle of its side by this share of it, at most."""
MOST_SPOTS = 14
"""On a line with more spots than this only those with a letter count."""
IN_MIDDLE = 0.06
"""A tick that is so near the middle of a longer side and not near that of a part of it belongs to the longer one."""


@dataclass(frozen=True, slots=True)
class Span:
    """A stretch of a line between two of its spots."""

    line: int
    start: Spot
    end: Spot

    @property
    def length(self) -> float:
        """As drawn, in points."""
        return math.dist(self.start.at, self.end.at)

    @property
    def middle(self) -> Point:
        """Its middle."""
        return (self.start.at[0] + self.end.at[0]) / 2, (self.start.at[1] + self.end.at[1]) / 2

    def share(self, point: Point) -> float:
        """Where the foot of a point lies on it, 0 at its start, 1 at its end."""
        return share_of(point, self.start.at, self.end.at)


@dataclass
class EqualMark:
    """So many ticks across a span."""

    span: Span
    count: int
    at: Point


@dataclass
class ParallelMark:
    """So many arrows on a line, pointing one way."""

    line: int
    direction: float
    count: int
    at: Point


@dataclass
class SideMarks:
    """The marks on sides; `arrowed` are the lines with a head at an end; in words what could not be told."""

    equal: list[EqualMark] = field(default_factory=list)
    parallel: list[ParallelMark] = field(default_factory=list)
    arrowed: frozenset[int] = frozenset()
    doubts: list[str] = field(default_factory=list)


def spans_of(skeleton: Skeleton, line: int) -> Iterator[Span]:
    """All stretches of a line between two of its spots, those between neighbours first."""
    spots = skeleton.on_line(line)
    if len(spots) > MOST_SPOTS:
        spots = [spot for spot in spots if spot.name][:MOST_SPOTS]
    pairs = sorted(combinations(range(len(spots)), 2), key=lambda pair: pair[1] - pair[0])
    for first, second in pairs:
        yield Span(line, spots[first], spots[second])


def neighbours(skeleton: Skeleton, span: Span) -> bool:
    """Whether no spot lies between the ends of a span."""
    spots = skeleton.on_line(span.line)
    return abs(spots.index(span.start) - spots.index(span.end)) == 1


def side_marks(skeleton: Skeleton, ticks: Sequence[Tick], heads: Sequence[Head], print_size: float) -> SideMarks:
    """The ticks and arrows on the lines of a figure, those beside each other counted together."""
    found = SideMarks(arrowed=frozenset(head.line for head in heads if head.at_end))
    if any(_is_on_circle(tick, skeleton) for tick in ticks):
        found.doubts.append("short strokes across a circle are not read; they may mean equal arcs")
    for line, group in _groups(skeleton, ticks, print_size):
        at = _mean([tick.at for tick in group])
        span = _ticked(skeleton, line, at)
        if span is None:
            found.doubts.append("a short stroke across a line stands at the middle of no side")
        else:
            found.equal.append(EqualMark(span, len(group), at))
    found.parallel += _parallels([head for head in heads if not head.at_end], print_size)
    return found


def _groups(skeleton: Skeleton, ticks: Sequence[Tick], print_size: float) -> Iterator[tuple[int, list[Tick]]]:
    on_lines: dict[int, list[Tick]] = {}
    for tick in ticks:
        near = [
            (off_segment(tick.at, *line.ends), -slant(line.direction, tick.direction), number)
            for number, line in enumerate(skeleton.lines)
            if off_segment(tick.at, *line.ends) <= 0.3 * tick.length + 0.5
            and slant(line.direction, tick.direction) > 25
        ]
        if near:
            on_lines.setdefault(min(near)[2], []).append(tick)
    for number, own in on_lines.items():
        line = skeleton.lines[number]
        own.sort(key=lambda tick: share_of(tick.at, *line.ends))
        group: list[Tick] = []
        for tick in own:
            if group and math.dist(tick.at, group[-1].at) > BESIDE * print_size:
                yield number, group
                group = []
            if not group or math.dist(tick.at, group[-1].at) > 0.4:
                group.append(tick)
        yield number, group


def _is_on_circle(tick: Tick, skeleton: Skeleton) -> bool:
    on_line = any(off_segment(tick.at, *line.ends) <= 0.3 * tick.length + 0.5 for line in skeleton.lines)
    near = [abs(math.dist(tick.at, circle.centre) - circle.radius) <= 0.4 * tick.length for circle in skeleton.circles]
    return any(near) and not on_line


def _ticked(skeleton: Skeleton, line: int, at: Point) -> Span | None:
    """The span across whose middle a tick stands: one between neighbours unless it is clearly a longer one's."""
    best: tuple[float, Span] | None = None
    for span in spans_of(skeleton, line):
        share = span.share(at)
        if not 0 < share < 1:
            continue
        off = abs(share - 0.5)
        cost = off if neighbours(skeleton, span) else off + OFF_MIDDLE - IN_MIDDLE
        cost += 0.1 * sum(not end.name and line not in end.ends for end in (span.start, span.end))
        if off <= OFF_MIDDLE and (best is None or cost < best[0] - 1e-9):
            best = cost, span
    return best[1] if best else None


def _parallels(heads: Sequence[Head], print_size: float) -> list[ParallelMark]:
    marks: list[ParallelMark] = []
    for line in sorted({head.line for head in heads}):
        own = [head for head in heads if head.line == line]
        groups: list[list[Head]] = []
        for head in own:
            for group in groups:
                reach = max(BESIDE * print_size, 1.6 * head.size)
                if any(
                    math.dist(head.at, one.at) <= reach and apart(head.direction, one.direction) < 90 for one in group
                ):
                    if all(math.dist(head.at, one.at) > 0.8 for one in group):
                        group.append(head)
                    break
            else:
                groups.append([head])
        for group in groups:
            marks.append(ParallelMark(line, group[0].direction, len(group), _mean([head.at for head in group])))
    return marks


def _mean(points: Sequence[Point]) -> Point:
    return sum(x for x, _ in points) / len(points), sum(y for _, y in points) / len(points)
