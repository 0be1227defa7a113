"""Draws a figure to scale: coordinates that meet every condition, found from several rough starts."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import combinations
from typing import TYPE_CHECKING

import numpy as np

from paperaudit.geometry.coordinates.fitting import fitted, polished
from paperaudit.geometry.coordinates.measure import measured
from paperaudit.geometry.coordinates.residuals import Residuals
from paperaudit.geometry.coordinates.starts import start_positions
from paperaudit.geometry.figure.figure import HIDDEN, Compared, Figure, OutsidePolygon, RoundOrder
from paperaudit.geometry.figure.plane import share_along, side
from paperaudit.model.expression import AngleOf, RelationSign

if TYPE_CHECKING:
    from paperaudit.geometry.coordinates.gauges import Array

EXACT = 1e-9
"""Largest residual (radians, or share of a length) with which a drawing counts as meeting the givens."""
APART = 2e-3
"""Least distance between two points, as a share of the drawing's size."""
DISTINCT = 2e-3
"""Least distance of a line's farthest point from another line, as a share of the other's length."""
ARRIVED = 1e-24
"""Sum of squared residuals at which a drawing is left alone."""
GAIN, PATIENCE = 0.02, 5
"""A drawing that gains less than this share in so many steps running is given up."""
FAINT = 0.05
"""Weight of the numbers in the first descent, which settles incidence, order, parallels and equal sides."""
FAINT_STEPS = 15
ROUGH_STEPS = 40
FINE_STEPS = 25

HINGED, FREE = 1e-2, 1e-9
"""First damping of steps from a rough start, and of those that finish a drawing."""
DIFFERENT = 1e-6
"""Least difference, as a share of the larger, of sizes that count as different."""
_HOLDS: dict[RelationSign, Callable[[float], bool]] = {
    "≠": lambda gap: abs(gap) > DIFFERENT,
    "<": lambda gap: gap < -DIFFERENT,
    ">": lambda gap: gap > DIFFERENT,
    "≤": lambda gap: gap < DIFFERENT,
    "≥": lambda gap: gap > -DIFFERENT,
    "=": lambda gap: abs(gap) < DIFFERENT,
}


@dataclass(frozen=True, slots=True)
class Drawing:
    """Coordinates of every point (y up) and the value of every letter, meeting the conditions.

    `moved` holds the labels of givens that hold only once their decimals are rounded.
    """

    at: dict[str, tuple[float, float]]
    letters: dict[str, float]
    moved: frozenset[int] = frozenset()


def realise(
    figure: Figure,
    seeds: range,
    near: Sequence[Drawing] = (),
    turns: tuple[AngleOf, ...] = (),
    ways: Sequence[Sequence[int]] = (),
    overlapping: bool = False,
    at_once: bool = False,
) -> list[Drawing]:
    """Drawings of the figure, at most one a start, in order; an empty list proves nothing.

    Starts are the drawings `near` (of a figure with the same points and letters), then the seeds.
    `ways` says for each start which way (+1 anticlockwise) each angle of `turns` opens. Drawings in
    which two lines fall together are left out unless `overlapping`.
    Damped least squares with margins for order and turning, first with the numbers faint, then on all conditions,
    then on the equalities alone; what comes out is checked strictly. From a sketch, numbers are taken into account
    `at_once`, and the margins only where the equalities alone lead out of its order.
    """
    if not near and not turns:
        drawings = list(_from_seeds(replace(figure, fixed_names=(), named_sizes=()), seeds, at_once))
    else:
        drawings = _realise(figure, seeds, near, turns, ways)
    return drawings if overlapping else [drawing for drawing in drawings if not overlaps(figure, drawing)]


@lru_cache(maxsize=32)
def _from_seeds(figure: Figure, seeds: range, at_once: bool) -> tuple[Drawing, ...]:
    """Drawings from the seeds alone; the parts of one question share them, whatever they ask for."""
    return tuple(_realise(figure, seeds, (), (), (), at_once)) if figure.points else ()


