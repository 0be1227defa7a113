"""Draws a figure with circles once more: better spaced with the same sizes, or with other sizes for a sketch.

Where points are bound to circles no stretch serves, as it would leave the circles oval. What is left
open is chosen among further drawings that have the same order and turning.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace
from itertools import combinations

from paperaudit.geometry.arrangement import Arrangement
from paperaudit.geometry.draw.circles import outlines
from paperaudit.geometry.draw.proportions import distance
from paperaudit.geometry.draw.sketched import as_sketched
from paperaudit.geometry.draw.unscaled import CLEARLY_OTHER, corners_of, size_of, stretches
from paperaudit.geometry.figure import HIDDEN, Figure
from paperaudit.geometry.loosened import without_numbers
from paperaudit.geometry.plane import Spot
from paperaudit.geometry.realise import realise
from paperaudit.model.expression import AngleOf

FURTHER_SEEDS = range(24)
AS_STRETCHED = range(1)
"""The starts of further drawings: by chance, or at given positions."""
SAME = 1e-4
"""Degrees by which an angle that is asked for may differ from one drawing to another."""
APART, CLEAR, OPEN, FAR = 0.5, 0.15, 30.0, 3.5
"""Ample room: of two points and of a point and a line, in terms of the largest radius; of an angle in degrees;
and how far apart points may be, in terms of that radius, before their circle looks small."""


def well_spaced(arrangement: Arrangement, answers: Sequence[AngleOf]) -> dict[str, Spot]:
    """The positions of the drawing with most room that has the same order, turning and `answers`.

    A figure that has a sketch stays as it is.
    """
    at = dict(arrangement.at)
    if arrangement.figure.sketch:
        return at
    found = [
        points
        for points in _alike(arrangement, arrangement.figure, FURTHER_SEEDS)
        if all(abs(size_of(points, size) - size_of(at, size)) < SAME for size in answers)
    ]
    return max([at, *found], key=lambda points: _room(arrangement, points))


def resized(arrangement: Arrangement, at: Mapping[str, Spot], answers: Sequence[AngleOf]) -> dict[str, Spot]:
    """The positions of a drawing near `at` in which `answers` are off by `CLEARLY_OTHER`, or as far as they go.

    Its numbers are left out, and it is begun with a stretch of `at`. Where the figure has no other
    form, the positions `at` themselves.
    """
    free = without_numbers(arrangement.figure)
    found = []
    for stretched in stretches(at):
        sketch = tuple((name, x, y) for name, (x, y) in stretched.items())
        found += _alike(arrangement, replace(free, sketch=sketch), AS_STRETCHED)

    def off(points: Mapping[str, Spot]) -> tuple[float, float]:
        asked = sum(min(CLEARLY_OTHER, abs(size_of(points, size) - size_of(at, size))) for size in answers)
        return round(asked, 6), _room(arrangement, points)

    best = max([dict(at), *found], key=off)
    turned = as_sketched(arrangement, *({name: complex(*spot) for name, spot in one.items()} for one in (best, at)))
    return {name: (spot.real, spot.imag) for name, spot in turned.items()}


def _alike(arrangement: Arrangement, figure: Figure, seeds: range) -> list[dict[str, Spot]]:
    """The positions of further drawings that have the arrangement's order and turning."""
    return [
        dict(drawing.at)
        for drawing in realise(figure, seeds)
        if Arrangement(arrangement.figure, drawing).signature == arrangement.signature
    ]


def _room(arrangement: Arrangement, at: Mapping[str, Spot]) -> float:
    """How far a drawing is from being cramped: its nearest points, its narrowest angle, points that a line misses."""
    radius = max((circle.radius for circle in outlines(arrangement.figure, at).values()), default=1.0)
    shown = {name: spot for name, spot in at.items() if not name.startswith(HIDDEN)}
    apart = min(math.dist(one, other) for one, other in combinations(shown.values(), 2)) / radius
    misses = [
        distance(spot, at[line[0]], at[line[-1]]) / radius
        for line in arrangement.lines
        for name, spot in shown.items()
        if name not in line
    ]
    narrowest = min((size_of(at, corner) for corner in corners_of(arrangement)), default=OPEN)
    spread = max(math.dist(one, other) for one, other in combinations(shown.values(), 2)) / radius
    room = min(1.0, apart / APART) + min(1.0, min(misses, default=CLEAR) / CLEAR) + min(1.0, narrowest / OPEN)
    return round(room - max(0.0, spread / FAR - 1.0), 6)
