"""Lengths, directions and crossings on a page, whose y grows downwards."""

import math

from paperaudit.readers.draft.page import Point


def towards(start: Point, end: Point) -> float:
    """The direction from `start` to `end` in degrees, 0 to 360, turning clockwise as the page is looked at.

    >>> towards((0, 0), (0, 5))
    90.0
    """
    return math.degrees(math.atan2(end[1] - start[1], end[0] - start[0])) % 360


def apart(one: float, other: float) -> float:
    """The angle between two directions, 0 to 180.

    >>> apart(350, 20)
    30
    """
    return abs((one - other + 180) % 360 - 180)


def slant(one: float, other: float) -> float:
    """The angle between two lines of these directions, 0 to 90.

    >>> slant(10, 185)
    5
    """
    between = apart(one, other)
    return min(between, 180 - between)


def polar(centre: Point, direction: float, reach: float) -> Point:
    """The point `reach` from the centre in a direction in degrees."""
    turned = math.radians(direction)
    return centre[0] + reach * math.cos(turned), centre[1] + reach * math.sin(turned)


def between(start: Point, end: Point, share: float) -> Point:
    """The point at a share of the way from `start` to `end`."""
    return start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1])


def share_of(point: Point, start: Point, end: Point) -> float:
    """Where the foot of `point` lies on the way from `start` (0) to `end` (1).

    >>> share_of((3, 7), (0, 0), (4, 0))
    0.75
    """
    across, down = end[0] - start[0], end[1] - start[1]
    square = across * across + down * down
    return ((point[0] - start[0]) * across + (point[1] - start[1]) * down) / square if square else 0.0


def off_line(point: Point, start: Point, end: Point) -> float:
    """How far `point` lies from the line through two points; positive on its right, as it is walked along.

    >>> off_line((2, 3), (0, 0), (4, 0))
    3.0
    """
    length = math.dist(start, end)
    if not length:
        return math.dist(point, start)
    turned = (end[0] - start[0]) * (point[1] - start[1]) - (end[1] - start[1]) * (point[0] - start[0])
    return turned / length


def off_segment(point: Point, start: Point, end: Point) -> float:
    """How far `point` lies from a segment.

    >>> off_segment((7, 4), (0, 0), (4, 0))
    5.0
    """
    return math.dist(point, between(start, end, min(1.0, max(0.0, share_of(point, start, end)))))


def crossing(one: tuple[Point, Point], other: tuple[Point, Point]) -> tuple[Point, float, float] | None:
    """Where two lines cross and the shares along both, None where they are (nearly) parallel.

    >>> crossing(((0, 0), (4, 0)), ((1, -1), (1, 1)))
    ((1.0, 0.0), 0.25, 0.5)
    """
    (a, b), (c, d) = one, other
    u, v = (b[0] - a[0], b[1] - a[1]), (d[0] - c[0], d[1] - c[1])
    turned = u[0] * v[1] - u[1] * v[0]
    if abs(turned) < 1e-4 * math.hypot(*u) * math.hypot(*v):
        return None
    way = (c[0] - a[0], c[1] - a[1])
    along = (way[0] * v[1] - way[1] * v[0]) / turned
    across = (way[0] * u[1] - way[1] * u[0]) / turned
    return between(a, b, along), along, across


def within(direction: float, start: float, sweep: float, margin: float = 0.0) -> bool:
    """Whether a direction lies in the turn of `sweep` degrees (positive) that begins at `start`.

    >>> within(5, 350, 30), within(40, 350, 30)
    (True, False)
    """
    return (direction - start + margin) % 360 <= sweep + 2 * margin
