"""Ticks on equal sides, arrow heads on parallel lines, and dimension lines for lengths that run over several parts."""

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from paperaudit.geometry.arrangement import Arrangement
from paperaudit.geometry.draw.elements import Circle, Stroke
from paperaudit.geometry.draw.marks import ParallelMark, SideMark
from paperaudit.geometry.draw.proportions import distance
from paperaudit.geometry.plane import Spot, along, side

TICK = 4.2
TICK_GAP = 3.4
"""Half length of a tick, and the gap between two."""
HEAD = 5.0
HEAD_GAP = 5.0
"""Length of an arrow head's strokes, and the gap between two heads."""
HEAD_WIDTH = 0.55
SHARES = (0.5, 0.6, 0.4, 0.68, 0.32, 0.75, 0.25)
ROOM = 7.0
"""Clear space that a mark on a line wants from other lines and marks."""
AWAY = 15.0
"""How far a dimension line runs from its side."""
BAR = 3.5


@dataclass(frozen=True, slots=True)
class DrawnSide:
    """A marked side: where its label belongs, on the segment or on a dimension line beside it."""

    mark: SideMark
    start: Spot
    end: Spot
    strokes: tuple[Stroke, ...]
    outside: Spot | None = None


class SideMarks:
    """Puts marks on lines one after another, each clear of the ones before."""

    def __init__(
        self,
        arrangement: Arrangement,
        spots: Mapping[str, Spot],
        occupied: Iterable[Spot],
        circles: Sequence[Circle] = (),
    ) -> None:
        self.arrangement = arrangement
        self.circles = circles
        self.spots = spots
        self.occupied = list(occupied)
        self.lines = [(spots[line[0]], spots[line[-1]]) for line in arrangement.lines]

    def ticked(self, mark: SideMark) -> DrawnSide:
        """A side with its ticks in its middle; a side that points divide gets them on a dimension line."""
        start, end = mark.side.start, mark.side.end
        line = self.arrangement.lines[self.arrangement.figure.line_of(start, end)]
        low, high = sorted((line.index(start), line.index(end)))
        one, two = self.spots[line[low]], self.spots[line[high]]
        if high - low > 1:
            return self._dimensioned(mark, one, two)
        if not mark.ticks:
            return DrawnSide(mark, one, two, ())
        middle = self._free_spot(one, two, (line[low], line[high]), 2.0)
        return DrawnSide(mark, one, two, tuple(_ticks(middle, one, two, mark.ticks)))

    def _dimensioned(self, mark: SideMark, start: Spot, end: Spot) -> DrawnSide:
        reach = math.dist(start, end)
        normal = ((end[1] - start[1]) / reach, (start[0] - end[0]) / reach)
        way = min((1.0, -1.0), key=lambda sign: self._crowd(start, end, (sign * normal[0], sign * normal[1])))
        shift = (way * AWAY * normal[0], way * AWAY * normal[1])
        one, two = (start[0] + shift[0], start[1] + shift[1]), (end[0] + shift[0], end[1] + shift[1])
        bar = (BAR * normal[0], BAR * normal[1])
        bars = [Stroke(((p[0] - bar[0], p[1] - bar[1]), (p[0] + bar[0], p[1] + bar[1])), "thin") for p in (one, two)]
        ticks = _ticks(along(one, two, 0.5 if not mark.label else 0.25), one, two, mark.ticks)
        return DrawnSide(mark, one, two, (Stroke((one, two), "thin"), *bars, *ticks), (shift[0], shift[1]))

    def _crowd(self, start: Spot, end: Spot, normal: Spot) -> tuple[int, float]:
        """What a dimension line on one side of a segment has to cross, and how much of the figure is there."""
        one, two = ((p[0] + AWAY * normal[0], p[1] + AWAY * normal[1]) for p in (start, end))
        crossed = sum(
            side(one, p, q) * side(two, p, q) < 0 and side(p, one, two) * side(q, one, two) < 0 for p, q in self.lines
        )
        crossed += sum(_crosses(circle, one, two) for circle in self.circles)
        weight = sum((x - start[0]) * normal[0] + (y - start[1]) * normal[1] for x, y in self.spots.values())
        return crossed, weight

    def arrowed(self, mark: ParallelMark) -> Iterator[Stroke]:
        """The arrow heads of a parallel, on the part of its line that has most room; all point rightwards or up."""
        line = self.arrangement.lines[self.arrangement.figure.line_of(*mark.path)]
        parts = sorted(pairwise(line), key=lambda pair: -round(math.dist(self.spots[pair[0]], self.spots[pair[1]])))
        part = parts[0]
        one, two = self.spots[part[0]], self.spots[part[1]]
        if (two[0] - one[0], one[1] - two[1]) < (-1e-6, 0.0) or (abs(two[0] - one[0]) < 1e-6 and two[1] > one[1]):
            one, two = two, one
        reach = math.dist(one, two)
        way = ((two[0] - one[0]) / reach, (two[1] - one[1]) / reach)
        middle = self._free_spot(one, two, part, HEAD)
        for number in range(mark.arrows):
            ahead = (number - (mark.arrows - 1) / 2) * HEAD_GAP + HEAD / 2
            yield _head((middle[0] + ahead * way[0], middle[1] + ahead * way[1]), way)

    def _free_spot(self, one: Spot, two: Spot, ends: Sequence[str], size: float) -> Spot:
        """The spot between two neighbours, near the middle, that is clear of other lines and marks."""
        lines = zip(self.lines, self.arrangement.lines, strict=True)
        others = [pair for pair, line in lines if not set(ends) <= set(line)]

        def room(spot: Spot) -> float:
            gaps = [distance(spot, *pair) for pair in others] + [math.dist(spot, other) for other in self.occupied]
            gaps += [circle.off(spot) for circle in self.circles]
            return min([ROOM + size, *gaps])

        spots = [along(one, two, share) for share in SHARES]
        best = max(spots, key=lambda spot: (round(room(spot), 3), -spots.index(spot)))
        self.occupied.append(best)
        return best


def _crosses(circle: Circle, one: Spot, two: Spot) -> bool:
    """Whether a segment runs through the outline of a circle."""
    farthest = max(math.dist(spot, circle.centre) for spot in (one, two))
    return distance(circle.centre, one, two) < circle.radius < farthest


def _ticks(middle: Spot, start: Spot, end: Spot, count: int) -> Iterator[Stroke]:
    reach = math.dist(start, end)
    u, v = (end[0] - start[0]) / reach, (end[1] - start[1]) / reach
    for number in range(count):
        step = (number - (count - 1) / 2) * TICK_GAP
        x, y = middle[0] + step * u, middle[1] + step * v
        yield Stroke(((x + TICK * v, y - TICK * u), (x - TICK * v, y + TICK * u)), "mark")


def _head(tip: Spot, way: Spot) -> Stroke:
    u, v = way
    back = (tip[0] - HEAD * u, tip[1] - HEAD * v)
    wide = HEAD * HEAD_WIDTH
    return Stroke(((back[0] - wide * v, back[1] + wide * u), tip, (back[0] + wide * v, back[1] - wide * u)), "mark")
