"""Light shading for an area that is asked for, and heavy lines round what has its perimeter asked for."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from itertools import pairwise

from paperaudit.geometry.draw.elements import Arc, Circle, Leg, Region, Stroke, distance
from paperaudit.geometry.draw.marks import Marks, Outline, Surface
from paperaudit.geometry.draw.round_signs import arc_between
from paperaudit.geometry.draw.signs import Sign
from paperaudit.geometry.figure.plane import Spot
from paperaudit.model.expression import AreaOf, CircleSize, PerimeterOf, SectorOf, SegmentOf

ON_BOUNDARY = 1.5
"""A spot this near to the boundary of a region is on it, in page units."""


def region_of(surface: Surface, spots: Mapping[str, Spot], circles: Mapping[str, Circle]) -> Region:
    """The part of the page that a surface covers; KeyError where it is not all on the page."""
    match surface:
        case AreaOf(points):
            return Region(spots[points[0]], tuple(Leg(spots[point]) for point in points[1:]))
        case CircleSize(_, centre):
            whole = Arc(circles[centre].centre, circles[centre].radius, 0.0, 360.0)
            return Region(whole.spot(0.0), _legs(whole))
        case SectorOf(_, arc):
            drawn = arc_between(arc, spots, circles[arc.centre])
            return Region(drawn.centre, (Leg(drawn.spot(0.0)), *_legs(drawn)))
        case SegmentOf(_, arc):
            drawn = arc_between(arc, spots, circles[arc.centre])
            return Region(drawn.spot(0.0), _legs(drawn))


def regions_of(marks: Marks, spots: Mapping[str, Spot], circles: Mapping[str, Circle]) -> list[Region]:
    """All that is shaded, and then what is white again in it.

    Nothing is, where a surface is not all on the page, or where one that is taken away lies outside.
    """
    try:
        shaded = [region_of(surface, spots, circles) for surface in marks.shaded]
        holes = [region_of(surface, spots, circles) for surface in marks.holes]
    except KeyError:
        return []
    around = [region.outline() for region in shaded]
    if any(not any(_inside(spot, outline) for outline in around) for hole in holes for spot in hole.outline()):
        return []
    return [*shaded, *(replace(hole, is_hole=True) for hole in holes)]


def _inside(spot: Spot, outline: Sequence[Spot]) -> bool:
    """Whether a spot lies in a region or on its boundary: by the crossings of a level ray."""
    sides = list(zip(outline, [*outline[1:], outline[0]], strict=True))
    if any(distance(spot, *ends) < ON_BOUNDARY for ends in sides):
        return True
    crossed = [(x, y, p, q) for (x, y), (p, q) in sides if (y > spot[1]) != (q > spot[1])]
    return sum(x + (spot[1] - y) * (p - x) / (q - y) > spot[0] for x, y, p, q in crossed) % 2 == 1


def outline_of(outline: Outline, spots: Mapping[str, Spot], circles: Mapping[str, Circle]) -> Sign:
    """The lines and arcs round a surface, heavy; KeyError where they are not all on the page."""
    match outline:
        case PerimeterOf(points):
            return Sign(_chain(*(spots[point] for point in (*points, points[0]))))
        case CircleSize(_, centre):
            centre_at, radius = circles[centre].centre, circles[centre].radius
            return Sign((), tuple(Arc(centre_at, radius, start, 180.0, "heavy") for start in (0.0, 180.0)))
        case SectorOf(_, arc):
            drawn = arc_between(arc, spots, circles[arc.centre])
            return Sign(_chain(drawn.spot(0.0), drawn.centre, drawn.spot(1.0)), (_heavy(drawn),))
        case SegmentOf(_, arc):
            drawn = arc_between(arc, spots, circles[arc.centre])
            return Sign(_chain(drawn.spot(0.0), drawn.spot(1.0)), (_heavy(drawn),))


def _heavy(arc: Arc) -> Arc:
    return Arc(arc.centre, arc.radius, arc.start, arc.turn, "heavy")


def _chain(*spots: Spot) -> tuple[Stroke, ...]:
    return tuple(Stroke(pair, "heavy") for pair in pairwise(spots))


def _legs(arc: Arc) -> tuple[Leg, ...]:
    """An arc in two halves, so that a whole circle has two different ends."""
    return tuple(Leg(arc.spot(share), arc.radius, arc.turn / 2) for share in (0.5, 1.0))
