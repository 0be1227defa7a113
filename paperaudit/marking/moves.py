"""How much of the method each line of a working carries, by what it changes of the line above it."""

import re
from enum import IntEnum
from itertools import pairwise

from paperaudit.model.derivation import Step, StepKind

_RELATION = re.compile(r"\s*[=<>≤≥≈]\s*")
_LABEL = re.compile(r"^(?P<label>[^:∠]{1,40}): (?=\S)")
_NUMBERED = re.compile(r"\(\d\)")
_JOINS = re.compile(r"\(\d\) [+−×÷]|[+−] \(\d\)|\bin \(\d\)|^[×÷] ")
_PRODUCT = re.compile(r"[\w)²³]\(|\)[²³(]")
_CHOICE = re.compile(r" = 0 or .* = 0$")


class Move(IntEnum):
    """What a line does for the method; the higher, the longer it keeps its mark."""

    TIDYING = 0  # terms collected, brackets taken out on one side, what is given numbered, a product's factors set to 0
    STEP = 1  # both sides change, or a formula is filled in
    DECISIVE = 2  # factors found, equations joined, denominators cleared, a formula for the roots


def moves(steps: tuple[Step, ...]) -> tuple[Move, ...]:
    """The move of every line. The first line of the working is a step, since it begins the method.

    A method mark is for a step that the method needs, an accuracy mark for what comes of it; which line of
    several shows it best is common practice, no source.

    >>> lines = "x² − 7x = −10", "x² − 7x + 10 = 0", "(x − 5)(x − 2) = 0", "x − 5 = 0 or x − 2 = 0"
    >>> [move.name for move in moves(tuple(Step(line, StepKind.ALGEBRA) for line in lines))]
    ['STEP', 'STEP', 'DECISIVE', 'TIDYING']
    """
    if not steps:
        return ()
    return (_first(steps[0]), *(_move(before, step) for before, step in pairwise(steps)))


def _first(step: Step) -> Move:
    return Move.TIDYING if _sets_out(step) else Move.STEP


def _sets_out(step: Step) -> bool:
    """Whether a line only numbers an equation, or says what a letter may not be."""
    label = _LABEL.match(step.statement)
    return "≠" in step.statement or bool(label and _NUMBERED.fullmatch(label["label"]))


def _move(before: Step, step: Step) -> Move:
    statement = step.statement
    label = _LABEL.match(statement)
    if _sets_out(step):
        return Move.TIDYING
    if _JOINS.search(label["label"] if label else "") or ("±" in statement and "±" not in before.statement):
        return Move.DECISIVE
    if _CHOICE.search(statement) or statement.endswith("…"):
        return Move.TIDYING
    if _factors(step) and not _factors(before):
        return Move.DECISIVE
    begins = label or before.kind in (StepKind.GIVEN, StepKind.EQUATION)
    return Move.TIDYING if _keeps_a_side(before, step) and not begins else Move.STEP


def _sides(step: Step) -> list[str]:
    return _RELATION.split(_LABEL.sub("", step.statement))


def _keeps_a_side(before: Step, step: Step) -> bool:
    """Whether a line rewrites one side only: the other is as above, or is left out ("= 24π")."""
    sides, earlier = _sides(step), _sides(before)
    return sides[0] in ("", earlier[0]) or (len(sides) > 1 and sides[-1] == earlier[-1])


def _factors(step: Step) -> bool:
    """Whether a line sets out a product, with no sum outside its brackets."""
    return bool(_PRODUCT.search(step.statement)) and not _terms(step)


def _terms(step: Step) -> int:
    """The signs between the terms of a line, those within brackets left out."""
    depth = count = 0
    for place, sign in enumerate(step.statement):
        depth += (sign in "([") - (sign in ")]")
        count += depth == 0 and sign in "+−" and step.statement[place - 1 : place] == " "
    return count
