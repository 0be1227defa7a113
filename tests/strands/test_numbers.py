"""Questions about numbers themselves: the small cases, keys, and derivations that are broken on purpose."""

from typing import Any

import pytest

from paperaudit.maths import primes
from paperaudit.maths.equality import compare
from paperaudit.model.derivation import Derived, NotRead
from paperaudit.model.expression import Expression
from paperaudit.strands.numbers import bases, factors, ordering, places
from tests.strands.asked import cases, check, derived, reading_of

CASES = cases("numbers")
READ = [case for case in CASES if not case.get("unread")]
KEYED = [
    (case["ask"], tuple(case.get("given", ())), key, agreement)
    for case in CASES
    for agreement, said in (("agrees", "agrees"), ("differs", "differs"), ("cannot tell", "unclear"))
    for key in case.get("unclear" if said == "unclear" else said, ())
]


@pytest.mark.parametrize("case", READ, ids=[case["title"] for case in READ])
def test_small_cases(case: dict[str, Any]) -> None:
    check(case, "number")


@pytest.mark.parametrize("case", [case for case in CASES if case.get("unread")], ids=lambda case: case["title"])
def test_what_is_not_read(case: dict[str, Any]) -> None:
    assert reading_of(case["ask"]).unread


@pytest.mark.parametrize(("ask", "given", "key", "agreement"), KEYED)
def test_keys(ask: str, given: tuple[str, ...], key: str, agreement: str) -> None:
    outcome, asked = derived(ask, given)[1], reading_of(ask, given).ask
    assert isinstance(outcome, Derived) and asked is not None
    assert compare(str(key), outcome.answers, asked).agreement.value == agreement


def disagrees(ask: str) -> None:
    outcome = derived(ask)[1]
    assert isinstance(outcome, NotRead)
    assert "disagree" in outcome.why


@pytest.mark.parametrize(
    "ask",
    [
        "Find the HCF of 84 and 120.",
        "Find the LCM of 84 and 120.",
        "Write 84 as a product of its prime factors.",
        "Is 91 a prime number?",
    ],
)
def test_wrong_prime_factors_are_caught(monkeypatch: pytest.MonkeyPatch, ask: str) -> None:
    monkeypatch.setattr(primes, "prime_factors", lambda size: (size,) if size != 84 else (2, 2, 21))
    disagrees(ask)


def test_a_wrong_list_of_factors_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(primes, "factors", lambda _: (1, 2, 3, 8, 12, 24))
    disagrees("List the factors of 24.")
    disagrees("List the common factors of 24 and 36.")


def test_a_wrong_quotient_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(factors, "divmod", lambda one, other: (one // other, one % other + 1), raising=False)
    disagrees("Find the remainder when 100 is divided by 7.")


def test_a_wrong_comparison_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    right = ordering.exact_value

    def turned(expression: Expression) -> Any:
        return -right(expression)

    monkeypatch.setattr(ordering, "exact_value", turned)
    disagrees("Which is larger, 2/3 or 3/5?")
    disagrees("Put 3, 1 and 2 in ascending order.")
    disagrees("Is 3/4 > 0.7?")


def test_wrong_digits_are_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(bases, "_from_ten", lambda size, base, working: "11")
    disagrees("Change 100 to base 5.")
    monkeypatch.setattr(places, "_digits", lambda size: {2: 7, 1: 7, 0: 7})
    disagrees("What is the tens digit of 345?")


@pytest.mark.parametrize("whole", [2, 3, 4, 91, 97, 561, 1105, 7919, 3215031751, 2**31 - 1, 10**12 - 11])
def test_both_ways_of_testing_for_primes_agree(whole: int) -> None:
    assert primes.is_prime(whole) == (primes.prime_factors(whole) == (whole,))
