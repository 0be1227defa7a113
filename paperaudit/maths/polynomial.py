"""Polynomials and their quotients in the letters and quantities of a paper, compared exactly."""

from collections.abc import Mapping
from typing import TypeAlias

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.exact import MAX_DEGREE, PI, NotSurd, exact_value, rational_value
from paperaudit.maths.surd import Surd
from paperaudit.maths.write import write
from paperaudit.model.expression import (
    Absolute,
    AngleAt,
    AngleOf,
    AnswerTo,
    AreaOf,
    Expression,
    LengthOf,
    Letter,
    Logarithm,
    Measured,
    Negative,
    Number,
    Of,
    PerimeterOf,
    Power,
    Product,
    Quotient,
    Root,
    Sum,
    leaves,
)

Monomial: TypeAlias = tuple[tuple[Expression, int], ...]
"""Letters and quantities with their exponents, ordered by their text; () is the constant one."""

MAX_TERMS = 600
_MAX_PRODUCTS = 40_000
_UNKNOWNS = Letter | AngleOf | AngleAt | LengthOf | AreaOf | PerimeterOf | AnswerTo


class NotPolynomial(NotSurd):
    """An expression with a letter under a root, in an exponent, in a logarithm or between bars."""


class Polynomial:
    """A sum of monomials with exact coefficients. Immutable.

    >>> x = Polynomial.of(Letter("x"))
    >>> (x + x) * x == x * x + x * x
    True
    """

    __slots__ = ("terms",)

    def __init__(self, terms: Mapping[Monomial, Surd]) -> None:
        self.terms = {monomial: share for monomial, share in terms.items() if share.parts}
        if len(self.terms) > MAX_TERMS:
            raise BudgetExceeded("an expression with hundreds of terms")

    @staticmethod
    def of(unknown: Expression) -> "Polynomial":
        """The polynomial that is one letter or quantity."""
        return Polynomial({((unknown, 1),): Surd.rational(1)})

    @staticmethod
    def number(value: Surd) -> "Polynomial":
        """The polynomial that is a constant."""
        return Polynomial({(): value})

    @property
    def constant(self) -> Surd | None:
        """The value where no letter is left, else None."""
        if not self.terms:
            return Surd({})
        return self.terms.get(()) if len(self.terms) == 1 else None

    @property
    def degree(self) -> int:
        """The highest total exponent of a term; 0 for constants."""
        return max((sum(exponent for _, exponent in monomial) for monomial in self.terms), default=0)

    def __add__(self, other: "Polynomial") -> "Polynomial":
        terms = dict(self.terms)
        for monomial, share in other.terms.items():
            terms[monomial] = terms[monomial] + share if monomial in terms else share
        return Polynomial(terms)

    def __neg__(self) -> "Polynomial":
        return Polynomial({monomial: -share for monomial, share in self.terms.items()})

    def __sub__(self, other: "Polynomial") -> "Polynomial":
        return self + -other

    def __mul__(self, other: "Polynomial") -> "Polynomial":
        if len(self.terms) * len(other.terms) > _MAX_PRODUCTS or self.degree + other.degree > 2 * MAX_DEGREE:
            raise BudgetExceeded("a product with thousands of terms")
        terms: dict[Monomial, Surd] = {}
        for one, share in self.terms.items():
            for two, other_share in other.terms.items():
                monomial = _joined(one, two)
                product = share * other_share
                terms[monomial] = terms[monomial] + product if monomial in terms else product
        return Polynomial(terms)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Polynomial) and self.terms == other.terms

    def __hash__(self) -> int:
        return hash(frozenset(self.terms.items()))

    def __repr__(self) -> str:
        return f"Polynomial({self.terms!r})"


def _joined(one: Monomial, two: Monomial) -> Monomial:
    exponents = dict(one)
    for unknown, exponent in two:
        exponents[unknown] = exponents.get(unknown, 0) + exponent
    return tuple(sorted(exponents.items(), key=lambda pair: write(pair[0])))


