"""Arcs measured outside their circles, and radii and diameters that only their labels need."""

import math
from collections.abc import Mapping, Sequence

from paperaudit.geometry.draw.elements import Arc, Circle, Stroke, bearing, distance, polar
from paperaudit.geometry.draw.ground import Ground
from paperaudit.geometry.draw.marks import ArcMark, RadiusMark
from paperaudit.geometry.draw.signs import Sign, across, head_towards
from paperaudit.geometry.draw.wishes import arc_wish, side_wish
from paperaudit.geometry.figure.plane import Spot
from paperaudit.model.expression import ArcOf

OFF = 6.0
"""How far from its circle an arc is measured."""
RING = 20.0
"""How much further outside one is measured that runs along another."""
TRIMMED = 10.0
"""How much of it is left out at each end, where the letters stand."""
SHORTEST = 26.0
"""Least length of such an arc; the label of a shorter one stands beside the circle itself."""
STROKE, STROKE_GAP = 4.2, 3.4
"""Half length of a stroke across the circle, and the gap between two."""
SPACE = 26.0
"""Clear space round a drawn radius beyond which more is no better."""
RADII_APART = 60.0
"""Degrees between two such lines of circles about one centre."""


def arc_between(arc: ArcOf, spots: Mapping[str, Spot], circle: Circle) -> Arc:
    """An arc as it lies on the page; KeyError where one of its points has no place there."""
    first = bearing(circle.centre, spots[arc.start])
    turn = (bearing(circle.centre, spots[arc.end]) - first) % 360
    if arc.through:
        is_clockwise = (bearing(circle.centre, spots[arc.through]) - first) % 360 < turn
    else:
        is_clockwise = (turn > 180) == arc.major
    return Arc(circle.centre, circle.radius, first, turn if is_clockwise else turn - 360)


def rings_of(marks: Sequence[ArcMark], spots: Mapping[str, Spot], circles: Mapping[str, Circle]) -> list[int]:
    """For each arc in which ring outside its circle it is measured: one that runs along others goes round them."""
    rings = [0] * len(marks)
    measured: list[tuple[int, ArcMark, Arc]] = []
    for number, mark in enumerate(marks):
        if mark.label and not mark.is_further and mark.arc.centre in circles:
            measured.append((number, mark, arc_between(mark.arc, spots, circles[mark.arc.centre])))
    measured.sort(key=lambda entry: abs(entry[2].turn))
    for place, (number, mark, arc) in enumerate(measured):
        below = [
            rings[other]
            for other, shorter, one in measured[:place]
            if shorter.arc.centre == mark.arc.centre and _run_together(one, arc)
        ]
        rings[number] = max(below, default=-1) + 1
    return rings


def _run_together(one: Arc, other: Arc) -> bool:
    """Whether two arcs of a circle have more than an end in common."""
    first, second = (min(arc.start, arc.start + arc.turn) for arc in (one, other))
    apart = (second - first) % 360
    return apart < abs(one.turn) - 1 or 360 - apart < abs(other.turn) - 1


def arc_sign(mark: ArcMark, spots: Mapping[str, Spot], circle: Circle, ground: Ground, ring: int = 0) -> Sign:
    """Strokes across the arc for its class, and a thin arc with two arrow heads along it that has its label."""
    off = OFF + ring * RING
    arc = arc_between(mark.arc, spots, circle)
    step = math.degrees(STROKE_GAP / arc.radius) / max(abs(arc.turn), 1.0)
    strokes = tuple(
        across(arc, 0.5 + (number - (mark.strokes - 1) / 2) * step, STROKE) for number in range(mark.strokes)
    )
    if not mark.label:
        return Sign(strokes)
    if mark.is_further:
        return Sign(strokes, (), (arc_wish(mark.label, mark.is_asked, arc, True, off),))
    beside = [_beside(arc, sign * off) for sign in ((1.0, -1.0) if ring == 0 else (1.0,))]
    shown = [Arc(one.centre, one.radius, one.start, one.turn, "thin") for one in beside if one]
    if not shown:
        return Sign(strokes, (), (arc_wish(mark.label, mark.is_asked, arc, True, 0.0),))
    best = min(shown, key=lambda one: ground.crossed([one.spot(step / 24) for step in range(25)]))
    way = math.copysign(90.0, best.turn)
    heads = (
        head_towards(best.spot(0.0), best.start - way),
        head_towards(best.spot(1.0), best.start + best.turn + way),
    )
    wish = arc_wish(mark.label, mark.is_asked, arc, best.radius > arc.radius, off)
    return Sign((*strokes, *heads), (best,), (wish,))


def _beside(arc: Arc, off: float) -> Arc | None:
    """The arc beside another, cut short at both ends; None where nothing worth the ink is left."""
    radius = arc.radius + off
    trimmed = math.copysign(math.degrees(TRIMMED / radius), arc.turn)
    turn = arc.turn - 2 * trimmed
    if turn * arc.turn <= 0 or math.radians(abs(turn)) * radius < SHORTEST:
        return None
    return Arc(arc.centre, radius, arc.start + trimmed, turn)


def radius_sign(
    mark: RadiusMark, circle: Circle, spots: Mapping[str, Spot], ground: Ground, before: Sequence[Spot] = ()
) -> Sign:
    """A thin line from the centre to the circle, or right across it, where there is most room for it and its label.

    `before` are the ends of such lines that are drawn already, from which it keeps away.
    """
    taken = [bearing(circle.centre, spot) for spot in before if math.dist(spot, circle.centre) > 1e-6]
    others = [spot for spot in spots.values() if math.dist(spot, circle.centre) > 1e-6]

    def room(way: float) -> tuple[int, float, float]:
        start, end = _ends(mark, circle, way)
        clear = min([SPACE, *(distance(spot, start, end) for spot in others)])
        near = any(abs((way - other + 180) % 360 - 180) < RADII_APART for other in taken)
        return -ground.crossed([start, end]) - near, round(clear, 3), -abs((way + 30 + 180) % 360 - 180)

    way = max(range(0, 360, 10), key=room)
    start, end = _ends(mark, circle, way)
    heads = [head_towards(end, way)]
    if mark.kind == "diameter":
        heads.append(head_towards(start, way + 180))
    wish = side_wish(mark.label, mark.is_asked, start, end, (0.0, -1.0))
    return Sign((Stroke((start, end), "thin"), *heads), (), (wish,))


def _ends(mark: RadiusMark, circle: Circle, way: float) -> tuple[Spot, Spot]:
    far = polar(circle.centre, way, circle.radius)
    return (circle.centre if mark.kind == "radius" else polar(circle.centre, way, -circle.radius)), far
