"""Finds a place for every text: on the bisector of its angle, beside its side, in the widest sector round its point."""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from paperaudit.geometry.draw.angle_marks import STROKE, DrawnAngle
from paperaudit.geometry.draw.elements import Box, Label, LabelKind, Stroke, bearing, polar
from paperaudit.geometry.draw.ground import FROM_ARC, SIZES, Ground, box_round, reach_of, text_extent
from paperaudit.geometry.draw.side_marks import TICK, DrawnSide
from paperaudit.geometry.plane import Spot, along

FROM_ARM = 1.6
FROM_SIDE = 4.6
FROM_POINT = 3.2
FROM_DOT = 4.0
"""Clear space between a text and an arm, its side, its point."""
NUMBER_AT = 12.0
FARTHEST = 80.0
"""How far from its vertex an angle's label may stand on the bisector."""
OUTSIDE = (34.0, 46.0, 60.0)
"""How far from its vertex a label stands that a thin line leads to, where the angle is too narrow for it."""
LETTER_STEPS = (0.0, 3.0, 7.0, 12.0, 17.0)
"""How much farther than need be a letter may stand from its point."""
LED = 4.0
"""What such a line costs, in units of covered length."""
PARTED = 7.0
MISTAKEN = 2.5
BEHIND_ARC = 2.5
CLOSER = 0.8
"""What it costs to stand behind a line, clearly nearer (by this share) to another's arc, or behind another arc."""
INSIDE_CIRCLE = 2.0
"""What it costs the letter of a point of a circle to stand inside it."""
ACROSS_CIRCLE = 1.0
"""What it costs a size to stand on the other side of a circle."""
FINE = 0.5
"""A text may cover this much without another place being looked for."""


@dataclass(frozen=True, slots=True)
class Place:
    """A spot for a text, what speaks against it (in units of covered length), and a thin line to what it names."""

    centre: Spot
    penalty: float = 0.0
    leader: tuple[Spot, Spot] | None = None


@dataclass(frozen=True, slots=True)
class Wish:
    """A text and the places where it may stand, best first.

    `owner` is what the text belongs to: its point, the middle of its arc or side; `rivals` are other
    such spots, which it should not seem to belong to.
    """

    text: str
    kind: LabelKind
    places: tuple[Place, ...]
    owner: Spot
    rivals: tuple[Spot, ...] = ()

    @property
    def extent(self) -> tuple[float, float]:
        """Width and height of the text."""
        return text_extent(self.text, SIZES[self.kind])


@dataclass(slots=True)
class Lettering:
    """The labels of a figure, settled one by one; `covered` says how much is hidden in all."""

    ground: Ground
    labels: list[Label]
    leaders: list[Stroke]
    covered: float = 0.0

    def settle(self, wishes: Iterable[Wish]) -> None:
        """Gives every wish its best place, the ones with least choice first as they come."""
        for wish in wishes:
            place, cost = self._best(wish)
            box = box_round(place.centre, wish.extent)
            self.labels.append(Label(wish.text, place.centre, box, wish.kind))
            self.ground.boxes.append(box)
            self.covered += cost
            if place.leader:
                self.leaders.append(Stroke(place.leader, "thin"))
                self.ground.add_chain(place.leader)

    def _best(self, wish: Wish) -> tuple[Place, float]:
        best, least = wish.places[0], math.inf
        hidden = math.inf
        for place in wish.places:
            if place.penalty >= least:
                continue
            against = place.penalty + self._doubt(wish, place)
            if against >= least:
                continue
            covered = self.ground.covered(box_round(place.centre, wish.extent), least - against)
            if covered + against < least:
                best, least, hidden = place, covered + against, covered
            if covered < FINE and against == 0:
                break
        return best, hidden

    def _doubt(self, wish: Wish, place: Place) -> float:
        """What a place costs because the text would seem to belong to something else."""
        if place.leader:
            return 0.0
        away = math.dist(place.centre, wish.owner)
        doubt = MISTAKEN if any(math.dist(place.centre, rival) < CLOSER * away for rival in wish.rivals) else 0.0
        if self.ground.is_parted(wish.owner, place.centre):
            doubt += PARTED
        if self.ground.is_across_circle(wish.owner, place.centre):
            doubt += PARTED if wish.kind == "letter" else ACROSS_CIRCLE
        if wish.kind != "letter" and self.ground.is_behind_arc(wish.owner, place.centre):
            doubt += BEHIND_ARC
        return doubt


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
    kind: LabelKind = "asked" if mark.is_asked else "size"
    places = tuple(_angle_places(angle, text_extent(mark.label, SIZES[kind])))
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
        if least < FARTHEST:
            for step in (0.0, 4.0, 9.0, 15.0, 22.0):
                yield Place(polar(arc.centre, way, least + step), against + step * 0.12 + max(0.0, least - 45) * 0.05)
        else:
            yield Place(polar(arc.centre, way, from_arc), against)
    at = arc.spot(0.5)
    for reach in OUTSIDE:
        for step in range(0, 360, 20):
            centre = polar(at, angle.middle + step, reach)
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
    extent = text_extent(text, SIZES["number"])
    arms = (angle.arc.start, angle.arc.start + angle.arc.turn)
    least = max(NUMBER_AT, inside_wedge(extent, arms, angle.middle, 0.8))
    places = [Place(polar(angle.arc.centre, angle.middle, least + step), step * 0.2) for step in (0.0, 3.0, 6.0, 10.0)]
    return Wish(text, "number", tuple(places), angle.arc.centre)


