"""Figures that no line joins, such as two congruent triangles: told apart, and set side by side."""

from collections.abc import Sequence
from dataclasses import fields, is_dataclass, replace
from typing import TypeAlias

from paperaudit.geometry.coordinates.circle_order import circles_of
from paperaudit.geometry.draw.circles import outlines
from paperaudit.geometry.figure.figure import EqualLengths, Figure, SizeRelation

Turned: TypeAlias = dict[str, complex]
"""Points as complex numbers, y up."""

BETWEEN = 0.4
"""Space between figures that stand side by side, in terms of the size of the larger one."""


def separate(figure: Figure) -> list[Figure]:
    """The parts of a figure that share no line and are bound by nothing but sizes; else the figure alone."""
    groups: list[set[str]] = []
    rounds = [(circle.centre, *circle.points) for circle in circles_of(figure)]
    for together in (*figure.lines, *rounds):
        joined = [group for group in groups if group & set(together)]
        groups = [group for group in groups if group not in joined] + [set(together).union(*joined)]
    binding = [condition for condition in figure.conditions if not isinstance(condition, EqualLengths | SizeRelation)]
    sizes = [size for condition in figure.conditions for size in _sizes(condition)]
    whole = all(any(_points_of(one, figure) <= group for group in groups) for one in (*binding, *sizes))
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


def _sizes(condition: object) -> tuple[object, ...]:
    """The sizes that a condition relates, each of which has to be one of a single part."""
    match condition:
        case EqualLengths(first, second):
            return first, second
        case SizeRelation(form):
            return tuple(form.terms)
    return ()


def _points_of(condition: object, figure: Figure) -> set[str]:
    """Every point of the figure that a condition names."""
    if isinstance(condition, str):
        return {condition} & set(figure.points)
    if isinstance(condition, tuple):
        return set().union(*(_points_of(item, figure) for item in condition))
    if is_dataclass(condition):
        return _points_of(tuple(getattr(condition, part.name) for part in fields(condition)), figure)
    return set()


def side_by_side(pieces: Sequence[Turned], figures: Sequence[Figure]) -> Turned:
    """Figures with their circles in a row on one level, a share of their size apart."""
    boxes = [_box(piece, figure) for piece, figure in zip(pieces, figures, strict=True)]
    space = BETWEEN * max(max(right - left, top - low) for left, low, right, top in boxes)
    placed: Turned = {}
    start = 0.0
    for piece, (left, low, right, _) in zip(pieces, boxes, strict=True):
        placed.update({name: spot - complex(left, low) + start for name, spot in piece.items()})
        start += right - left + space
    return placed


def _box(piece: Turned, figure: Figure) -> tuple[float, float, float, float]:
    """Left, low, right and top of a figure with its circles."""
    corners = [(spot.real, spot.imag, spot.real, spot.imag) for spot in piece.values()]
    for circle in outlines(figure, {name: (spot.real, spot.imag) for name, spot in piece.items()}).values():
        (x, y), reach = circle.centre, circle.radius
        corners.append((x - reach, y - reach, x + reach, y + reach))
    lefts, lows, rights, tops = zip(*corners, strict=True)
    return min(lefts), min(lows), max(rights), max(tops)
