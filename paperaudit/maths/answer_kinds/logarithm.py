"""Logarithms in the form that is asked for: one logarithm, or a sum of logarithms of letters and numbers."""

from collections.abc import Callable
from decimal import Decimal
from fractions import Fraction

from paperaudit.errors import BudgetExceeded, ExpressionNotRead, NoValue
from paperaudit.maths.euler import has_euler, with_euler
from paperaudit.maths.near import near_value
from paperaudit.maths.parse import read_expression
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison
from paperaudit.model.expression import (
    Expression,
    Logarithm,
    Number,
    Power,
    Product,
    Quotient,
    Root,
    letters_of,
    parts_of,
)

_TRIED, _ENOUGH = 30, 8
_CLOSE = Decimal("1e-38")


def compare_single(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """A single logarithm of the same value; a sum of logarithms is right in value and wrong in form."""
    return _compared(stated, derived[0], _single_fault)


def compare_apart(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """A sum of the same value in which no logarithm is taken of a product, a quotient or a power."""
    return _compared(stated, derived[0], _apart_fault)


def _compared(stated: str, answer: Answer, fault_of: Callable[[Expression], str]) -> Comparison:
    assert answer.value is not None
    try:
        value = read_expression(stated.strip().rstrip("."))
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read: {error}")
    value = with_euler(value) if has_euler(answer.value) else value
    same = _same(value, answer.value)
    if same is None:
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” could not be compared with {answer.text}")
    if not same:
        return Comparison(Agreement.DIFFERS, f"{write(value)} is not {answer.text}")
    fault = fault_of(value)
    return Comparison(Agreement.DIFFERS, f"it is equal, but {fault}") if fault else Comparison(Agreement.AGREES)


def _single_fault(value: Expression) -> str:
    count = len(_logarithms(value))
    return "it is not one logarithm" if count > 1 or (count == 1 and not isinstance(value, Logarithm)) else ""


def _apart_fault(value: Expression) -> str:
    long = (Product, Quotient, Power, Root)
    joined = [log for log in _logarithms(value) if isinstance(log.argument, long) and letters_of(log.argument)]
    return f"{write(joined[0])} comes apart further" if joined else ""


def _logarithms(value: Expression) -> list[Logarithm]:
    own = [value] if isinstance(value, Logarithm) else []
    return [*own, *(log for part in parts_of(value) for log in _logarithms(part))]


def _same(one: Expression, other: Expression) -> bool | None:
    """Whether two expressions agree at many positive numbers, None where too few could be tried."""
    letters = sorted({*letters_of(one), *letters_of(other)})
    if isinstance(one, Number) and isinstance(other, Number):
        return one.value == other.value
    tried = 0
    for place in range(_TRIED):
        values = {
            name: Fraction(7 + (5 * place + 13 * at) % 37, 2 + (place + at) % 4) for at, name in enumerate(letters)
        }
        try:
            sizes = [near_value(side, values) for side in (one, other)]
        except (NoValue, BudgetExceeded):
            continue
        tried += 1
        if abs(sizes[0] - sizes[1]) > _CLOSE * max(Decimal(1), abs(sizes[0])):
            return False
    return True if tried >= _ENOUGH else None
