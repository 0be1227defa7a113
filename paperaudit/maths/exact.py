"""The exact value of an expression: a fraction where it is rational, else a sum of square roots."""

from collections.abc import Mapping
from fractions import Fraction
from math import isqrt
from typing import TypeAlias

from paperaudit.errors import BudgetExceeded, NoValue, PaperauditError
from paperaudit.maths.angle_values import exact_function
from paperaudit.maths.logarithm_values import exact_logarithm
from paperaudit.maths.number_forms import MAX_BITS, whole_or_fraction, within_limits
from paperaudit.maths.surd import Surd, surd_expression
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
)

PI = "π"
MAX_DEGREE = 50
ExactValue: TypeAlias = Fraction | Surd
Values: TypeAlias = Mapping[str, Fraction]


class NotSurd(PaperauditError):
    """A value that is no sum of square roots (∛2, √(1 + √2), π); `maths.symbolic` has it."""


def rational_value(expression: Expression, letters: Values | None = None) -> Fraction | None:
    """The value as a fraction, letters replaced by `letters`; None where it is irrational.

    Raises NoValue (division by nought, root of a negative number, a letter without a value, a unit)
    and BudgetExceeded (towers of powers, numbers with hundreds of digits).

    >>> rational_value(Quotient(Number(Fraction(7)), Number(Fraction(2))))
    Fraction(7, 2)
    """
    try:
        value = exact_value(expression, letters)
    except NotSurd:
        return None
    return value if isinstance(value, Fraction) else None


def exact_value(expression: Expression, letters: Values | None = None) -> ExactValue:
    """The exact value: a Fraction if it is rational, else a Surd.

    Raises NotSurd for values beyond square roots, else as `rational_value`.

    >>> exact_value(Root(Number(Fraction(45))))
    Surd({5: Fraction(3, 1)})
    """
    value = _surd(expression, letters or {})
    fraction = value.fraction
    return value if fraction is None else fraction


def _surd(expression: Expression, letters: Values) -> Surd:
    match expression:
        case Number(value):
            return Surd.rational(value)
        case Letter(name):
            if name in letters:
                return Surd.rational(letters[name])
            if name == PI:
                raise NotSurd(PI)
            raise NoValue(f"{name} has no value")
        case Negative(operand):
            return -_surd(operand, letters)
        case Sum(terms):
            total = Surd({})
            for term in terms:
                total = total + _surd(term, letters)
            return total
        case Product(factors):
            product = Surd.rational(1)
            for factor in factors:
                product = product * _surd(factor, letters)
            return product
        case Of(share, whole):
            return _surd(share, letters) * _surd(whole, letters)
        case Quotient(numerator, denominator):
            return _surd(numerator, letters) * _surd(denominator, letters).reciprocal()
        case Power(base, exponent):
            return _power(_surd(base, letters), _exponent(exponent, letters))
        case Root(radicand, degree):
            return _root(_surd(radicand, letters), degree)
        case Function(name, argument):
            return _function(name, argument, letters)
        case Absolute(operand):
            inside = _surd(operand, letters)
            return -inside if inside.to_decimal() < 0 else inside
        case Logarithm(argument, base):
            return _logarithm(argument, base, letters)
        case Euler():
            raise NotSurd("e")
    raise NoValue(f"{write(expression)} is not a number")


def _function(name: str, argument: Expression, letters: Values) -> Surd:
    inside = argument.amount if isinstance(argument, Measured) and argument.unit == "°" else argument
    degrees = _surd(inside, letters).fraction
    whole = degrees is not None and degrees.denominator == 1 and name in ("sin", "cos", "tan")
    exact = exact_function(name, int(degrees)) if degrees is not None and whole else None
    if exact is None:
        raise NotSurd(f"{name} of an angle")
    return exact


def _logarithm(argument: Expression, base: Expression, letters: Values) -> Surd:
    natural = isinstance(base, Euler)
    size, of = (None if isinstance(part, Euler) else _surd(part, letters) for part in (argument, base))
    for number in (size, of):
        if number is not None and (number.to_decimal() <= 0 or (number is of and number.fraction == 1)):
            raise NoValue("a logarithm of a number, or to a base, that is not positive, or to base 1")
    if size is None and natural:
        return Surd.rational(1)
    exponent = exact_logarithm(size, of) if size is not None else None
    if exponent is None:
        raise NotSurd("a logarithm that is irrational")
    return Surd.rational(exponent)


def _exponent(exponent: Expression, letters: Values) -> Fraction:
    value = _surd(exponent, letters).fraction
    if value is None:
        raise NotSurd("an irrational exponent")
    return value


def _power(base: Surd, exponent: Fraction) -> Surd:
    if exponent.denominator != 1:
        return _power(_root(base, exponent.denominator), Fraction(exponent.numerator))
    count = exponent.numerator
    if count <= 0 and not base.parts:
        raise NoValue("nought to a power that is not positive")
    rational = base.fraction
    if rational is not None:
        return Surd.rational(bounded_power(rational, count))
    if abs(count) > MAX_DEGREE:
        raise BudgetExceeded("a power beyond any school paper's")
    result = Surd.rational(1)
    for _ in range(abs(count)):
        result = result * base
    return result if count >= 0 else result.reciprocal()


def bounded_power(base: Fraction, exponent: int) -> Fraction:
    """The power of a fraction; raises BudgetExceeded before a number with hundreds of digits is made.

    >>> bounded_power(Fraction(2, 3), -2)
    Fraction(9, 4)
    """
    if base in (1, -1):
        return base if exponent % 2 else Fraction(1)
    bits = base.numerator.bit_length() + base.denominator.bit_length()
    if base and bits * abs(exponent) > 2 * MAX_BITS:
        raise BudgetExceeded("a power with hundreds of digits")
    if not base:
        if exponent <= 0:
            raise NoValue("nought to a power that is not positive")
        return base
    return within_limits(base**exponent)


def _root(value: Surd, degree: int) -> Surd:
    rational = value.fraction
    if degree < 1 or degree > MAX_DEGREE:
        raise BudgetExceeded("a root beyond any school paper's")
    if rational is None:
        raise NotSurd("a root of a root")
    if degree == 1:
        return value
    if rational < 0:
        if degree % 2 == 0:
            raise NoValue("an even root of a negative number")
        return -_root(-value, degree)
    above, below = whole_root(rational.numerator, degree), whole_root(rational.denominator, degree)
    if above is not None and below is not None:
        return Surd.rational(Fraction(above, below))
    if degree == 2:
        return Surd.root(rational)
    raise NotSurd("a root that is not a square root")


def whole_root(whole: int, degree: int) -> int | None:
    """The whole number whose `degree`-th power is `whole`, or None where there is none.

    >>> whole_root(343, 3), whole_root(10, 2)
    (7, None)
    """
    if degree == 2:
        root = isqrt(whole)
        return root if root * root == whole else None
    low, high = 0, 1 << (whole.bit_length() // degree + 1)
    while low < high:
        middle = (low + high) // 2
        if middle**degree < whole:
            low = middle + 1
        else:
            high = middle
    return low if low**degree == whole else None


def exact_expression(value: ExactValue) -> Expression:
    """An exact value as an expression: a whole number, a fraction in lowest terms, or a surd."""
    return whole_or_fraction(value) if isinstance(value, Fraction) else surd_expression(value)
