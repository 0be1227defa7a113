"""Quadratic equations by square roots, by completing the square and by the formula, line by line."""

from fractions import Fraction

from paperaudit.maths.algebra.roots import quadratic_roots, with_root
from paperaudit.maths.algebra.terms import Term, Terms, coefficients, expression_of, from_coefficients, written
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.write import write
from paperaudit.model.expression import Expression, Negative, Number, Power, Product, Relation, Sum
from paperaudit.strands.algebra.working import Working

ZERO = Number(Fraction(0))


def text(value: Fraction | int) -> str:
    """A number as a pupil writes it."""
    return write(whole_or_fraction(Fraction(value)))


def bracketed(value: Fraction) -> str:
    """A number in a product or power: negative ones and fractions in brackets."""
    return f"({text(value)})" if value < 0 or value.denominator > 1 else text(value)


def by_square_root(inside: Terms, value: Fraction, letter: str, working: Working) -> list[Expression]:
    """(px + q)² = value with value not negative; the line before says so."""
    numbers = coefficients(inside, letter)
    slope, shift = numbers[1], numbers[0]
    if not value:
        root = whole_or_fraction(-shift / slope)
        working.say(f"{written(inside)} = 0")
        working.say(f"{letter} = {write(root)}")
        return [root]
    low, high = with_root(Fraction(0), value)
    working.say(f"{written(inside)} = ±{write(high)}")
    if not shift and slope == 1:
        return [low, high]
    values = quadratic_roots(slope * slope, 2 * slope * shift, shift * shift - value)
    centre = f"{text(-shift)} ± {write(high)}"
    if slope == 1:
        working.say(f"{letter} = {centre}")
    else:
        working.say(f"{text(slope)}{letter} = {centre}")
    return list(values)


def by_formula(numbers: list[Fraction], letter: str, working: Working) -> list[Expression]:
    """The roots by the quadratic formula, coefficients lowest first."""
    c, b, a = numbers
    inside = b * b - 4 * a * c
    under = f"{bracketed(b)}² − 4 × {bracketed(a)} × {bracketed(c)}"
    if inside < 0:
        working.say(f"b² − 4ac = {under} = {text(inside)}")
        working.say(f"{text(inside)} < 0, so there are no real roots")
        return []
    working.say(f"{letter} = [−{bracketed(b)} ± √({under})]/(2 × {bracketed(a)})")
    radicand = text(inside) if inside.denominator == 1 else f"({text(inside)})"
    working.say(f"{letter} = ({text(-b)} ± √{radicand})/{bracketed(2 * a)}")
    return list(quadratic_roots(a, b, c))


def by_completing(numbers: list[Fraction], letter: str, working: Working) -> list[Expression]:
    """The roots by completing the square."""
    c, b, a = numbers
    p, q = b / a, c / a
    if a != 1:
        working.say(Relation(expression_of(from_coefficients([q, p, Fraction(1)], letter)), "=", ZERO))
    square = expression_of(from_coefficients([Fraction(0), p, Fraction(1)], letter))
    working.say(Relation(square, "=", whole_or_fraction(-q)))
    half, value = p / 2, p * p / 4 - q
    if half:
        shown = f"{bracketed(abs(half))}²"
        working.say(f"{write(square)} + {shown} = {text(-q)} + {shown}")
    inside = (Term(Fraction(1), ((letter, 1),)), *((Term(half),) if half else ()))
    bracket = Power(expression_of(inside), Number(Fraction(2)))
    working.say(Relation(bracket, "=", whole_or_fraction(value)))
    if value < 0:
        working.say("a square is never negative, so there are no real roots")
        return []
    return by_square_root(inside, value, letter, working)


def square_form(numbers: list[Fraction], letter: str) -> Expression:
    """ax² + bx + c as a(x + h)² + k, by its coefficients, lowest first."""
    c, b, a = numbers
    half, rest = b / (2 * a), c - b * b / (4 * a)
    inside = (Term(Fraction(1), ((letter, 1),)), *((Term(half),) if half else ()))
    squared: Expression = Power(expression_of(inside), Number(Fraction(2)))
    front = fronted(a, squared)
    if not rest:
        return front
    return Sum((front, Negative(whole_or_fraction(-rest)) if rest < 0 else whole_or_fraction(rest)))


def fronted(number: Fraction, expression: Expression) -> Expression:
    """A number in front of a bracket, none for 1 and a minus for −1."""
    if abs(number) == 1:
        return expression if number > 0 else Negative(expression)
    product = Product((whole_or_fraction(abs(number)), expression))
    return product if number > 0 else Negative(product)
