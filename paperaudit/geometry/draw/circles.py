"""The circles of a figure: where their centres are, how large they are, and whether a drawing shows them round."""

import math
from collections.abc import Iterator, Mapping

import numpy as np

from paperaudit.geometry.draw.elements import Circle, distance
from paperaudit.geometry.figure.figure import HIDDEN, Balance, Figure, InLine, OnCircle, TangentAt
from paperaudit.geometry.figure.plane import Spot
from paperaudit.model.expression import DistanceOf

ROUND = 0.01
"""Share of the radius by which points may be off a circle that is drawn; drawings are exact to 1e-9."""
SETTLED = 1e-6
"""Singular values below this share of the largest say nothing about where a centre is."""
FLAT = 0.4
"""How far from a chord that nothing else binds its circle's centre is put, in terms of the chord."""


def circles_of(figure: Figure) -> tuple[OnCircle, ...]:
    """The circles that can be drawn: a lettered centre with a point, or at least two points."""
    return tuple(
        condition
        for condition in figure.conditions
        if isinstance(condition, OnCircle) and (len(condition.points) > 1 or not condition.centre.startswith(HIDDEN))
    )


def outlines(figure: Figure, at: Mapping[str, Spot]) -> dict[str, Circle]:
    """Every circle by its name, mostly its centre's; one whose points are not at one distance is left out."""
    found = {}
    for circle in circles_of(figure):
        reach = [math.dist(at[circle.centre], at[point]) for point in circle.points]
        radius = sum(reach) / len(reach)
        if max(reach) - min(reach) <= ROUND * radius:
            found[circle.key] = Circle(at[circle.centre], radius)
    return found | {name: circle for name, circle in _incircles(figure, at) if name not in found}


def _incircles(figure: Figure, at: Mapping[str, Spot]) -> Iterator[tuple[str, Circle]]:
    """The circles in polygons that the question speaks of without a letter for their centre or a point of them."""
    for condition in figure.conditions:
        match condition:
            case Balance(DistanceOf(point, path), reason="incentre") if point.startswith(HIDDEN) and point in at:
                yield point, Circle(at[point], distance(at[point], at[path[0]], at[path[1]]))


def with_centres(figure: Figure, at: Mapping[str, Spot]) -> dict[str, Spot]:
    """The positions with those of centres that have no letter, from the points and tangents of their circles."""
    found = dict(at)
    for name in figure.points:
        if name.startswith(HIDDEN) and name not in found:
            centre = _centre(figure, name, at)
            if centre:
                found[name] = centre
    return found


def _centre(figure: Figure, name: str, at: Mapping[str, Spot]) -> Spot | None:
    """The point at one distance from a circle's points, at right angles to its tangents, halfway on its diameters.

    Least squares of linear equations; None where a point of the circle has no position.
    """
    rows: list[tuple[float, float]] = []
    values: list[float] = []
    on: list[Spot] = []
    for condition in figure.conditions:
        match condition:
            case OnCircle(centre, points) if centre == name:
                if not set(points) <= at.keys():
                    return None
                on = [at[point] for point in points]
                (x, y), *others = on
                for p, q in others:
                    rows.append((p - x, q - y))
                    values.append((p * p + q * q - x * x - y * y) / 2)
            case TangentAt(path, touch, centre) if centre == name and {*path, touch} <= at.keys():
                (x, y), (p, q) = at[path[0]], at[path[1]]
                rows.append((p - x, q - y))
                values.append((p - x) * at[touch][0] + (q - y) * at[touch][1])
            case InLine((start, centre, end)) if centre == name and {start, end} <= at.keys():
                for axis in (0, 1):
                    rows.append((float(axis == 0), float(axis == 1)))
                    values.append((at[start][axis] + at[end][axis]) / 2)
    return _solved(rows, values, on, at) if on else None


def _solved(
    rows: list[tuple[float, float]], values: list[float], on: list[Spot], at: Mapping[str, Spot]
) -> Spot | None:
    """The solution of the equations; where they leave a line of them, a point on it towards the rest of the figure."""
    if not rows:
        return None
    middle = np.mean(on, axis=0)
    matrix = np.array(rows)
    left, sizes, right = np.linalg.svd(matrix, full_matrices=False)
    kept = sizes > SETTLED * sizes[0]
    off = left.T @ (np.array(values) - matrix @ middle)
    centre = middle + right[kept].T @ (off[kept] / sizes[kept])
    if not kept.all() or len(rows) == 1:
        free = np.array([-matrix[0][1], matrix[0][0]])
        others = np.mean(list(at.values()), axis=0) - middle
        centre = centre + FLAT * free * (1.0 if free @ others >= 0 else -1.0)
    return float(centre[0]), float(centre[1])
