"""The second way for algebra: exact evaluation at many numbers, with nothing taken from the derivation."""

from collections.abc import Iterator, Mapping, Sequence
from decimal import Decimal
from fractions import Fraction
from typing import Any

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.approximate import to_decimal
from paperaudit.maths.exact import NotSurd, exact_value
from paperaudit.maths.same_value import APART
from paperaudit.maths.write import write
from paperaudit.model.expression import (
    Absolute,
    Euler,
    Expression,
    Letter,
    Logarithm,
    Negative,
    Number,
    Power,
    Product,
    Quotient,
    Root,
    Sum,
    letters_of,
    with_leaves,
)
from paperaudit.strands.finishing import ChecksDisagree

EVALUATED = "evaluated exactly at more numbers than the degree allows to agree by chance"
POINTS = 30
_LEAST = 8


def points(letters: Sequence[str], positive: bool = False) -> Iterator[dict[str, Fraction]]:
    """Numbers for the letters, the same ones each time, spread by whole multiples of odd steps."""
    for place in range(POINTS):
        yield {
            letter: Fraction(2 + (7 * place + 11 * at + place * at) % 41, 1 + (place + at) % 3)
            * (1 if positive or (place + at) % 2 else -1)
            for at, letter in enumerate(letters)
        }


def number_at(expression: Expression, values: dict[str, Fraction]) -> Fraction | Decimal:
    """The value with numbers for the letters, exact where it is rational, else sixty figures.

    Raises NoValue where there is none, and BudgetExceeded.
    """
    try:
        value = exact_value(expression, values)
        return value if isinstance(value, Fraction) else value.to_decimal()
    except NotSurd:
        pass

    def put_in(leaf: Expression) -> Expression:
        return Number(values[leaf.name]) if isinstance(leaf, Letter) and leaf.name in values else leaf

    return to_decimal(with_leaves(expression, put_in))


def put_in(expression: Expression, letter: str, value: Expression) -> Expression:
    """The expression with a value in place of a letter."""
    return with_leaves(expression, lambda leaf: value if leaf == Letter(letter) else leaf)


def same_number(one: Fraction | Decimal, other: Fraction | Decimal) -> bool:
    """Whether two values agree, exactly or to forty decimals relative to their size."""
    if isinstance(one, Fraction) and isinstance(other, Fraction):
        return one == other
    size, apart = abs(Fraction(one)), abs(Fraction(one) - Fraction(other))
    return apart <= Fraction(APART) * (size if size > 1 else 1)


def confirm_equal(lines: Sequence[Expression], positive: bool = False) -> None:
    """Every line must have the first one's value wherever both have one; raises ChecksDisagree."""
    letters = tuple(dict.fromkeys(name for line in lines for name in letters_of(line)))
    compared = 0
    if positive and letters:
        _confirm_logarithms(lines, letters)
        return
    for values in points(letters, positive):
        try:
            expected = number_at(lines[0], values)
            found = [number_at(line, values) for line in lines[1:]]
        except NoValue:
            continue
        except (BudgetExceeded, NotSurd):
            continue
        compared += 1
        for line, value in zip(lines[1:], found, strict=True):
            if not same_number(value, expected):
                raise ChecksDisagree(f"{write(line)} is not {write(lines[0])}")
    if compared < min(_LEAST, POINTS if letters else 1):
        raise ChecksDisagree(f"{write(lines[0])} could not be evaluated at enough numbers")


def _confirm_logarithms(lines: Sequence[Expression], letters: Sequence[str]) -> None:
    """Powers too large to be written out: every line worked in floating point of sixty figures near 1."""
    import mpmath

    with mpmath.workdps(60):
        for values in points(letters, positive=True):
            near = {name: 1 + mpmath.mpf(value.numerator) / value.denominator / 1000 for name, value in values.items()}
            found = [_floating(line, near) for line in lines]
            for line, value in zip(lines[1:], found[1:], strict=True):
                if abs(value - found[0]) > abs(found[0]) * mpmath.mpf(10) ** -40:
                    raise ChecksDisagree(f"{write(line)} is not {write(lines[0])}")


def floating_at(expression: Expression, letter: str, at: Fraction) -> float | None:
    """The value in floating point with a number for the letter, None where it is not real."""
    import mpmath

    try:
        value = _floating(expression, {letter: mpmath.mpf(at.numerator) / at.denominator})
    except (ZeroDivisionError, OverflowError):
        return None
    return None if isinstance(value, mpmath.mpc) else float(value)


def _floating(expression: Expression, values: Mapping[str, Any]) -> Any:
    import mpmath

    match expression:
        case Number(value):
            return mpmath.mpf(value.numerator) / value.denominator
        case Letter(name):
            return values[name]
        case Negative(operand):
            return -_floating(operand, values)
        case Sum(terms):
            return sum(_floating(term, values) for term in terms)
        case Product(factors):
            return mpmath.fprod(_floating(factor, values) for factor in factors)
        case Quotient(above, below):
            return _floating(above, values) / _floating(below, values)
        case Power(base, exponent):
            return _floating(base, values) ** _floating(exponent, values)
        case Root(radicand, degree):
            return mpmath.root(_floating(radicand, values), degree)
        case Absolute(operand):
            return abs(_floating(operand, values))
        case Euler():
            return mpmath.e()
        case Logarithm(argument, base):
            return mpmath.log(_floating(argument, values)) / mpmath.log(_floating(base, values))
    raise NoValue(write(expression))
