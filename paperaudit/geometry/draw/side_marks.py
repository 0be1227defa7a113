"""Ticks on equal sides, arrow heads on parallel lines, and dimension lines for lengths that run over several parts."""

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import pairwise

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.draw.elements import Circle, Stroke, bearing, distance
from paperaudit.geometry.draw.lettering import Wish
from paperaudit.geometry.draw.marks import ParallelMark, SideMark
from paperaudit.geometry.draw.signs import HEAD, Sign, head
from paperaudit.geometry.draw.wishes import side_wish
from paperaudit.geometry.figure.plane import Spot, along, side

TICK = 4.2
TICK_GAP = 3.4
"""Half length of a tick, and the gap between two."""
HEAD_GAP = 5.0
"""The gap between two arrow heads."""
SHARES = (0.5, 0.6, 0.4, 0.68, 0.32, 0.75, 0.25)
ROOM = 7.0
"""Clear space that a mark on a line wants from other lines and marks."""
AWAY = 15.0
"""How far a dimension line runs from its side."""
BAR = 3.5
LEVEL, FAR_ASLANT = 2.0, 50.0
"""Degrees within which a line is level or upright; how far from its side a dimension line may be that is not."""
FAR = 60.0
"""A dimension line that crosses two lines fewer may be this much farther away, four times."""


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
        count = len(spots)
        self.middle = (sum(x for x, _ in spots.values()) / count, sum(y for _, y in spots.values()) / count)

    def ticked(self, mark: SideMark) -> Sign:
        """A side's ticks in its middle and its length beside it; on a dimension line where points divide the side."""
        start, end = mark.side.start, mark.side.end
        line = self.arrangement.lines[self.arrangement.figure.line_of(start, end)]
        low, high = sorted((line.index(start), line.index(end)))
        one, two = self.spots[line[low]], self.spots[line[high]]
        if high - low > 1:
            return self._dimensioned(mark, one, two)
        centre = along(one, two, 0.5)
        wishes = self._wishes(mark, one, two, (centre[0] - self.middle[0], centre[1] - self.middle[1]))
        if not mark.ticks:
            return Sign(wishes=wishes)
        middle = self._free_spot(one, two, (line[low], line[high]), 2.0)
        return Sign(tuple(_ticks(middle, one, two, mark.ticks)), wishes=wishes)

    def _wishes(self, mark: SideMark, start: Spot, end: Spot, outwards: Spot) -> tuple[Wish, ...]:
        if not mark.label:
            return ()
        return (side_wish(mark.label, mark.is_asked, start, end, outwards, TICK if mark.ticks else 0.0),)

    def _dimensioned(self, mark: SideMark, start: Spot, end: Spot) -> Sign:
        """A dimension line beside a side, or beyond all that is drawn there, with thin lines that lead to it."""
        away = min(self._shifts(start, end), key=lambda shift: self._crowd(start, end, shift))
        if not mark.ticks and self._is_unseemly(start, end, away):
            return Sign(notes=(f"{mark.side.start}{mark.side.end} = {mark.label}",))
        (one, two), *leads = _dimension(start, end, away)
        reach = math.hypot(*away)
        bar = (BAR * away[0] / reach, BAR * away[1] / reach)
        bars = [((x - bar[0], y - bar[1]), (x + bar[0], y + bar[1])) for x, y in (one, two)]
        ticks = _ticks(along(one, two, 0.5 if not mark.label else 0.25), one, two, mark.ticks)
        thin = [Stroke(pair, "thin") for pair in ((one, two), *bars, *leads)]
        return Sign((*thin, *ticks), wishes=self._wishes(mark, one, two, away))

    def _is_unseemly(self, start: Spot, end: Spot, away: Spot) -> bool:
        """Whether a dimension line would cross lines, or run aslant far from its side: words under the figure do."""
        strokes = _dimension(start, end, away)
        if any(_cross(stroke, line) for stroke in strokes for line in self.lines):
            return True
        aslant = abs((bearing(start, end) + 45) % 90 - 45) > LEVEL
        return aslant and math.hypot(*away) > FAR_ASLANT

    def _shifts(self, start: Spot, end: Spot) -> Iterator[Spot]:
        """How a dimension line may be shifted from its side, either way."""
        reach = math.dist(start, end)
        normal = ((end[1] - start[1]) / reach, (start[0] - end[0]) / reach)
        for u, v in (normal, (-normal[0], -normal[1])):
            yield AWAY * u, AWAY * v
            across = [(x - start[0]) * u + (y - start[1]) * v for x, y in self.spots.values()]
            across += [
                (circle.centre[0] - start[0]) * u + (circle.centre[1] - start[1]) * v + circle.radius
                for circle in self.circles
            ]
            if max(across) > AWAY:
                far = max(across) + AWAY
                yield far * u, far * v

    def _crowd(self, start: Spot, end: Spot, away: Spot) -> float:
        """What speaks against a dimension line: what it and its leads cross, how far it is, and what lies there."""
        strokes = _dimension(start, end, away)
        crossed = sum(_cross(stroke, line) for stroke in strokes for line in self.lines)
        crossed += sum(_crosses(circle, *strokes[0]) for circle in self.circles)
        weight = sum((x - start[0]) * away[0] + (y - start[1]) * away[1] for x, y in self.spots.values())
        return 2 * crossed + math.hypot(*away) / FAR + 0.5 * (weight > 0)

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
            yield head((middle[0] + ahead * way[0], middle[1] + ahead * way[1]), way)

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


def _dimension(start: Spot, end: Spot, away: Spot) -> list[tuple[Spot, Spot]]:
    """A segment shifted aside, and where that is far the two lines that lead to it."""
    one, two = (start[0] + away[0], start[1] + away[1]), (end[0] + away[0], end[1] + away[1])
    reach = math.hypot(*away)
    if reach <= AWAY + 1:
        return [(one, two)]
    return [(one, two), *((along(p, q, AWAY / 2 / reach), q) for p, q in ((start, one), (end, two)))]


def _cross(stroke: tuple[Spot, Spot], line: tuple[Spot, Spot]) -> bool:
    """Whether two segments cross inside both."""
    (a, b), (c, d) = stroke, line
    return side(c, a, b) * side(d, a, b) < 0 and side(a, c, d) * side(b, c, d) < 0


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
