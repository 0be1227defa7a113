"""From a drawn figure and its marks to a page: the order in which things are put down, and the frame round them."""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations, pairwise

from paperaudit.geometry.arrangement import Arrangement
from paperaudit.geometry.draw.angle_marks import DrawnAngle, drawn_angles, strokes_of
from paperaudit.geometry.draw.circles import circles_of, outlines
from paperaudit.geometry.draw.elements import Box, Circle, Layout, Stroke, bearing, polar
from paperaudit.geometry.draw.ground import Ground
from paperaudit.geometry.draw.lettering import (
    Lettering,
    Wish,
    angle_wish,
    letter_wish,
    number_wish,
    side_wish,
    total_box,
)
from paperaudit.geometry.draw.marks import Marks
from paperaudit.geometry.draw.right_angles import squares
from paperaudit.geometry.draw.side_marks import DrawnSide, SideMarks
from paperaudit.geometry.figure import HIDDEN, TangentAt
from paperaudit.geometry.plane import Spot

WIDTH, HEIGHT = 232.0, 180.0
"""The drawn lines fit into this, unless short segments ask for more."""
WIDEST, HIGHEST = 380.0, 330.0
SHORTEST = 26.0
"""Least length of a segment between two letters, if the page allows it."""
FRAME_WIDTH = 280.0
"""All figures have at least this width, so that set in one column their letters are of one size."""
BORDER = 6.0
SAME_WAY = 1.0
"""Degrees within which two directions from a point count as one."""
BEYOND = 16.0
"""How far a line without ends goes on beyond its last letters."""
ENOUGH = 2.0
"""Units of covered ink beyond which a figure is drawn once more, and larger."""
LARGER = 1.25
NOTE_HEIGHT = 16.0


@dataclass(frozen=True, slots=True)
class Endless:
    """Points beyond which their line is drawn on: the ends of a `line AB`, the far end of a `ray AB`."""

    ends: frozenset[tuple[int, str]] = frozenset()


def lay_out(
    arrangement: Arrangement,
    at: Mapping[str, Spot],
    marks: Marks,
    endless: Endless = Endless(),
    triangle: tuple[str, str, str] | None = None,
    note: str = "",
) -> Layout:
    """The figure on its page. `at` is turned as it should stand, y up; `triangle` has its sides drawn apart."""
    scale = _scale(arrangement, at)
    best: tuple[float, Layout] | None = None
    for larger in (1.0, LARGER, LARGER**2):
        spots = {name: (x * scale * larger, -y * scale * larger) for name, (x, y) in at.items()}
        circles = outlines(arrangement.figure, spots)
        width, height = _spread(spots, circles)
        if best and (width > WIDEST or height > HIGHEST):
            break
        covered, layout = _Page(arrangement, spots, circles, marks, endless, triangle, note).layout()
        if best is None or covered < best[0] - 0.5:
            best = (covered, layout)
        if best[0] < ENOUGH:
            break
    assert best is not None
    return best[1]


def _spread(spots: Mapping[str, Spot], circles: Mapping[str, Circle]) -> tuple[float, float]:
    boxes = [(x, y, x, y) for x, y in spots.values()] + [circle.box for circle in circles.values()]
    left, top, right, bottom = total_box(boxes)
    return right - left, bottom - top


def _scale(arrangement: Arrangement, at: Mapping[str, Spot]) -> float:
    width, height = _spread(at, outlines(arrangement.figure, at))
    size = max(width, height) or 1.0
    fitting = min(WIDTH / max(width, 1e-3 * size), HEIGHT / max(height, 1e-3 * size))
    most = min(WIDEST / max(width, 1e-3 * size), HIGHEST / max(height, 1e-3 * size))
    gaps = [math.dist(at[p], at[q]) for line in arrangement.lines for p, q in pairwise(line)]
    gaps += [math.dist(p, q) for p, q in combinations(_lettered(at).values(), 2)]
    return max(fitting, min(most, SHORTEST / min(gaps))) if gaps else fitting


def _lettered(at: Mapping[str, Spot]) -> dict[str, Spot]:
    """The points without the centres that have no letter."""
    return {name: spot for name, spot in at.items() if not name.startswith(HIDDEN)}


