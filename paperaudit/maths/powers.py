"""Sums of powers of one letter, such as 3x² − 4x + 1 or 2x^(1/2): added, multiplied, differentiated, integrated."""

from collections.abc import Mapping
from fractions import Fraction

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.exact import MAX_DEGREE, ExactValue, NotSurd, exact_value, rational_value
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
    Sum,
    letters_of,
    with_leaves,
)

MAX_TERMS = 60
_NOUGHT = Fraction(0)


class NotPowers(NotSurd):
    """An expression that is no sum of rational multiples of powers of the letter."""


class PowerSum:
    """A sum of rational multiples of powers of one letter, by exponent. Immutable.

    >>> x = PowerSum({Fraction(1): Fraction(1)})
    >>> write((x * x + x.scaled(Fraction(-3))).expression("x"))
    'x² − 3x'
    """

    __slots__ = ("terms",)

    def __init__(self, terms: Mapping[Fraction, Fraction]) -> None:
        kept = {exponent: within_limits(share) for exponent, share in terms.items() if share}
        if len(kept) > MAX_TERMS or any(abs(exponent) > MAX_DEGREE for exponent in kept):
            raise BudgetExceeded("an expression with powers beyond any school paper's")
        self.terms = dict(sorted(kept.items(), reverse=True))

    @staticmethod
    def number(value: Fraction | int) -> "PowerSum":
        """A constant."""
        return PowerSum({_NOUGHT: Fraction(value)})

    @property
    def degree(self) -> Fraction:
        """The highest exponent; 0 of a constant."""
        return max(self.terms, default=_NOUGHT)

    @property
    def is_polynomial(self) -> bool:
        """Whether every exponent is a whole number from 0 up."""
        return all(exponent.denominator == 1 and exponent >= 0 for exponent in self.terms)

    def share(self, exponent: int) -> Fraction:
        """The number before a power of the letter."""
        return self.terms.get(Fraction(exponent), _NOUGHT)

    def coefficients(self) -> tuple[Fraction, ...]:
        """The coefficients of a polynomial, the highest power first; raises NotPowers for other powers."""
        if not self.is_polynomial:
            raise NotPowers("a power that is no whole number")
        return tuple(self.share(exponent) for exponent in range(int(self.degree), -1, -1))

    def __add__(self, other: "PowerSum") -> "PowerSum":
        terms = dict(self.terms)
        for exponent, share in other.terms.items():
            terms[exponent] = terms.get(exponent, _NOUGHT) + share
        return PowerSum(terms)

    def __sub__(self, other: "PowerSum") -> "PowerSum":
        return self + other.scaled(Fraction(-1))

    def __mul__(self, other: "PowerSum") -> "PowerSum":
        terms: dict[Fraction, Fraction] = {}
        for one, share in self.terms.items():
            for two, other_share in other.terms.items():
                terms[one + two] = terms.get(one + two, _NOUGHT) + share * other_share
        return PowerSum(terms)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, PowerSum) and self.terms == other.terms

    def __hash__(self) -> int:
        return hash(frozenset(self.terms.items()))

    def scaled(self, factor: Fraction) -> "PowerSum":
        """Every term multiplied by a number."""
        return PowerSum({exponent: share * factor for exponent, share in self.terms.items()})

    def power(self, count: int) -> "PowerSum":
        """Multiplied by itself."""
        if not 0 <= count <= MAX_DEGREE:
            raise BudgetExceeded("a power beyond any school paper's")
        result = PowerSum.number(1)
        for _ in range(count):
            result = result * self
        return result

    def of(self, inner: "PowerSum") -> "PowerSum":
        """A polynomial with another put in for its letter."""
        result = PowerSum({})
        for share in self.coefficients():
            result = result * inner + PowerSum.number(share)
        return result

    def derivative(self) -> "PowerSum":
        """Term by term: the exponent comes down as a factor and falls by one."""
        return PowerSum({exponent - 1: share * exponent for exponent, share in self.terms.items() if exponent})

    def integral(self) -> "PowerSum":
        """Term by term, without a constant; raises NotPowers for 1/x."""
        if Fraction(-1) in self.terms:
            raise NotPowers("the integral of 1/x, a logarithm")
        return PowerSum({exponent + 1: share / (exponent + 1) for exponent, share in self.terms.items()})

    def at(self, value: Expression, letter: str = "x") -> ExactValue:
        """The exact value at a number, which may be a surd."""
        return exact_value(put_in(self.expression(letter), letter, value))

    def value(self, at: Fraction | int) -> Fraction:
        """The value of a polynomial at a rational number."""
        result = _NOUGHT
        for share in self.coefficients():
            result = within_limits(result * at + share)
        return result

    def expression(self, letter: str) -> Expression:
        """The sum as it is written, highest power first."""
        terms = [_term(exponent, share, letter) for exponent, share in self.terms.items()]
        return Number(_NOUGHT) if not terms else terms[0] if len(terms) == 1 else Sum(tuple(terms))

    def text(self, letter: str) -> str:
        """The sum as a pupil writes it."""
        return write(self.expression(letter))


