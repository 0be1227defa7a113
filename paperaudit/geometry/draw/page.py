"""One figure at one scale: marks are put down one kind after another, then every text finds its place."""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.draw.angle_marks import DrawnAngle, drawn_angles, strokes_of
from paperaudit.geometry.draw.circles import circles_of
from paperaudit.geometry.draw.elements import Arc, Box, Circle, Layout, Stroke, bearing, polar
from paperaudit.geometry.draw.ground import Ground
from paperaudit.geometry.draw.lettering import Lettering, Wish, total_box
from paperaudit.geometry.draw.marks import Marks
from paperaudit.geometry.draw.notes import noted
from paperaudit.geometry.draw.regions import outline_of, regions_of
from paperaudit.geometry.draw.right_angles import squares
from paperaudit.geometry.draw.round_signs import arc_sign, radius_sign, rings_of
from paperaudit.geometry.draw.side_marks import SideMarks
from paperaudit.geometry.draw.signs import Sign
from paperaudit.geometry.draw.straight_signs import bearing_signs, height_sign
from paperaudit.geometry.draw.wishes import angle_wish, letter_wish, number_wish
from paperaudit.geometry.figure.figure import HIDDEN, TangentAt
from paperaudit.geometry.figure.plane import Spot
from paperaudit.model.quantity import centre_of_circle

FRAME_WIDTH = 280.0
"""All figures have at least this width, so that set in one column their letters are of one size."""
BORDER = 6.0
SAME_WAY = 1.0
"""Degrees within which two directions from a point count as one."""
BEYOND = 16.0
"""How far a line without ends goes on beyond its last letters."""
NOTE_HEIGHT = 16.0


@dataclass(frozen=True, slots=True)
class Endless:
    """Points beyond which their line is drawn on: the ends of a `line AB`, the far end of a `ray AB`."""

    ends: frozenset[tuple[int, str]] = frozenset()


def lettered(at: Mapping[str, Spot]) -> dict[str, Spot]:
    """The points without the centres that have no letter."""
    return {name: spot for name, spot in at.items() if not name.startswith(HIDDEN)}


