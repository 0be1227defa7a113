"""Questions about numbers themselves: the small cases, keys, and derivations that are broken on purpose."""

from fractions import Fraction
from typing import Any

import pytest

from paperaudit.maths import primes
from paperaudit.maths.equality import compare
from paperaudit.maths.recurring import Recurring
from paperaudit.maths.standard_form import standard_form
from paperaudit.model.derivation import Derived, NotRead
from paperaudit.model.expression import Expression, Number
from paperaudit.model.paper import Line, Part, Question
from paperaudit.strands import powers_of_ten
from paperaudit.strands.numbers import (
    bases,
    bounds,
    estimating,
    factors,
    ordering,
    places,
    powers,
    recurring,
    sets,
    venn,
)
from paperaudit.strands.registry import derive
from paperaudit.wording.reading import read
from tests.strands.asked import cases, check, derived, reading_of, texts

CASES = cases("numbers")
READ = [case for case in CASES if not case.get("unread") and not case.get("text")]
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


@pytest.mark.parametrize(
    ("text", "answer"),
    [
        (
            "A number, x, is rounded to 1 decimal place. The result is 4.7. Write down the error interval for x.",
            "4.65 ≤ x < 4.75",
        ),
        (
            "A number n is truncated to 1 decimal place. The result is 4.7. Write down the error interval for n.",
            "4.7 ≤ n < 4.8",
        ),
        (
            "A rope is 12.4 m long, correct to 1 decimal place. Write down the lower bound for the length of the rope.",
            "12.35 m",
        ),
        (
            "The length of a mast, L metres, is 7.2 correct to 2 significant figures. "
            "Write down the error interval for L.",
            "7.15 ≤ L < 7.25",
        ),
        (
            "Given that a = 4.5 and b = 2.3, each correct to 1 decimal place, work out the upper bound of ab. "
            "Give your answer to 3 significant figures.",
            "10.7",
        ),
        ("Work out (8 x 10^5) ÷ (2 x 10^-3). Give your answer in standard form.", "4 × 10⁸"),
        ("Estimate the value of 397 ÷ 21. Round each number to 1 significant figure.", "20"),
        ("In a class of 30 pupils, 18 play hockey, 15 play netball and 6 play both. How many play neither?", "3"),
        (
            "In a class of 30, 18 play hockey, 15 play netball and 3 play neither. "
            "How many play both hockey and netball?",
            "6",
        ),
        ("There are 40 sailors in a club. 25 can row, 20 can swim and 8 can do both. How many can only row?", "17"),
        ("Of 100 people surveyed, 60 like tea, 50 like coffee and 20 like both. How many like exactly one?", "70"),
        (
            "In a group of 50 sailors, 30 own a boat and 25 own a bicycle. Everyone owns at least one of them. "
            "How many own both?",
            "5",
        ),
        ("ξ = {1, 2, 3, 4, 5, 6, 7, 8}, A = {1, 2, 3}. Find A′.", "{4, 5, 6, 7, 8}"),
        ("A = {1, 2, 3} and B = {3, 4}. Find A ∩ B.", "{3}"),
        ("Which is the smallest value?  (a) 0.3  (b) 1/3  (c) −2", "(c) −2"),
        ("Write these numbers in order of size. Start with the smallest number. 0.5, 0.45, 0.405", "0.405, 0.45, 0.5"),
    ],
)
def test_questions_in_several_sentences(text: str, answer: str) -> None:
    part = Part(id="1", number="", text=Line(text))
    name, outcome = derive(read(Question("1", (part,)), part))
    assert (name, texts(outcome)) == ("number", [answer])


def test_a_wrong_fraction_of_a_recurring_decimal_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(recurring, "Fraction", lambda above, below: Fraction(above + 1, below))
    disagrees("Write 0.4̇5̇ as a fraction.")


def test_a_wrong_long_division_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(recurring, "recurring_of", lambda value: Recurring(0, "", "46"))
    disagrees("Write 5/11 as a recurring decimal.")


def test_a_wrong_standard_form_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(powers_of_ten, "standard_form", lambda value, places=0: standard_form(value * 10))
    disagrees("Write 4 560 000 in standard form.")


def test_a_wrong_exponent_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(powers, "_exponent", lambda expression, base: Fraction(7))
    disagrees("Write 2³ × 2⁵ as a single power of 2.")


def test_an_estimate_far_off_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(estimating, "rounded_number", lambda *_: Number(Fraction(900)))
    disagrees("Estimate 4.8 × 31.2.")


def test_a_wrong_bound_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(bounds, "step_of", lambda *_: Fraction(1))
    outcome = derived("Write down the error interval for x.", ["x = 3.4 correct to 1 decimal place"])[1]
    assert isinstance(outcome, NotRead)
    given = ["a = 4.5 correct to 1 decimal place", "b = 2.3 correct to 1 decimal place"]
    monkeypatch.undo()
    monkeypatch.setattr(bounds, "_value", _rising(bounds._value))
    outcome = derived("Work out the upper bound of a − b.", given)[1]
    assert isinstance(outcome, NotRead) and "disagree" in outcome.why


def _rising(right: Any) -> Any:
    """The value, wrong for the first letters that are tried, so that a wrong corner is taken."""
    calls = iter(range(10_000))

    def wrong(of: Expression, values: dict[str, Fraction]) -> Any:
        return -right(of, values) if next(calls) < 4 else right(of, values)

    return wrong


def test_a_wrong_union_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sets, "_in_order", lambda members: members[:-1])
    outcome = derived("Find A ∪ B.", ["A = {1, 2}", "B = {2, 3}"])[1]
    assert isinstance(outcome, NotRead) and "disagree" in outcome.why


def test_a_wrong_count_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(venn._Form, "less", lambda self, other: venn._Form(self.constant + 1, self.share))
    outcome = derived("Find n((A ∪ B)′).", ["n(ξ) = 30", "n(A) = 18", "n(B) = 15", "n(A ∩ B) = 6"])[1]
    assert not isinstance(outcome, Derived)


@pytest.mark.parametrize(
    "text",
    [
        "In a class of 30 pupils, 18 play hockey, 15 play netball and 6 play both. How many trophies did they win?",
        "In a class of 30 pupils, 18 play hockey, 15 wear hats on Monday and 6 play both. How many play chess?",
        "In a class of 30 pupils, 18 play hockey, 15 play netball and half play both. How many play neither?",
    ],
)
def test_a_story_that_is_not_understood_is_left(text: str) -> None:
    part = Part(id="1", number="", text=Line(text))
    assert read(Question("1", (part,)), part).unread


WORDED: list[tuple[str, list[str]]] = cases("numbers-worded")  # type: ignore[assignment]


@pytest.mark.parametrize(("text", "answers"), WORDED, ids=[text for text, _ in WORDED])
def test_ordinary_wordings(text: str, answers: list[str]) -> None:
    part = Part(id="1", number="", text=Line(text))
    name, outcome = derive(read(Question("1", (part,)), part))
    assert (name, texts(outcome)) == ("number", answers)
