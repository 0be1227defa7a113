"""Tells the small strokes of a figure from its sides: ticks, square corners, heads of arrows."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from itertools import combinations

from paperaudit.readers.draft.drawing.lines import Line
from paperaudit.readers.draft.drawing.plane import apart, crossing, off_line, off_segment, share_of, slant, towards
from paperaudit.readers.draft.drawing.rounds import Bow
from paperaudit.readers.draft.drawing.strokes import Shape
from paperaudit.readers.draft.page import Point

SHORT = 1.9
"""Sizes of print: a mark's stroke is no longer."""
SHORT_SHARE = 0.36
"""Nor longer than this share of the longest line of its figure."""
MET = 1.3
"""Points by which the strokes of a mark may miss what they stand on."""
ACROSS = 32.0
"""Degrees at which a tick crosses its side, at least."""
MIDDLE = 0.27
"""A tick is crossed so far from its nearer end, at least, as a share of its length."""
LIKE = 0.3
"""Two strokes of one mark differ in length by this share at most."""


@dataclass(frozen=True, slots=True)
class Tick:
    """A short stroke across something, by its middle."""

    at: Point
    path: int
    direction: float
    length: float


@dataclass(frozen=True, slots=True)
class Corner:
    """A square corner: its feet on both arms, its outer corner, and the vertex that it marks."""

    vertex: Point
    feet: tuple[Point, Point]
    outer: Point


@dataclass(frozen=True, slots=True)
class Head:
    """The head of an arrow on a line: where it is, which way it points, how long it is."""

    at: Point
    direction: float
    size: float
    line: int
    at_end: bool


@dataclass
class SmallMarks:
    """The lines that are no marks, and the marks."""

    lines: list[Line] = field(default_factory=list)
    ticks: list[Tick] = field(default_factory=list)
    corners: list[Corner] = field(default_factory=list)
    heads: list[Head] = field(default_factory=list)


def small_marks(lines: Sequence[Line], bows: Sequence[Bow], shapes: Iterable[Shape], print_size: float) -> SmallMarks:
    """Sorts the lines of a figure into sides and the strokes of marks; `print_size` is that of its letters."""
    longest = max((line.length for line in lines), default=0.0)
    limit = min(SHORT * print_size, SHORT_SHARE * longest)
    shorts = [line for line in lines if line.length <= limit]
    found = SmallMarks([line for line in lines if line.length > limit])
    shorts = _corners(found, shorts)
    bends, shorts = _bends(found.lines, shorts, [end for bow in bows for end in bow.ends])
    shorts = _ticks(found, shorts, bows)
    found.lines += shorts
    for corners in [shape.corners for shape in shapes] + bends:
        head = _head(corners, found.lines)
        if head is not None:
            found.heads.append(head)
    return found


def _meeting(one: Line, other: Line) -> tuple[Point, Point, Point] | None:
    """The free end of one line, the end that it shares with another, and that one's free end."""
    for a, b in (one.ends, one.ends[::-1]):
        for c, d in (other.ends, other.ends[::-1]):
            if math.dist(b, c) <= MET:
                return a, ((b[0] + c[0]) / 2, (b[1] + c[1]) / 2), d
    return None


def _corners(found: SmallMarks, shorts: list[Line]) -> list[Line]:
    used: set[int] = set()
    pairs = combinations(range(len(shorts)), 2)
    for first, second in pairs:
        if first in used or second in used:
            continue
        met = _meeting(shorts[first], shorts[second])
        if met is None or not _alike(shorts[first], shorts[second]):
            continue
        arms = found.lines + [line for at, line in enumerate(shorts) if at not in (first, second)]
        corner = _corner(met, arms)
        if corner is not None:
            found.corners.append(corner)
            used |= {first, second}
    return [line for at, line in enumerate(shorts) if at not in used]


def _alike(one: Line, other: Line) -> bool:
    return abs(one.length - other.length) <= LIKE * max(one.length, other.length) + 0.5


def _corner(met: tuple[Point, Point, Point], arms: Sequence[Line]) -> Corner | None:
    """The square corner whose feet and outer corner are given, if its feet stand on two lines that meet there."""
    first, outer, second = met
    vertex = first[0] + second[0] - outer[0], first[1] + second[1] - outer[1]
    if not 55 <= slant(towards(outer, first), towards(outer, second)) <= 90:
        return None
    reach = math.dist(first, outer) + math.dist(second, outer)
    slack = MET + 0.12 * reach / 2
    best = None
    for one in arms:
        if off_segment(first, *one.ends) > MET or off_segment(vertex, *one.ends) > slack:
            continue
        for other in arms:
            if other is one or off_segment(second, *other.ends) > MET or off_segment(vertex, *other.ends) > slack:
                continue
            met_at = crossing(one.ends, other.ends)
            if met_at is None or slant(one.direction, other.direction) < 50:
                continue
            off = math.dist(met_at[0], vertex)
            if off <= 2 * slack and (best is None or off < best[0]):
                best = off, met_at[0]
    return Corner(best[1], (first, second), outer) if best else None


