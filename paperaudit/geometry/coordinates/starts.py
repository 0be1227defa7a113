"""Rough first positions for the points of a figure, from which the drawing is computed."""

import math
import random

from paperaudit.geometry.figure.figure import (
    Figure,
    InLine,
    InsidePolygon,
    OnCircle,
    Ordered,
    ParallelPair,
    RoundOrder,
    SideOfLine,
)
from paperaudit.geometry.figure.plane import along, middle_of_circle, mirrored, side

Positions = dict[str, tuple[float, float]]

_PASSES = 8
"""How often the conditions are gone through; each pass moves mostly the points mentioned last."""

OFF_CIRCLE = 0.08
"""How far the corners of a polygon start from one circle, of radius 1: they are on one only where the words say so."""
OTHER_MOVER = 0.4
"""How often another point than the last mentioned is moved, so that no order of statements blocks a figure."""


SHAKE, FURTHER_SHAKE = 0.015, 0.02
"""How far a point of a sketch is moved at most, as a share of the sketch, at first and more with each start."""
STRETCH = 1.1
"""Logarithm of the most that a sketch is stretched by: threefold."""


def start_positions(figure: Figure, seed: int) -> Positions:
    """Positions near to what the words say; the same seed gives the same positions.

    A sketch is taken as it stands, scaled to unit size and lightly shaken, and stretched for seeds above 0.
    """
    chance = random.Random(seed * 7919 + 17)
    at: Positions = _sketched(figure, chance, seed)
    if not at:
        _place_shapes(figure, chance, at)
    for condition in figure.conditions:
        if isinstance(condition, RoundOrder):
            _place_round(condition, chance, at)
    placed = set(at)
    for condition in figure.conditions:
        if isinstance(condition, OnCircle) and not figure.sketch:
            _place_on_circle(condition, chance, at, as_named=seed % 2 == 0)
    for point in figure.points:
        at.setdefault(point, (chance.uniform(-1.2, 1.2), chance.uniform(-1.2, 1.2)))
    settled = placed if figure.sketch else set()
    if not settled.issuperset(figure.points):
        for _ in range(_PASSES):
            _pass(figure, chance, at, settled)
    return at


def _sketched(figure: Figure, chance: random.Random, seed: int) -> Positions:
    """The sketch in unit size, shaken so that nothing in it is equal by chance, from seed 1 on stretched too.

    A sketch may have been stretched itself; stretching keeps what it settles.
    """
    points = [(name, x, y) for name, x, y in figure.sketch if name in figure.points]
    if len(points) < 2:
        return {}
    middle_x = sum(x for _, x, _ in points) / len(points)
    middle_y = sum(y for _, _, y in points) / len(points)
    size = max(max(abs(x - middle_x), abs(y - middle_y)) for _, x, y in points) or 1.0
    shake = SHAKE + FURTHER_SHAKE * min(seed, 5)
    bearing, factor = chance.uniform(0, math.pi), math.exp(chance.uniform(-STRETCH, STRETCH)) if seed else 1.0
    along, across = math.cos(bearing), math.sin(bearing)
    at: Positions = {}
    for name, x, y in points:
        u, v = (x - middle_x) / size, (y - middle_y) / size
        further = (factor - 1) * (u * along + v * across)
        at[name] = (
            u + further * along + shake * chance.uniform(-1, 1),
            v + further * across + shake * chance.uniform(-1, 1),
        )
    return at


def _place_shapes(figure: Figure, chance: random.Random, at: Positions) -> None:
    polygons = sorted((shape.points for shape, _ in figure.shapes), key=lambda points: -len(points))
    for points in polygons:
        missing = [point for point in points if point not in at]
        if len(missing) == len(points):
            centre = (0.0, 0.0) if not at else (chance.uniform(-1.5, 1.5), chance.uniform(-1.5, 1.5))
            turn, way = chance.uniform(0, 2 * math.pi), 1
            for index, point in enumerate(points):
                bearing = turn + way * 2 * math.pi * (index + chance.uniform(-0.22, 0.22)) / len(points)
                reach = 1 + OFF_CIRCLE * math.cos(bearing * 2.7)
                at[point] = (centre[0] + reach * math.cos(bearing), centre[1] + reach * math.sin(bearing))
        elif len(points) == 3 and len(missing) == 1:
            first, second = (at[point] for point in points if point != missing[0])
            at[missing[0]] = _apex(first, second, chance)


def _apex(first: tuple[float, float], second: tuple[float, float], chance: random.Random) -> tuple[float, float]:
    across = (second[0] - first[0], second[1] - first[1])
    along, out = chance.uniform(0.2, 0.8), chance.choice((-1, 1)) * chance.uniform(0.5, 1.1)
    return first[0] + along * across[0] - out * across[1], first[1] + along * across[1] + out * across[0]


def _place_round(condition: RoundOrder, chance: random.Random, at: Positions) -> None:
    centre = at.setdefault(condition.centre, (chance.uniform(-0.2, 0.2), chance.uniform(-0.2, 0.2)))
    count = len(condition.points)
    turn = chance.uniform(0, 2 * math.pi)
    for index, point in enumerate(condition.points):
        bearing = turn + 2 * math.pi * (index + chance.uniform(-0.3, 0.3)) / count
        reach = chance.uniform(0.7, 1.2)
        at.setdefault(point, (centre[0] + reach * math.cos(bearing), centre[1] + reach * math.sin(bearing)))


