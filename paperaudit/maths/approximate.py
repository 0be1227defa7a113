"""Decimals of exact values: to sixty figures for checking, and the short one printed behind a surd."""

from decimal import ROUND_HALF_UP, Context, Decimal
from fractions import Fraction

from paperaudit.maths.exact import NotSurd, exact_value
from paperaudit.maths.postfix import decimal_value
from paperaudit.maths.surd import Surd
from paperaudit.maths.symbolic import DIGITS, symbolic_value
from paperaudit.model.expression import Euler, Expression, Function, Logarithm, Number, NumberForm, parts_of


def to_decimal(expression: Expression) -> Decimal:
    """The value to about 60 figures, for values of any kind; raises as `exact_value` does."""
    try:
        value = exact_value(expression)
    except NotSurd:
        if has_function(expression):
            return decimal_value(expression)
        return Decimal(str(symbolic_value(expression).evalf(DIGITS)))
    if isinstance(value, Surd):
        return value.to_decimal(DIGITS)
    return Context(prec=DIGITS).divide(Decimal(value.numerator), Decimal(value.denominator))


def has_function(expression: Expression) -> bool:
    """Whether a sine, a cosine, a tangent or an inverse of one, a logarithm or e stands in an expression."""
    return isinstance(expression, Function | Logarithm | Euler) or any(
        has_function(part) for part in parts_of(expression)
    )


def nearest_decimal(value: Decimal, places: int) -> Fraction:
    """A many-figured decimal rounded to `places`, halves away from zero, as an exact number."""
    rounded = value.quantize(Decimal(1).scaleb(-places), rounding=ROUND_HALF_UP, context=Context(prec=2000))
    return Fraction(rounded)


def decimal_beside(value: Decimal) -> Number:
    """The decimal that is printed behind an irrational answer: four figures, and never fewer than one decimal.

    >>> decimal_beside(Surd({5: Fraction(3)}).to_decimal()).value
    Fraction(1677, 250)
    """
    places = max(1, 3 - value.adjusted())
    return Number(nearest_decimal(value, places), NumberForm.DECIMAL, places)
