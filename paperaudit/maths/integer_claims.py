"""Whether a property claimed of expressions in integers holds at given numbers, by plain calculation."""

from collections.abc import Iterator, Mapping
from fractions import Fraction
from itertools import product
from math import isqrt

from paperaudit.maths.exact import rational_value
from paperaudit.maths.primes import is_prime
from paperaudit.model.expression import letters_of
from paperaudit.model.proof_task import CounterExample, Property

_SIZES = (*range(1, 61), 0, *range(-1, -61, -1))
_REALS = (
    Fraction(1, 2),
    Fraction(0),
    Fraction(1),
    Fraction(-1),
    Fraction(2),
    Fraction(-1, 2),
    Fraction(-2),
    Fraction(3),
)
_FEW = (1, 2, 3, 0, -1, -2, 4, 5)


def has_property(value: Fraction, claim: Property, divisor: int = 1, remainder: int = 0) -> bool:
    """Whether a number is prime, a square, positive, or so much more than a multiple of the divisor.

    >>> has_property(Fraction(9), "remainder", 4, 1), has_property(Fraction(91), "prime")
    (True, False)
    """
    if claim == "positive":
        return value > 0
    if value.denominator != 1:
        return False
    whole = int(value)
    match claim:
        case "prime":
            return whole > 1 and is_prime(whole)
        case "square":
            return whole >= 0 and isqrt(whole) ** 2 == whole
    return (whole - remainder) % divisor == 0


def fails_at(task: CounterExample, values: Mapping[str, Fraction]) -> bool | None:
    """Whether the statement is false at these numbers; None where it says nothing about them or has no value there."""
    numbers = values.values()
    if task.integers and any(number.denominator != 1 for number in numbers):
        return None
    if task.from_one and any(number < 1 for number in numbers):
        return None
    if (task.primes and not all(is_prime(int(number)) for number in numbers if number > 1)) or (
        task.primes and any(number < 2 for number in numbers)
    ):
        return None
    if task.relation is not None:
        left, right = (rational_value(side, values) for side in (task.relation.left, task.relation.right))
        if left is None or right is None:
            return None
        signs = {"=": left == right, "<": left < right, ">": left > right, "≤": left <= right, "≥": left >= right}
        return not signs.get(task.relation.sign, left != right)
    assert task.expression is not None
    value = rational_value(task.expression, values)
    return None if value is None else not has_property(value, task.claim, task.divisor, task.remainder)


def letters_of_claim(task: CounterExample) -> tuple[str, ...]:
    """The letters that the statement is about."""
    if task.relation is not None:
        return tuple(dict.fromkeys((*letters_of(task.relation.left), *letters_of(task.relation.right))))
    assert task.expression is not None
    return letters_of(task.expression)


def numbers_to_try(task: CounterExample) -> Iterator[dict[str, Fraction]]:
    """Numbers for the letters, simple ones first."""
    letters = letters_of_claim(task)
    sizes = [Fraction(size) for size in (_SIZES if len(letters) == 1 else _FEW)]
    if not task.integers:
        sizes = [*_REALS, *(size for size in sizes if size not in _REALS)]
    for numbers in product(sizes, repeat=min(len(letters), 3)):
        yield dict(zip(letters, numbers, strict=False))