def _place_on_circle(circle: OnCircle, chance: random.Random, at: Positions, as_named: bool) -> None:
    """Puts the points that have no place yet round the circle, one after the other as named, or in any order."""
    known = [at[point] for point in circle.points if point in at]
    missing = [point for point in circle.points if point not in at]
    if not as_named:
        chance.shuffle(missing)
    middle = (sum(x for x, _ in known) / len(known), sum(y for _, y in known) / len(known)) if len(known) > 1 else None
    centre = at.setdefault(circle.centre, middle or (chance.uniform(-0.5, 0.5), chance.uniform(-0.5, 0.5)))
    reach = sum(math.dist(centre, spot) for spot in known) / len(known) if known else chance.uniform(0.7, 1.1)
    turn = chance.uniform(0, 2 * math.pi)
    for index, point in enumerate(missing):
        bearing = turn + 2 * math.pi * (index + chance.uniform(-0.3, 0.3)) / len(missing)
        at[point] = (centre[0] + reach * math.cos(bearing), centre[1] + reach * math.sin(bearing))


def _pass(figure: Figure, chance: random.Random, at: Positions, settled: set[str]) -> None:
    rank = {point: index for index, point in enumerate(figure.points)}

    def last(*points: str) -> str | None:
        free = [point for point in points if point not in settled]
        if free and chance.random() < OTHER_MOVER:
            return chance.choice(free)
        return max(free, key=rank.__getitem__) if free else None

    for condition in figure.conditions:
        match condition:
            case Ordered(first, middle, end):
                mover = last(first, middle, end)
                if mover == middle:
                    at[middle] = along(at[first], at[end], chance.uniform(0.3, 0.7))
                elif mover == end:
                    at[end] = along(at[first], at[middle], chance.uniform(1.4, 2.0))
                elif mover == first:
                    at[first] = along(at[end], at[middle], chance.uniform(1.4, 2.0))
            case InLine((first, second, third)):
                mover = last(first, second, third)
                others = [point for point in (first, second, third) if point != mover]
                if mover:
                    at[mover] = along(at[others[0]], at[others[1]], chance.choice((-0.7, 0.5, 1.7)))
            case ParallelPair((a, b), (c, d), _, same_way):
                mover = last(c, d) or last(a, b)
                if mover:
                    way = -1.0 if same_way is False else 1.0
                    if same_way is None and any({a, b, c, d} <= set(shape.points) for shape, _ in figure.shapes):
                        way = _leaning(at, (a, b), (c, d))
                    _align(at, (a, b), (c, d), mover, chance, way)
            case OnCircle(centre, points):
                _gather(at, centre, points, settled)
            case InsidePolygon(point, polygon) if point not in settled:
                weights = [chance.uniform(0.3, 1) for _ in polygon]
                at[point] = (
                    sum(w * at[p][0] for w, p in zip(weights, polygon, strict=True)) / sum(weights),
                    sum(w * at[p][1] for w, p in zip(weights, polygon, strict=True)) / sum(weights),
                )
            case SideOfLine(first, second, line, same) if first not in settled:
                if (side(at[first], at[line[0]], at[line[1]]) > 0) != (
                    (side(at[second], at[line[0]], at[line[1]]) > 0) == same
                ):
                    at[first] = mirrored(at[first], at[line[0]], at[line[1]])


def _gather(at: Positions, centre: str, points: tuple[str, ...], settled: set[str]) -> None:
    """Puts points at one distance from their centre, which moves to their middle if it is the only one free."""
    if centre not in settled and len(points) > 2 and settled >= set(points):
        at[centre] = middle_of_circle([at[point] for point in points])
        return
    reach = sum(math.dist(at[point], at[centre]) for point in points) / len(points) or 1.0
    for point in points:
        if point not in settled:
            away = math.dist(at[point], at[centre]) or 1.0
            at[point] = along(at[centre], at[point], reach / away)


def _leaning(at: Positions, one: tuple[str, str], two: tuple[str, str]) -> float:
    """+1 where two segments lean the same way as they stand, else −1: what round a polygon is named stays round it."""
    (ax, ay), (bx, by) = ((at[end][0] - at[start][0], at[end][1] - at[start][1]) for start, end in (one, two))
    return 1.0 if ax * bx + ay * by > 0 else -1.0


def _align(
    at: Positions, lead: tuple[str, str], path: tuple[str, str], mover: str, chance: random.Random, way: float
) -> None:
    (a, b), (c, d) = lead, path
    if mover in lead:
        lead, path = path, lead
        (a, b), (c, d) = lead, path
    reach = way * chance.uniform(0.7, 1.3)
    step = (reach * (at[b][0] - at[a][0]), reach * (at[b][1] - at[a][1]))
    if mover == d:
        at[d] = (at[c][0] + step[0], at[c][1] + step[1])
    else:
        at[c] = (at[d][0] - step[0], at[d][1] - step[1])
