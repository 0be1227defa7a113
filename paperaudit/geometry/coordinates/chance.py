"""What is equal by chance in a drawing: the fewer coincidences, the better it shows what the givens settle."""

from collections.abc import Sequence
from itertools import combinations

import numpy as np

from paperaudit.geometry.coordinates.arrangement import Arrangement

CLOSE = 1e-5
"""Share of a length, or degrees, within which two sizes look equal to a search that measures."""


def coincidences(arrangement: Arrangement) -> int:
    """How many pairs of equal lengths, equal angles between lines, parallels and right angles a drawing has.

    What the givens force counts in every drawing alike.
    """
    spots = np.array([arrangement.at[point] for point in arrangement.figure.points])
    lengths = np.array([np.hypot(*(spots[i] - spots[j])) for i, j in combinations(range(len(spots)), 2)])
    turns = np.array([abs(one - two) % 180 for one, two in combinations(arrangement.bearings, 2)])
    angles = np.concatenate([turns, 180 - turns, [0.0, 90.0]])
    return _pairs(np.log(lengths[lengths > 0])) + _pairs(angles)


def _pairs(values: np.ndarray[tuple[int, ...], np.dtype[np.float64]]) -> int:
    """How many neighbours in order of size are as good as equal."""
    return int((np.diff(np.sort(values)) < CLOSE).sum())


def most_general(arrangements: Sequence[Arrangement]) -> Arrangement:
    """The first of those with the fewest coincidences."""
    return arrangements[0] if len(arrangements) == 1 else min(arrangements, key=coincidences)
