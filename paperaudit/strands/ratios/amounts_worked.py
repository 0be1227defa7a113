"""Calculations in a pupil's lines where π may stand in them: 1/3 × π × 3² × 10, then 30π."""

from decimal import Decimal
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.exact import NotSurd, exact_value
from paperaudit.maths.number_forms import as_decimal, whole_or_fraction
from paperaudit.maths.polynomial import ONE, Polynomial, algebraic_fraction
from paperaudit.maths.postfix import decimal_value
from paperaudit.maths.surd import Surd, surd_expression
from paperaudit.model.expression import (
    Expression,
    Letter,
    Negative,
    Number,
    NumberForm,
    Power,
    Product,
    Quotient,
    Root,
    Sum,
    leaves,
)
from paperaudit.strands.calculating import calculated, confirm

_LONGEST = 6
PI = Letter("π")


def has_decimals(*values: Expression) -> bool:
    """Whether a decimal stands among the numbers."""
    kinds = (NumberForm.DECIMAL, NumberForm.PERCENT)
    return any(isinstance(leaf, Number) and leaf.form in kinds for value in values for leaf in leaves(value))


def plain(value: Fraction, decimals: bool = False) -> Number:
    """A number: whole, a short decimal where decimals are worked with, else a fraction."""
    decimal = as_decimal(value) if decimals else None
    return decimal if decimal is not None and decimal.places <= _LONGEST else whole_or_fraction(value)


def simplest(expression: Expression, decimals: bool | None = None) -> Expression:
    """The value in one piece: a number, a surd, a multiple of π; itself where it is none of these."""
    short = has_decimals(expression) if decimals is None else decimals
    try:
        value = exact_value(expression)
        return plain(value, short) if isinstance(value, Fraction) else surd_expression(value)
    except NotSurd:
        pass
    try:
        fraction = algebraic_fraction(expression)
    except NotSurd:
        return _root(expression, short)
    if fraction.below == ONE:
        return _written(fraction.above, short)
    return _over(fraction.above, fraction.below, short) or expression


def _root(expression: Expression, decimals: bool) -> Expression:
    """A root over its simplest inside: √(50/π)."""
    if not isinstance(expression, Root):
        return expression
    return Root(simplest(expression.radicand, decimals), expression.degree)


def _written(polynomial: Polynomial, decimals: bool) -> Expression:
    terms = sorted(polynomial.terms.items(), key=lambda term: -sum(power for _, power in term[0]))
    pieces = [_term(share, sum(power for _, power in monomial), decimals) for monomial, share in terms]
    return pieces[0] if len(pieces) == 1 else Sum(tuple(pieces)) if pieces else Number(Fraction(0))


def _term(share: Surd, power: int, decimals: bool) -> Expression:
    if not power:
        return surd_expression(share) if share.fraction is None else plain(share.fraction, decimals)
    pi: Expression = PI if power == 1 else Power(PI, Number(Fraction(power)))
    if share.fraction is None:
        inside = surd_expression(share)
        if isinstance(inside, Quotient):
            return Quotient(Product((inside.numerator, pi)), inside.denominator)
        return Product((inside, pi)) if len(share.parts) > 1 else Product((*_factors(inside), pi))
    size = abs(share.fraction)
    number = plain(size, decimals)
    if number.form is NumberForm.FRACTION:
        above: Expression = pi if size.numerator == 1 else Product((Number(Fraction(size.numerator)), pi))
        value: Expression = Quotient(above, Number(Fraction(size.denominator)))
    else:
        value = pi if size == 1 else Product((number, pi))
    return Negative(value) if share.fraction < 0 else value


def _factors(inside: Expression) -> tuple[Expression, ...]:
    return inside.factors if isinstance(inside, Product) else (inside,)


def _over(above: Polynomial, below: Polynomial, decimals: bool) -> Expression | None:
    """A number over a multiple of π, or multiples that cancel: 500/(10π) is 50/π."""
    if len(above.terms) != 1 or len(below.terms) != 1:
        return None
    (over, share), (under, other) = next(iter(above.terms.items())), next(iter(below.terms.items()))
    power = sum(count for _, count in over) - sum(count for _, count in under)
    number = share * other.reciprocal()
    if power >= 0:
        return _term(number, power, decimals)
    pi = PI if power == -1 else Power(PI, Number(Fraction(-power)))
    if number.fraction is None:
        return Quotient(surd_expression(number), pi)
    if number.fraction.denominator == 1 or decimals:
        return Quotient(plain(number.fraction, decimals), pi)
    top, bottom = Number(Fraction(number.fraction.numerator)), Number(Fraction(number.fraction.denominator))
    return Quotient(top, Product((bottom, pi)))


def worked(expression: Expression) -> tuple[Expression, ...]:
    """The calculation and what it becomes, line by line, each confirmed by a second evaluation.

    Raises NoValue, BudgetExceeded, NotSurd and ChecksDisagree.
    """
    if PI not in leaves(expression) and not _beyond(expression):
        return calculated(expression)
    decimals = has_decimals(expression)
    lines = [expression]
    if isinstance(expression, Sum):
        terms = tuple(
            Negative(simplest(term.operand, decimals)) if isinstance(term, Negative) else simplest(term, decimals)
            for term in expression.terms
        )
        if Sum(terms) != expression:
            lines.append(Sum(terms))
    final = simplest(expression, decimals)
    if final != lines[-1]:
        lines.append(final)
    confirm(lines)
    return tuple(lines)


def _beyond(expression: Expression) -> bool:
    """Whether the value is neither rational nor a sum of square roots."""
    try:
        exact_value(expression)
    except NotSurd:
        return True
    return False


def size_of(expression: Expression) -> Decimal:
    """The value to many figures; raises NoValue where there is none."""
    value = decimal_value(expression)
    if not value.is_finite():
        raise NoValue("no finite value")
    return value
