"""Where a text may stand: on the bisector of its angle, beside its side or arc, in the widest sector at its point."""

import math
from collections.abc import Iterator, Sequence

from paperaudit.geometry.draw.angle_marks import REACH, STROKE, DrawnAngle
from paperaudit.geometry.draw.elements import Arc, LabelKind, bearing, polar
from paperaudit.geometry.draw.ground import FROM_ARC
from paperaudit.geometry.draw.lettering import Place, Wish
from paperaudit.geometry.draw.type_metrics import reach_of, text_extent
from paperaudit.geometry.figure.plane import Spot, along

FROM_ARM = 1.6
FROM_SIDE = 4.6
FROM_POINT = 3.2
FROM_DOT = 4.0
"""Clear space between a text and an arm, its side, its point."""
NUMBER_AT = 12.0
FARTHEST, ALONG_ARMS = 120.0, 0.75
"""How far from its vertex an angle's label may stand on the bisector, at most, and as a share of the shorter arm."""
SHORT_OF = 45.0
"""An angle's label may always stand this far from its vertex."""
OUTSIDE = (34.0, 46.0, 60.0, 78.0)
"""How far from what it names a label stands that a thin line leads to, where there is no room beside it."""
LETTER_STEPS = (0.0, 3.0, 7.0, 12.0, 17.0)
"""How much farther than need be a letter may stand from its point."""
LED = 4.0
"""What such a line costs, in units of covered length."""
INSIDE_CIRCLE = 2.0
"""What it costs the letter of a point of a circle to stand inside it."""
INNER = 0.8
"""What it costs a length to stand on the inner side of its segment."""
SHARES = ((0.5, 0.0), (0.42, 0.5), (0.58, 0.5), (0.33, 1.0), (0.67, 1.0), (0.25, 2.0), (0.75, 2.0))
"""Where along its side or arc a label stands, and what speaks against it."""


def kind_of(is_asked: bool) -> LabelKind:
    """How a size is set: what is asked for in bold."""
    return "asked" if is_asked else "size"


def inside_wedge(extent: tuple[float, float], arms: tuple[float, float], way: float, gap: float) -> float:
    """The least distance from the vertex, along the bearing `way`, at which a text clears both arms."""
    nearest = 0.0
    for arm in arms:
        off = abs((way - arm + 180) % 360 - 180)
        if off < 90:
            nearest = max(nearest, (reach_of(extent, arm + 90) + gap) / max(math.sin(math.radians(off)), 1e-3))
    return nearest


def angle_wish(angle: DrawnAngle, others: Sequence[DrawnAngle]) -> Wish:
    """Places for an angle's label: outside its arc, on the bisector or near it; at last anywhere, with a line to it."""
    mark = angle.mark
    kind = kind_of(mark.is_asked)
    places = tuple(_angle_places(angle, text_extent(mark.label, kind)))
    rivals = tuple(other.arc.spot(0.5) for other in others if other is not angle and other.has_arc)
    return Wish(mark.label, kind, places, angle.arc.spot(0.5), rivals)


def _angle_places(angle: DrawnAngle, extent: tuple[float, float]) -> Iterator[Place]:
    arc = angle.arc
    arms = (arc.start, arc.start + arc.turn)
    beyond = arc.radius + FROM_ARC + (STROKE if angle.mark.strokes else 0.0)
    for share, against in ((0.0, 0.0), (0.12, 1.0), (-0.12, 1.0), (0.22, 2.5), (-0.22, 2.5)):
        way = angle.middle + share * arc.turn
        from_arc = beyond + reach_of(extent, way)
        least = max(from_arc, inside_wedge(extent, arms, way, FROM_ARM))
        if least < max(SHORT_OF, min(FARTHEST, ALONG_ARMS * angle.fits / REACH)):
            for step in (0.0, 4.0, 9.0, 15.0, 22.0):
                yield Place(
                    polar(arc.centre, way, least + step), against + step * 0.12 + max(0.0, least - SHORT_OF) * 0.04
                )
        else:
            yield Place(polar(arc.centre, way, from_arc), against)
    yield from _led(arc.spot(0.5), extent, angle.middle)


def _led(at: Spot, extent: tuple[float, float], way: float) -> Iterator[Place]:
    """Places round a spot to which a thin line leads."""
    for reach in OUTSIDE:
        for step in range(0, 360, 20):
            centre = polar(at, way + step, reach)
            yield Place(centre, LED + reach * 0.05, (_edge(centre, extent, at), at))


def _edge(centre: Spot, extent: tuple[float, float], towards: Spot) -> Spot:
    """The spot on a text's box (with a little air) that faces another spot."""
    across, down = towards[0] - centre[0], towards[1] - centre[1]
    shares = [
        (half + 1.5) / abs(part) for half, part in ((extent[0] / 2, across), (extent[1] / 2, down)) if abs(part) > 1e-9
    ]
    return along(centre, towards, min(shares, default=0.0))


