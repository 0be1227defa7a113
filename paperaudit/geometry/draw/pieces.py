"""Figures that no line joins, such as two congruent triangles: told apart, and set side by side."""

from collections.abc import Sequence
from dataclasses import fields, is_dataclass, replace
from typing import TypeAlias

from paperaudit.geometry.figure import EqualLengths, Figure, SizeRelation

Turned: TypeAlias = dict[str, complex]
"""Points as complex numbers, y up."""

BETWEEN = 0.4
"""Space between figures that stand side by side, in terms of the size of the larger one."""


def separate(figure: Figure) -> list[Figure]:
    """The parts of a figure that share no line and are bound by nothing but sizes; else the figure alone."""
    groups: list[set[str]] = []
    for line in figure.lines:
        joined = [group for group in groups if group & set(line)]
        groups = [group for group in groups if group not in joined] + [set(line).union(*joined)]
    binding = [condition for condition in figure.conditions if not isinstance(condition, EqualLengths | SizeRelation)]
    whole = all(any(_points_of(condition, figure) <= group for group in groups) for condition in binding)
    if not whole or set().union(*groups) != set(figure.points):
        return [figure]
    return [
        replace(
            figure,
            points=tuple(point for point in figure.points if point in group),
            lines=tuple(line for line in figure.lines if line[0] in group),
            shapes=tuple(named for named in figure.shapes if named[0].points[0] in group),
            conditions=tuple(condition for condition in figure.conditions if _points_of(condition, figure) <= group),
            fixed_names=(),
        )
        for group in sorted(groups, key=min)
    ]


def _points_of(condition: object, figure: Figure) -> set[str]:
    """Every point of the figure that a condition names."""
    if isinstance(condition, str):
        return {condition} & set(figure.points)
    if isinstance(condition, tuple):
        return set().union(*(_points_of(item, figure) for item in condition))
    if is_dataclass(condition):
        return _points_of(tuple(getattr(condition, part.name) for part in fields(condition)), figure)
    return set()


def side_by_side(pieces: Sequence[Turned]) -> Turned:
    """Figures in a row on one level, a share of their size apart."""
    placed: Turned = {}
    right = 0.0
    space = BETWEEN * max(abs(one - two) for piece in pieces for one in piece.values() for two in piece.values())
    for piece in pieces:
        left, low = min(spot.real for spot in piece.values()), min(spot.imag for spot in piece.values())
        moved = {name: spot - complex(left, low) + right for name, spot in piece.items()}
        right = max(spot.real for spot in moved.values()) + space
        placed.update(moved)
    return placed
