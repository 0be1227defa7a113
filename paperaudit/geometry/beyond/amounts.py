"""Exact amounts: fractions, surds, π and sines of angles, and expressions of known sizes worked out in them."""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from paperaudit.errors import BudgetExceeded, NoValue, PaperauditError
from paperaudit.geometry.figure.figure import Size
from paperaudit.geometry.figure.notation import number
from paperaudit.maths.angle_values import exact_function
from paperaudit.maths.cancelling import NoRoot, float_value, is_number, reduced, square_root
from paperaudit.maths.linear import LinearForm
from paperaudit.maths.polynomial import ONE, AlgebraicFraction, Polynomial
from paperaudit.maths.surd import Surd
from paperaudit.model.expression import (
    Expression,
    Function,
    Letter,
    Measured,
    Negative,
    Number,
    Power,
    Product,
    Quotient,
    Root,
    Sum,
    leaves,
    parts_of,
)

DIGITS = 12
"""Significant figures to which a value without an exact form is carried on."""


class NoExactValue(PaperauditError):
    """A path whose lines lead out of what a pupil can work out; caught by the caller."""


@dataclass(frozen=True, slots=True)
class Value:
    """What a line arrives at; `approx` where it was rounded on the way, `exact` its exact form if that is short."""

    fraction: AlgebraicFraction
    approx: bool = False
    exact: Expression | None = None

    @property
    def number(self) -> float:
        """The decimal value; raises NoExactValue where a letter is left in it."""
        if not is_number(self.fraction):
            raise NoExactValue("a rounded value in letters")
        return float_value(self.fraction, {})


def whole_amount(value: Fraction) -> Value:
    """A rational number as a value."""
    return Value(AlgebraicFraction(Polynomial.number(Surd.rational(value))))


def rounded_amount(value: float) -> AlgebraicFraction:
    """A decimal to some fifteen figures, as a fraction that is counted as rounded by whoever keeps it."""
    return AlgebraicFraction(Polynomial.number(Surd.rational(Fraction(f"{value:.{DIGITS + 3}g}"))))


def carried(value: Value) -> Value:
    """A rounded number written anew with DIGITS figures, so that its fractions stay small."""
    if value.approx and is_number(value.fraction):
        return Value(rounded_amount(value.number), True, value.exact)
    return Value(reduced(value.fraction), value.approx, value.exact)


def form_expression(form: LinearForm[Size]) -> Expression:
    """A linear form as a sum of its terms."""
    terms: list[Expression] = [Product((Number(Fraction(share)), size)) for size, share in form.terms.items()]
    return Sum((*terms, Number(Fraction(form.constant))))


def fraction_of(expression: Expression, given: Mapping[Size, Value]) -> Value:
    """The value of an expression of known sizes; raises NoExactValue."""
    try:
        fraction = reduced(amount_in(expression, given, None))
    except (NoRoot, NoValue, BudgetExceeded, ZeroDivisionError) as obstacle:
        raise NoExactValue(str(obstacle)) from None
    return carried(Value(fraction, is_rounded(expression, given)))


def is_rounded(expression: Expression, given: Mapping[Size, Value]) -> bool:
    """Whether rounded sizes make an expression's value a rounded one: the cosine of cos⁻¹ (2/7) is exact."""
    if isinstance(expression, Function) and expression.argument in given:
        known = given[expression.argument]  # type: ignore[index]
        return known.approx and _of_inverse(expression.name, known) is None
    if expression in given:
        return given[expression].approx  # type: ignore[index]
    return any(is_rounded(part, given) for part in parts_of(expression))


def _of_inverse(name: str, angle: Value) -> AlgebraicFraction | None:
    """The sine, cosine or tangent of an angle below 180° that is kept as the inverse of a ratio, where it is short."""
    if not isinstance(angle.exact, Function):
        return None
    inverse, ratio = angle.exact.name, amount_in(angle.exact.argument, {}, None)
    try:
        square = ratio * ratio
        if inverse == "tan⁻¹":
            cosine = square_root(reduced(AlgebraicFraction(ONE) + square)).reciprocal()
            sine = ratio * cosine
        else:
            other = square_root(reduced(AlgebraicFraction(ONE) + -square))
            sine, cosine = (ratio, other) if inverse == "sin⁻¹" else (other, ratio)
        return reduced({"sin": sine, "cos": cosine}.get(name) or sine * cosine.reciprocal())
    except (NoRoot, ZeroDivisionError):
        return None


def _holds(expression: Expression, size: Size) -> bool:
    return size in leaves(expression)


