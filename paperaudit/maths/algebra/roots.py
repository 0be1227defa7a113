"""Exact roots of quadratics as a pupil writes them, and a count of real roots by Sturm's theorem."""

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise
from math import gcd

from paperaudit.maths.algebra.division import divided
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.surd import square_part
from paperaudit.model.expression import Expression, Negative, Number, Product, Quotient, Root, Sum


def quadratic_roots(a: Fraction, b: Fraction, c: Fraction) -> tuple[Expression, ...]:
    """The real roots of ax² + bx + c in lowest terms, the smaller first; one where they are equal.

    >>> from paperaudit.maths.write import write
    >>> [write(root) for root in quadratic_roots(Fraction(1), Fraction(4), Fraction(-7))]
    ['−2 − √11', '−2 + √11']
    """
    inside = b * b - 4 * a * c
    if inside < 0:
        return ()
    if not inside:
        return (whole_or_fraction(-b / (2 * a)),)
    return with_root(-b / (2 * a), inside / (4 * a * a))


def with_root(centre: Fraction, square: Fraction) -> tuple[Expression, Expression]:
    """The numbers centre − √square and centre + √square, for a positive square."""
    outside, inside = square_part(square.numerator * square.denominator)
    size = Fraction(outside, square.denominator)
    if inside == 1:
        return whole_or_fraction(centre - size), whole_or_fraction(centre + size)
    below = centre.denominator * size.denominator // gcd(centre.denominator, size.denominator)
    first, times = centre * below, size * below
    radical: Expression = Root(Number(Fraction(inside)))
    if times != 1:
        radical = Product((Number(times), radical))
    found: list[Expression] = []
    for sign in (-1, 1):
        signed: Expression = Negative(radical) if sign < 0 else radical
        top = Sum((Number(first), signed)) if first else signed
        if below != 1:
            inner = top.operand if isinstance(top, Negative) else top
            over = Quotient(inner, Number(Fraction(below)))
            top = Negative(over) if isinstance(top, Negative) else over
        found.append(top)
    return found[0], found[1]


def count_real_roots(numbers: Sequence[Fraction]) -> int:
    """How many different real roots a polynomial has, by Sturm's theorem; coefficients lowest first.

    >>> count_real_roots([Fraction(-2), Fraction(0), Fraction(1)])
    2
    """
    chain = [list(numbers), [number * place for place, number in enumerate(numbers)][1:]]
    while chain[-1]:
        rest = divided(chain[-2], chain[-1])[1]
        chain.append([-number for number in rest])
    chain.pop()

    def changes(negative: bool) -> int:
        signs = [(one[-1] > 0) != (negative and (len(one) - 1) % 2 == 1) for one in chain]
        return sum(one != other for one, other in pairwise(signs))

    return changes(True) - changes(False)
