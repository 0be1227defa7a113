"""Figures with a north: a mirror image of one is another figure."""

from __future__ import annotations

from itertools import combinations
from typing import TYPE_CHECKING

from paperaudit.model.expression import AngleOf, BearingOf

if TYPE_CHECKING:
    from paperaudit.geometry.coordinates.arrangement import Arrangement
    from paperaudit.geometry.figure.figure import Figure


def has_north(figure: Figure) -> bool:
    """Whether the paper names a bearing, so that up the page is north."""
    return any(isinstance(size, BearingOf) for size in figure.named_sizes)


def ways_by_north(arrangement: Arrangement) -> tuple[int, ...]:
    """Which way (+1 anticlockwise) every two rays from one point turn, where the figure has a north; else ()."""
    if not has_north(arrangement.figure):
        return ()
    return tuple(
        1 if arrangement.turn(vertex, one.points[0], two.points[0]) > 0 else -1
        for vertex, rays in sorted(arrangement.rays.items())
        for one, two in combinations(sorted(rays, key=lambda ray: ray.points[0]), 2)
        if one.line != two.line
    )


def corners_by_north(figure: Figure) -> list[AngleOf]:
    """An angle at every point for each two lines through it, where the figure has a north: each may open either way."""
    if not has_north(figure):
        return []
    found = []
    for vertex in figure.points:
        arms = [next(point for point in line if point != vertex) for line in figure.lines if vertex in line]
        found += [AngleOf(min(one, two), vertex, max(one, two)) for one, two in combinations(arms, 2)]
    return found
