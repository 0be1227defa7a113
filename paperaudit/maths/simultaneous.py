"""Linear equations in two or three unknowns, by elimination or substitution, in the lines of a pupil."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, TypeAlias

from paperaudit.errors import BudgetExceeded
from paperaudit.maths.elimination import eliminate, standard
from paperaudit.maths.equations_named import NamedEquation, Sheet, SystemMove, Values, in_unit, replaced, unknowns_of
from paperaudit.maths.linear_terms import Unknown
from paperaudit.maths.number_forms import as_decimal, whole_or_fraction
from paperaudit.maths.solving import LinearSolution, Outcome, in_decimals, solve_linear
from paperaudit.maths.write import write
from paperaudit.model.expression import Expression, Letter, Measured, Negative, Relation

MAX_UNKNOWNS = 3
MAX_EQUATIONS = 6
_Result: TypeAlias = Values | Literal["none", "all"]


@dataclass(frozen=True, slots=True)
class SimultaneousSolution:
    """The lines from the equations, named (1), (2), …, to the values, each with the move that led to it.

    `values` is in the order of the unknowns asked for; "none" where the equations clash, "all" where
    they leave infinitely many solutions.
    """

    lines: tuple[str, ...]
    moves: tuple[SystemMove, ...]
    values: tuple[tuple[Unknown, Fraction], ...] | Literal["none", "all"]


def solve_simultaneous(
    relations: Sequence[Relation], unknowns: Sequence[str | Unknown] = (), unit: str = ""
) -> SimultaneousSolution:
    """Solve linear equations in up to three unknowns by whichever way takes fewer lines.

    `unknowns` says which are asked for and in which order, by default all; a value that nothing asks
    for and no other needs is not worked out. `unit` is put behind constants, as in `solve_linear`.
    Raises NotLinear, NoValue, UnitClash and BudgetExceeded.

    >>> from paperaudit.maths.parse import read_relation
    >>> solve_simultaneous([read_relation("a + b = 42"), read_relation("a - b = 8")]).lines[2:]
    ('(1) + (2): 2a = 50', 'a = 25', 'a = 25 in (1): 25 + b = 42', 'b = 17')
    """
    asked = tuple(Letter(unknown) if isinstance(unknown, str) else unknown for unknown in unknowns)
    keys = tuple(dict.fromkeys([*(key for relation in relations for key in unknowns_of(relation)), *asked]))
    if len(keys) > MAX_UNKNOWNS or len(relations) > MAX_EQUATIONS:
        raise BudgetExceeded(f"{len(relations)} equations in {len(keys)} unknowns")
    equations = [NamedEquation(f"({number})", relation) for number, relation in enumerate(relations, 1)]
    sheet = Sheet([], len(equations), unit)
    for equation in equations:
        sheet.write(equation.name, equation.relation, "given")
    if unit:
        equations = [_in_unit(sheet, equation) for equation in equations]
    result = _solve(sheet, equations, keys, frozenset(asked or keys))
    texts, moves = zip(*sheet.lines, strict=True)
    values = result if isinstance(result, str) else tuple((key, result[key]) for key in asked or keys)
    return SimultaneousSolution(texts, moves, values)


def _in_unit(sheet: Sheet, equation: NamedEquation) -> NamedEquation:
    """The equation in the unit that all are worked in, with a line where that changes it."""
    relation = in_unit(equation.relation, sheet.unit)
    if relation != equation.relation:
        sheet.write(equation.name, relation, "work out")
    return NamedEquation(equation.name, relation)


def _solve(
    sheet: Sheet, equations: list[NamedEquation], unknowns: tuple[Unknown, ...], needed: frozenset[Unknown]
) -> _Result:
    """Solve by the way with the fewest lines, and write them on the sheet."""
    if len(unknowns) == 1:
        return _solve_last(sheet, equations, unknowns[0])
    tries: list[tuple[Sheet, _Result]] = []
    for equation in equations:
        for key, value in equation.isolated():
            trial = sheet.copy()
            tries.append((trial, _by_substitution(trial, equations, unknowns, needed, equation, key, value)))
    for key in unknowns:
        trial = sheet.copy()
        tries.append((trial, _by_elimination(trial, equations, unknowns, needed, key)))
    best, result = min(tries, key=lambda attempt: attempt[0].length())
    sheet.lines, sheet.numbered = best.lines, best.numbered
    return result


def _solve_last(sheet: Sheet, equations: list[NamedEquation], unknown: Unknown) -> _Result:
    """One unknown is left: solve the first equation that still has it, and test the others."""
    with_it = [equation for equation in equations if equation.shares()]
    for equation in equations:
        if equation not in with_it and _write_solution(sheet, equation, unknown).value == "none":
            return "none"
    if not with_it:
        return "all"
    value = _write_solution(sheet, with_it[0], unknown).value
    assert isinstance(value, Fraction)
    for equation in with_it[1:]:
        tested = _put_in(sheet, equation, {unknown: value})
        if _write_solution(sheet, tested, unknown).value == "none":
            return "none"
    return {unknown: value}


def _write_solution(sheet: Sheet, equation: NamedEquation, unknown: Unknown) -> LinearSolution:
    """The lines that solve an equation for the one unknown in it; it is named unless it is the last line."""
    solution = solve_linear(equation.relation, unknown, sheet.unit)
    follows = sheet.lines[-1][0].endswith(f": {write(equation.relation)}")
    for place, (text, move) in enumerate(zip(solution.lines[1:], solution.moves[1:], strict=True)):
        sheet.lines.append((text if place or follows else f"{equation.name}: {text}", move))
    return solution


def _by_substitution(
    sheet: Sheet,
    equations: list[NamedEquation],
    unknowns: tuple[Unknown, ...],
    needed: frozenset[Unknown],
    source: NamedEquation,
    key: Unknown,
    value: Expression,
) -> _Result:
    """Put what an unknown equals by one equation into every other one that has it."""
    rest: list[NamedEquation] = []
    for equation in equations:
        if equation is source:
            continue
        if key in equation.shares():
            relation, operation = replaced(equation.relation, {key: value}), f"{source.name} in {equation.name}"
            name = sheet.number() if len(unknowns) > 2 else operation
            sheet.write(name if name == operation else f"{name} = {operation}", relation, "substitute")
            equation = NamedEquation(name, relation)
        rest.append(equation)
    return _find_the_other(sheet, rest, unknowns, needed, key, [source])


def _by_elimination(
    sheet: Sheet,
    equations: list[NamedEquation],
    unknowns: tuple[Unknown, ...],
    needed: frozenset[Unknown],
    key: Unknown,
) -> _Result:
    """Add or subtract multiples of the equations that have an unknown, until it is gone."""
    having = [equation for equation in equations if key in equation.shares()]
    rest = [equation for equation in equations if equation not in having]
    if len(having) > 1:
        having = [standard(sheet, equation, unknowns) for equation in having]
        pivot = min(having, key=lambda equation: abs(equation.shares()[key]))
        rest += [eliminate(sheet, pivot, each, unknowns, key) for each in having if each is not pivot]
    return _find_the_other(sheet, rest, unknowns, needed, key, having)


def _find_the_other(
    sheet: Sheet,
    rest: list[NamedEquation],
    unknowns: tuple[Unknown, ...],
    needed: frozenset[Unknown],
    key: Unknown,
    having: list[NamedEquation],
) -> _Result:
    """Solve what is left, then put the values back to find the unknown that was removed, if it is needed."""
    left = tuple(unknown for unknown in unknowns if unknown != key)
    result = _solve(sheet, rest, left, frozenset(left) if key in needed else needed)
    if isinstance(result, str):
        return result
    if not having:
        return "all"
    if key not in needed:
        return result
    tries: list[tuple[Sheet, Outcome]] = []
    for source in having:
        trial = sheet.copy()
        used = {unknown: result[unknown] for unknown in unknowns if unknown in result and unknown in source.shares()}
        final = _put_in(trial, source, used) if used else source
        tries.append((trial, _write_solution(trial, final, key).value))
    best, value = min(tries, key=lambda attempt: attempt[0].length())
    sheet.lines, sheet.numbered = best.lines, best.numbered
    return {**result, key: value} if isinstance(value, Fraction) else "none"


def _put_in(sheet: Sheet, equation: NamedEquation, values: Values) -> NamedEquation:
    """The line "x = 1 in (1): 4(1) + y = 2"."""
    decimals = in_decimals(equation.relation, sheet.unit)
    known = {unknown: _measure(value, sheet.unit, decimals) for unknown, value in values.items()}
    relation = replaced(equation.relation, known)
    said = ", ".join(f"{write(unknown)} = {write(value)}" for unknown, value in known.items())
    name = f"{said} in {equation.name}"
    sheet.write(name, relation, "substitute")
    return NamedEquation(name, relation)


def _measure(value: Fraction, unit: str, decimals: bool) -> Expression:
    number: Expression = (as_decimal(abs(value)) if decimals else None) or whole_or_fraction(abs(value))
    number = Measured(number, unit) if unit else number
    return Negative(number) if value < 0 else number
