"""Roots that a derivation set aside: whether a figure that meets every given has one of them."""

import math
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from paperaudit.geometry.beyond.amounts import Value
from paperaudit.geometry.beyond.further import Path
from paperaudit.geometry.beyond.reached import Fact
from paperaudit.geometry.beyond.values import Values
from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.drawn import FIRST_SEEDS
from paperaudit.geometry.coordinates.realise import realise
from paperaudit.geometry.figure.figure import Angular, Figure, Size, SizeRelation
from paperaudit.geometry.figure.sketch import FROM_SKETCH
from paperaudit.maths.cancelling import is_number
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import AngleOf, LengthOf, Letter

SAME = 1e-6
"""Share of a value within which two roots count as one."""


def figures_with(figure: Figure, set_aside: tuple[tuple[Size, Value], ...]) -> Iterator[Arrangement]:
    """Figures that meet every given and have one of the roots that the derivation set aside."""
    for size, value in set_aside:
        kind = "angle" if isinstance(size, Angular) else "length" if isinstance(size, LengthOf) else "letters"
        aim = Fraction(value.number).limit_denominator(10**9)
        pinned = SizeRelation(LinearForm.of(size) - LinearForm.number(aim), kind, FROM_SKETCH)  # type: ignore[arg-type]
        if not _is_about(size, figure):
            # It is a size of a line that was drawn in; the figure of the paper has another with the same equation.
            continue
        drawings = realise(replace(figure, conditions=(*figure.conditions, pinned)), FIRST_SEEDS)
        if drawings:
            yield Arrangement(figure, drawings[0])


def _is_about(size: Size, figure: Figure) -> bool:
    """Whether a size is one of the figure's own: of its points and along its lines, or one of its letters."""
    match size:
        case Letter(name):
            return name in figure.letters
        case LengthOf(start, end):
            return {start, end} <= set(figure.points)
        case AngleOf(arm, vertex, other):
            return {arm, vertex, other} <= set(figure.points)
    return False


def set_aside(path: Path, values: Values) -> tuple[tuple[Size, Value], ...]:
    """Roots that the path's equations have besides those of the figure and that could be a size."""
    introduced = {letter: size for size, letter in path.introduced}
    seen: dict[int, Fact] = {}
    pending = list(path.facts)
    while pending:
        fact = pending.pop()
        if id(fact) not in seen:
            seen[id(fact)] = fact
            pending.extend(fact.inputs)
    found: list[tuple[Size, Value]] = []
    for key, fact in seen.items():
        solved = values.solved.get(key)
        for other in solved.others if solved else ():
            size = introduced.get(fact.size, fact.size) if isinstance(fact.size, Letter) else fact.size
            if _could_be(size, other) and not math.isclose(other.number, solved.chosen.number, rel_tol=SAME):  # type: ignore[union-attr]
                found.append((size, other))
    return tuple(found)


def _could_be(size: Size, value: Value) -> bool:
    if not is_number(value.fraction):
        return False
    if isinstance(size, Letter):
        return True
    return value.number > 0 and not (isinstance(size, AngleOf) and value.number >= 180)