class _Page:
    """One figure at one scale."""

    def __init__(
        self,
        arrangement: Arrangement,
        spots: Mapping[str, Spot],
        circles: Mapping[str, Circle],
        marks: Marks,
        endless: Endless,
        triangle: tuple[str, str, str] | None,
        note: str,
    ) -> None:
        self.arrangement = arrangement
        self.spots = _lettered(spots)
        self.circles = circles
        self.on = {
            name: [
                circles[one.centre]
                for one in circles_of(arrangement.figure)
                if one.centre in circles and name in one.points
            ]
            for name in self.spots
        }
        self.marks = marks
        self.triangle = triangle
        self.note = note
        self.ends = [self._ends(number, line, endless) for number, line in enumerate(arrangement.lines)]
        self.ground = Ground(lines=list(self.ends))
        for circle in circles.values():
            self.ground.add_circle(circle)

    def _ends(self, number: int, line: tuple[str, ...], endless: Endless) -> tuple[Spot, Spot]:
        one, two = self.spots[line[0]], self.spots[line[-1]]
        way = bearing(one, two)
        start = polar(one, way, -BEYOND) if (number, line[0]) in endless.ends else one
        end = polar(two, way, BEYOND) if (number, line[-1]) in endless.ends else two
        return start, end

    def layout(self) -> tuple[float, Layout]:
        """How much ink is covered by texts, and the layout."""
        angles = drawn_angles(self.arrangement, self.spots, self.marks.angles)
        arcs = tuple(angle.arc for angle in angles if angle.has_arc)
        strokes = [stroke for angle in angles if angle.has_arc for stroke in strokes_of(angle)]
        strokes += squares(self.arrangement, self.spots, self.marks.angles, self.marks.squares)
        for arc in arcs:
            self.ground.add_arc(arc)
        circles = tuple(self.circles.values())
        ends = [arc.spot(share) for arc in arcs for share in (0.0, 1.0)]
        sides = SideMarks(self.arrangement, self.spots, ends, circles)
        drawn = [sides.ticked(mark) for mark in self.marks.sides]
        strokes += [stroke for one in drawn for stroke in one.strokes]
        strokes += [stroke for mark in self.marks.parallels for stroke in sides.arrowed(mark)]
        for stroke in strokes:
            self.ground.add_chain(stroke.spots)
        dots = tuple(spot for name, spot in self.spots.items() if self._needs_dot(name))
        lettering = Lettering(self.ground, [], [])
        lettering.settle(self._wishes(angles, drawn))
        every = (*self._lines(), *strokes, *lettering.leaders)
        labels = tuple(lettering.labels)
        boxes = [label.box for label in labels] + [circle.box for circle in circles]
        frame = self._frame(boxes, every, [arc.spot(i / 8) for arc in arcs for i in range(9)])
        return lettering.covered, Layout(frame, every, arcs, dots, labels, self.note, circles)

    def _wishes(self, angles: Sequence[DrawnAngle], drawn: Sequence[DrawnSide]) -> Iterator[Wish]:
        """Texts with least choice first."""
        yield from (number_wish(angle) for angle in angles if angle.mark.number)
        labelled = [angle for angle in angles if angle.mark.label]
        yield from (angle_wish(angle, labelled) for angle in sorted(labelled, key=lambda angle: angle.size))
        count = len(self.spots)
        middle = (sum(x for x, _ in self.spots.values()) / count, sum(y for _, y in self.spots.values()) / count)
        yield from (side_wish(one, middle) for one in drawn if one.mark.label)
        rays = {name: self._rays(name) for name in self.spots}
        for name in sorted(self.spots, key=lambda name: (-len(rays[name]), name)):
            centres = [circle.centre for circle in self.on[name]]
            yield letter_wish(name, self.spots[name], rays[name], self._needs_dot(name), centres)

    def _rays(self, name: str) -> list[float]:
        """The bearings in which something is drawn from a point, lines without letters' ends and circles included."""
        spot = self.spots[name]
        rays = [
            bearing(spot, end)
            for line, ends in zip(self.arrangement.lines, self.ends, strict=True)
            if name in line
            for end in ends
            if math.dist(spot, end) > 1e-6
        ]
        for circle in self.on[name]:
            across = bearing(circle.centre, spot) + 90
            rays += [way for way in (across, across + 180) if all(_apart(way, ray) > SAME_WAY for ray in rays)]
        return rays

    def _needs_dot(self, name: str) -> bool:
        """A point that no corner and no crossing shows; a lettered centre always has one."""
        through = [line for line in self.arrangement.lines if name in line]
        if name in self.circles or not through:
            return True
        if len(through) > 1:
            return False
        if self.on[name]:
            return self._is_touched(name)
        return name not in (through[0][0], through[0][-1])

    def _is_touched(self, name: str) -> bool:
        """Whether a point is where a tangent touches its circle."""
        return any(isinstance(one, TangentAt) and one.at == name for one in self.arrangement.figure.conditions)

    def _lines(self) -> Iterator[Stroke]:
        for line, (start, end) in zip(self.arrangement.lines, self.ends, strict=True):
            corners = [self.spots[point] for point in line if self.triangle and point in self.triangle]
            if len(corners) < 2:
                yield Stroke((start, end))
                continue
            if math.dist(start, corners[0]) > 1e-6:
                yield Stroke((start, corners[0]), "produced side")
            yield Stroke((corners[0], corners[-1]), "triangle side")
            if math.dist(corners[-1], end) > 1e-6:
                yield Stroke((corners[-1], end), "produced side")

    def _frame(self, boxes: Sequence[Box], strokes: Sequence[Stroke], spots: Sequence[Spot]) -> Box:
        every = [spot for stroke in strokes for spot in stroke.spots] + list(spots)
        left, top, right, bottom = total_box([*boxes, *((x, y, x, y) for x, y in every)])
        left, top, right, bottom = left - BORDER, top - BORDER, right + BORDER, bottom + BORDER
        if self.note:
            bottom += NOTE_HEIGHT
        spare = max(0.0, FRAME_WIDTH - (right - left)) / 2
        return left - spare, top, right + spare, bottom


def _apart(one: float, other: float) -> float:
    """Degrees between two bearings."""
    return abs((one - other + 180) % 360 - 180)
