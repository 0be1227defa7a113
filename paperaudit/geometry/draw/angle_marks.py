"""Arcs, strokes and squares at the vertices: radius by the size of the angle and by its neighbours."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.draw.elements import Arc, Stroke, bearing, polar
from paperaudit.geometry.draw.ground import FROM_ARC
from paperaudit.geometry.draw.marks import AngleMark
from paperaudit.geometry.draw.type_metrics import reach_of, text_extent
from paperaudit.geometry.figure.plane import Spot

LEAST_RADIUS, WIDEST_RADIUS = 8.0, 38.0
PLAIN_RADIUS, NARROW_RADIUS = 11.0, 450.0
"""Radius of an arc: the first and, for narrow angles, the second divided by the degrees."""
REACH = 0.55
"""No arc goes farther than this share of the way to the next point on its arms."""
NUMBERED = 20.0
BY_SQUARE = 17.0
"""Least radius of an arc that has the angle's number inside, and of one that shares its vertex with a square."""
ROUND_LETTER = 24.0
ALL_ROUND, WIDE = 300.0, 60.0
"""Least radius of wide arcs at a vertex where arcs go (nearly) all round, so that its letter stands inside them."""
NESTED_REACH, WIDEST_NESTED = 1.4, 56.0
"""How far (times `fits`, and at most) an arc may go to leave room inside it for another's label."""
NESTED = 5.0
BESIDE = 4.0
"""How much larger an arc is than one inside it, and than one beside it."""
STROKE = 3.5
STROKE_GAP = 3.4
"""Half length of a stroke across an arc, and the gap between two."""
TOUCHING = 1.0
"""Degrees by which two angles must overlap to be nested."""


@dataclass(frozen=True, slots=True)
class DrawnAngle:
    """A mark with its arc; `fits` is the largest radius that its arms allow."""

    mark: AngleMark
    arc: Arc
    fits: float

    @property
    def size(self) -> float:
        """The angle's size in degrees, as drawn."""
        return abs(self.arc.turn)

    @property
    def middle(self) -> float:
        """The bearing of the bisector."""
        return self.arc.start + self.arc.turn / 2

    @property
    def has_arc(self) -> bool:
        """Whether an arc is drawn: a number alone needs none, a right angle has its square."""
        return not self.mark.is_right and bool(self.mark.label or self.mark.strokes)


def drawn_angles(arrangement: Arrangement, spots: Mapping[str, Spot], marks: Sequence[AngleMark]) -> list[DrawnAngle]:
    """Every marked angle with a radius at which it is told from the others at its vertex."""
    squares = {mark.angle.vertex for mark in marks if mark.is_right}
    plain = [_plain(arrangement, spots, mark, mark.angle.vertex in squares) for mark in marks]
    plain = _equals_alike(_open_for_letters(arrangement, plain))
    settled: list[DrawnAngle] = []
    for angle in sorted(plain, key=lambda one: (one.arc.centre, one.size)):
        near = [one for one in settled if one.arc.centre == angle.arc.centre and one.has_arc]
        settled.append(clear_of(angle, near) if angle.has_arc else angle)
    return settled


def _plain(arrangement: Arrangement, spots: Mapping[str, Spot], mark: AngleMark, by_square: bool) -> DrawnAngle:
    size = mark.angle
    centre = spots[size.vertex]
    start = bearing(centre, spots[size.arm])
    turn = (bearing(centre, spots[size.other]) - start + 180) % 360 - 180
    if size.reflex:
        turn -= math.copysign(360, turn)
    arms = [arrangement.ray(size.vertex, point).points[0] for point in (size.arm, size.other)]
    fits = REACH * min(math.dist(centre, spots[point]) for point in arms)
    radius = PLAIN_RADIUS + NARROW_RADIUS / max(abs(turn), 1.0)
    radius = max(LEAST_RADIUS, min(radius, WIDEST_RADIUS, fits))
    if mark.number:
        radius = max(radius, min(NUMBERED, fits))
    if by_square:
        radius = max(radius, min(BY_SQUARE, fits))
    return DrawnAngle(mark, Arc(centre, radius, start, turn), fits)


