"""Whole numbers taken apart: prime factors, factors, and a test for primes that shares nothing with them."""

from math import isqrt, prod

from paperaudit.errors import BudgetExceeded

LARGEST = 10**12
"""Beyond it, dividing by one number after the other takes too long, for a pupil as for us."""

_WITNESSES = (2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37)


def prime_factors(whole: int) -> tuple[int, ...]:
    """The prime factors of a number above 1, smallest first, repeats kept; by division as a pupil does it.

    Raises BudgetExceeded beyond `LARGEST`.

    >>> prime_factors(360)
    (2, 2, 2, 3, 3, 5)
    """
    if whole > LARGEST:
        raise BudgetExceeded(f"a number above {LARGEST} taken apart into factors")
    found: list[int] = []
    rest, divisor = whole, 2
    while divisor * divisor <= rest:
        while rest % divisor == 0:
            found.append(divisor)
            rest //= divisor
        divisor += 1 if divisor == 2 else 2
    return (*found, rest) if rest > 1 else tuple(found)


def powers(factors: tuple[int, ...]) -> tuple[tuple[int, int], ...]:
    """Each different factor with how often it occurs.

    >>> powers((2, 2, 3))
    ((2, 2), (3, 1))
    """
    return tuple((prime, factors.count(prime)) for prime in dict.fromkeys(factors))


def factors(whole: int) -> tuple[int, ...]:
    """All factors of a number, smallest first; raises BudgetExceeded beyond `LARGEST`.

    >>> factors(12)
    (1, 2, 3, 4, 6, 12)
    """
    found = {1}
    for prime, count in powers(prime_factors(whole)) if whole > 1 else ():
        found = {one * prime**power for one in found for power in range(count + 1)}
    return tuple(sorted(found))


def is_prime(whole: int) -> bool:
    """Whether a number is prime, by the strong test of Miller and Rabin; no division by trial.

    With the primes up to 37 as bases it is exact below 3.3 × 10²⁴ (Sorenson and Webster 2015, from memory).

    >>> [number for number in range(20) if is_prime(number)]
    [2, 3, 5, 7, 11, 13, 17, 19]
    """
    if whole < 2 or any(whole % prime == 0 for prime in _WITNESSES):
        return whole in _WITNESSES
    odd, twos = whole - 1, 0
    while odd % 2 == 0:
        odd, twos = odd // 2, twos + 1
    return all(_passes(whole, base, odd, twos) for base in _WITNESSES)


def _passes(whole: int, base: int, odd: int, twos: int) -> bool:
    value = pow(base, odd, whole)
    if value in (1, whole - 1):
        return True
    for _ in range(twos - 1):
        value = value * value % whole
        if value == whole - 1:
            return True
    return False


def is_product_of_primes(found: tuple[int, ...], whole: int) -> bool:
    """The second way for prime factors: all of them are prime, and they multiply to the number."""
    return prod(found) == whole and all(map(is_prime, found))


def is_square(whole: int) -> bool:
    """Whether a number is the square of a whole number."""
    return whole >= 0 and isqrt(whole) ** 2 == whole
