"""Elimination: multiples of two equations added or subtracted until an unknown is gone."""

from fractions import Fraction
from math import lcm

from paperaudit.maths.equations_named import (
    NamedEquation,
    Sheet,
    SystemMove,
    combined,
    letters_left,
    relation_of,
)
from paperaudit.maths.linear_terms import Unknown
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.solving import Working
from paperaudit.maths.write import write
from paperaudit.model.expression import Relation


def standard(sheet: Sheet, equation: NamedEquation, unknowns: tuple[Unknown, ...]) -> NamedEquation:
    """The equation with letters left, the number right and no fractions, and the lines that make it so."""
    working = Working.of(equation.relation, sheet.unit)
    working.simplify()
    arranged = letters_left(working.sides, unknowns)
    moves: list[tuple[Relation, SystemMove]] = list(working.relations[1:])
    if not _is_arranged(working.relations[-1][0], equation, unknowns):
        moves.append((relation_of(arranged, working.style), "rearrange"))
    if not moves:
        return equation
    for relation, move in moves[:-1]:
        sheet.write(equation.name, relation, move)
    name = sheet.number()
    only_multiplied = [move for _, move in moves] == ["multiply"]
    origin = f" = {write(whole_or_fraction(working.multiplied_by))} × {equation.name}" if only_multiplied else ""
    sheet.write(name + origin, *moves[-1])
    return NamedEquation(name, moves[-1][0])


def _is_arranged(relation: Relation, equation: NamedEquation, unknowns: tuple[Unknown, ...]) -> bool:
    """Whether letters stand left in any order and the number right."""
    left, right = NamedEquation("", relation).sides()
    ordered = letters_left((left, right), unknowns)
    return set(left) == set(ordered[0]) and right == ordered[1]


def eliminate(
    sheet: Sheet, one: NamedEquation, two: NamedEquation, unknowns: tuple[Unknown, ...], key: Unknown
) -> NamedEquation:
    """The sum or difference of multiples of two equations in which `key` has fallen out.

    With more than two unknowns it is given a number, since it will be used again.
    """
    one, two = sorted((one, two), key=_order)
    multiple = Fraction(lcm(int(one.shares()[key]), int(two.shares()[key])))
    opposite = one.shares()[key] * two.shares()[key] < 0
    one, two = (_multiplied(sheet, each, abs(multiple / each.shares()[key]), unknowns) for each in (one, two))
    first, second = sorted((one, two), key=_order) if opposite else _positive_first(one, two, unknowns)
    sides = combined(first.sides(), second.sides(), Fraction(1 if opposite else -1))
    relation = relation_of(letters_left(sides, unknowns), sheet.style(first, second))
    operation = f"{first.name} {'+' if opposite else '−'} {second.name}"
    name = sheet.number() if len(unknowns) > 2 else operation
    sheet.write(name if name == operation else f"{name} = {operation}", relation, "combine")
    return NamedEquation(name, relation)


def _order(equation: NamedEquation) -> int:
    return int("".join(character for character in equation.name if character.isdigit()) or 0)


def _positive_first(
    one: NamedEquation, two: NamedEquation, unknowns: tuple[Unknown, ...]
) -> tuple[NamedEquation, NamedEquation]:
    """The two in the order that leaves a positive coefficient before the first letter that stays."""
    nought = Fraction(0)
    differences = (one.shares().get(unknown, nought) - two.shares().get(unknown, nought) for unknown in unknowns)
    first = next((difference for difference in differences if difference), nought)
    return (one, two) if first >= 0 else (two, one)


def _multiplied(sheet: Sheet, equation: NamedEquation, times: Fraction, unknowns: tuple[Unknown, ...]) -> NamedEquation:
    if times == 1:
        return equation
    left, right = letters_left(combined(((), ()), equation.sides(), times), unknowns)
    relation = relation_of((left, right), sheet.style(equation))
    name = sheet.number()
    sheet.write(f"{name} = {write(whole_or_fraction(times))} × {equation.name}", relation, "multiply")
    return NamedEquation(name, relation)
