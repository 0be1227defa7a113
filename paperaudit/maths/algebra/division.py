"""Polynomials in one letter divided, and their rational roots found."""

from collections.abc import Sequence
from fractions import Fraction
from math import gcd, isqrt, lcm

from paperaudit.errors import BudgetExceeded

_LARGEST_LEADING = 10**6
Coefficients = Sequence[Fraction]


def divided(above: Coefficients, below: Coefficients) -> tuple[list[Fraction], list[Fraction]]:
    """Quotient and remainder by coefficients, lowest exponent first.

    >>> divided([Fraction(-1), Fraction(0), Fraction(1)], [Fraction(1), Fraction(1)])
    ([Fraction(-1, 1), Fraction(1, 1)], [])
    """
    rest = list(above)
    quotient = [Fraction(0)] * max(0, len(above) - len(below) + 1)
    while len(rest) >= len(below):
        place = len(rest) - len(below)
        share = rest[-1] / below[-1]
        quotient[place] = share
        for at, number in enumerate(below):
            rest[place + at] -= share * number
        while rest and not rest[-1]:
            rest.pop()
    return quotient, rest


def horner(numbers: Coefficients, at: Fraction) -> Fraction:
    """The value at a number."""
    total = Fraction(0)
    for number in reversed(numbers):
        total = total * at + number
    return total


def rational_roots(numbers: Coefficients) -> tuple[Fraction, ...]:
    """Every rational root once, the smallest in size first, positive before negative.

    >>> rational_roots([Fraction(-6), Fraction(11), Fraction(-6), Fraction(1)])
    (Fraction(1, 1), Fraction(2, 1), Fraction(3, 1))
    """
    if not numbers or len(numbers) == 1:
        return ()
    scale = lcm(*(number.denominator for number in numbers))
    whole = [int(number * scale) for number in numbers]
    low = next(place for place, number in enumerate(whole) if number)
    found = {Fraction(0)} if low else set[Fraction]()
    whole = whole[low:]
    common = gcd(*whole)
    whole = [number // common for number in whole]
    if len(whole) > 1:
        found |= {root for root in _candidates(whole) if not horner([Fraction(number) for number in whole], root)}
    return tuple(sorted(found, key=lambda root: (abs(root), root < 0)))


def _candidates(whole: Sequence[int]) -> set[Fraction]:
    """What rational roots could be: near the roots worked out in floating point, over divisors of the leading one."""
    if len(whole) == 2:
        return {Fraction(-whole[0], whole[1])}
    if len(whole) == 3:
        below, middle, leading = whole
        square = middle * middle - 4 * leading * below
        if square < 0 or isqrt(square) ** 2 != square:
            return set()
        return {Fraction(-middle + sign * isqrt(square), 2 * leading) for sign in (1, -1)}
    import numpy as np

    leading = abs(whole[-1])
    if leading > _LARGEST_LEADING or max(map(abs, whole)) > 10**60:
        raise BudgetExceeded("coefficients beyond any school paper's")
    divisors = [number for number in range(1, leading + 1) if leading % number == 0]
    numeric = np.roots([float(number) for number in reversed(_square_free(whole))])
    near = [float(root.real) for root in numeric if abs(root.imag) < 1e-3 * (1 + abs(root.real))]
    return {
        Fraction(round(root * number) + shift, number) for root in near for number in divisors for shift in (-1, 0, 1)
    }


def _square_free(whole: Sequence[int]) -> list[Fraction]:
    """The polynomial with each root once, whose roots floating point finds sharply."""
    one = [Fraction(number) for number in whole]
    other = [number * place for place, number in enumerate(one)][1:]
    above = one
    while other:
        one, other = other, divided(one, other)[1]
    return divided(above, one)[0]
