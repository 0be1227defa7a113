"""Values of formulas to fifty figures by decimal arithmetic alone, for comparing with what was derived exactly."""

from collections.abc import Callable, Mapping
from decimal import Context, Decimal, DecimalException
from fractions import Fraction
from math import pi, prod

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.write import write
from paperaudit.model.expression import (
    Absolute,
    Euler,
    Expression,
    Function,
    Letter,
    Logarithm,
    Measured,
    Negative,
    Number,
    Power,
    Product,
    Quotient,
    Root,
    Sum,
)

_CONTEXT = Context(prec=50)
_LARGEST_EXPONENT = 200


def near_value(expression: Expression, values: Mapping[str, Fraction]) -> Decimal:
    """The value with numbers for the letters; raises NoValue where there is none.

    >>> from paperaudit.maths.parse import read_expression
    >>> near_value(read_expression("x² + 1/x"), {"x": Fraction(2)})
    Decimal('4.5')
    """
    try:
        return _near(expression, values)
    except DecimalException:
        raise NoValue(f"{write(expression)} at these numbers") from None


def _near(expression: Expression, values: Mapping[str, Fraction]) -> Decimal:
    match expression:
        case Number(value):
            return _decimal(value)
        case Letter(name) if name in values:
            return _decimal(values[name])
        case Negative(operand):
            return _CONTEXT.minus(_near(operand, values))
        case Sum(terms):
            total = Decimal(0)
            for term in terms:
                total = _CONTEXT.add(total, _near(term, values))
            return total
        case Product(factors):
            product = Decimal(1)
            for factor in factors:
                product = _CONTEXT.multiply(product, _near(factor, values))
            return product
        case Quotient(above, below):
            return _CONTEXT.divide(_near(above, values), _near(below, values))
        case Power(base, exponent):
            return _power(_near(base, values), _near(exponent, values))
        case Root(radicand, degree):
            return _power(_near(radicand, values), _decimal(Fraction(1, degree)))
        case Absolute(operand):
            return abs(_near(operand, values))
        case Euler():
            return _CONTEXT.exp(Decimal(1))
        case Logarithm(argument, base):
            size, of = _near(argument, values), _near(base, values)
            if size <= 0 or of <= 0:
                raise NoValue(f"{write(expression)} at these numbers")
            return _CONTEXT.divide(_CONTEXT.ln(size), _CONTEXT.ln(of))
    raise NoValue(f"{write(expression)} is not a number")


def _decimal(value: Fraction) -> Decimal:
    return _CONTEXT.divide(Decimal(value.numerator), Decimal(value.denominator))


def _power(base: Decimal, exponent: Decimal) -> Decimal:
    if abs(exponent) > _LARGEST_EXPONENT:
        raise BudgetExceeded("a power beyond any school paper's")
    return _CONTEXT.power(base, exponent)


def float_value(
    expression: Expression,
    degrees: float | Mapping[str, float],
    ratios: Mapping[str, Callable[[float], float]],
    radians: Callable[[float], float],
) -> float:
    """The value of an expression with sines, cosines and tangents, each letter standing for so many degrees."""

    def value(part: Expression) -> float:
        match part:
            case Number(number):
                return float(number)
            case Letter("π"):
                return pi
            case Letter(name):
                return degrees[name] if isinstance(degrees, Mapping) else degrees
            case Measured(amount, "°"):
                return value(amount)
            case Negative(operand):
                return -value(operand)
            case Sum(terms):
                return sum(map(value, terms))
            case Product(factors):
                return prod(map(value, factors))
            case Quotient(above, below):
                return value(above) / value(below)
            case Power(base, exponent):
                return float(value(base) ** value(exponent))
            case Root(radicand, degree):
                return float(value(radicand) ** (1 / degree))
            case Function(name, argument) if name in ratios:
                return ratios[name](radians(value(argument)))
        raise NoValue(f"{write(part)} is not a number")

    return value(expression)