def _realise(
    figure: Figure,
    seeds: range,
    near: Sequence[Drawing],
    turns: tuple[AngleOf, ...],
    ways: Sequence[Sequence[int]],
    at_once: bool = False,
) -> list[Drawing]:
    problem = Residuals(figure, turns)
    starts = [state_of(problem, drawing) for drawing in near] + [_start(problem, seed) for seed in seeds]
    state = fitted(problem, np.array(starts), seeds)
    signs = problem.hinges.signs(problem.measure(state))
    if turns:
        signs[:, -len(turns) :] = np.array(ways, dtype=float)
    if at_once:
        nearest = _descend(problem, state, signs, FINE_STEPS, with_hinges=False, damping=HINGED)
        drawings = _finished(problem, nearest, signs)
        if drawings:
            return drawings
    else:
        problem.weight = FAINT
        state = _descend(problem, state, signs, FAINT_STEPS, with_hinges=True)
        problem.weight = 1.0
    state = _descend(problem, state, signs, ROUGH_STEPS, with_hinges=True)
    return _finished(problem, _descend(problem, state, signs, FINE_STEPS, with_hinges=False, damping=FREE), signs)


def _finished(problem: Residuals, state: Array, signs: Array) -> list[Drawing]:
    """The drawings of the batch that meet every condition, strictly checked."""
    figure = problem.figure
    state, measured, off = polished(problem, state)
    good = np.abs(off).max(axis=1, initial=0.0) < EXACT
    good &= problem.hinges.hold_strictly(state, measured, signs)
    moved = problem.moved(state, measured, EXACT)
    drawings = [
        replace(drawing_of(problem, row), moved=labels)
        for row, labels, fine in zip(state, moved, good, strict=True)
        if fine
    ]
    return [
        drawing
        for drawing in drawings
        if _apart(drawing)
        and _rounds_in_order(figure, drawing)
        and _outside(figure, drawing)
        and _compared(figure, drawing)
    ]


def _start(problem: Residuals, seed: int) -> Array:
    at = start_positions(problem.figure, seed)
    spots = [problem.unit * part for point in problem.figure.points for part in at[point]]
    return np.array(spots + [1.0] * len(problem.figure.letters))


def state_of(problem: Residuals, drawing: Drawing) -> Array:
    """A drawing as a state of the problem: coordinates, then letters in their scales."""
    spots = [part for point in problem.figure.points for part in drawing.at[point]]
    letters = zip(problem.figure.letters, problem.letter_scales, strict=True)
    return np.array(spots + [drawing.letters[letter] / scale for letter, scale in letters])


def _rows(problem: Residuals, state: Array, signs: Array, with_hinges: bool) -> tuple[Array, Array]:
    measured = problem.measure(state)
    value, slope = problem.equalities(state, measured)
    if not with_hinges:
        return value, slope
    hinge, hinge_slope = problem.hinges.rows(state, measured, signs)
    return np.concatenate([value, hinge], axis=1), np.concatenate([slope, hinge_slope], axis=1)


def _descend(
    problem: Residuals, state: Array, signs: Array, steps: int, with_hinges: bool, damping: float = HINGED
) -> Array:
    """Levenberg and Marquardt's damped steps, every drawing of the batch with its own damping.

    Drawings that have arrived, or gain nothing any more, leave the batch.
    """
    result = state.copy()
    active = np.arange(state.shape[0])
    dampings = np.full(state.shape[0], damping)
    idle = np.zeros(state.shape[0])
    value, slope = _rows(problem, state, signs, with_hinges)
    cost = (value**2).sum(axis=1)
    eye = np.eye(problem.unknowns)
    for _ in range(steps):
        going = (cost > ARRIVED) & (idle < PATIENCE)
        if not going.all():
            result[active] = state
            active, state, signs, dampings, idle = (part[going] for part in (active, state, signs, dampings, idle))
            value, slope, cost = value[going], slope[going], cost[going]
        if not active.size:
            return result
        across = slope.transpose(0, 2, 1)
        normal = across @ slope
        pull = (across @ value[:, :, None])[:, :, 0]
        weight = normal.trace(axis1=1, axis2=2) / problem.unknowns + 1e-12
        step = np.linalg.solve(normal + (dampings * weight + 1e-13)[:, None, None] * eye, -pull[:, :, None])[:, :, 0]
        tried = state + step
        new_value, new_slope = _rows(problem, tried, signs, with_hinges)
        new_cost = (new_value**2).sum(axis=1)
        better = new_cost < cost
        idle = np.where(new_cost < (1 - GAIN) * cost, 0, idle + 1)
        if better.all():
            state, value, slope, cost = tried, new_value, new_slope, new_cost
        else:
            state = np.where(better[:, None], tried, state)
            value = np.where(better[:, None], new_value, value)
            slope = np.where(better[:, None, None], new_slope, slope)
            cost = np.where(better, new_cost, cost)
        dampings = np.clip(np.where(better, dampings * 0.25, dampings * 6), 1e-12, 1e6)
    result[active] = state
    return result