def _open_for_letters(arrangement: Arrangement, angles: Sequence[DrawnAngle]) -> list[DrawnAngle]:
    """Where arcs go all the way round a vertex, the wide ones leave room for its letter inside them."""
    round_vertex: dict[str, float] = {}
    for angle in angles:
        vertex = angle.mark.angle.vertex
        round_vertex[vertex] = round_vertex.get(vertex, 0.0) + (angle.size if angle.has_arc else 0.0)
    return [
        replace(angle, arc=replace(angle.arc, radius=max(angle.arc.radius, min(ROUND_LETTER, angle.fits))))
        if round_vertex[angle.mark.angle.vertex] > ALL_ROUND and angle.size > WIDE
        else angle
        for angle in angles
    ]


def _equals_alike(angles: Sequence[DrawnAngle]) -> list[DrawnAngle]:
    """Halves of one angle get one radius, so that they look alike."""
    found = []
    for angle in angles:
        twins = [one for one in angles if _is_equal(one, angle) and one.arc.centre == angle.arc.centre]
        radius = min((one.arc.radius for one in twins), default=angle.arc.radius)
        found.append(replace(angle, arc=replace(angle.arc, radius=radius)))
    return found


def _is_equal(one: DrawnAngle, other: DrawnAngle) -> bool:
    """Whether two angles carry the strokes of one class of equals."""
    return bool(one.mark.strokes) and one.mark.strokes == other.mark.strokes


def _room_for_label(angle: DrawnAngle) -> float:
    """The radius at which an arc round another leaves room for that one's label between the two."""
    if not angle.mark.label:
        return angle.arc.radius + NESTED
    extent = text_extent(angle.mark.label, "asked" if angle.mark.is_asked else "size")
    strokes = STROKE if angle.mark.strokes else 0.0
    return angle.arc.radius + strokes + 2 * FROM_ARC + 2 * reach_of(extent, angle.middle)


def clear_of(angle: DrawnAngle, near: Sequence[DrawnAngle]) -> DrawnAngle:
    """The angle with a radius at which its arc is told from those of others at its vertex."""
    radius = angle.arc.radius
    for one in near:
        if overlap(angle.arc, one.arc) > TOUCHING:
            with_label = _room_for_label(one)
            fits = min(angle.fits * NESTED_REACH, WIDEST_NESTED)
            radius = max(radius, with_label if with_label < fits else one.arc.radius + NESTED)
        elif _beside(angle.arc, one.arc) and not _is_equal(angle, one) and abs(radius - one.arc.radius) < BESIDE - 1:
            radius = one.arc.radius - BESIDE if one.arc.radius > LEAST_RADIUS + BESIDE else one.arc.radius + BESIDE
    return replace(angle, arc=replace(angle.arc, radius=radius))


def overlap(one: Arc, other: Arc) -> float:
    """The degrees that two arcs round one point share.

    >>> overlap(Arc((0.0, 0.0), 9.0, 0.0, 60.0), Arc((0.0, 0.0), 9.0, 90.0, -50.0))
    20.0
    """
    first, second = _span(one), _span(other)
    return sum(
        max(0.0, min(first[1], second[1] + shift) - max(first[0], second[0] + shift)) for shift in (-360.0, 0.0, 360.0)
    )


def _span(arc: Arc) -> tuple[float, float]:
    low = min(arc.start, arc.start + arc.turn) % 360
    return low, low + abs(arc.turn)


def _beside(one: Arc, other: Arc) -> bool:
    first, second = _span(one), _span(other)
    gaps = (first[0] - second[1], second[0] - first[1])
    return any(abs((gap + 180) % 360 - 180) < TOUCHING for gap in gaps)


def strokes_of(angle: DrawnAngle) -> list[Stroke]:
    """The short strokes that tell equal angles, across the middle of the arc."""
    count, arc = angle.mark.strokes, angle.arc
    step = math.degrees(STROKE_GAP / arc.radius)
    step = min(step, abs(arc.turn) / (count + 1)) if count else step
    bearings = [angle.middle + (number - (count - 1) / 2) * step for number in range(count)]
    return [
        Stroke((polar(arc.centre, at, arc.radius - STROKE), polar(arc.centre, at, arc.radius + STROKE)), "mark")
        for at in bearings
    ]
