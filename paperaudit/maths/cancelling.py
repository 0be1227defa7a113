"""Algebraic fractions in lowest terms, their square roots, decimals and texts."""

import math
from collections.abc import Mapping
from fractions import Fraction
from typing import TypeGuard

from paperaudit.errors import PaperauditError
from paperaudit.maths.number_forms import as_decimal, whole_or_fraction
from paperaudit.maths.polynomial import ONE, AlgebraicFraction, Monomial, Polynomial
from paperaudit.maths.surd import Surd, surd_expression
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
    Sum,
)

PI = Letter("π")


class NoRoot(PaperauditError):
    """A square root that is no algebraic fraction."""


def reduced(fraction: AlgebraicFraction) -> AlgebraicFraction:
    """The fraction with common factors cancelled: powers of letters, and whole polynomials where one divides.

    >>> x = Polynomial.of(Letter("x"))
    >>> reduced(AlgebraicFraction(x * x, x)).above == x
    True
    """
    above, below = fraction.above, fraction.below
    if below.constant is not None or not above.terms:
        return fraction
    common = _common_powers((above, below))
    if common:
        above, below = _divided_by_powers(above, common), _divided_by_powers(below, common)
    whole = quotient(above, below)
    if whole is not None:
        return AlgebraicFraction(whole)
    turned = quotient(below, above)
    if turned is not None:
        above, below = ONE, turned
    _, share = _leading(below)
    inverse = Polynomial.number(share.reciprocal())
    return AlgebraicFraction(above * inverse, below * inverse)


def _common_powers(polynomials: tuple[Polynomial, ...]) -> dict[Expression, int]:
    monomials = [dict(monomial) for polynomial in polynomials for monomial in polynomial.terms]
    first = monomials[0]
    common = {key: min(monomial.get(key, 0) for monomial in monomials) for key in first}
    return {key: power for key, power in common.items() if power}


def _divided_by_powers(polynomial: Polynomial, powers: Mapping[Expression, int]) -> Polynomial:
    return Polynomial(
        {
            tuple((key, power - powers.get(key, 0)) for key, power in monomial if power != powers.get(key, 0)): share
            for monomial, share in polynomial.terms.items()
        }
    )


def quotient(above: Polynomial, below: Polynomial) -> Polynomial | None:
    """The polynomial that times `below` is `above`, None where there is none."""
    if not below.terms:
        return None
    result, rest = Polynomial({}), above
    leading, share = _leading(below)
    inverse = share.reciprocal()
    for _ in range(64):
        if not rest.terms:
            return result
        monomial, top = _leading(rest)
        left = _monomial_quotient(monomial, leading)
        if left is None:
            return None
        term = Polynomial({left: top * inverse})
        result, rest = result + term, rest - term * below
    return None


def _leading(polynomial: Polynomial) -> tuple[Monomial, Surd]:
    """The term that comes first in a fixed order that products keep (degree, then powers by the keys' order)."""
    keys = sorted({key for monomial in polynomial.terms for key, _ in monomial}, key=repr)

    def rank(monomial: Monomial) -> tuple[int, ...]:
        powers = dict(monomial)
        return (sum(powers.values()), *(powers.get(key, 0) for key in keys))

    best = max(polynomial.terms, key=rank)
    return best, polynomial.terms[best]


def _monomial_quotient(above: Monomial, below: Monomial) -> Monomial | None:
    powers = dict(above)
    for key, power in below:
        if powers.get(key, 0) < power:
            return None
        powers[key] -= power
    return tuple((key, power) for key, power in powers.items() if power)


def square_root(fraction: AlgebraicFraction) -> AlgebraicFraction:
    """A square root of a fraction, either sign; raises NoRoot where it is no algebraic fraction.

    >>> square_root(AlgebraicFraction(Polynomial.number(Surd.rational(45)))).above.constant
    Surd({5: Fraction(3, 1)})
    """
    return reduced(AlgebraicFraction(_root(fraction.above), _root(fraction.below)))


