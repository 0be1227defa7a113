"""Every figure that meets the givens, as far as drawings tell: whether they agree on a size, and whether it moves."""

from __future__ import annotations

import math
import random
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from paperaudit.errors import NoValue
from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.measure import measured
from paperaudit.geometry.coordinates.realise import Drawing, drawing_of, realise, state_of
from paperaudit.geometry.coordinates.residuals import Residuals
from paperaudit.geometry.figure.figure import Figure

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from paperaudit.geometry.coordinates.gauges import Array
    from paperaudit.model.expression import Expression

FURTHER_SEEDS = range(60, 72)
DISTORTED = 16
"""Starts that are a known drawing stretched one way, as a sketch might be."""
STRETCH = 1.3
"""Logarithm of the most that a drawing is stretched by."""
SAME = 1e-6
"""Share of a size within which two drawings agree on it."""
NO_SLOPE = 1e-8
"""Share of the largest singular value below which a direction counts as one that no condition resists."""
STEP = 1e-5
MOVES = 1e-5
"""Share of its size by which a size that can be moved changes with a step along the figure, per step."""
PUSHES = (0.3, -0.3, 0.1, -0.1, 0.03, -0.03)
"""How far a drawing is pushed along a direction, as a share of its size, to find another figure."""
CLEARLY_OTHER = 1e-3
"""Least share by which a size differs in a figure that shows that it is open."""


@dataclass(frozen=True, slots=True)
class Solutions:
    """Drawings that give a size different values, each value once, in the order in which they were found.

    `other` is a further drawing with another value where the size can be moved continuously, None
    where it is fixed in every drawing: one value means determined, several mean several.
    """

    drawings: tuple[Drawing, ...]
    values: tuple[float, ...]
    other: Drawing | None = None

    @property
    def is_open(self) -> bool:
        """Whether infinitely many values are possible."""
        return self.other is not None


def solutions(figure: Figure, drawings: Sequence[Drawing], target: Expression) -> Solutions:
    """The values that a size takes in drawings of the figure: the known ones, and more from other starts.

    `figure` is the one that was drawn, with what its sketch settles. `target` names angles by three
    points, arcs and circles by their centres. Drawings on which it has no value are left out.
    """
    starts = [distorted(drawings[number % len(drawings)], number) for number in range(DISTORTED)] if drawings else []
    found: list[Drawing] = []
    values: list[float] = []
    for drawing in [*drawings, *realise(figure, FURTHER_SEEDS, starts)]:
        value = value_on(figure, drawing, target)
        if value is not None and not any(math.isclose(value, known, rel_tol=SAME, abs_tol=SAME) for known in values):
            found.append(drawing)
            values.append(value)
    for drawing in found[:3]:
        other = moved(figure, drawing, target)
        if other is not None:
            return Solutions(tuple(found), tuple(values), other)
    return Solutions(tuple(found), tuple(values))


def other_solutions(arrangement: Arrangement, asked: Sequence[Expression]) -> Iterator[Arrangement]:
    """Further figures that meet the same conditions in which something asked for has another value.

    Nothing where a size asked for can be moved continuously: it is open then.
    """
    figure, drawing = arrangement.figure, arrangement.drawing
    found = {id(drawing): drawing}
    for item in asked:
        result = solutions(figure, (drawing,), item)
        if result.is_open:
            return
        found.update({id(other): other for other in result.drawings})
    yield from (Arrangement(figure, other) for other in found.values() if other is not drawing)


def value_on(figure: Figure, drawing: Drawing, target: Expression) -> float | None:
    """The size on a drawing, None where it has none there."""
    try:
        return measured(target, drawing.at, drawing.letters, figure.circles)
    except NoValue:
        return None


def distorted(drawing: Drawing, number: int) -> Drawing:
    """A drawing stretched in some direction and a little shaken; the same number gives the same one."""
    chance = random.Random(number * 104729 + 5)
    bearing, factor = chance.uniform(0, math.pi), math.exp(chance.uniform(-STRETCH, STRETCH))
    along, across = math.cos(bearing), math.sin(bearing)
    reach = max((abs(part) for spot in drawing.at.values() for part in spot), default=1.0)
    at = {}
    for point, (x, y) in drawing.at.items():
        further = (factor - 1) * (x * along + y * across)
        shake = [0.05 * reach * chance.uniform(-1, 1) for _ in range(2)]
        at[point] = (x + further * along + shake[0], y + further * across + shake[1])
    return Drawing(at, {letter: value * math.exp(chance.uniform(-1, 1)) for letter, value in drawing.letters.items()})


def moved(figure: Figure, drawing: Drawing, target: Expression) -> Drawing | None:
    """A drawing of the same figure in which the size differs, reached by moving on from this one; None if it is fixed.

    No condition resists the directions in the null space of the conditions' slopes; the drawing is
    pushed along the one that changes the size most, and drawn anew from there.
    """
    here = value_on(figure, drawing, target)
    problem = Residuals(figure)
    state = state_of(problem, drawing)
    if here is None or not state.size:
        return None
    _, slopes = problem.equalities(state[None, :], problem.measure(state[None, :]))
    reach = float(np.abs(state).max()) or 1.0
    _, sizes, directions = np.linalg.svd(slopes[0]) if slopes.shape[1] else (None, np.zeros(0), np.eye(len(state)))
    held = int((sizes > NO_SLOPE * sizes.max(initial=0.0)).sum())
    free = directions[held:]
    rates = np.array([_rate(problem, figure, state, way, STEP * reach, target) for way in free])
    if not free.size or np.abs(rates).max() * reach < MOVES * max(abs(here), SAME):
        return None
    push = rates @ free
    push *= reach / np.abs(push).max()
    pushed = [drawing_of(problem, state + share * push) for share in PUSHES]
    for other in realise(figure, range(0), pushed):
        there = value_on(figure, other, target)
        if there is not None and abs(there - here) > CLEARLY_OTHER * max(abs(here), abs(there)):
            return other
    return None


def _rate(
    problem: Residuals,
    figure: Figure,
    state: Array,
    way: Array,
    step: float,
    target: Expression,
) -> float:
    ends = [value_on(figure, drawing_of(problem, state + side * step * way), target) for side in (1, -1)]
    return 0.0 if ends[0] is None or ends[1] is None else (ends[0] - ends[1]) / (2 * step)