ONE = Polynomial.number(Surd.rational(1))


class AlgebraicFraction:
    """One polynomial over another, not cancelled; two are equal when they agree after cross-multiplying."""

    __slots__ = ("above", "below")

    def __init__(self, above: Polynomial, below: Polynomial = ONE) -> None:
        if not below.terms:
            raise NoValue("a division by nought")
        constant = below.constant
        self.above = above * Polynomial.number(constant.reciprocal()) if constant is not None else above
        self.below = ONE if constant is not None else below

    def __add__(self, other: "AlgebraicFraction") -> "AlgebraicFraction":
        if self.below == other.below:
            return AlgebraicFraction(self.above + other.above, self.below)
        return AlgebraicFraction(self.above * other.below + other.above * self.below, self.below * other.below)

    def __neg__(self) -> "AlgebraicFraction":
        return AlgebraicFraction(-self.above, self.below)

    def __mul__(self, other: "AlgebraicFraction") -> "AlgebraicFraction":
        return AlgebraicFraction(self.above * other.above, self.below * other.below)

    def reciprocal(self) -> "AlgebraicFraction":
        """One over it; raises NoValue where it is nought."""
        return AlgebraicFraction(self.below, self.above)

    def same_as(self, other: "AlgebraicFraction") -> bool:
        """Whether the two have the same value wherever both have one."""
        return self.above * other.below == other.above * self.below


def algebraic_fraction(expression: Expression) -> AlgebraicFraction:
    """The expression as one polynomial over another; π counts as a letter, being transcendental.

    Raises NotPolynomial (a letter under a root or in an exponent), NotSurd (∛2), NoValue (a unit, a
    division by nought) and BudgetExceeded.
    """
    match expression:
        case Number(value):
            return AlgebraicFraction(Polynomial.number(Surd.rational(value)))
        case Negative(operand):
            return -algebraic_fraction(operand)
        case Sum(terms):
            total = AlgebraicFraction(Polynomial({}))
            for term in terms:
                total = total + algebraic_fraction(term)
            return total
        case Product(factors):
            product = AlgebraicFraction(ONE)
            for factor in factors:
                product = product * algebraic_fraction(factor)
            return product
        case Of(share, whole):
            return algebraic_fraction(share) * algebraic_fraction(whole)
        case Quotient(numerator, denominator):
            return algebraic_fraction(numerator) * algebraic_fraction(denominator).reciprocal()
        case Power(base, exponent):
            return _power(base, exponent)
        case Root() | Absolute():
            return _constant(expression)
        case Logarithm() if _has_unknowns(expression):
            raise NotPolynomial(write(expression))
        case Measured():
            raise NoValue(f"{write(expression)} has a unit")
    return AlgebraicFraction(Polynomial.of(expression))


def _power(base: Expression, exponent: Expression) -> AlgebraicFraction:
    if not _has_unknowns(base) and not _has_unknowns(exponent):
        return _constant(Power(base, exponent))
    count = None if _has_unknowns(exponent) else rational_value(exponent)
    if count is None or count.denominator != 1:
        raise NotPolynomial(f"the exponent {write(exponent)}")
    if abs(count) > MAX_DEGREE:
        raise BudgetExceeded("a power beyond any school paper's")
    unit = algebraic_fraction(base) if count >= 0 else algebraic_fraction(base).reciprocal()
    result = AlgebraicFraction(ONE)
    for _ in range(abs(int(count))):
        result = result * unit
    return result


def _constant(expression: Expression) -> AlgebraicFraction:
    if _has_unknowns(expression):
        raise NotPolynomial(write(expression))
    value = exact_value(expression)
    return AlgebraicFraction(Polynomial.number(value if isinstance(value, Surd) else Surd.rational(value)))


def _has_unknowns(expression: Expression) -> bool:
    return any(isinstance(leaf, _UNKNOWNS) and leaf != Letter(PI) for leaf in leaves(expression))
