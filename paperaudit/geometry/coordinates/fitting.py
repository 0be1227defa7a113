"""Brings rough first positions to the size that the stated lengths ask for, and gives the letters first values."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from paperaudit.geometry.coordinates.residuals import Residuals

if TYPE_CHECKING:
    from paperaudit.geometry.coordinates.gauges import Array, Readings

MAGNITUDES = (0.5, 1.0, 0.2, 2.0, 0.1, 5.0)
"""First values, in the unit that a letter is carried in, of letters that no linear relation gives."""
GROWN = (1.0, 1.0, 4.0, 1.0, 12.0, 1.0, 0.25, 1.0)
"""By what later rounds of starts enlarge a figure with letters: in x² − 22 no number tells how large it is."""

MET = 1e-18
"""Sum of squared residuals below which the equalities are met."""
POLISHED = 1e-29
POLISHING_STEPS = 20
SINGULAR = 1e-11
"""Share of the largest singular value below which a direction is left alone."""


def fitted(problem: Residuals, state: Array, seeds: range) -> Array:
    """The states with coordinates scaled to the stated lengths and areas, and letters that fit the relations.

    The last states of the batch belong to the seeds; the ones before keep what they have.
    """
    first = state.shape[0] - len(seeds)
    count = 2 * len(problem.figure.points)
    result = state.copy()
    rough = result[first:]
    rough[:, :count] *= _scale(problem, rough)[:, None]
    if problem.figure.letters:
        rough[:, :count] *= np.array([GROWN[seed // len(MAGNITUDES) % len(GROWN)] for seed in seeds])[:, None]
    rough[:, count:] = np.array([MAGNITUDES[seed % len(MAGNITUDES)] for seed in seeds])[:, None]
    _set_letters(problem, rough)
    return result


def polished(problem: Residuals, state: Array) -> tuple[Array, Readings, Array]:
    """The states that meet the equalities, taken on where these only just touch (a right angle by its area).

    There a residual of 1e-12 leaves an angle off by a millionth, and each step only halves that. With the states
    come what they measure and how far off they are.
    """
    read = problem.measure(state)
    value, slope = problem.equalities(state, read)
    before = state
    cost = (value**2).sum(axis=1)
    for _ in range(POLISHING_STEPS):
        rough = np.flatnonzero((cost < MET) & (cost > POLISHED))
        if not rough.size:
            break
        inverse = np.linalg.pinv(slope[rough], rcond=SINGULAR)
        tried = state[rough] - (inverse @ value[rough, :, None])[:, :, 0]
        new_value, new_slope = problem.equalities(tried, problem.measure(tried))
        new_cost = (new_value**2).sum(axis=1)
        better = new_cost < cost[rough]
        if not better.any():
            break
        kept = rough[better]
        state = state.copy()
        state[kept], value[kept], slope[kept] = tried[better], new_value[better], new_slope[better]
        cost[kept] = new_cost[better]
        cost[rough[~better]] = 0.0
    return state, read if state is before else problem.measure(state), value


def _scale(problem: Residuals, state: Array) -> Array:
    """By what each drawing has to be multiplied: the middle one of the factors that its relations ask for."""
    read = problem.measure(state)
    factors = [problem.relations.asked_scales(read), problem.balances.asked_scales(read)]
    logarithms = np.concatenate(factors, axis=1)
    count = logarithms.shape[1]
    if not count:
        return np.ones(state.shape[0])
    # numpy's own median looks for masked arrays, whose module takes as long to load as this whole file does to run.
    ordered = np.sort(logarithms, axis=1)
    return np.exp((ordered[:, (count - 1) // 2] + ordered[:, count // 2]) / 2)


def _set_letters(problem: Residuals, state: Array) -> None:
    """Gives the letters the values that come nearest to the linear relations, where these tell them all."""
    if not problem.figure.letters:
        return
    read: Readings = problem.measure(state)
    rows, columns = problem.relations.letter_rows()
    if not columns.size:
        return
    value, _ = problem.relations.rows(state, read)
    inverse = np.linalg.pinv(rows)
    told = np.abs(inverse @ rows - np.eye(len(columns))).max(axis=1) < 1e-9
    better = state[:, columns] - value @ inverse.T
    state[:, columns] = np.where(told, better, state[:, columns])
