"""Logarithms that are fractions: of a power of the base, or of another power of the number that the base is one of."""

from fractions import Fraction

from paperaudit.maths.primes import LARGEST, powers, prime_factors
from paperaudit.maths.surd import Surd


def exact_logarithm(size: Surd, base: Surd | None) -> Fraction | None:
    """The logarithm of a positive number to a positive base, None where it is irrational or the numbers are too large.

    Without a base it is the natural one, which is a fraction for 1 alone.

    >>> exact_logarithm(Surd.rational(8), Surd.rational(4))
    Fraction(3, 2)
    """
    if size.fraction == 1:
        return Fraction(0)
    if base is None:
        return None
    of_size, of_base = _exponents(size), _exponents(base)
    if of_size is None or not of_base or of_size.keys() != of_base.keys():
        return None
    shares = {of_size[prime] / of_base[prime] for prime in of_base}
    return shares.pop() if len(shares) == 1 else None


def _exponents(value: Surd) -> dict[int, Fraction] | None:
    """The exponents of the primes in a fraction or a root of one; None for other numbers and too large ones."""
    whole = value.fraction
    share = Fraction(1) if whole is not None else Fraction(1, 2)
    number = whole if whole is not None else (value * value).fraction
    if number is None:
        return None
    found: dict[int, Fraction] = {}
    for size, sign in ((number.numerator, share), (number.denominator, -share)):
        if size > LARGEST:
            return None
        if size > 1:
            found |= {prime: sign * count for prime, count in powers(prime_factors(size))}
    return found
