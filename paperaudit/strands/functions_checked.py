"""The second way for functions among the givens: numbers put into the formulas as they are stated."""

from collections.abc import Mapping
from fractions import Fraction
from itertools import pairwise

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.exact import NotSurd
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.parts import with_parts
from paperaudit.maths.write import write
from paperaudit.model.expression import Expression, Product, letters_of
from paperaudit.strands.finishing import ChecksDisagree
from paperaudit.strands.functions_given import Formulas, calls

_DEEPEST = 6
_STEP = Fraction(1, 10**9)
_CLOSE = Fraction(1, 10**6)
_TRIED = (Fraction(2), Fraction(-3), Fraction(5, 2), Fraction(11), Fraction(-1, 3))
_LEAST = 2


def value_of_call(
    name: str, at: Fraction, functions: Formulas, values: Mapping[str, Fraction], depth: int = 0
) -> Fraction:
    """The value of a function as it is stated, derivatives by differences of values close by: the second way.

    Raises NoValue where something has no rational value.
    """
    if depth > _DEEPEST:
        raise NoValue("functions of functions of functions")
    one = functions[name]

    def plain(where: Fraction) -> Fraction:
        inside = {**values, one.letter: where}
        return _number(numbers_called(one.formula, functions, inside, depth + 1), inside)

    rows = [plain(at + (place - Fraction(one.order, 2)) * _STEP) for place in range(one.order + 1)]
    while len(rows) > 1:
        rows = [after - before for before, after in pairwise(rows)]
    return rows[0] / _STEP**one.order


def numbers_called(
    expression: Expression, functions: Formulas, values: Mapping[str, Fraction], depth: int = 0
) -> Expression:
    """The expression with the number for every call of a function."""
    if isinstance(expression, Product):
        kept = []
        for name, piece in calls(expression, {*functions}):
            inside = numbers_called(piece, functions, values, depth)
            if name is None:
                kept.append(inside)
                continue
            at = _number(inside, values)
            kept.append(whole_or_fraction(value_of_call(name, at, functions, values, depth)))
        return kept[0] if len(kept) == 1 else Product(tuple(kept), "×")
    return with_parts(expression, lambda part: numbers_called(part, functions, values, depth))


def _number(expression: Expression, values: Mapping[str, Fraction]) -> Fraction:
    # Loaded with the first function: the strand of algebra is many modules.
    from paperaudit.strands.algebra.confirming import number_at

    return Fraction(number_at(expression, dict(values)))


def confirm_applied(before: Expression, after: Expression, functions: Formulas, values: Mapping[str, Fraction]) -> None:
    """An expression with calls of functions against what it became, at several numbers; raises ChecksDisagree."""
    open_letters = [name for name in (*letters_of(before), *letters_of(after)) if name not in (*functions, *values)]
    compared = 0
    for number in _TRIED if open_letters else _TRIED[:_LEAST]:
        at = {**{name: number + place for place, name in enumerate(dict.fromkeys(open_letters))}, **values}
        try:
            expected = _number(numbers_called(before, functions, at), at)
            found = _number(after, at)
        except (NoValue, NotSurd, BudgetExceeded):
            continue
        if abs(found - expected) > _CLOSE * max(Fraction(1), abs(expected)):
            raise ChecksDisagree(f"{write(after)} put in for {write(before)}")
        compared += 1
    if compared < _LEAST:
        raise ChecksDisagree(f"{write(after)}, which could be compared nowhere")
