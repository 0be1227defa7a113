"""Tells the round strokes of a drawing: circles and arcs by the circle that fits them, dots by their size."""

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass

from paperaudit.readers.draft.drawing.plane import polar, towards
from paperaudit.readers.draft.page import Path, Piece, Point

DOT = 4.0
"""Points: the largest radius of a disc that marks a point."""
RING = 4.0
"""Points: the largest radius of a circle that marks a point without being filled."""
ROUND, ROUND_POINTS = 0.011, 0.2
"""A circle's points lie off it by this share of its radius and so many points at most."""
MARK_RADIUS = 45.0
"""Points: arcs up to this radius may be marks of angles, which a stretched drawing bends a little."""
ROUND_MARK = 0.12
"""The same share for such arcs."""
WHOLE = 352.0
"""Degrees of an arc that closes."""
CENTRED = 2.5
"""Points between the centre of an angle's arc and its vertex."""
ABUTTING = 8.0
"""Degrees by which two arcs are more than one drawn twice."""
STEPS = 4
"""Samples on a Bézier curve."""


@dataclass(frozen=True, slots=True)
class Bow:
    """An arc or a circle: it turns clockwise, as the page is looked at, by `sweep` degrees from `start`."""

    centre: Point
    radius: float
    start: float
    sweep: float
    path: int
    width: float = 1.0
    filled: bool = False
    exact: bool = True

    @property
    def whole(self) -> bool:
        """Whether it is a full circle."""
        return self.sweep >= WHOLE

    @property
    def ends(self) -> tuple[Point, Point]:
        """Its two ends."""
        return polar(self.centre, self.start, self.radius), polar(self.centre, self.start + self.sweep, self.radius)

    @property
    def middle(self) -> Point:
        """The middle of the arc."""
        return polar(self.centre, self.start + self.sweep / 2, self.radius)

    @property
    def length(self) -> float:
        """Along the arc, in points."""
        return self.radius * math.radians(self.sweep)


def dot_of(path: Path, filled: bool) -> tuple[Point, float] | None:
    """Centre and radius of a path that is a dot, else None."""
    left, top, right, bottom = path.box
    wide, high = right - left, bottom - top
    radius = (wide + high) / 4
    if not 0.3 < radius <= (DOT if filled else RING) or abs(wide - high) > 0.35 * radius or len(path.pieces) < 2:
        return None
    centre = (left + right) / 2, (top + bottom) / 2
    points = samples(path.pieces)
    if len(points) < 7 or any(abs(math.dist(point, centre) - radius) > 0.12 * radius + 0.05 for point in points):
        return None
    return centre, radius


def samples(pieces: Sequence[Piece]) -> list[Point]:
    """Points along pieces: the ends of straight ones, some on curved ones."""
    points = [pieces[0].points[0]]
    for piece in pieces:
        steps = 1 if piece.straight else STEPS
        points += [on_piece(piece, step / steps) for step in range(1, steps + 1)]
    return points


def on_piece(piece: Piece, share: float) -> Point:
    """The point of a piece at a share of its parameter."""
    if piece.straight:
        (ax, ay), (bx, by) = piece.points
        return ax + share * (bx - ax), ay + share * (by - ay)
    (ax, ay), (bx, by), (cx, cy), (dx, dy) = piece.points
    rest = 1 - share
    a, b, c, d = rest * rest * rest, 3 * rest * rest * share, 3 * rest * share * share, share * share * share
    return a * ax + b * bx + c * cx + d * dx, a * ay + b * by + c * cy + d * dy


def bow_through(run: Sequence[Piece], path: int, width: float, filled: bool) -> Bow | None:
    """The arc that a smooth run of pieces draws, or None where it is no part of a circle."""
    points = samples(run)
    circle = circle_through(points)
    if circle is None:
        return None
    centre, radius = circle
    off = max(abs(math.dist(point, centre) - radius) for point in points)
    exact = off <= ROUND * radius + ROUND_POINTS
    if not exact and (radius > MARK_RADIUS or off > ROUND_MARK * radius):
        return None
    ways = [towards(centre, point) for point in points]
    turns = [(later - earlier + 180) % 360 - 180 for earlier, later in itertools.pairwise(ways)]
    sweep = sum(turns)
    if abs(sweep) < 2 or any(turn * sweep < 0 and abs(turn) > 0.5 for turn in turns):
        return None
    start = ways[0] if sweep > 0 else ways[-1]
    return Bow(centre, radius, start, min(abs(sweep), 360.0), path, width, filled, exact)


def circle_through(points: Sequence[Point]) -> tuple[Point, float] | None:
    """The circle that fits points best by least squares (Kåsa's method), None where they lie on a line.

    >>> centre, radius = circle_through([(5, 0), (0, 5), (-5, 0), (3, 4)])
    >>> round(abs(centre[0]), 6), round(abs(centre[1]), 6), round(radius, 6)
    (0.0, 0.0, 5.0)
    """
    count = len(points)
    if count < 4:
        return None
    mx, my = sum(x for x, _ in points) / count, sum(y for _, y in points) / count
    uu = uv = vv = uz = vz = zz = 0.0
    for x, y in points:
        u, v = x - mx, y - my
        z = u * u + v * v
        uu, uv, vv = uu + u * u, uv + u * v, vv + v * v
        uz, vz, zz = uz + u * z, vz + v * z, zz + z
    det = uu * vv - uv * uv
    if det <= 1e-9 * max(uu, vv, 1e-12) ** 2:
        return None
    a, b = (uz * vv - vz * uv) / (2 * det), (vz * uu - uz * uv) / (2 * det)
    return (mx + a, my + b), math.sqrt(a * a + b * b + zz / count)


def same_circle(one: Bow, other: Bow, slack: float) -> bool:
    """Whether two arcs are parts of one circle."""
    return math.dist(one.centre, other.centre) <= slack and abs(one.radius - other.radius) <= slack


def joined(bows: Sequence[Bow], slack: float, vertices: Sequence[Point] = ()) -> list[Bow]:
    """The arcs with those of one circle that touch or overlap put together; arcs drawn twice count once.

    Arcs round one of the `vertices` that lie end to end mark angles beside each other and stay apart.
    """
    left = sorted(bows, key=lambda bow: -bow.sweep)
    found: list[Bow] = []
    for bow in left:
        marks = bow.radius <= MARK_RADIUS and any(math.dist(bow.centre, at) <= CENTRED for at in vertices)
        for at, other in enumerate(found):
            if same_circle(bow, other, slack):
                union = _union(other, bow, math.degrees(slack / max(other.radius, slack)))
                if union is not None and not (marks and union.sweep > other.sweep + ABUTTING):
                    found[at] = union
                    break
        else:
            found.append(bow)
    return found if len(found) == len(bows) else joined(found, slack, vertices)


def _union(one: Bow, other: Bow, slack: float) -> Bow | None:
    """One arc in place of two of the same circle, None where they lie apart."""
    ahead = (other.start - one.start) % 360
    behind = (one.start - other.start) % 360
    if ahead <= one.sweep + slack:
        sweep = max(one.sweep, ahead + other.sweep)
        start = one.start
    elif behind <= other.sweep + slack:
        sweep = max(other.sweep, behind + one.sweep)
        start = other.start
    else:
        return None
    return Bow(
        one.centre, one.radius, start, min(sweep, 360.0), one.path, one.width, one.filled or other.filled, one.exact
    )
