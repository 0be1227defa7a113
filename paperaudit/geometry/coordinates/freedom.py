"""Whether a figure can move so that a size changes: the rank of its conditions with and without that size held."""

from dataclasses import replace

import numpy as np

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.realise import state_of
from paperaudit.geometry.coordinates.residuals import Residuals
from paperaudit.geometry.figure.figure import Balance, Figure, SizeRelation

RANK = 1e-7
"""Share of the largest singular value below which one counts as 0; drawings are exact to 1e-9."""


def holds_still(arrangement: Arrangement, held: SizeRelation | Balance) -> bool:
    """Whether the conditions of a drawn figure already hold a size still, to first order.

    `held` states the size's own value in the drawing. True means that no continuous motion of the
    figure changes it; another figure far from this one may still do so. False is no proof of
    freedom where the drawing is a special one (two circles that just touch).
    """
    figure = arrangement.figure
    return _rank(arrangement, replace(figure, conditions=(*figure.conditions, held))) == _rank(arrangement, figure)


def _rank(arrangement: Arrangement, figure: Figure) -> int:
    problem = Residuals(figure)
    state = state_of(problem, arrangement.drawing)[None, :]
    _, slopes = problem.equalities(state, problem.measure(state))
    rows = slopes[0]
    sizes = np.linalg.norm(rows, axis=1)
    rows = rows[sizes > 0] / sizes[sizes > 0, None]
    if not rows.size:
        return 0
    values = np.linalg.svd(rows, compute_uv=False)
    return int((values > RANK * values[0]).sum())
