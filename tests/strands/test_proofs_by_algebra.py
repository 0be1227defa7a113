"""Proofs in algebra and counter-examples: keys, derivations broken on purpose, what is not taken for a claim."""

from collections.abc import Callable
from fractions import Fraction
from typing import Any

import pytest

from paperaudit.maths.algebra.terms import Term, Terms
from paperaudit.model.derivation import Derived, NotRead
from paperaudit.strands.algebra import integer_proofs, other_proofs
from paperaudit.strands.registry import derive
from tests.strands.asked import derived, judged_key, reading_of, refusal_when_broken

SQUARE = "give a counterexample to the statement that the square of a number is greater than the number"
KEYS = [
    ('prove that the sum of three consecutive integers is a multiple of 3', 'proved', 'agrees'),
    ('prove that the sum of two consecutive odd numbers is odd', 'false', 'agrees'),
    ('find a counter-example to show that n² + n + 41 is not always prime', 'n = 41', 'agrees'),
    ('find a counter-example to show that n² + n + 41 is not always prime', 'n = 3', 'differs'),
    ('find a counter-example to show that n² + n + 41 is not always prime', '40', 'agrees'),
    ('give a counter-example to show that the statement "all prime numbers are odd" is false', '2', 'agrees'),
    ('give a counter-example to show that the statement "all prime numbers are odd" is false', '9', 'differs'),
    (SQUARE, 'x = 0.5', 'agrees'),
    (SQUARE, 'x = 3', 'differs'),
    ('give a counter-example to the statement "n² > n for all integers n"', 'n = 1/2', 'differs'),
    ('give a counter-example to the statement "n² > n for all integers n"', 'n = 0', 'agrees'),
    ('disprove the statement (a + b)² = a² + b²', 'a = 1, b = 2', 'agrees'),
    ('disprove the statement (a + b)² = a² + b²', 'a = 1, b = 0', 'differs'),
]  # fmt: skip


@pytest.mark.parametrize(("ask", "key", "expected"), KEYS)
def test_keys(ask: str, key: str, expected: str) -> None:
    assert judged_key(key, ask) == expected


def one_off(work: Callable[..., Terms]) -> Callable[..., Terms]:
    return lambda *arguments: (*work(*arguments), Term(Fraction(1)))


MUTATIONS: list[tuple[str, Any, str, Callable[[Any], Any]]] = [
    ("prove that the sum of three consecutive integers is a multiple of 3", integer_proofs, "scaled", one_off),
    ("prove that n³ − n is divisible by 6", integer_proofs, "scaled", one_off),
    ("show that 4n² + 12n + 9 is a square number", integer_proofs, "factors_of",
     lambda work: lambda terms: work((*terms, Term(Fraction(-9)), Term(Fraction(16), (("n", 2),))))),
    ("prove that x² + 6x + 10 is always positive", other_proofs, "count_real_roots", lambda _: lambda numbers: 2),
    ("find a counter-example to show that n² + n + 41 is not always prime", other_proofs, "fails_at",
     lambda _: lambda task, values: True),
]  # fmt: skip


@pytest.mark.parametrize(("ask", "module", "name", "breaks"), MUTATIONS)
def test_a_broken_derivation_is_caught(
    ask: str, module: Any, name: str, breaks: Callable[[Any], Any], monkeypatch: pytest.MonkeyPatch
) -> None:
    assert refusal_when_broken(monkeypatch, module, name, breaks, ask)


@pytest.mark.parametrize(
    "ask",
    [
        "prove that the sum of some integers is even",
        "prove that the sum of three consecutive triangular numbers is a multiple of 3",
        "prove that the product of two consecutive integers and 7 is even",
        "prove that the sum of the digits is a multiple of 3",
        "prove that the difference of three consecutive integers is odd",
    ],
)
def test_what_is_not_wholly_understood_is_not_read(ask: str) -> None:
    reading = reading_of(ask)
    assert reading.unread or isinstance(derive(reading)[1], NotRead)


def test_large_divisors_are_refused_soon() -> None:
    assert isinstance(derived("prove that n³ + m³ + k³ is a multiple of 997")[1], NotRead | Derived)
