"""Looks for every arrangement that the words allow: each angle that matters is asked to open either way."""

from collections.abc import Sequence
from itertools import product

from paperaudit.geometry.arrangement import Arrangement
from paperaudit.geometry.figure import EqualLengths, Figure, SizeRelation
from paperaudit.geometry.realise import Drawing, realise
from paperaudit.model.expression import AngleOf

MOST_TURNS = 6
"""Angles whose ways of opening are tried in every combination: at most 2⁵ up to mirror images."""
BASES = 2
"""Drawings from which every combination is tried, beside one fresh start each."""
FRESH = 100
"""The first seed of those fresh starts."""
MOST_ARRANGEMENTS = 8


def arrangements(figure: Figure, drawings: Sequence[Drawing], complete: bool) -> list[Arrangement]:
    """One arrangement for each different signature, those drawn most often first.

    `complete` tries every way of opening for the angles that the givens and the ask are about; a
    figure whose sketch settles the arrangement does without.
    """
    groups: dict[object, list[Arrangement]] = {}
    tried = list(drawings)
    turns = turning_angles(figure) if complete else ()
    if len(turns) > 1:
        ways = [(1, *rest) for rest in product((1, -1), repeat=len(turns) - 1)]
        bases = [base for base in drawings[:BASES] for _ in ways]
        fresh = range(FRESH, FRESH + len(ways))
        tried += realise(figure, fresh, bases, turns, ways * (len(drawings[:BASES]) + 1))
    for drawing in tried:
        arrangement = Arrangement(figure, drawing)
        groups.setdefault(arrangement.signature, []).append(arrangement)
    ordered = sorted(groups.values(), key=len, reverse=True)
    return [group[0] for group in ordered[:MOST_ARRANGEMENTS]]


def turning_angles(figure: Figure) -> tuple[AngleOf, ...]:
    """Angles that can open either way on their own: of those that relations, equal sides and the ask are about.

    Angles of one triangle of points open together, so one stands for them all. At most MOST_TURNS.
    """
    found = [
        size for condition in figure.conditions if isinstance(condition, SizeRelation)
        for size in condition.form.terms if isinstance(size, AngleOf)
    ]
    found += [angle for condition in figure.conditions if isinstance(condition, EqualLengths)
              for angle in _between_equal_sides(condition)]
    found[:0] = reversed(figure.fixed_names)
    independent: dict[frozenset[str], AngleOf] = {}
    for size in found:
        triple = frozenset((size.vertex, _foremost(figure, size.vertex, size.arm), _foremost(figure, size.vertex, size.other)))
        if len(triple) == 3:
            independent.setdefault(triple, size)
    return tuple(independent.values())[:MOST_TURNS]


def _between_equal_sides(condition: EqualLengths) -> list[AngleOf]:
    ends = ({condition.first.start, condition.first.end}, {condition.second.start, condition.second.end})
    common = ends[0] & ends[1]
    if len(common) != 1:
        return []
    (vertex,) = common
    (arm,), (other,) = ends[0] - common, ends[1] - common
    return [AngleOf(arm, vertex, other)]


def _foremost(figure: Figure, vertex: str, point: str) -> str:
    """The point that stands for a line through `vertex`: its first other one."""
    line = figure.lines[figure.line_of(vertex, point)]
    return next(other for other in line if other != vertex)
