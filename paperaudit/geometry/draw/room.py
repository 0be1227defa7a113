"""How much room a drawing has, and what two drawings of one figure must have in common to look alike."""

import math
from collections.abc import Iterator, Mapping
from itertools import combinations, pairwise

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.realise import Drawing
from paperaudit.geometry.draw.circles import outlines
from paperaudit.geometry.draw.elements import bearing, distance
from paperaudit.geometry.figure.figure import HIDDEN
from paperaudit.geometry.figure.plane import Spot, side
from paperaudit.model.expression import AngleOf

APART, CLEAR, OPEN, FAR = 0.5, 0.15, 30.0, 3.5
"""Ample room: of two points and of a point and a line, in terms of the figure's radius; of an angle in degrees;
and how far apart points may be, in terms of that radius, before their circle looks small."""
EXACTLY = 1e-4
NEARLY_RIGHT, MISLEADING = 6.0, 0.9
"""Degrees within which an angle that is not right looks so, and what one that does costs."""
ALIKE = 3.0
"""Of two circles, the larger radius in terms of the smaller one before the smaller looks small."""


def room(arrangement: Arrangement, at: Mapping[str, Spot]) -> float:
    """How far a drawing is from being cramped: its nearest points, its narrowest angle, points that a line misses."""
    shown = {name: spot for name, spot in at.items() if not name.startswith(HIDDEN)}
    spread = max((math.dist(one, other) for one, other in combinations(shown.values(), 2)), default=1.0) or 1.0
    radii = [circle.radius for circle in outlines(arrangement.figure, at).values()]
    radius = max(radii, default=spread / 2.5)
    apart = min((math.dist(one, other) for one, other in combinations(shown.values(), 2)), default=radius) / radius
    misses = [
        distance(spot, at[line[0]], at[line[-1]]) / radius
        for line in arrangement.lines
        for name, spot in shown.items()
        if name not in line
    ]
    corners = [size_of(at, corner) for corner in corners_of(arrangement)]
    narrowest = min(corners, default=OPEN)
    score = min(1.0, apart / APART) + min(1.0, min(misses, default=CLEAR) / CLEAR) + min(1.0, narrowest / OPEN)
    off_right = [abs(corner - 90) for corner in corners if abs(corner - 90) > EXACTLY]
    score -= MISLEADING * max(0.0, 1 - min(off_right, default=NEARLY_RIGHT) / NEARLY_RIGHT)
    score -= max(0.0, radius / min(radii, default=radius) / ALIKE - 1.0)
    return round(score - max(0.0, spread / radius / FAR - 1.0), 6)


def is_alike(arrangement: Arrangement, at: Mapping[str, Spot]) -> bool:
    """Whether other positions have the arrangement's order and turning, and its circles lie as they do."""
    other = Arrangement(arrangement.figure, Drawing(dict(at), {}))
    turns = {_turn(arrangement.at, corner) * _turn(at, corner) for corner in _rays_apart(arrangement)}
    return (
        len(turns) < 2
        and other.signature == arrangement.signature
        and _nests(arrangement, at) == _nests(arrangement, arrangement.at)
    )


def _rays_apart(arrangement: Arrangement) -> Iterator[AngleOf]:
    """The angles between any two rays from one point along different lines."""
    for rays in arrangement.rays.values():
        for one, other in combinations(rays, 2):
            if one.line != other.line:
                yield arrangement.between(one, other)


def _turn(at: Mapping[str, Spot], corner: AngleOf) -> int:
    """+1 where an angle opens anticlockwise from its first arm, else −1."""
    return 1 if side(at[corner.other], at[corner.vertex], at[corner.arm]) > 0 else -1


def _nests(arrangement: Arrangement, at: Mapping[str, Spot]) -> list[object]:
    """Which circles cross, and which points are inside which circle."""
    circles = outlines(arrangement.figure, at)
    found: list[object] = []
    for (first, one), (second, two) in combinations(sorted(circles.items()), 2):
        gap, slack = math.dist(one.centre, two.centre), 1e-6 * (one.radius + two.radius)
        is_apart = gap > one.radius + two.radius + slack
        inside = gap < abs(one.radius - two.radius) - slack
        found.append((first, second, is_apart, inside and (one.radius > two.radius, True)))
    for centre, circle in sorted(circles.items()):
        on = arrangement.circles.get(centre, ())
        found.append(
            [name for name in sorted(at) if name not in on and math.dist(at[name], circle.centre) < circle.radius]
        )
    return found


def size_of(at: Mapping[str, Spot], size: AngleOf) -> float:
    """The degrees of an angle between points as they are placed."""
    turn = abs((bearing(at[size.vertex], at[size.other]) - bearing(at[size.vertex], at[size.arm]) + 180) % 360 - 180)
    return 360 - turn if size.reflex else turn


def corners_of(arrangement: Arrangement) -> list[AngleOf]:
    """The angles between neighbouring rays."""
    return [
        arrangement.between(one, other)
        for rays in arrangement.rays.values()
        for one, other in pairwise(rays)
        if one.line != other.line
    ]