def amount_in(expression: Expression, given: Mapping[Size, Value], unknown: Size | None) -> AlgebraicFraction:
    """The amount of an expression with known sizes replaced; `unknown` and letters stand for themselves.

    Raises NoExactValue, NoRoot, NoValue and BudgetExceeded.
    """

    def part(inside: Expression) -> AlgebraicFraction:
        return amount_in(inside, given, unknown)

    match expression:
        case Number(value):
            return AlgebraicFraction(Polynomial.number(Surd.rational(value)))
        case Negative(operand):
            return -part(operand)
        case Sum(terms):
            total = AlgebraicFraction(Polynomial({}))
            for term in terms:
                total = total + part(term)
            return total
        case Product(factors):
            product = AlgebraicFraction(ONE)
            for factor in factors:
                product = product * part(factor)
            return product
        case Quotient(numerator, denominator):
            return reduced(part(numerator) * part(denominator).reciprocal())
        case Power(base, Number(exponent)) if exponent.denominator == 1 and 0 <= exponent <= 6:
            result, unit = AlgebraicFraction(ONE), part(base)
            for _ in range(int(exponent)):
                result = result * unit
            return result
        case Root(radicand, 2):
            return square_root(reduced(part(radicand)))
        case Measured(amount):
            return part(amount)
        case Function(name, argument):
            if name not in ("sin", "cos", "tan"):
                raise NoExactValue(f"{name} inside a relation")
            return _of_function(name, argument, given, unknown)
        case Letter("π"):
            return AlgebraicFraction(Polynomial.of(expression))
    if expression in given:
        return given[expression].fraction  # type: ignore[index]
    # A size that is not known stands for itself: it may cancel, as the common side does in AB/CD = BD/BD.
    return AlgebraicFraction(Polynomial.of(expression))


def _of_function(
    name: Literal["sin", "cos", "tan"], argument: Expression, given: Mapping[Size, Value], unknown: Size | None
) -> AlgebraicFraction:
    if argument == unknown:
        return AlgebraicFraction(Polynomial.of(Function(name, argument)))
    exactly = _of_inverse(name, given[argument]) if argument in given else None  # type: ignore[index]
    if exactly is not None:
        return exactly
    inside = amount_in(argument, given, unknown)
    constant = inside.above.constant if inside.below == ONE else None
    degrees = constant.fraction if constant is not None else None
    if degrees is None:
        raise NoExactValue("a function of an angle in letters")
    if degrees.denominator == 1 and 0 <= degrees <= 180:
        exact = exact_function(name, int(degrees))
        if exact is not None:
            return AlgebraicFraction(Polynomial.number(exact))
    approx = any(given[size].approx for size in given if _holds(argument, size))
    if approx or degrees.denominator > 1000:
        return rounded_amount({"sin": math.sin, "cos": math.cos, "tan": math.tan}[name](math.radians(float(degrees))))
    shown = Measured(number(degrees), "°")
    return AlgebraicFraction(Polynomial.of(Function(name, shown)))


def replaced(fraction: AlgebraicFraction, values: Mapping[Expression, Value]) -> AlgebraicFraction:
    """A fraction with letters replaced by their values."""
    return reduced(_replaced(fraction.above, values) * _replaced(fraction.below, values).reciprocal())


def _replaced(polynomial: Polynomial, values: Mapping[Expression, Value]) -> AlgebraicFraction:
    total = AlgebraicFraction(Polynomial({}))
    for monomial, share in polynomial.terms.items():
        term = AlgebraicFraction(Polynomial.number(share))
        for key, power in monomial:
            value = values.get(key)
            factor = value.fraction if value else AlgebraicFraction(Polynomial.of(key))
            for _ in range(power):
                term = term * factor
        total = total + term
    return total


def as_fraction(value: Value) -> Fraction | None:
    """The value where it is a rational number and not rounded."""
    constant = value.fraction.above.constant if value.fraction.below == ONE else None
    return constant.fraction if constant is not None and not value.approx else None


def is_linear(value: Value) -> LinearForm[Letter] | None:
    """The value as a linear form in letters with rational coefficients, None where it is none."""
    if value.approx or value.fraction.below != ONE:
        return None
    terms: dict[Letter, Fraction] = {}
    constant = Fraction(0)
    for monomial, share in value.fraction.above.terms.items():
        rational = share.fraction
        if rational is None or len(monomial) > 1:
            return None
        if not monomial:
            constant = rational
        elif isinstance(monomial[0][0], Letter) and monomial[0][1] == 1 and monomial[0][0].name != "π":
            terms[monomial[0][0]] = rational
        else:
            return None
    return LinearForm(terms, constant)
