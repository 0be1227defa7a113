"""Angles in radians, told by π, as degrees, and degrees as multiples of π."""

from fractions import Fraction

from paperaudit.maths.exact import PI, NotSurd
from paperaudit.maths.parts import with_parts
from paperaudit.maths.trig.angles import angle_of, functions_in, with_functions
from paperaudit.model.expression import (
    Expression,
    Function,
    Letter,
    Measured,
    Negative,
    Number,
    Product,
    Quotient,
    leaves,
    letters_of,
)

_HALF_TURN = Measured(Number(Fraction(180)), "°")


def has_radians(expression: Expression) -> bool:
    """Whether π stands in an angle."""
    return any(PI in letters_of(function.argument) for function in functions_in(expression))


def in_degrees(expression: Expression) -> Expression:
    """The expression with 180° for π in every angle, letters being angles themselves.

    Raises NotSurd for an angle with a plain number in it, which would be radians: sin(x + 1).

    >>> from paperaudit.maths.parse import read_expression
    >>> from paperaudit.maths.write import write
    >>> write(in_degrees(read_expression("sin(π/2 − x)")))
    'sin(90° − x)'
    """
    return with_functions(expression, lambda function: Function(function.name, _degrees(function.argument)))


def _degrees(argument: Expression) -> Expression:
    if PI not in letters_of(argument):
        if angle_of(argument).degrees or any(isinstance(leaf, Measured) for leaf in leaves(argument)):
            raise NotSurd("angles in radians beside numbers without π")
        return argument
    turned = _with_half_turn(argument)
    shares = dict(angle_of(turned).shares)
    at_nought = angle_of(_with_half_turn(argument, Measured(Number(Fraction(0)), "°")))
    if at_nought.degrees or dict(at_nought.shares) != shares:
        raise NotSurd("an angle with a number beside π")
    return angle_of(turned).expression()


def _with_half_turn(part: Expression, half_turn: Measured = _HALF_TURN) -> Expression:
    if part == Letter(PI):
        return half_turn
    if isinstance(part, Product) and part.factors and part.factors[-1] == Letter(PI) and len(part.factors) == 2:
        return Product((part.factors[0], half_turn), "×")
    return with_parts(part, lambda inner: _with_half_turn(inner, half_turn))


def multiple_of_pi(degrees: Fraction) -> Expression:
    """So many degrees in radians: 150° is 5π/6.

    >>> from paperaudit.maths.write import write
    >>> write(multiple_of_pi(Fraction(150))), write(multiple_of_pi(Fraction(-180)))
    ('5π/6', '−π')
    """
    share = degrees / 180
    if not share:
        return Number(Fraction(0))
    size = abs(share)
    above: Expression = Letter(PI)
    if size.numerator != 1:
        above = Product((Number(Fraction(size.numerator)), above))
    result = above if size.denominator == 1 else Quotient(above, Number(Fraction(size.denominator)))
    return Negative(result) if share < 0 else result


def in_radians(expression: Expression) -> Expression:
    """The expression with multiples of π for degrees."""
    if isinstance(expression, Measured) and expression.unit == "°" and isinstance(expression.amount, Number):
        return multiple_of_pi(expression.amount.value)
    if isinstance(expression, Function):
        return Function(expression.name, in_radians(expression.argument))
    return with_parts(expression, in_radians)
