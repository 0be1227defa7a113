"""Rebuilds an expression from changed parts."""

from collections.abc import Callable

from paperaudit.model.expression import (
    Absolute,
    Expression,
    Function,
    Logarithm,
    Measured,
    Negative,
    Number,
    Of,
    Power,
    Product,
    Quotient,
    Root,
    Sum,
)


def with_parts(expression: Expression, change: Callable[[Expression], Expression]) -> Expression:
    """The expression with each of its direct parts put through `change`; a leaf stays as it is.

    >>> from paperaudit.model.expression import Letter
    >>> with_parts(Negative(Letter("x")), lambda part: Letter("y"))
    Negative(operand=Letter(name='y'))
    """
    match expression:
        case Negative(operand):
            return Negative(change(operand))
        case Sum(terms):
            return Sum(tuple(map(change, terms)))
        case Product(factors, sign):
            return Product(tuple(map(change, factors)), sign)
        case Quotient(numerator, denominator, bar):
            return Quotient(change(numerator), change(denominator), bar)
        case Power(base, exponent):
            return Power(change(base), change(exponent))
        case Root(radicand, degree):
            return Root(change(radicand), degree)
        case Of(share, whole):
            return Of(change(share), change(whole))
        case Measured(amount, unit):
            return Measured(change(amount), unit)
        case Logarithm(argument, base):
            return Logarithm(change(argument), change(base))
        case Absolute(operand):
            return Absolute(change(operand))
    return expression


_RAISED_AS_WHOLE = ("sin", "cos", "tan")
"""Functions whose powers are written sin² x."""


def is_function(expression: Expression) -> bool:
    """Whether it is a function, or a power of one that is written sin² x: both stand apart from other factors."""
    match expression:
        case Function():
            return True
        case Power(Function(name), Number(count)):
            return name in _RAISED_AS_WHOLE and count > 1 and count.denominator == 1
    return False
