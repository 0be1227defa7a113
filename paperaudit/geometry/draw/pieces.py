"""Figures that no line joins, such as two congruent triangles: told apart, and set side by side."""

from collections.abc import Mapping, Sequence
from dataclasses import fields, is_dataclass, replace
from typing import TypeAlias

from paperaudit.geometry.coordinates.circle_order import circles_of
from paperaudit.geometry.draw.circles import outlines
from paperaudit.geometry.figure.figure import Balance, EqualLengths, Figure, SizeRelation
from paperaudit.geometry.figure.plane import Spot
from paperaudit.model.expression import leaves

Turned: TypeAlias = dict[str, complex]
"""Points as complex numbers, y up."""

BETWEEN = 0.4
"""Space between figures that stand side by side, in terms of the size of the larger one."""
SMALLEST = 0.2
"""The size of a figure in terms of the largest beside it, below which its letters have no room."""


def separate(figure: Figure) -> list[Figure]:
    """The parts of a figure that share no line and are bound by nothing but sizes; else the figure alone."""
    groups: list[set[str]] = []
    rounds = [(circle.centre, *circle.points) for circle in circles_of(figure)]
    for together in (*figure.lines, *rounds):
        joined = [group for group in groups if group & set(together)]
        groups = [group for group in groups if group not in joined] + [set(together).union(*joined)]
    binding = [
        condition for condition in figure.conditions if not isinstance(condition, EqualLengths | SizeRelation | Balance)
    ]
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
        case Balance(left, right):
            return (*leaves(left), *leaves(right))
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


def scales(figure: Figure, at: Mapping[str, Spot]) -> tuple[float, ...]:
    """How much larger than the largest each of the figures that no line joins has to be drawn so that it can be read.

    All 1 where they can stand true to one scale.
    """
    pieces = separate(figure)
    reaches = [_reach({name: complex(*at[name]) for name in piece.points}, piece) for piece in pieces]
    return tuple(max(1.0, SMALLEST * max(reaches) / max(reach, 1e-9)) for reach in reaches)


def side_by_side(pieces: Sequence[Turned], figures: Sequence[Figure], larger: Sequence[float]) -> Turned:
    """Figures with their circles in a row on one level, a share of their size apart, each so much `larger`."""
    enlarged = [
        {name: spot * factor for name, spot in piece.items()} for piece, factor in zip(pieces, larger, strict=True)
    ]
    boxes = [_box(piece, figure) for piece, figure in zip(enlarged, figures, strict=True)]
    space = BETWEEN * max(_reach(piece, figure) for piece, figure in zip(enlarged, figures, strict=True))
    placed: Turned = {}
    start = 0.0
    for piece, (left, low, right, _) in zip(enlarged, boxes, strict=True):
        placed.update({name: spot - complex(left, low) + start for name, spot in piece.items()})
        start += right - left + space
    return placed


def _reach(piece: Turned, figure: Figure) -> float:
    left, low, right, top = _box(piece, figure)
    return max(right - left, top - low)


def _box(piece: Turned, figure: Figure) -> tuple[float, float, float, float]:
    """Left, low, right and top of a figure with its circles."""
    corners = [(spot.real, spot.imag, spot.real, spot.imag) for spot in piece.values()]
    for circle in outlines(figure, {name: (spot.real, spot.imag) for name, spot in piece.items()}).values():
        (x, y), reach = circle.centre, circle.radius
        corners.append((x - reach, y - reach, x + reach, y + reach))
    lefts, lows, rights, tops = zip(*corners, strict=True)
    return min(lefts), min(lows), max(rights), max(tops)
