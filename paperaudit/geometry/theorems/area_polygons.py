"""The polygons whose areas matter in a figure, and how drawn segments cut them into parts.

Areas matter where the paper names one, or where a figure has two heights of one polygon. From these the
search goes down to the parts that drawn segments cut them into, and up to the triangles and named
shapes that they are parts of.
"""

import math
from collections.abc import Iterator
from functools import lru_cache
from itertools import combinations, pairwise

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.canonical import area_named
from paperaudit.geometry.figure.plane import Spot, share_along, side
from paperaudit.geometry.theorems.incircles import tangential
from paperaudit.geometry.theorems.like_triangles import CLOSE
from paperaudit.model.expression import AreaOf, DistanceOf, SegmentOf
from paperaudit.model.quantity import centre_of_circle

MOST_POLYGONS = 48
"""Polygons that a figure's areas are about at most; those that the paper names come first."""
MOST_CANDIDATES = 80
"""Triangles that are looked at for having a part whose area matters."""
Polygon = tuple[str, ...]
Cut = tuple[Polygon, ...]
"""The parts that a polygon is cut into."""


def polygon(arrangement: Arrangement, points: Polygon) -> Polygon:
    """The corners of a polygon in their canonical order, without those that are straight."""
    return area_named(arrangement, points).points


@lru_cache(maxsize=8)
def polygons(arrangement: Arrangement) -> tuple[Polygon, ...]:
    """Every polygon whose area matters, in canonical order; empty where no area does."""
    found = dict.fromkeys(_named(arrangement))
    found.update(dict.fromkeys(_with_two_heights(arrangement)))
    if not found:
        return ()
    wholes = _candidates(arrangement)
    pending = list(found)
    while pending and len(found) < MOST_POLYGONS:
        one = pending.pop(0)
        parts = [part for cut in cuts(arrangement, one) for part in cut]
        above = [whole for whole in wholes if any(one in cut for cut in cuts(arrangement, whole))]
        for other in (*parts, *above):
            if other not in found:
                found[other] = None
                pending.append(other)
    return tuple(found)[:MOST_POLYGONS]


def _named(arrangement: Arrangement) -> Iterator[Polygon]:
    """Polygons whose area the paper names, or needs for a distance, a segment of a circle or the circle in one."""
    figure = arrangement.figure
    for size in figure.named_sizes:
        match size:
            case AreaOf(points):
                yield polygon(arrangement, points)
            case DistanceOf(point, (start, end)) if _all_joined(arrangement, (point, start, end)):
                yield polygon(arrangement, (point, start, end))
            case SegmentOf("area", arc):
                yield polygon(arrangement, (centre_of_circle(arc.centre), arc.start, arc.end))
    for round_one in tangential(arrangement):
        yield polygon(arrangement, round_one.corners)


def _all_joined(arrangement: Arrangement, corners: Polygon) -> bool:
    sides = zip(corners, corners[1:] + corners[:1], strict=True)
    return all(arrangement.joined(*side) for side in sides)


def feet(arrangement: Arrangement, point: str, start: str, end: str) -> Iterator[str]:
    """The lettered points of a drawn line that are the foot of a drawn perpendicular to it, in the drawing."""
    for foot in arrangement.lines[arrangement.ray(start, end).line]:
        if arrangement.joined(point, foot):
            other = start if foot != start else end
            if abs(arrangement.measured(arrangement.corner(point, foot, other)) - 90) < CLOSE:
                yield foot


def _with_two_heights(arrangement: Arrangement) -> Iterator[Polygon]:
    """Triangles without a right angle with two drawn heights: their area links the two."""
    for triangle in arrangement.triangles:
        heights = [list(feet(arrangement, a, b, c)) for a, b, c in triangle.turned()]
        upright = any(foot in triangle.corners for found in heights for foot in found)
        if not upright and sum(bool(found) for found in heights) > 1:
            yield polygon(arrangement, triangle.corners)


def _candidates(arrangement: Arrangement) -> tuple[Polygon, ...]:
    shapes = [polygon(arrangement, shape.points) for shape, _ in arrangement.figure.shapes]
    triangles = [polygon(arrangement, triangle.corners) for triangle in arrangement.triangles[:MOST_CANDIDATES]]
    return tuple(dict.fromkeys((*shapes, *triangles)))


@lru_cache(maxsize=1024)
def cuts(arrangement: Arrangement, corners: Polygon) -> tuple[Cut, ...]:
    """The ways in which a drawn segment, drawn segments from a point inside, or a figure within, cut a polygon."""
    if len(corners) < 3 or not _simple(arrangement, corners):
        return ()
    rim = _rim(arrangement, corners)
    found = [*_by_chord(arrangement, rim), *_by_spokes(arrangement, rim), *_by_inner(arrangement, corners, rim)]
    return tuple(dict.fromkeys(found))