def side_wish(drawn: DrawnSide, middle: Spot) -> Wish:
    """Places for a length: beside the middle of its side, away from `middle` (of the figure) first."""
    mark = drawn.mark
    kind: LabelKind = "asked" if mark.is_asked else "size"
    extent = text_extent(mark.label, SIZES[kind])
    normal = bearing(drawn.start, drawn.end) + 90
    reach = FROM_SIDE + reach_of(extent, normal) + (TICK if mark.ticks else 0.0)
    centre = along(drawn.start, drawn.end, 0.5)
    outwards = drawn.outside or (centre[0] - middle[0], centre[1] - middle[1])
    turned = math.radians(normal)
    way = 1.0 if outwards[0] * math.cos(turned) + outwards[1] * math.sin(turned) >= 0 else -1.0
    places = []
    for share, against in ((0.5, 0.0), (0.42, 0.5), (0.58, 0.5), (0.33, 1.0), (0.67, 1.0), (0.25, 2.0), (0.75, 2.0)):
        for sign, inner in ((way, 0.0), (-way, 0.8)):
            places.append(Place(polar(along(drawn.start, drawn.end, share), normal, sign * reach), against + inner))
    return Wish(mark.label, kind, tuple(sorted(places, key=lambda place: place.penalty)), centre)


def letter_wish(name: str, spot: Spot, rays: Sequence[float], has_dot: bool, centres: Sequence[Spot] = ()) -> Wish:
    """Places for a point's letter: in the sectors between the rays (bearings) from it, the widest first.

    `centres` are those of the circles through the point; its letter stands outside them where it can.
    """
    extent = text_extent(name, SIZES["letter"])
    gap = FROM_DOT if has_dot else FROM_POINT
    places: list[Place] = []
    for width, start in _sectors(rays):
        for share in (0.5, 0.35, 0.65) if width < 300 else (0.5, 0.35, 0.65, 0.25, 0.75):
            way = start + share * width
            clear = inside_wedge(extent, (start, start + width), way, FROM_ARM) if width < 180 else 0.0
            near = gap + reach_of(extent, way)
            if width >= 180:
                near = max(near, inside_wedge(extent, (start, start + width), way, FROM_ARM))
            far = max(near, clear)
            against = (far - near) * 0.15 + (0.0 if share == 0.5 else 0.4) + max(0.0, (150 - width) / 100)
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


def total_box(boxes: Iterable[Box]) -> Box:
    """The smallest box round several."""
    every = list(boxes)
    return (
        min(box[0] for box in every),
        min(box[1] for box in every),
        max(box[2] for box in every),
        max(box[3] for box in every),
    )