def _bends(
    longs: Sequence[Line], shorts: list[Line], tips: Sequence[Point]
) -> tuple[list[tuple[Point, ...]], list[Line]]:
    """Heads of arrows drawn as two strokes that meet on a line, from both sides of it, or at the end of an arc."""
    bends: list[tuple[Point, ...]] = []
    used: set[int] = set()
    for first, second in combinations(range(len(shorts)), 2):
        if first in used or second in used or not _alike(shorts[first], shorts[second]):
            continue
        met = _meeting(shorts[first], shorts[second])
        if met is None:
            continue
        if any(_bends_on(met, line) for line in longs):
            bends.append(met)
            used |= {first, second}
        elif any(math.dist(met[1], tip) <= 2 * MET for tip in tips):
            used |= {first, second}
    return bends, [line for at, line in enumerate(shorts) if at not in used]


def _bends_on(met: tuple[Point, Point, Point], line: Line) -> bool:
    one, tip, other = met
    if off_segment(tip, *line.ends) > MET + 0.4:
        return False
    ways = [apart(towards(tip, end), line.direction) for end in (one, other)]
    sides = [off_line(end, *line.ends) for end in (one, other)]
    return sides[0] * sides[1] < 0 and abs(ways[0] - ways[1]) < 15 and (10 < ways[0] < 78 or 102 < ways[0] < 170)


def _ticks(found: SmallMarks, shorts: list[Line], bows: Sequence[Bow]) -> list[Line]:
    left: list[Line] = []
    for short in shorts:
        hosts = found.lines + [line for line in shorts if line.length > 2.2 * short.length]
        across = any(_is_across(short, host) for host in hosts) or any(_is_across_bow(short, bow) for bow in bows)
        others = [line for line in [*found.lines, *shorts] if line is not short]
        if across and not any(_holds(short, line) for line in others):
            found.ticks.append(Tick(short.at(0.5), min(short.paths), short.direction, short.length))
        else:
            left.append(short)
    return left


def _is_across(short: Line, host: Line) -> bool:
    if host.length < 1.6 * short.length or slant(short.direction, host.direction) < ACROSS:
        return False
    met = crossing(host.ends, short.ends)
    return met is not None and 0.02 < met[1] < 0.98 and MIDDLE <= met[2] <= 1 - MIDDLE


def _is_across_bow(short: Line, bow: Bow) -> bool:
    away = [math.dist(end, bow.centre) - bow.radius for end in short.ends]
    if away[0] * away[1] >= 0 or min(map(abs, away)) < 0.2 * short.length:
        return False
    way = towards(bow.centre, short.at(0.5))
    return slant(way, short.direction) < 90 - ACROSS and 0 < (way - bow.start) % 360 < bow.sweep


def _holds(short: Line, line: Line) -> bool:
    """Whether an end of the short stroke lies on the line, which then is no tick's."""
    return any(off_segment(end, *line.ends) <= min(0.6, 0.12 * short.length) for end in short.ends)


def _head(corners: Sequence[Point], lines: Sequence[Line]) -> Head | None:
    """The head of an arrow that a small shape is, with the line that it lies on."""
    across, down = zip(*corners, strict=True)
    middle = sum(across) / len(across), sum(down) / len(down)
    size = max(max(across) - min(across), max(down) - min(down))
    best: tuple[float, int] | None = None
    for number, line in enumerate(lines):
        if line.length < 1.5 * size:
            continue
        share = share_of(middle, *line.ends)
        beyond = max(0.0, -share, share - 1) * line.length
        off = abs(off_line(middle, *line.ends))
        if off <= 0.25 * size + 0.5 and beyond <= size and (best is None or off + beyond < best[0]):
            best = off + beyond, number
    if best is None:
        return None
    line = lines[best[1]]
    direction = _pointing(corners, line.direction)
    if direction is None:
        return None
    ahead = line.end if apart(direction, line.direction) < 90 else line.start
    return Head(middle, direction, size, best[1], math.dist(middle, ahead) <= 1.3 * size)


def _pointing(corners: Sequence[Point], along: float) -> float | None:
    """The direction in which a shape tapers, along a line or against it; None where both ends are alike."""
    turned = math.radians(along)
    ahead = [
        (x * math.cos(turned) + y * math.sin(turned), y * math.cos(turned) - x * math.sin(turned)) for x, y in corners
    ]
    low, high = min(a for a, _ in ahead), max(a for a, _ in ahead)
    reach = 0.3 * (high - low)
    spreads = []
    for near in ([s for a, s in ahead if a - low <= reach], [s for a, s in ahead if high - a <= reach]):
        spreads.append(max(near) - min(near))
    if abs(spreads[0] - spreads[1]) < 0.25 * max(spreads) or not reach:
        return None
    return along if spreads[1] < spreads[0] else (along + 180) % 360