def _term(exponent: Fraction, share: Fraction, letter: str) -> Expression:
    size = abs(share)
    base: Expression = Letter(letter)
    power = base if exponent == 1 else Power(base, whole_or_fraction(exponent))
    term: Expression
    if not exponent:
        term = whole_or_fraction(size)
    else:
        above = power if size.numerator == 1 else Product((Number(Fraction(size.numerator)), power))
        term = above if size.denominator == 1 else Quotient(above, Number(Fraction(size.denominator)))
    return Negative(term) if share < 0 else term


def put_in(expression: Expression, letter: str, value: Expression) -> Expression:
    """The expression with a value for its letter."""
    return with_leaves(expression, lambda leaf: value if leaf == Letter(letter) else leaf)


def power_sum(expression: Expression, letter: str) -> PowerSum:
    """An expression as a sum of powers of the letter; raises NotPowers where it is none.

    >>> from paperaudit.maths.parse import read_expression
    >>> power_sum(read_expression("(x - 1)(x + 4)"), "x").text("x")
    'x² + 3x − 4'
    """
    match expression:
        case Letter(name) if name == letter:
            return PowerSum({Fraction(1): Fraction(1)})
        case Negative(operand):
            return power_sum(operand, letter).scaled(Fraction(-1))
        case Sum(terms):
            total = PowerSum({})
            for term in terms:
                total = total + power_sum(term, letter)
            return total
        case Product(factors):
            product = PowerSum.number(1)
            for factor in factors:
                product = product * power_sum(factor, letter)
            return product
        case Quotient(above, below) if letter in letters_of(expression):
            return _divided(power_sum(above, letter), power_sum(below, letter))
        case Power(base, exponent) if letter in letters_of(base):
            return _powered(power_sum(base, letter), rational_value(exponent))
        case Root(radicand, degree) if letter in letters_of(radicand):
            return _powered(power_sum(radicand, letter), Fraction(1, degree))
    value = None if letters_of(expression) else rational_value(expression)
    if value is None:
        raise NotPowers(f"{write(expression)} is no sum of powers of {letter}")
    return PowerSum.number(value)


def _divided(above: PowerSum, below: PowerSum) -> PowerSum:
    if not below.terms:
        raise NoValue("a division by nought")
    if len(below.terms) > 1:
        quotient = _quotient(above, below)
        if quotient is None:
            raise NotPowers("a quotient by a sum")
        return quotient
    ((exponent, share),) = below.terms.items()
    return PowerSum({one - exponent: other / share for one, other in above.terms.items()})


def _quotient(above: PowerSum, below: PowerSum) -> PowerSum | None:
    """The quotient of polynomials where the division leaves nothing."""
    if not (above.is_polynomial and below.is_polynomial):
        return None
    result, rest = PowerSum({}), above
    while rest.terms and rest.degree >= below.degree:
        piece = PowerSum({rest.degree - below.degree: rest.terms[rest.degree] / below.terms[below.degree]})
        result, rest = result + piece, rest - piece * below
    return None if rest.terms else result


def _powered(base: PowerSum, exponent: Fraction | None) -> PowerSum:
    if exponent is None:
        raise NotPowers("an irrational exponent")
    if exponent.denominator == 1 and exponent >= 0:
        return base.power(int(exponent))
    if len(base.terms) != 1:
        raise NotPowers("a root or a quotient of a sum")
    ((inside, share),) = base.terms.items()
    if share != 1 and exponent.denominator != 1:
        factor = rational_value(Power(whole_or_fraction(share), whole_or_fraction(exponent)))
        if factor is None:
            raise NotPowers("an irrational factor")
        return PowerSum({inside * exponent: factor})
    if abs(exponent) > MAX_DEGREE:
        raise BudgetExceeded("a power beyond any school paper's")
    return PowerSum({inside * exponent: share ** int(exponent) if share != 1 else Fraction(1)})
