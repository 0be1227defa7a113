"""What a drawing settles beyond its givens: order along lines, rays round points, which angle is which."""

import math
from dataclasses import replace
from functools import cached_property
from itertools import combinations

from paperaudit.geometry.coordinates.circle_order import Round, arcs_of, rounds_of
from paperaudit.geometry.coordinates.line_pairs import crossed_by, meets_of, nearly_parallel, triangles_of
from paperaudit.geometry.coordinates.measure import measured
from paperaudit.geometry.coordinates.rays import Ray as Ray
from paperaudit.geometry.coordinates.rays import Triangle as Triangle
from paperaudit.geometry.coordinates.realise import Drawing
from paperaudit.geometry.figure.figure import Figure, Size, angle, length
from paperaudit.geometry.figure.north import ways_by_north
from paperaudit.maths.linear import LinearForm, combination
from paperaudit.model.expression import AngleOf, ArcOf, Expression, LengthOf

PARALLEL_TOLERANCE = 1e-6
"""Radians between two lines of a drawing that count as parallel; drawings are exact to 1e-9."""

ALIKE = 1e-6
"""Share of itself by which segments of a drawing may differ and count as the same length."""


class Arrangement:
    """A figure together with one drawing of it. Nothing is measured here but order and turning.

    In a drawing from all that is given (`complete`), sides that differ are not equal, and need not be thought so.
    """

    def __init__(self, figure: Figure, drawing: Drawing, complete: bool = False) -> None:
        self.complete = complete
        self.figure = figure
        self.drawing = drawing
        self.at = drawing.at
        self._measures: dict[Expression, float] = {}
        self._corners: dict[tuple[str, str, str, bool], AngleOf] = {}
        self._directions: dict[Size, LinearForm[object]] = {}
        self.lines: tuple[tuple[str, ...], ...] = tuple(self._along(line) for line in figure.lines)
        self._names = {self.canonical(name): name for name in reversed(figure.fixed_names) if self._drawn(name)}

    def _along(self, line: tuple[str, ...]) -> tuple[str, ...]:
        first, _last = max(combinations(line, 2), key=lambda pair: math.dist(self.at[pair[0]], self.at[pair[1]]))
        return tuple(sorted(line, key=lambda point: math.dist(self.at[first], self.at[point])))

    @cached_property
    def bearings(self) -> tuple[float, ...]:
        """The direction of every line in the drawing, in degrees, from its first point to its last."""
        return tuple(self.bearing(line[0], line[-1]) for line in self.lines)

    def bearing(self, start: str, end: str) -> float:
        """The direction from one point to another in the drawing, in degrees."""
        (x, y), (p, q) = self.at[start], self.at[end]
        return math.degrees(math.atan2(q - y, p - x))

    @cached_property
    def rays(self) -> dict[str, tuple[Ray, ...]]:
        """The rays from every point that has any, anticlockwise."""
        found: dict[str, list[Ray]] = {point: [] for point in self.figure.points}
        for index, line in enumerate(self.lines):
            for spot, vertex in enumerate(line):
                if line[spot + 1 :]:
                    found[vertex].append(Ray(vertex, index, 1, line[spot + 1 :]))
                if line[:spot]:
                    found[vertex].append(Ray(vertex, index, -1, tuple(reversed(line[:spot]))))
        return {
            vertex: tuple(sorted(rays, key=lambda ray: self.bearing(vertex, ray.points[0])))
            for vertex, rays in found.items()
        }

    @cached_property
    def _ray_to(self) -> dict[tuple[str, str], Ray]:
        return {(vertex, point): ray for vertex, rays in self.rays.items() for ray in rays for point in ray.points}

    def joined(self, start: str, end: str) -> bool:
        """Whether a line is drawn through both points."""
        return (start, end) in self._ray_to

    def ray(self, vertex: str, point: str) -> Ray:
        """The ray from `vertex` through `point`; KeyError if no line is drawn through both."""
        return self._ray_to[vertex, point]

    def opposite(self, ray: Ray) -> Ray | None:
        """The ray that continues `ray` backwards through its vertex, where one is drawn."""
        for other in self.rays[ray.vertex]:
            if other.line == ray.line and other.way == -ray.way:
                return other
        return None

    def between(self, first: Ray, second: Ray, reflex: bool = False) -> AngleOf:
        """The angle of two rays from one point, named canonically."""
        return angle(first.points[0], first.vertex, second.points[0], reflex)

    def _drawn(self, size: AngleOf) -> bool:
        return self.joined(size.vertex, size.arm) and self.joined(size.vertex, size.other)

    def canonical(self, size: AngleOf) -> AngleOf:
        """The same angle named by the nearest point on each arm, so that equal angles are one value."""
        return self.between(self.ray(size.vertex, size.arm), self.ray(size.vertex, size.other), size.reflex)

    def known_as(self, size: Size) -> Size:
        """An angle or an arc under its canonical name, any other size as it is."""
        if isinstance(size, AngleOf):
            return self.canonical(size)
        if isinstance(size, ArcOf) and size.centre in self.rounds:
            return self.rounds[size.centre].canonical(size)
        return size

    def canonical_form(self, form: LinearForm[Size]) -> LinearForm[Size]:
        """A form with every angle and arc named canonically; straight angles become 180°."""
        changed: dict[Size, LinearForm[Size]] = {}
        for size in form.terms:
            if isinstance(size, AngleOf) and self.is_straight(size):
                changed[size] = LinearForm.number(180)
            elif isinstance(size, AngleOf | ArcOf):
                changed[size] = LinearForm.of(self.known_as(size))
        return form.replaced(changed) if changed else form

    def is_straight(self, size: AngleOf) -> bool:
        """Whether the two arms lie along one line."""
        one, two = self.ray(size.vertex, size.arm), self.ray(size.vertex, size.other)
        return one.line == two.line

    def name(self, size: Size) -> Size:
        """The size under the name that the paper uses, or the one that a pupil would: corners of shapes first."""
        if isinstance(size, LengthOf):
            return self._length_names.get(size) or self._from_centre(size)
        if isinstance(size, ArcOf):
            return self._arc_names.get(size) or self._told(size)
        if not isinstance(size, AngleOf):
            return size
        if size in self._names:
            return self._names[size]
        arms = []
        for ray in (self.ray(size.vertex, point) for point in (size.arm, size.other)):
            arms.append(next((p for p in ray.points if self._is_corner(size.vertex, p)), ray.points[0]))
        return angle(arms[0], size.vertex, arms[1], size.reflex)

    @cached_property
    def _length_names(self) -> dict[LengthOf, LengthOf]:
        names = [name for name in reversed(self.figure.named_sizes) if isinstance(name, LengthOf)]
        return {length(name.start, name.end): name for name in names}

    def _from_centre(self, size: LengthOf) -> LengthOf:
        """A radius is named from its centre: OA."""
        return LengthOf(size.end, size.start) if (size.end, size.start) in self._radii else size

    @cached_property
    def _radii(self) -> frozenset[tuple[str, str]]:
        return self.figure.radii

    def _is_corner(self, vertex: str, point: str) -> bool:
        return any(vertex in shape.points and point in shape.points for shape, _ in self.figure.shapes)

    @cached_property
    def _arc_names(self) -> dict[Size, ArcOf]:
        """The names that the paper itself uses for arcs."""
        stated = [arc for condition in self.figure.conditions for arc in arcs_of(condition)]
        return {self.known_as(arc): arc for arc in reversed(stated)}

    def _told(self, size: ArcOf) -> ArcOf:
        """An arc by its ends, and by a point on it where the ends alone do not tell it from the minor one."""
        circle = self.rounds.get(size.centre)
        if not circle or size.through or not size.major:
            return size
        inside = circle.inside(*circle.ends(size))
        return replace(size, through=inside[len(inside) // 2], major=False) if inside else size

    @cached_property
    def rounds(self) -> dict[str, Round]:
        """The circles of the drawing by their centres, hidden ones too."""
        return rounds_of(self.figure, self.at)

    def measured(self, size: Expression) -> float:
        """The size in the drawing: degrees, or the drawing's unit of length or its square, or the letter's value."""
        found = self._measures.get(size)
        if found is None:
            found = self._measures[size] = measured(size, self.at, self.drawing.letters, self.circles)
        return found

    @cached_property
    def circles(self) -> dict[str, tuple[str, ...]]:
        """The centre of every circle with the points that the figure names on it."""
        return self.figure.circles

    def turn(self, vertex: str, arm: str, other: str) -> float:
        """The turn from one arm to the other in the drawing, in degrees, anticlockwise positive."""
        way = self.bearing(vertex, other) - self.bearing(vertex, arm)
        return (way + 180) % 360 - 180

    def directions(self, form: LinearForm[Size]) -> LinearForm[object]:
        """A form with every angle written as a difference of line directions, exact multiples of 180° added.

        Keys are line indices for directions, positions for the ends of arcs; lengths and letters stay as they are.
        """
        known = self._directions
        parts = [
            (known.get(size) or known.setdefault(size, self._size_form(size)), value)
            for size, value in form.terms.items()
        ]
        return combination(parts, form.constant)

    def _size_form(self, size: Size) -> LinearForm[object]:
        if isinstance(size, AngleOf):
            return self._direction_form(size)
        around = self.rounds.get(size.centre) if isinstance(size, ArcOf) else None
        return around.form(size) if around and isinstance(size, ArcOf) else LinearForm.of(size)

    def _direction_form(self, size: AngleOf) -> LinearForm[object]:
        one, two = self.ray(size.vertex, size.arm), self.ray(size.vertex, size.other)
        way = 1 if self.turn(size.vertex, size.arm, size.other) > 0 else -1
        half_turns = way * ((two.way < 0) - (one.way < 0))
        plain = way * (self.bearings[two.line] - self.bearings[one.line]) + 180 * half_turns
        measured = abs(self.turn(size.vertex, size.arm, size.other))
        full_turns = round((measured - plain) / 360)
        constant = 180 * half_turns + 360 * full_turns
        form = LinearForm[object].of(two.line, way).plus(LinearForm.of(one.line), -way) + LinearForm.number(constant)
        return LinearForm[object].number(360) - form if size.reflex else form

    def direction_difference(self, first: int, second: int, right_angle: bool) -> LinearForm[object]:
        """The form that is 0 when two lines are parallel (or at right angles), nearest multiple of 180° taken."""
        aim = 90 if right_angle else 0
        gap = self.bearings[first] - self.bearings[second]
        offset = 180 * round((gap - aim) / 180) + aim
        return LinearForm({first: 1, second: -1}, -offset) if first != second else LinearForm.number(-aim)

    def parallel_way(self, first: int, second: int) -> int:
        """+1 or −1 if two lines of the drawing run the same or opposite ways, 0 if they are not parallel."""
        gap = (self.bearings[first] - self.bearings[second]) % 360
        if min(gap, 360 - gap) < math.degrees(PARALLEL_TOLERANCE):
            return 1
        return -1 if abs(gap - 180) < math.degrees(PARALLEL_TOLERANCE) else 0

    @cached_property
    def parallels(self) -> tuple[tuple[int, int], ...]:
        """Every pair of lines that are parallel in the drawing, lower index first, in order."""
        near = nearly_parallel(self.bearings, 2 * math.degrees(PARALLEL_TOLERANCE))
        return tuple(pair for pair in near if self.parallel_way(*pair))

    @cached_property
    def meets(self) -> dict[tuple[int, int], str]:
        """The labelled point in which two lines meet, for every pair (lower index first) that has one."""
        return meets_of(self.lines)

    @cached_property
    def crossed(self) -> tuple[tuple[int, ...], ...]:
        """The lines that meet each line, in order."""
        return crossed_by(self.meets, len(self.lines))

    def meet(self, first: int, second: int) -> str | None:
        """The labelled point that two lines share."""
        return self.meets.get((min(first, second), max(first, second)))

    @cached_property
    def apexes(self) -> tuple[tuple[Triangle, tuple[str, str, str]], ...]:
        """Every triangle with each corner in front whose two sides may be equal."""
        return tuple(
            (triangle, corners)
            for triangle in self.triangles
            for corners in triangle.turned()
            if not self.complete or self._alike(*corners)
        )

    def _alike(self, apex: str, one: str, two: str) -> bool:
        """Whether two sides are as good as equal in the drawing."""
        first, second = (math.dist(self.at[apex], self.at[end]) for end in (one, two))
        return abs(first - second) < ALIKE * max(first, second)

    @cached_property
    def triangles(self) -> tuple[Triangle, ...]:
        """Every triangle that the drawn lines make, from triples of lines."""
        return tuple(map(Triangle, triangles_of(self.meets, self.crossed, self.figure.points)))

    def corner(self, before: str, vertex: str, after: str, reflex: bool = False) -> AngleOf:
        """The canonical angle at `vertex` between two points joined to it by drawn lines."""
        key = (before, vertex, after, reflex)
        return self._corners.get(key) or self._corners.setdefault(key, self.canonical(angle(*key)))

    @cached_property
    def signature(self) -> tuple[object, ...]:
        """What tells this arrangement from another one of the same figure; mirror images agree without a north."""
        orders = tuple(min(line, line[::-1]) for line in self.lines)
        round_points = tuple(
            (vertex, tuple(ray.points[0] for ray in rays))
            for vertex, rays in sorted(self.rays.items())
            if len(rays) > 2
        )
        both = [tuple((vertex, _turned(points[::way])) for vertex, points in round_points) for way in (1, -1)]
        return orders, min(both), self._handedness(), ways_by_north(self)

    def _handedness(self) -> tuple[int, ...]:
        turns = [1 if self.turn(b, a, c) > 0 else -1 for a, b, c in (triangle.corners for triangle in self.triangles)]
        return tuple(turn * turns[0] for turn in turns)


def _turned(points: tuple[str, ...]) -> tuple[str, ...]:
    start = points.index(min(points))
    return points[start:] + points[:start]
