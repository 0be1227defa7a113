"""Products, quotients and powers of single terms, by the laws of indices, with fractions as exponents too."""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.algebra.terms import NotTerms
from paperaudit.maths.exact import MAX_DEGREE, bounded_power, rational_value
from paperaudit.maths.number_forms import whole_or_fraction, within_limits
from paperaudit.maths.write import write
from paperaudit.model.expression import (
    Expression,
    Letter,
    Negative,
    Number,
    Power,
    Product,
    Quotient,
    Root,
    letters_of,
    parts_of,
)

_LARGEST_EXPONENT = 10**6


@dataclass(frozen=True, slots=True)
class Monomial:
    """A number and letters with rational exponents, by the alphabet."""

    coefficient: Fraction
    powers: tuple[tuple[str, Fraction], ...] = ()

    def expression(self, below: bool = False) -> Expression:
        """As it is written; with `below`, negative exponents go under a fraction bar."""
        size = abs(self.coefficient)
        under = [(letter, -power) for letter, power in self.powers if below and power < 0]
        over = [(letter, power) for letter, power in self.powers if not below or power > 0]
        top = _run(Fraction(size.numerator), over)
        bottom = _run(Fraction(size.denominator), under)
        result = top if bottom == Number(Fraction(1)) else Quotient(top, bottom)
        return Negative(result) if self.coefficient < 0 else result


def _run(size: Fraction, powers: list[tuple[str, Fraction]]) -> Expression:
    pieces: list[Expression] = [Number(size)] if size != 1 or not powers else []
    for letter, power in powers:
        pieces.append(Letter(letter) if power == 1 else Power(Letter(letter), whole_or_fraction(power)))
    return pieces[0] if len(pieces) == 1 else Product(tuple(pieces))


def _made(coefficient: Fraction, powers: Mapping[str, Fraction]) -> Monomial:
    if any(abs(power) > _LARGEST_EXPONENT for power in powers.values()):
        raise BudgetExceeded("a power beyond any school paper's")
    kept = tuple(sorted((letter, power) for letter, power in powers.items() if power))
    return Monomial(within_limits(coefficient), kept if coefficient else ())


def monomial_of(expression: Expression) -> Monomial:
    """The expression as one number and powers of letters; letters under even roots are taken to be positive.

    Raises NotTerms where it is something else, NoValue and BudgetExceeded.
    """
    match expression:
        case Letter(name):
            return Monomial(Fraction(1), ((name, Fraction(1)),))
        case Negative(operand):
            inner = monomial_of(operand)
            return Monomial(-inner.coefficient, inner.powers)
        case Product(factors):
            total = Monomial(Fraction(1))
            for factor in factors:
                total = _product(total, monomial_of(factor), 1)
            return total
        case Quotient(above, below):
            return _product(monomial_of(above), monomial_of(below), -1)
        case Power(base, exponent):
            value = None if letters_of(exponent) else rational_value(exponent)
            if value is None:
                raise NotTerms(f"the exponent {write(exponent)}")
            return _raised(monomial_of(base), value)
        case Root(radicand, degree):
            return _raised(monomial_of(radicand), Fraction(1, degree))
    value = None if letters_of(expression) else rational_value(expression)
    if value is None:
        raise NotTerms(f"{write(expression)}, which is no single term")
    return Monomial(value)


def _product(one: Monomial, other: Monomial, sign: int) -> Monomial:
    if sign < 0 and not other.coefficient:
        raise NoValue("a division by nought")
    powers = dict(one.powers)
    for letter, power in other.powers:
        powers[letter] = powers.get(letter, Fraction(0)) + sign * power
    number = other.coefficient if sign > 0 else 1 / other.coefficient
    return _made(one.coefficient * number, powers)


def _raised(base: Monomial, exponent: Fraction) -> Monomial:
    if base.coefficient == 1:
        number = Fraction(1)
    elif abs(exponent.numerator) > 4 * MAX_DEGREE or exponent.denominator > MAX_DEGREE:
        raise BudgetExceeded("a power beyond any school paper's")
    else:
        inner = Power(Number(base.coefficient), Number(exponent))
        root = rational_value(inner) if exponent.denominator > 1 else bounded_power(base.coefficient, int(exponent))
        if root is None:
            raise NotTerms(f"{write(inner)}, which is irrational")
        number = root
    return _made(number, {letter: power * exponent for letter, power in base.powers})


def index_lines(expression: Expression) -> tuple[Expression, ...]:
    """The expression, then one operation of every innermost part a line, to a single term.

    >>> from paperaudit.maths.parse import read_expression
    >>> [write(line) for line in index_lines(read_expression("(2x^3)^2/(4x)"))]
    ['(2x³)²/(4x)', '4x⁶/(4x)', 'x⁵']
    """
    final = monomial_of(expression)
    negative = _has_negative_exponent(expression)
    lines = [expression]
    for _ in range(30):
        if _is_simple(lines[-1]):
            break
        following = _one_step(lines[-1])
        if write(following) != write(lines[-1]):
            lines.append(following)
        elif following == lines[-1]:
            break
        else:
            lines[-1] = following
    last = final.expression(below=not negative)
    if write(last) != write(lines[-1]):
        lines.append(last)
    return tuple(lines)


def _has_negative_exponent(expression: Expression) -> bool:
    if isinstance(expression, Power) and not letters_of(expression.exponent):
        value = rational_value(expression.exponent)
        if value is not None and (value < 0 or value.denominator > 1):
            return True
    return any(map(_has_negative_exponent, parts_of(expression)))


def _is_simple(expression: Expression) -> bool:
    """Whether nothing is left to be done in a term."""
    return write(expression) == write(monomial_of(expression).expression())


def _one_step(expression: Expression) -> Expression:
    inside = parts_of(expression)
    if not inside or _is_simple(expression):
        return expression
    if isinstance(expression, Power | Root):
        base = expression.base if isinstance(expression, Power) else expression.radicand
        if _is_simple(base):
            return monomial_of(expression).expression()
        inner = _one_step(base)
        return Power(inner, expression.exponent) if isinstance(expression, Power) else Root(inner, expression.degree)
    if all(_is_simple(part) or not parts_of(part) for part in inside):
        return monomial_of(expression).expression()
    match expression:
        case Negative(operand):
            return Negative(_one_step(operand))
        case Product(factors, sign):
            return Product(tuple(map(_one_step, factors)), "×" if any(map(_is_signed, factors)) else sign)
        case Quotient(above, below, sign):
            return Quotient(_one_step(above), _one_step(below), sign)
    return expression


def _is_signed(factor: Expression) -> bool:
    return isinstance(factor, Negative)
