"""Polynomials in one unknown: their roots, exact or rounded, and the elimination of other letters."""

import math
from collections.abc import Mapping

from paperaudit.geometry.beyond.amounts import NoExactValue, Value, replaced, rounded_amount
from paperaudit.maths.cancelling import NoRoot, float_value, fraction_expression, is_number, reduced, square_root
from paperaudit.maths.polynomial import AlgebraicFraction, Polynomial
from paperaudit.maths.surd import Surd
from paperaudit.model.expression import Expression, Letter, Root


def by_powers(polynomial: Polynomial, atom: Expression) -> dict[int, Polynomial]:
    """The coefficients of a polynomial in one of its unknowns, by power."""
    parts: dict[int, dict[tuple[tuple[Expression, int], ...], Surd]] = {}
    for monomial, share in polynomial.terms.items():
        power = dict(monomial).get(atom, 0)
        rest = tuple(pair for pair in monomial if pair[0] != atom)
        parts.setdefault(power, {})[rest] = share
    return {power: Polynomial(terms) for power, terms in parts.items()}


def roots_of(by_degree: dict[int, Polynomial], approx: bool) -> list[Value]:
    """The roots of a polynomial of the first or second degree; of higher ones where a power can be taken out."""
    least = min(by_degree)
    parts = {power - least: AlgebraicFraction(part) for power, part in by_degree.items()}
    degree = max(parts)
    nought = AlgebraicFraction(Polynomial({}))
    a, b, c = (parts.get(power, nought) for power in (2, 1, 0))
    if degree == 0 and least:
        return [Value(nought, approx)]
    if degree == 1:
        return [Value(reduced(-c * b.reciprocal()), approx)]
    if degree != 2:
        raise NoExactValue("an equation of a higher degree")
    if not b.above.terms:
        root = rounded_root(reduced(-c * a.reciprocal()), approx)
        return [root, Value(-root.fraction, root.approx)]
    under = reduced(b * b + _times(a * c, -4))
    root = rounded_root(under, approx)
    twice = _times(a, 2).reciprocal()
    return [Value(reduced((-b + way) * twice), root.approx) for way in (root.fraction, -root.fraction)]


def _times(fraction: AlgebraicFraction, factor: int) -> AlgebraicFraction:
    return fraction * AlgebraicFraction(Polynomial.number(Surd.rational(factor)))


def rounded_root(fraction: AlgebraicFraction, approx: bool) -> Value:
    """The square root, to DIGITS figures where a number has no exact one."""
    if not approx:
        try:
            return Value(square_root(fraction))
        except NoRoot:
            pass
    if not is_number(fraction):
        return Value(square_root(fraction), approx)
    inside = float_value(fraction, {})
    if inside < 0:
        raise NoExactValue("the root of a negative number")
    shown = None if approx else Root(fraction_expression(fraction))
    return Value(rounded_amount(math.sqrt(inside)), True, shown)


def eliminated(polynomials: list[Polynomial], letter: Letter) -> Polynomial:
    """One polynomial in `letter` alone: the others are taken out one by one, from equations linear in them."""
    rest = list(polynomials)
    while len(rest) > 1:
        chosen = _linear_in_another(rest, letter)
        if chosen is None:
            raise NoExactValue("equations that cannot be solved one after the other")
        number, other = chosen
        parts = by_powers(rest.pop(number), other)
        value = Value(
            reduced(-AlgebraicFraction(parts.get(0, Polynomial({}))) * AlgebraicFraction(parts[1]).reciprocal())
        )
        rest = [replaced(AlgebraicFraction(polynomial), {other: value}).above for polynomial in rest]
    return rest[0]


def freed_of_roots(
    polynomial: Polynomial, squares: Mapping[Expression, AlgebraicFraction]
) -> tuple[Polynomial, tuple[Expression, AlgebraicFraction, AlgebraicFraction] | None]:
    """An equation squared once a length known by its square alone stands by itself in it, and how: HO = t − 1.

    A polynomial without such a length, or with one that cannot be set by itself, stays as it is.
    """
    for size, square in squares.items():
        parts = by_powers(polynomial, size)
        if set(parts) == {0, 1}:
            alone = reduced(-AlgebraicFraction(parts[0]) * AlgebraicFraction(parts[1]).reciprocal())
            freed = reduced(alone * alone + -square).above
            return freed, (size, alone, square)
    return polynomial, None


def _linear_in_another(polynomials: list[Polynomial], letter: Letter) -> tuple[int, Letter] | None:
    for number, polynomial in enumerate(polynomials):
        others = sorted(
            {key for monomial in polynomial.terms for key, _ in monomial if isinstance(key, Letter)}
            - {letter, Letter("π")},
            key=lambda key: key.name,
        )
        for other in others:
            if max(by_powers(polynomial, other)) == 1:
                return number, other
    return None