def drawing_of(problem: Residuals, state: Array) -> Drawing:
    """The drawing that a state of the residuals stands for."""
    count = len(problem.figure.points)
    at = {point: (float(state[2 * i]), float(state[2 * i + 1])) for i, point in enumerate(problem.figure.points)}
    scales = enumerate(zip(problem.figure.letters, problem.letter_scales, strict=True))
    letters = {letter: float(state[2 * count + i]) * scale for i, (letter, scale) in scales}
    return Drawing(at, letters)


def _apart(drawing: Drawing) -> bool:
    spots = np.array([spot for point, spot in drawing.at.items() if not point.startswith(HIDDEN)])
    size = float(np.ptp(np.array(list(drawing.at.values())), axis=0).max()) or 1.0
    gaps = np.sqrt(((spots[:, None, :] - spots[None, :, :]) ** 2).sum(axis=2)) + np.eye(len(spots)) * size
    return bool(gaps.min() > APART * size)


def overlaps(figure: Figure, drawing: Drawing) -> list[tuple[int, int]]:
    """The pairs of lines, by index, that fall together in a drawing; lines that only continue each other do not."""
    at = drawing.at
    found = []
    for (i, one), (j, two) in combinations(enumerate(figure.lines), 2):
        a, b = at[one[0]], at[one[-1]]
        reach = math.dist(a, b)
        if all(abs(side(at[point], a, b)) < DISTINCT * reach * reach for point in two) and not _end_to_end(
            [share_along(at[point], a, b) for point in one], [share_along(at[point], a, b) for point in two]
        ):
            found.append((i, j))
    return found


def _end_to_end(one: list[float], two: list[float]) -> bool:
    """Whether two stretches of one line have at most an end in common."""
    return max(one) <= min(two) + DISTINCT or max(two) <= min(one) + DISTINCT


def _rounds_in_order(figure: Figure, drawing: Drawing) -> bool:
    """Whether rays that are stated to follow one another round a point do so, either way round."""
    for condition in figure.conditions:
        if isinstance(condition, RoundOrder):
            x, y = drawing.at[condition.centre]
            bearings = [math.atan2(drawing.at[p][1] - y, drawing.at[p][0] - x) for p in condition.points]
            turns = [(bearing - bearings[0]) % (2 * math.pi) for bearing in bearings[1:]]
            if turns not in (sorted(turns), sorted(turns, reverse=True)):
                return False
    return True


def _compared(figure: Figure, drawing: Drawing) -> bool:
    """Whether every inequality of the givens holds on the drawing, and sizes that differ do so visibly."""
    for condition in figure.conditions:
        if isinstance(condition, Compared):
            left, right = (
                measured(side, drawing.at, drawing.letters, figure.circles)
                for side in (condition.left, condition.right)
            )
            gap = (left - right) / max(abs(left), abs(right), EXACT)
            if not _HOLDS[condition.sign](gap):
                return False
    return True


def _outside(figure: Figure, drawing: Drawing) -> bool:
    """Whether points that are stated to lie outside a polygon do: a level line from them crosses its sides evenly."""
    at = drawing.at
    for condition in figure.conditions:
        if isinstance(condition, OutsidePolygon):
            x, y = at[condition.point]
            corners = [at[point] for point in condition.polygon]
            crossed = sum(
                (a[1] > y) != (b[1] > y) and x < a[0] + (y - a[1]) * (b[0] - a[0]) / (b[1] - a[1])
                for a, b in zip(corners, corners[1:] + corners[:1], strict=True)
            )
            if crossed % 2:
                return False
    return True