class Page:
    """A figure with its points and circles on the page; `triangle` has its sides drawn apart."""

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
        self.spots = lettered(spots)
        self.circles = circles
        self.on = {
            name: [
                circles[one.key] for one in circles_of(arrangement.figure) if one.key in circles and name in one.points
            ]
            for name in self.spots
        }
        self.marks = marks
        self.triangle = triangle
        self.note = note
        self.ends = [self._ends(number, line, endless) for number, line in enumerate(arrangement.lines)]
        self.dots = tuple(spot for name, spot in self.spots.items() if self._needs_dot(name))
        self.dots += tuple(circles[mark.centre].centre for mark in marks.radii if mark.centre.startswith(HIDDEN))
        self.ground = Ground(lines=list(self.ends), dots=list(self.dots))
        for circle in circles.values():
            self.ground.add_circle(circle)

    def _ends(self, number: int, line: tuple[str, ...], endless: Endless) -> tuple[Spot, Spot]:
        one, two = self.spots[line[0]], self.spots[line[-1]]
        way = bearing(one, two)
        start = polar(one, way, -BEYOND) if (number, line[0]) in endless.ends else one
        end = polar(two, way, BEYOND) if (number, line[-1]) in endless.ends else two
        return start, end

    def layout(self, least_width: float = FRAME_WIDTH) -> tuple[float, Layout]:
        """How much ink is covered by texts, and the layout, at least so wide."""
        angles = drawn_angles(self.arrangement, self.spots, self.marks.angles)
        signs = [self._angles_sign(angles)]
        self._take(signs[0])
        for sign in self._signs(angles, signs[0].arcs):
            self._take(sign)
            signs.append(sign)
        lettering = Lettering(self.ground)
        lettering.settle([*(wish for sign in signs for wish in sign.wishes), *self._letters()])
        strokes = (*self._lines(), *(stroke for sign in signs for stroke in sign.strokes), *lettering.leaders)
        arcs = tuple(arc for sign in signs for arc in sign.arcs)
        boxes = [label.box for label in lettering.labels] + [circle.box for circle in self.circles.values()]
        frame = self._frame(boxes, strokes, [arc.spot(i / 8) for arc in arcs for i in range(9)], least_width)
        frame, notes = noted(frame, [note for sign in signs for note in sign.notes])
        if self.note:
            frame = (*frame[:3], frame[3] + NOTE_HEIGHT)
        layout = Layout(
            frame,
            strokes,
            arcs,
            self.dots,
            (*lettering.labels, *notes),
            self.note,
            tuple(self.circles.values()),
            tuple(regions_of(self.marks, self.spots, self.circles)),
        )
        return lettering.covered, layout

    def _take(self, sign: Sign) -> None:
        """What is drawn from now on, and every text, keeps clear of a sign."""
        for arc in sign.arcs:
            if arc.kind != "heavy":
                self.ground.add_arc(arc, parts=arc.kind == "mark")
        for stroke in sign.strokes:
            if stroke.kind != "heavy":
                self.ground.add_chain(stroke.spots)

    def _angles_sign(self, angles: Sequence[DrawnAngle]) -> Sign:
        """Arcs, strokes and squares of the angles; texts with least choice first."""
        arcs = tuple(angle.arc for angle in angles if angle.has_arc)
        strokes = [stroke for angle in angles if angle.has_arc for stroke in strokes_of(angle)]
        strokes += squares(self.arrangement, self.spots, self.marks.angles, self.marks.squares)
        wishes = [number_wish(angle) for angle in angles if angle.mark.number]
        labelled = [angle for angle in angles if angle.mark.label]
        wishes += [angle_wish(angle, labelled) for angle in sorted(labelled, key=lambda angle: angle.size)]
        return Sign(tuple(strokes), arcs, tuple(wishes))

    def _signs(self, angles: Sequence[DrawnAngle], arcs: Sequence[Arc]) -> Iterator[Sign]:
        """The signs of everything but angles, each made when the ones before are on the page."""
        marks = self.marks
        joined = [self.arrangement.joined(mark.start, mark.end) for mark in marks.bearings]
        yield from bearing_signs(marks.bearings, self.spots, angles, joined)
        ends = [arc.spot(share) for arc in arcs for share in (0.0, 1.0)]
        sides = SideMarks(self.arrangement, self.spots, ends, tuple(self.circles.values()))
        yield from (sides.ticked(mark) for mark in marks.sides)
        yield from (Sign(tuple(sides.arrowed(mark))) for mark in marks.parallels)
        yield from (height_sign(mark, self.spots) for mark in marks.heights)
        for mark, ring in zip(marks.arcs, rings_of(marks.arcs, self.spots, self.circles), strict=True):
            if mark.arc.centre in self.circles:
                yield arc_sign(mark, self.spots, self.circles[mark.arc.centre], self.ground, ring)
        before: list[Spot] = []
        for one in marks.radii:
            if one.centre in self.circles:
                sign = radius_sign(one, self.circles[one.centre], self.spots, self.ground, before)
                before += sign.strokes[0].spots
                yield sign
        for outline in marks.heavy:
            try:
                yield outline_of(outline, self.spots, self.circles)
            except KeyError:
                continue

    def _letters(self) -> Iterator[Wish]:
        """The points' letters, those with least choice first."""
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
        if name in map(centre_of_circle, self.circles) or not through:
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

    def _frame(self, boxes: Sequence[Box], strokes: Sequence[Stroke], spots: Sequence[Spot], least: float) -> Box:
        every = [spot for stroke in strokes for spot in stroke.spots] + list(spots)
        left, top, right, bottom = total_box([*boxes, *((x, y, x, y) for x, y in every)])
        left, top, right, bottom = left - BORDER, top - BORDER, right + BORDER, bottom + BORDER
        spare = max(0.0, least - (right - left)) / 2
        return left - spare, top, right + spare, bottom


def _apart(one: float, other: float) -> float:
    """Degrees between two bearings."""
    return abs((one - other + 180) % 360 - 180)