def number_wish(angle: DrawnAngle) -> Wish:
    """Places for the number of an angle, inside its arc."""
    text = str(angle.mark.number)
    extent = text_extent(text, "number")
    arms = (angle.arc.start, angle.arc.start + angle.arc.turn)
    least = max(NUMBER_AT, inside_wedge(extent, arms, angle.middle, 0.8))
    places = [Place(polar(angle.arc.centre, angle.middle, least + step), step * 0.2) for step in (0.0, 3.0, 6.0, 10.0)]
    return Wish(text, "number", tuple(places), angle.arc.centre)


def side_wish(label: str, is_asked: bool, start: Spot, end: Spot, outwards: Spot, beside: float = 0.0) -> Wish:
    """Places for a length: beside the middle of its segment, in the direction `outwards` first.

    `beside` is how far ticks reach from the segment.
    """
    kind = kind_of(is_asked)
    extent = text_extent(label, kind)
    normal = bearing(start, end) + 90
    reach = FROM_SIDE + reach_of(extent, normal) + beside
    turned = math.radians(normal)
    way = 1.0 if outwards[0] * math.cos(turned) + outwards[1] * math.sin(turned) >= 0 else -1.0
    places = [
        Place(polar(along(start, end, share), normal, sign * (reach + step)), against + inner + 0.2 * step)
        for share, against in SHARES
        for sign, inner in ((way, 0.0), (-way, INNER))
        for step in (0.0, 5.0)
    ]
    centre = along(start, end, 0.5)
    places += _led(centre, extent, normal if way > 0 else normal + 180)
    return Wish(label, kind, tuple(sorted(places, key=lambda place: place.penalty)), centre, beside=(start, end))


def arc_wish(label: str, is_asked: bool, arc: Arc, outwards: bool, beside: float) -> Wish:
    """Places for what an arc measures: outside it (or inside), at its middle first, `beside` away."""
    kind = kind_of(is_asked)
    extent = text_extent(label, kind)
    places = []
    for share, against in SHARES:
        way = arc.start + share * arc.turn
        for sign, other in ((1.0, 0.0), (-1.0, 1.5)) if outwards else ((-1.0, 0.0), (1.0, 1.5)):
            for step in (0.0, 4.0, 9.0, 15.0):
                reach = arc.radius + sign * (beside + FROM_ARC + reach_of(extent, way) + step)
                places.append(Place(polar(arc.centre, way, reach), against + other + 0.15 * step))
    places += _led(arc.spot(0.5), extent, arc.start + arc.turn / 2)
    return Wish(label, kind, tuple(sorted(places, key=lambda place: place.penalty)), arc.spot(0.5))


def letter_wish(name: str, spot: Spot, rays: Sequence[float], has_dot: bool, centres: Sequence[Spot] = ()) -> Wish:
    """Places for a point's letter: in the sectors between the rays (bearings) from it, the widest first.

    `centres` are those of the circles through the point; its letter stands outside them where it can.
    """
    extent = text_extent(name, "letter")
    gap = FROM_DOT if has_dot else FROM_POINT
    places: list[Place] = []
    for width, start in _sectors(rays):
        for share in (0.5, 0.35, 0.65, 0.2, 0.8) if width < 180 else (0.5, 0.35, 0.65, 0.25, 0.75, 0.14, 0.86):
            way = start + share * width
            clear = inside_wedge(extent, (start, start + width), way, FROM_ARM) if width < 180 else 0.0
            near = gap + reach_of(extent, way)
            if width >= 180:
                near = max(near, inside_wedge(extent, (start, start + width), way, FROM_ARM))
            far = max(near, clear)
            against = (far - near) * 0.15 + 1.5 * abs(share - 0.5) * 2 + max(0.0, (150 - width) / 100)
            against += INSIDE_CIRCLE * sum(
                math.cos(math.radians(way - bearing(spot, centre))) > 0 for centre in centres
            )
            places += [Place(polar(spot, way, far + step), against + step * 0.25) for step in LETTER_STEPS]
    return Wish(name, "letter", tuple(sorted(places, key=lambda place: place.penalty)), spot)


def _sectors(rays: Sequence[float]) -> list[tuple[float, float]]:
    """Width and first bearing of each sector between neighbouring rays, the widest first."""
    if not rays:
        return [(360.0, -90.0)]
    ordered = sorted(way % 360 for way in rays)
    following = ordered[1:] + ordered[:1]
    gaps = [((after - before) % 360 or 360.0, before) for before, after in zip(ordered, following, strict=True)]
    return sorted(gaps, key=lambda gap: (-round(gap[0], 3), gap[1]))
