"""Which lines of a drawing meet in a labelled point and which are parallel, found without trying every pair."""

from collections.abc import Sequence
from itertools import combinations

Pair = tuple[int, int]
"""Two lines by their indices, the lower one first."""


def meets_of(lines: Sequence[Sequence[str]]) -> dict[Pair, str]:
    """The one point that two lines have in common, for every pair that has just one, in order.

    >>> meets_of(["AB", "BC", "CD"])
    {(0, 1): 'B', (1, 2): 'C'}
    """
    through: dict[str, list[int]] = {}
    for index, line in enumerate(lines):
        for point in dict.fromkeys(line):
            through.setdefault(point, []).append(index)
    common: dict[Pair, list[str]] = {}
    for point, indices in through.items():
        for pair in combinations(indices, 2):
            common.setdefault(pair, []).append(point)
    return {pair: common[pair][0] for pair in sorted(common) if len(common[pair]) == 1}


def crossed_by(meets: dict[Pair, str], count: int) -> tuple[tuple[int, ...], ...]:
    """For each of `count` lines those that meet it, in order."""
    found: list[list[int]] = [[] for _ in range(count)]
    for one, two in meets:
        found[one].append(two)
        found[two].append(one)
    return tuple(tuple(sorted(others)) for others in found)


def nearly_parallel(bearings: Sequence[float], within: float) -> list[Pair]:
    """The pairs of lines whose directions differ by at most so many degrees, either way along them, in order."""
    slopes = sorted((bearing % 180, index) for index, bearing in enumerate(bearings))
    turned = [*slopes, *((slope + 180, index) for slope, index in slopes)]
    found = set()
    for place, (slope, index) in enumerate(slopes):
        for other_slope, other in turned[place + 1 :]:
            if other_slope - slope > within:
                break
            if other != index:
                found.add((min(index, other), max(index, other)))
    return sorted(found)


def triangles_of(
    meets: dict[Pair, str], crossed: Sequence[Sequence[int]], points: Sequence[str]
) -> list[tuple[str, str, str]]:
    """Three corners, in the order of `points`, for every three lines that meet pairwise in three points."""
    rank = {point: index for index, point in enumerate(points)}
    found = []
    for i, j in meets:
        others = set(crossed[i])
        for k in crossed[j]:
            if k > j and k in others:
                corners = meets[i, j], meets[j, k], meets[i, k]
                if len(set(corners)) == 3:
                    first, second, third = sorted(corners, key=rank.__getitem__)
                    found.append((first, second, third))
    return found
