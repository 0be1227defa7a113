"""Equations in x and y: their terms, lines and curves solved for y, and the zeros of polynomials."""

from collections.abc import Mapping
from fractions import Fraction
from math import gcd, isqrt

from paperaudit.errors import BudgetExceeded
from paperaudit.maths.exact import ExactValue, NotSurd, exact_value
from paperaudit.maths.polynomial import ONE, algebraic_fraction
from paperaudit.maths.powers import PowerSum
from paperaudit.maths.surd import Surd
from paperaudit.model.expression import Expression, Letter, Negative, Relation, Sum, with_leaves

Terms = Mapping[tuple[int, int], Fraction]
"""The share of each xⁱyʲ of an equation with everything on its left side."""

_LARGEST_TRIED = 10**7


def plane_terms(relation: Relation) -> dict[tuple[int, int], Fraction]:
    """The terms of an equation in x and y, right side taken to the left; raises NotSurd for other equations.

    >>> from paperaudit.maths.parse import read_relation
    >>> plane_terms(read_relation("y = 2x + 1")) == {(1, 0): -2, (0, 1): 1, (0, 0): -1}
    True
    """
    whole = algebraic_fraction(Sum((relation.left, Negative(relation.right))))
    if whole.below != ONE:
        raise NotSurd("an equation with letters in a denominator")
    found: dict[tuple[int, int], Fraction] = {}
    for monomial, share in whole.above.terms.items():
        exponents = {unknown.name: count for unknown, count in monomial if isinstance(unknown, Letter)}
        rational = share.fraction
        if len(exponents) < len(monomial) or not exponents.keys() <= {"x", "y"} or rational is None:
            raise NotSurd("an equation in other letters than x and y, or with roots")
        found[exponents.get("x", 0), exponents.get("y", 0)] = rational
    return found


def is_line(terms: Terms) -> bool:
    """Whether the terms are those of a straight line."""
    return all(i + j <= 1 for i, j in terms) and any(i + j == 1 for i, j in terms)


def solved_for_y(terms: Terms) -> PowerSum | None:
    """y as a polynomial in x, or None where the equation does not give it so."""
    share = terms.get((0, 1))
    if share is None or any(j and (i, j) != (0, 1) for i, j in terms):
        return None
    return PowerSum({Fraction(i): -value / share for (i, j), value in terms.items() if not j})


def zeros(polynomial: PowerSum) -> tuple[ExactValue, ...]:
    """The real zeros of a polynomial, each once, the smallest first; raises NotSurd where one has no exact form.

    >>> [str(zero) for zero in zeros(PowerSum({Fraction(2): Fraction(1), Fraction(0): Fraction(-4)}))]
    ['-2', '2']
    """
    rational, rest = _rational_zeros(polynomial)
    found: list[ExactValue] = list(rational)
    match rest.degree:
        case 0:
            pass
        case 2:
            found.extend(_of_quadratic(rest))
        case 4 if not rest.share(3) and not rest.share(1):
            square = PowerSum({Fraction(2): rest.share(4), Fraction(1): rest.share(2), Fraction(0): rest.share(0)})
            for zero in zeros(square):
                if not isinstance(zero, Fraction):
                    raise NotSurd("a root of a root")
                if zero > 0:
                    found.extend((Surd.root(zero), -Surd.root(zero)))
        case _:
            raise NotSurd("zeros of a polynomial that have no exact form here")
    return tuple(sorted(set(found), key=decimal_of))


def decimal_of(value: ExactValue) -> Fraction:
    """A value to sixty figures, for comparing."""
    return value if isinstance(value, Fraction) else Fraction(value.to_decimal())


def _rational_zeros(polynomial: PowerSum) -> tuple[list[Fraction], PowerSum]:
    """The rational zeros and what is left when they are divided out."""
    found: list[Fraction] = []
    rest = polynomial
    while rest.degree > 0 and rest.degree != 2:
        zero = _rational_zero(rest)
        if zero is None:
            break
        found.append(zero)
        rest = _without(rest, zero)
    return found, rest


def _rational_zero(polynomial: PowerSum) -> Fraction | None:
    coefficients = polynomial.coefficients()
    if not coefficients[-1]:
        return Fraction(0)
    if len(coefficients) == 2:
        return -coefficients[1] / coefficients[0]
    scale = 1
    for share in coefficients:
        scale = scale * share.denominator // gcd(scale, share.denominator)
    first, last = abs(int(coefficients[0] * scale)), abs(int(coefficients[-1] * scale))
    for above in _factors(last):
        for below in _factors(first):
            for candidate in (Fraction(above, below), Fraction(-above, below)):
                if polynomial.value(candidate) == 0:
                    return candidate
    return None


def _factors(whole: int) -> list[int]:
    if whole > _LARGEST_TRIED:
        raise BudgetExceeded("zeros of a polynomial with large numbers")
    low = [one for one in range(1, isqrt(whole) + 1) if whole % one == 0]
    return sorted({*low, *(whole // one for one in low)})


def _without(polynomial: PowerSum, zero: Fraction) -> PowerSum:
    """The polynomial divided by x less one of its zeros."""
    carried, shares = Fraction(0), []
    for share in polynomial.coefficients():
        carried = carried * zero + share
        shares.append(carried)
    shares.pop()
    return PowerSum({Fraction(len(shares) - 1 - place): share for place, share in enumerate(shares)})


def _of_quadratic(polynomial: PowerSum) -> tuple[ExactValue, ...]:
    a, b, c = (polynomial.share(exponent) for exponent in (2, 1, 0))
    under = b * b - 4 * a * c
    if under < 0:
        return ()
    root = Surd.root(under)
    values = [(Surd.rational(-b) + sign) * Surd.rational(1 / (2 * a)) for sign in (root, -root)]
    return tuple(value if value.fraction is None else value.fraction for value in values)


def on_curve(relation: Relation, x: Expression, y: Expression) -> bool:
    """Whether a point with exact coordinates satisfies an equation as it is written."""

    def put(side: Expression) -> Expression:
        return with_leaves(side, lambda leaf: x if leaf == Letter("x") else y if leaf == Letter("y") else leaf)

    return exact_value(Sum((put(relation.left), Negative(put(relation.right))))) == 0