def _rim(arrangement: Arrangement, corners: Polygon) -> Polygon:
    """The points on the sides of a polygon in order, its corners and those between them."""
    rim: list[str] = []
    for start, end in zip(corners, corners[1:] + corners[:1], strict=True):
        rim.append(start)
        if arrangement.joined(start, end):
            line = arrangement.lines[arrangement.ray(start, end).line]
            first, last = line.index(start), line.index(end)
            between = line[first + 1 : last] if first < last else line[last + 1 : first][::-1]
            rim.extend(between)
    return tuple(rim)


def _by_chord(arrangement: Arrangement, rim: Polygon) -> Iterator[Cut]:
    for first, last in combinations(range(len(rim)), 2):
        start, end = rim[first], rim[last]
        if not arrangement.joined(start, end) or not _inside(arrangement, rim, start, end):
            continue
        parts = (rim[first : last + 1], rim[last:] + rim[: first + 1])
        if all(_encloses(arrangement, part) for part in parts):
            yield tuple(polygon(arrangement, part) for part in parts)


def _by_spokes(arrangement: Arrangement, rim: Polygon) -> Iterator[Cut]:
    """A point inside joined to at least two points of the rim that are not in line with it."""
    spots = [arrangement.at[point] for point in rim]
    for point in arrangement.figure.points:
        if point in rim or not contains(spots, arrangement.at[point]):
            continue
        ends = [
            place
            for place, end in enumerate(rim)
            if arrangement.joined(point, end) and _inside(arrangement, rim, point, end)
        ]
        if len(ends) < 2:
            continue
        parts = []
        for first, last in (*pairwise(ends), (ends[-1], ends[0])):
            run = rim[first : last + 1] if first < last else rim[first:] + rim[: last + 1]
            parts.append((point, *run))
        if all(_encloses(arrangement, part) for part in parts):
            yield tuple(polygon(arrangement, part) for part in parts)


def _by_inner(arrangement: Arrangement, corners: Polygon, rim: Polygon) -> Iterator[Cut]:
    """A named figure within, at least three of whose corners lie on the sides: it and what is left at the corners."""
    for shape, _ in arrangement.figure.shapes:
        inner = polygon(arrangement, shape.points)
        free = [point for point in inner if point not in corners]
        if len(free) < 3 or not set(inner) <= set(rim) or not _all_joined(arrangement, inner):
            continue
        places = sorted(rim.index(point) for point in inner)
        if polygon(arrangement, tuple(rim[place] for place in places)) != inner:
            continue
        runs = [
            rim[first : last + 1] if first < last else rim[first:] + rim[: last + 1]
            for first, last in (*pairwise(places), (places[-1], places[0]))
        ]
        yield (inner, *(polygon(arrangement, run) for run in runs if _encloses(arrangement, run)))


def _encloses(arrangement: Arrangement, corners: Polygon) -> bool:
    return len(area_named(arrangement, corners).points) > 2


def _simple(arrangement: Arrangement, corners: Polygon) -> bool:
    """Whether the sides do not cross each other in the drawing."""
    if len(set(corners)) < len(corners):
        return False
    spots = [arrangement.at[point] for point in corners]
    sides = list(zip(spots, spots[1:] + spots[:1], strict=True))
    return not any(_cross(*one, *two) for one, two in combinations(sides, 2))


def _inside(arrangement: Arrangement, rim: Polygon, start: str, end: str) -> bool:
    """Whether the segment between two points runs inside the polygon from end to end."""
    spots = [arrangement.at[point] for point in rim]
    a, b = arrangement.at[start], arrangement.at[end]
    if not contains(spots, ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)):
        return False
    sides = zip(spots, spots[1:] + spots[:1], strict=True)
    touches = any(_between(arrangement, start, point, end) for point in rim)
    return not touches and not any(_cross(a, b, p, q) for p, q in sides)


def _between(arrangement: Arrangement, start: str, point: str, end: str) -> bool:
    if point in (start, end):
        return False
    line = arrangement.lines[arrangement.ray(start, end).line]
    return point in line and sorted((line.index(start), line.index(end)))[0] < line.index(point) < max(
        line.index(start), line.index(end)
    )


def _cross(a: Spot, b: Spot, p: Spot, q: Spot) -> bool:
    """Whether two segments cross in a point inside both."""
    scale = math.dist(a, b) * math.dist(p, q) * CLOSE
    turns = side(p, a, b), side(q, a, b), side(a, p, q), side(b, p, q)
    if any(abs(turn) <= scale for turn in turns):
        return False
    return (turns[0] > 0) != (turns[1] > 0) and (turns[2] > 0) != (turns[3] > 0)


def contains(corners: list[Spot], spot: Spot) -> bool:
    """Whether a spot lies inside a polygon and not on its rim."""
    within = False
    for start, end in zip(corners, corners[1:] + corners[:1], strict=True):
        (x, y), (p, q) = start, end
        if (
            abs(side(spot, start, end)) <= CLOSE * math.dist(start, end) ** 2
            and 0 <= share_along(spot, start, end) <= 1
        ):
            return False
        if (y > spot[1]) != (q > spot[1]) and spot[0] < x + (spot[1] - y) / (q - y) * (p - x):
            within = not within
    return within