def _root(polynomial: Polynomial) -> Polynomial:
    constant = polynomial.constant
    if constant is not None:
        return Polynomial.number(surd_root(constant))
    common = _common_powers((polynomial,))
    if any(power % 2 for power in common.values()):
        raise NoRoot("an odd power")
    rest = _divided_by_powers(polynomial, common)
    outside = Polynomial({tuple((key, power // 2) for key, power in common.items()): Surd.rational(1)})
    if rest.constant is not None:
        return outside * Polynomial.number(surd_root(rest.constant))
    return outside * _root_of_square(rest)


def _root_of_square(polynomial: Polynomial) -> Polynomial:
    """The root of a perfect square by taking it term by term; raises NoRoot."""
    leading, share = _leading(polynomial)
    if any(power % 2 for _, power in leading):
        raise NoRoot("no perfect square")
    top = Polynomial({tuple((key, power // 2) for key, power in leading): surd_root(share)})
    root = top
    for _ in range(8):
        rest = polynomial - root * root
        if not rest.terms:
            return root
        monomial, value = _leading(rest)
        twice_monomial, twice = _leading(top + top)
        left = _monomial_quotient(monomial, twice_monomial)
        if left is None:
            raise NoRoot("no perfect square")
        root = root + Polynomial({left: value * twice.reciprocal()})
    raise NoRoot("no perfect square")


def surd_root(value: Surd) -> Surd:
    """√(a + b√c) as a sum of square roots where it is one, as √(7 + 4√3) = 2 + √3; raises NoRoot.

    Where a² − b²c is a square d², the root is √((a + d)/2) ± √((a − d)/2).
    """
    rational = value.fraction
    if rational is not None:
        if rational < 0:
            raise NoRoot("the root of a negative number")
        return Surd.root(rational)
    parts = dict(value.parts)
    a = parts.pop(1, Fraction(0))
    if len(parts) != 1 or a <= 0:
        raise NoRoot("a root of a root")
    ((root, b),) = parts.items()
    inside = a * a - b * b * root
    if inside < 0:
        raise NoRoot("the root of a negative number")
    d = Surd.root(inside).fraction
    if d is None:
        raise NoRoot("a root of a root")
    first, second = Surd.root((a + d) / 2), Surd.root((a - d) / 2)
    return first + second if b > 0 else first - second


def float_value(fraction: AlgebraicFraction, unknowns: Mapping[Expression, float]) -> float:
    """The decimal value with letters and sizes replaced; angles under sin, cos and tan are in degrees."""
    return _float(fraction.above, unknowns) / _float(fraction.below, unknowns)


def _float(polynomial: Polynomial, unknowns: Mapping[Expression, float]) -> float:
    total = 0.0
    for monomial, share in polynomial.terms.items():
        term = sum(float(part) * math.sqrt(root) for root, part in share.parts.items())
        for key, power in monomial:
            term *= _atom(key, unknowns) ** power
        total += term
    return total


def _atom(key: Expression, unknowns: Mapping[Expression, float]) -> float:
    match key:
        case Letter("π"):
            return math.pi
        case Function(name, Measured(Number(value))) | Function(name, Number(value)):
            return {"sin": math.sin, "cos": math.cos, "tan": math.tan}[name](math.radians(float(value)))
    return unknowns[key]


def is_number(fraction: AlgebraicFraction) -> bool:
    """Whether no letter but π is left."""
    keys = {key for side in (fraction.above, fraction.below) for monomial in side.terms for key, _ in monomial}
    return all(key == PI or isinstance(key, Function) for key in keys)


def fraction_expression(fraction: AlgebraicFraction) -> Expression:
    """The fraction as it is printed: x + 3, 12 sin 40°, 3√5/2."""
    above = polynomial_expression(fraction.above)
    if fraction.below.constant is not None:
        return above
    return Quotient(above, polynomial_expression(fraction.below))


def polynomial_expression(polynomial: Polynomial) -> Expression:
    """The polynomial as it is printed, highest powers first."""
    if not polynomial.terms:
        return Number(Fraction(0))
    constant = polynomial.constant
    if constant is not None:
        return _number(constant)
    keys = sorted({key for monomial in polynomial.terms for key, _ in monomial}, key=repr)

    def rank(monomial: Monomial) -> tuple[int, ...]:
        powers = dict(monomial)
        return (-sum(powers.values()), *(-powers.get(key, 0) for key in keys))

    terms = [_term(monomial, polynomial.terms[monomial]) for monomial in sorted(polynomial.terms, key=rank)]
    if isinstance(terms[0], Negative):
        # 14 − t and 169 − t², not −t + 14.
        terms.sort(key=lambda term: isinstance(term, Negative))
    return terms[0] if len(terms) == 1 else Sum(tuple(terms))


def _number(value: Surd) -> Expression:
    rational = value.fraction
    if rational is not None:
        size = as_decimal(abs(rational)) or whole_or_fraction(abs(rational))
        return Negative(size) if rational < 0 else size
    written = surd_expression(value)
    if isinstance(written, Sum) and isinstance(written.terms[0], Negative | Number):
        # √194 − 5, not −5 + √194.
        terms = [Negative(whole_or_fraction(-term.value)) if _below_nought(term) else term for term in written.terms]
        return Sum(tuple(sorted(terms, key=lambda term: isinstance(term, Negative))))
    return written


def _below_nought(term: Expression) -> TypeGuard[Number]:
    return isinstance(term, Number) and term.value < 0


def _term(monomial: Monomial, share: Surd) -> Expression:
    if not monomial:
        return _number(share)
    functions = [pair for pair in monomial if isinstance(pair[0], Function)]
    plain = sorted((pair for pair in monomial if not isinstance(pair[0], Function)), key=lambda pair: pair[0] != PI)
    factors = [key if power == 1 else Power(key, Number(Fraction(power))) for key, power in (*plain, *functions)]
    rational = share.fraction
    if rational is None:
        return Product((surd_expression(share), *factors))
    size = abs(rational)
    above: list[Expression] = [] if size.numerator == 1 else [Number(Fraction(size.numerator))]
    body: Expression = factors[0] if not above and len(factors) == 1 else Product((*above, *factors))
    if size.denominator != 1:
        body = Quotient(body, Number(Fraction(size.denominator)))
    return Negative(body) if rational < 0 else body
