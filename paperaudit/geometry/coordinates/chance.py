"""What is equal by chance in a drawing: the fewer coincidences, the better it shows what the givens settle."""

import math
from collections.abc import Sequence
from itertools import combinations, pairwise

from paperaudit.geometry.coordinates.arrangement import Arrangement

CLOSE = 1e-5
"""Share of a length, or degrees, within which two sizes look equal to a search that measures."""


def coincidences(arrangement: Arrangement) -> int:
    """How many pairs of equal lengths, equal angles between lines, parallels and right angles a drawing has.

    What the givens force counts in every drawing alike.
    """
    spots = [arrangement.at[point] for point in arrangement.figure.points]
    lengths = [math.log(length) for one, two in combinations(spots, 2) if (length := math.dist(one, two))]
    turns = [abs(one - two) % 180 for one, two in combinations(arrangement.bearings, 2)]
    return _pairs(lengths) + _pairs([*turns, *(180 - turn for turn in turns), 0.0, 90.0])


def _pairs(values: list[float]) -> int:
    """How many neighbours in order of size are as good as equal."""
    return sum(after - before < CLOSE for before, after in pairwise(sorted(values)))


def most_general(arrangements: Sequence[Arrangement]) -> Arrangement:
    """The first of those with the fewest coincidences."""
    return arrangements[0] if len(arrangements) == 1 else min(arrangements, key=coincidences)
