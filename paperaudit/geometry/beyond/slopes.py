"""How an expression's value changes with the sizes in it, at the values that a drawing gives them."""

import math
from collections.abc import Callable
from typing import TypeAlias

from paperaudit.geometry.figure.figure import Size
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
)

Slopes: TypeAlias = dict[Size, float]
"""The partial derivative of a value by each size in it."""

PI = "π"


def value_and_slopes(expression: Expression, measured: Callable[[Size], float]) -> tuple[float, Slopes]:
    """The value of an expression and its partial derivatives; angles in degrees.

    Raises ValueError where the value has no real number (a root of a negative one, a division by nought).

    >>> from fractions import Fraction
    >>> value_and_slopes(Power(Letter("x"), Number(Fraction(2))), lambda size: 3.0)
    (9.0, {Letter(name='x'): 6.0})
    """
    match expression:
        case Number(exact):
            return float(exact), {}
        case Letter(name) if name == PI:
            return math.pi, {}
        case Negative(operand):
            value, slopes = value_and_slopes(operand, measured)
            return -value, _times(slopes, -1.0)
        case Sum(terms):
            return _sum([value_and_slopes(term, measured) for term in terms])
        case Product(factors):
            return _product([value_and_slopes(factor, measured) for factor in factors])
        case Quotient(numerator, denominator):
            above, below = value_and_slopes(numerator, measured), value_and_slopes(denominator, measured)
            if not below[0]:
                raise ValueError("a division by nought")
            return _product([above, (1 / below[0], _times(below[1], -1 / below[0] ** 2))])
        case Power(base, Number(exponent)):
            value, slopes = value_and_slopes(base, measured)
            power = float(exponent)
            return value**power, _times(slopes, power * value ** (power - 1)) if slopes else {}
        case Root(radicand, degree):
            value, slopes = value_and_slopes(radicand, measured)
            if value < 0:
                raise ValueError("a root of a negative number")
            root = value ** (1 / degree)
            return root, _times(slopes, root / (degree * value)) if slopes and value else {}
        case Measured(amount):
            return value_and_slopes(amount, measured)
        case Function(name, argument):
            return _function(name, *value_and_slopes(argument, measured))
        case _:
            return measured(expression), {expression: 1.0}  # type: ignore[arg-type, dict-item]


def _function(name: str, degrees: float, slopes: Slopes) -> tuple[float, Slopes]:
    radians = math.radians(degrees)
    sine, cosine = math.sin(radians), math.cos(radians)
    if name == "sin":
        return sine, _times(slopes, math.radians(cosine))
    if name == "cos":
        return cosine, _times(slopes, -math.radians(sine))
    if abs(cosine) < 1e-9:
        raise ValueError("the tangent of a right angle")
    return sine / cosine, _times(slopes, math.radians(1 / cosine**2))


def _times(slopes: Slopes, factor: float) -> Slopes:
    return {size: slope * factor for size, slope in slopes.items()}


def _sum(parts: list[tuple[float, Slopes]]) -> tuple[float, Slopes]:
    total, slopes = 0.0, dict[Size, float]()
    for value, part in parts:
        total += value
        for size, slope in part.items():
            slopes[size] = slopes.get(size, 0.0) + slope
    return total, slopes


def _product(parts: list[tuple[float, Slopes]]) -> tuple[float, Slopes]:
    product, slopes = 1.0, dict[Size, float]()
    for value, part in parts:
        slopes = {size: slope * value for size, slope in slopes.items()}
        for size, slope in part.items():
            slopes[size] = slopes.get(size, 0.0) + slope * product
        product *= value
    return product, slopes
