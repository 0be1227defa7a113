"""Values beyond square roots (∛2, √(1 + √2), π) as sympy numbers, built from our own tree."""

from fractions import Fraction
from typing import TYPE_CHECKING, Any

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.exact import MAX_DEGREE, PI
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
    Of,
    Power,
    Product,
    Quotient,
    Root,
    Sum,
    leaves,
)

if TYPE_CHECKING:
    import sympy

DIGITS = 60
NOUGHT = Fraction(1, 10**40)
"""A value this close to nought, worked to 60 figures, is taken for nought where it may not be divided by."""


def symbolic_value(expression: Expression) -> "sympy.Expr":
    """The value as a sympy number, built node by node from our own tree, never from text.

    For cube roots, nested roots and π; raises NoValue and BudgetExceeded. Loads sympy.
    """
    import sympy

    if len(leaves(expression)) > MAX_DEGREE:
        raise BudgetExceeded("roots within roots beyond any school paper's")

    def built(part: Expression) -> Any:
        match part:
            case Number(value):
                return sympy.Rational(value.numerator, value.denominator)
            case Letter(name) if name == PI:
                return sympy.pi
            case Negative(operand):
                return -built(operand)
            case Sum(terms):
                return sympy.Add(*(built(term) for term in terms))
            case Product(factors):
                return sympy.Mul(*(built(factor) for factor in factors))
            case Of(share, whole):
                return built(share) * built(whole)
            case Quotient(numerator, denominator):
                return built(numerator) * _nonzero(built(denominator)) ** -1
            case Power(base, exponent):
                return _symbolic_power(built(base), built(exponent))
            case Root(radicand, degree):
                return _symbolic_power(built(radicand), sympy.Rational(1, degree))
            case Function(name, argument):
                return _symbolic_function(name, built(without_degrees(argument)))
            case Euler():
                return sympy.E
            case Logarithm(argument, base):
                return _natural(built(argument)) * _nonzero(_natural(built(base))) ** -1
            case Absolute(operand):
                return sympy.Abs(built(operand))
            case Measured():
                raise NoValue("a unit inside an exact value")
        raise NoValue(f"{write(part)} is not a number")

    result: sympy.Expr = built(expression)
    return result


def without_degrees(argument: Expression) -> Expression:
    """The number of degrees that a function is taken of."""
    return argument.amount if isinstance(argument, Measured) and argument.unit == "°" else argument


def _symbolic_function(name: str, value: Any) -> Any:
    import sympy

    whole: dict[str, Any] = {"sin": sympy.sin, "cos": sympy.cos, "tan": sympy.tan}
    if name in whole:
        return whole[name](value * sympy.pi / 180)
    inverse: dict[str, Any] = {"sin⁻¹": sympy.asin, "cos⁻¹": sympy.acos, "tan⁻¹": sympy.atan}
    result = inverse[name](value) * 180 / sympy.pi
    if not result.is_real:
        raise NoValue(f"{name} of a number beyond 1")
    return result


def _natural(value: Any) -> Any:
    """The natural logarithm in those of primes, so that equal ones look alike."""
    import sympy

    if value.evalf(DIGITS) <= 0:
        raise NoValue("a logarithm of a number that is not positive")
    return sympy.expand_log(sympy.log(value), force=True)


def _nonzero(value: Any) -> Any:
    if value.is_zero or abs(value.evalf(DIGITS)) < NOUGHT:
        raise NoValue("a division by nought")
    return value


def _symbolic_power(base: Any, exponent: Any) -> Any:
    import sympy

    if not exponent.is_Rational or abs(exponent.p) > MAX_DEGREE or exponent.q > MAX_DEGREE:
        raise BudgetExceeded("a power beyond any school paper's")
    if exponent.q % 2 == 0 and base.evalf(DIGITS) < 0:
        raise NoValue("an even root of a negative number")
    if exponent.q % 2 and base.is_Rational and base < 0:
        return (-1) ** exponent.p * sympy.Pow(-base, exponent)
    return sympy.Pow(base, exponent)
