"""What a rough drawing settles: the order of points on a line and the way that each angle turns."""

import math
from dataclasses import replace
from itertools import combinations, pairwise

from paperaudit.geometry.coordinates.circle_order import arcs_of
from paperaudit.geometry.figure.figure import (
    Condition,
    Convex,
    DrawnTurn,
    Figure,
    InLine,
    Ordered,
    ParallelPair,
    SameWay,
    SideOfLine,
)
from paperaudit.geometry.figure.plane import middle_of_circle, side
from paperaudit.model.expression import AngleOf, ArcOf
from paperaudit.model.quantity import centre_of_circle

CLEAR_TURN = math.sin(math.radians(3))
"""Below 3° of turn, a hand-drawn angle does not say which way it opens."""

DOUBTFUL_TURN = math.sin(math.radians(15))
"""Below 15°, a turn of a rough sketch is given up where no figure keeps it."""

UNSURE = 25
"""Degrees from nothing or from half a circle within which a sketch does not tell a minor arc from a major one."""

FROM_SKETCH = -1
"""The label of conditions that no given states."""


def settled_by_sketch(figure: Figure, clear: float = CLEAR_TURN) -> Figure:
    """The figure with what its sketch settles added as conditions; nothing is measured on it.

    `clear` is the least sine of a turn that says which way an angle opens.
    A stretched sketch settles the same things, since stretching keeps order and turning.
    """
    at = {name: (x, y) for name, x, y in figure.sketch}
    if len(at) < 3:
        return figure
    conditions = [_as_drawn(condition, at) for condition in figure.conditions if not _overruled(condition, at)]
    conditions += [turn for vertex in figure.points if vertex in at for turn in _turns(figure, vertex, at, clear)]
    if figure.arcs:
        conditions += [turn for circle in figure.circles.items() for turn in _round_circle(figure, circle, at, clear)]
    return replace(figure, conditions=tuple(conditions))


def _ordered(condition: Condition, at: dict[str, tuple[float, float]]) -> Condition:
    if not isinstance(condition, InLine) or not all(point in at for point in condition.points):
        return condition
    far = max(combinations(condition.points, 2), key=lambda pair: math.dist(at[pair[0]], at[pair[1]]))
    middle = next(point for point in condition.points if point not in far)
    return Ordered(far[0], middle, far[1], condition.label)


def _as_drawn(condition: Condition, at: dict[str, tuple[float, float]]) -> Condition:
    """A condition whose printed-page convention the sketch overrules: reflex corners, the direction of parallels."""
    match condition:
        case InLine():
            return _ordered(condition, at)
        case Convex(points, label) if set(points) <= set(at):
            return Convex(points, label, _reflex_corners(points, at))
        case ParallelPair((a, b), (c, d)) if {a, b, c, d} <= set(at):
            one, two = ((at[q][0] - at[p][0], at[q][1] - at[p][1]) for p, q in ((a, b), (c, d)))
            return replace(condition, same_way=one[0] * two[0] + one[1] * two[1] > 0)
        case SameWay(first, second) if set(first + second) <= set(at):
            return replace(condition, label=FROM_SKETCH)
    return condition


def _overruled(condition: Condition, at: dict[str, tuple[float, float]]) -> bool:
    """Whether the sketch shows a point on the other side of a line than a convention of the printed page."""
    if not isinstance(condition, SideOfLine) or not condition.convention:
        return False
    points = (condition.first, condition.second, *condition.line)
    if not all(point in at for point in points):
        return False
    first, second, start, end = (at[point] for point in points)
    return (side(first, start, end) * side(second, start, end) > 0) != condition.same


def _reflex_corners(points: tuple[str, ...], at: dict[str, tuple[float, float]]) -> tuple[str, ...]:
    spots = [at[point] for point in points]
    area = sum(x * q - p * y for (x, y), (p, q) in zip(spots, spots[1:] + spots[:1], strict=True))
    count = len(points)
    return tuple(points[i] for i in range(count) if side(spots[(i + 1) % count], spots[i - 1], spots[i]) * area < 0)


def _turns(figure: Figure, vertex: str, at: dict[str, tuple[float, float]], clear: float) -> list[DrawnTurn]:
    arms = [
        next((point for point in line if point != vertex and point in at), None)
        for line in figure.lines
        if vertex in line
    ]
    found = []
    for arm, other in combinations([arm for arm in arms if arm], 2):
        way = clear_way(figure, AngleOf(arm, vertex, other), clear)
        if way:
            found.append(DrawnTurn(vertex, arm, other, way, FROM_SKETCH))
    return found


def _round_circle(
    figure: Figure, circle: tuple[str, tuple[str, ...]], at: dict[str, tuple[float, float]], clear: float
) -> list[DrawnTurn]:
    """The order of a circle's points, seen from one of them, and on which side of its centre each named arc lies."""
    name, points = circle
    centre = centre_of_circle(name)
    on = [point for point in points if point in at]
    if not on:
        return []
    x, y = (sum(at[point][axis] for point in on) / len(on) for axis in (0, 1))
    first, *others = sorted(on, key=lambda point: math.atan2(at[point][1] - y, at[point][0] - x))
    turns = [AngleOf(one, first, two) for one, two in pairwise(others)]
    ways = {turn: clear_way(figure, turn, clear) for turn in turns}
    named = [arc for condition in figure.conditions for arc in arcs_of(condition) if arc.centre == name]
    for arc in named:
        turn = AngleOf(arc.start, centre, arc.end)
        ways[turn] = clear_way(figure, turn, clear) if centre in at else _way_of_arc(arc, {p: at[p] for p in on})
    return [DrawnTurn(turn.vertex, turn.arm, turn.other, way, FROM_SKETCH) for turn, way in ways.items() if way]


def _way_of_arc(arc: ArcOf, at: dict[str, tuple[float, float]]) -> int:
    """The way round the circle of a minor arc, of a circle whose centre has no letter; 0 where it is not sure.

    An arc that is named by its ends has no other named point on it where the rest of the circle has
    some, unless the circle that fits the points best shows it as more than half: a stretched sketch
    may have another centre. Where neither part is free of points, it has to look clearly less than half.
    """
    if arc.through or len(at) < 3 or not {arc.start, arc.end} <= at.keys():
        return 0
    x, y = middle_of_circle(list(at.values()))
    bearings = {point: math.degrees(math.atan2(q - y, p - x)) for point, (p, q) in at.items()}
    turn = (bearings[arc.end] - bearings[arc.start]) % 360
    along = [(bearings[p] - bearings[arc.start]) % 360 < turn for p in at if p not in (arc.start, arc.end)]
    free = [not any(along), all(along)]
    if free[0] != free[1] and not arc.major:
        looks = turn if free[0] else 360 - turn
        way = 1 if free[0] else -1
        return way if looks < 180 + UNSURE / 2 else 0
    if min(turn, 360 - turn, abs(turn - 180)) < UNSURE:
        return 0
    return 1 if turn < 180 else -1


def clear_way(figure: Figure, size: AngleOf, clear: float = CLEAR_TURN) -> int:
    """The way (+1 anticlockwise, −1) in which the sketch opens an angle, 0 where it does not say clearly."""
    at = {name: (x, y) for name, x, y in figure.sketch}
    if not {size.arm, size.vertex, size.other} <= set(at):
        return 0
    vertex, arm, other = at[size.vertex], at[size.arm], at[size.other]
    sizes = math.dist(vertex, arm) * math.dist(vertex, other)
    sine = side(other, vertex, arm) / sizes if sizes else 0.0
    if abs(sine) < clear:
        return 0
    return 1 if sine > 0 else -1
