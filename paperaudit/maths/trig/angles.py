"""The angle that a sine, cosine or tangent is taken of, and the reduction formulas: sin(180° − x) = sin x."""

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from paperaudit.maths.exact import PI, NotSurd, rational_value
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.parts import with_parts
from paperaudit.maths.write import write
from paperaudit.model.expression import (
    AngleAt,
    Expression,
    Function,
    Letter,
    Measured,
    Negative,
    Number,
    Product,
    Quotient,
    Sum,
    letters_of,
    parts_of,
)

Ratio = Literal["sin", "cos", "tan"]
RATIOS: tuple[Ratio, ...] = ("sin", "cos", "tan")
RIGHT = 90


@dataclass(frozen=True, slots=True)
class Angle:
    """Degrees and multiples of letters: 180° − x has the degrees 180 and the share −1 of x."""

    degrees: Fraction
    shares: tuple[tuple[str, Fraction], ...] = ()

    def scaled(self, factor: Fraction) -> "Angle":
        """The angle so many times."""
        return Angle(self.degrees * factor, tuple((name, share * factor) for name, share in self.shares))

    def pieces(self) -> tuple["Angle", ...]:
        """Its terms, each an angle, the letters first."""
        lettered = [Angle(Fraction(0), (pair,)) for pair in self.shares]
        return (*lettered, Angle(self.degrees)) if self.degrees else tuple(lettered)

    def expression(self) -> Expression:
        """The angle as it is written, what is added before what is taken away: 2x + 30°, 180° − x."""
        terms: list[Expression] = []
        for name, share in self.shares:
            size = abs(share)
            body: Expression = Letter(name)
            if size.numerator != 1:
                body = Product((Number(Fraction(size.numerator)), body))
            if size.denominator != 1:
                body = Quotient(body, Number(Fraction(size.denominator)))
            terms.append(Negative(body) if share < 0 else body)
        if self.degrees or not terms:
            size_in_degrees = Measured(whole_or_fraction(abs(self.degrees)), "°")
            terms.append(Negative(size_in_degrees) if self.degrees < 0 else size_in_degrees)
        terms.sort(key=lambda term: isinstance(term, Negative))
        return terms[0] if len(terms) == 1 else Sum(tuple(terms))


def angle_of(argument: Expression) -> Angle:
    """The degrees and letters of an argument; raises NotSurd where it is not of the first degree.

    >>> from paperaudit.maths.parse import read_expression
    >>> angle_of(read_expression("180° − 2x")).shares
    (('x', Fraction(-2, 1)),)
    """
    degrees, shares = _walked(argument)
    return Angle(degrees, tuple((name, share) for name, share in sorted(shares.items()) if share))


def _walked(part: Expression) -> tuple[Fraction, dict[str, Fraction]]:
    match part:
        case Measured(amount, "°"):
            return _walked(amount)
        case Letter(name) if name != PI:
            return Fraction(0), {name: Fraction(1)}
        case Negative(operand):
            return _times(_walked(operand), Fraction(-1))
        case Sum(terms):
            degrees, shares = Fraction(0), dict[str, Fraction]()
            for term in terms:
                more, theirs = _walked(term)
                degrees += more
                for name, share in theirs.items():
                    shares[name] = shares.get(name, Fraction(0)) + share
            return degrees, shares
        case Product((factor, other)) if not letters_of(factor):
            return _times(_walked(other), _number(factor))
        case Quotient(above, below) if not letters_of(below) and (letters_of(above) or _is_measure(above)):
            return _times(_walked(above), 1 / _number(below))
    return _number(part), {}


def _is_measure(part: Expression) -> bool:
    """Whether an angle in degrees stands there, alone or a number of times."""
    return isinstance(part, Measured) or (isinstance(part, Product) and isinstance(part.factors[-1], Measured))


def _number(part: Expression) -> Fraction:
    value = None if letters_of(part) else rational_value(part)
    if not value and not isinstance(part, Number):
        raise NotSurd(f"the angle {write(part)}")
    return value or Fraction(0)


def _times(walked: tuple[Fraction, dict[str, Fraction]], factor: Fraction) -> tuple[Fraction, dict[str, Fraction]]:
    return walked[0] * factor, {name: share * factor for name, share in walked[1].items()}


def functions_in(expression: Expression) -> list[Function]:
    """Its sines, cosines and tangents."""
    if isinstance(expression, Function):
        return [expression]
    return [function for part in parts_of(expression) for function in functions_in(part)]


def with_functions(expression: Expression, change: Callable[[Function], Expression]) -> Expression:
    """The expression with each of its sines, cosines and tangents put through `change`."""
    if isinstance(expression, Function):
        return change(expression)
    return with_parts(expression, lambda part: with_functions(part, change))


def reduced_ratio(function: Function) -> Expression:
    """The function of the plain angle, by symmetry, period and co-functions.

    >>> from paperaudit.maths.parse import read_expression
    >>> write(reduced_ratio(read_expression("cos(180° − x)")))
    '−cos x'
    """
    angle = angle_of(function.argument)
    name, sign = function.name, 1
    leading = angle.shares[0][1] if angle.shares else angle.degrees
    if leading < 0:
        angle = angle.scaled(Fraction(-1))
        sign = 1 if name == "cos" else -1
    if angle.shares:
        turns = angle.degrees / RIGHT
        if turns.denominator != 1:
            return _signed(Function(name, angle.expression()), sign)
        angle = Angle(Fraction(0), angle.shares)
    else:
        turns = Fraction(angle.degrees // RIGHT)
        angle = Angle(angle.degrees % RIGHT)
        if angle.degrees == 0 and turns % 2:
            turns, angle = turns - 1, Angle(Fraction(RIGHT))
        elif turns % 2:
            # In the second and the fourth quadrant 180° − and 360° − are what a pupil takes.
            turns, angle = turns + 1, Angle(RIGHT - angle.degrees)
            return _in_even_quadrant(name, int(turns) % 4, angle, sign)
    return _turned(name, int(turns) % 4, angle, sign)


def _in_even_quadrant(name: str, turns: int, angle: Angle, sign: int) -> Expression:
    """A function of 180° − angle (`turns` 2) or of 360° − angle (`turns` 0)."""
    kept = {2: "sin", 0: "cos"}[turns]
    return _signed(Function(name, angle.expression()), sign if name == kept else -sign)  # type: ignore[arg-type]


def _turned(name: str, turns: int, angle: Angle, sign: int) -> Expression:
    """A function of an angle that is so many right angles further on."""
    plain = angle.expression()
    if name == "tan":
        if turns % 2:
            return _signed(Quotient(Number(Fraction(1)), Function("tan", plain)), -sign)
        return _signed(Function("tan", plain), sign)
    place = (turns + (1 if name == "cos" else 0)) % 4
    return _signed(Function("cos" if place % 2 else "sin", plain), -sign if place > 1 else sign)


def _signed(expression: Expression, sign: int) -> Expression:
    return Negative(expression) if sign < 0 else expression


def lettered(expression: Expression) -> Expression:
    """The expression with letters for angles that are named by one capital: sin A is no angle of a figure here."""
    if isinstance(expression, AngleAt) and not expression.number and not expression.reflex:
        return Letter(expression.vertex)
    if isinstance(expression, Function):
        return Function(expression.name, lettered(expression.argument))
    return with_parts(expression, lettered)
