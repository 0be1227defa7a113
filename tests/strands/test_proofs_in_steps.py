"""Proofs by induction and by contradiction, and binomial series, with what is false or not understood."""

from fractions import Fraction

import pytest

from paperaudit.maths.algebra.terms import Term
from paperaudit.maths.answer_kinds.expansion import compare_with_range
from paperaudit.maths.parse import read_expression
from paperaudit.model.ask import Ask, Find
from paperaudit.model.derivation import Agreement, Answer, Derived, NotRead
from paperaudit.strands.algebra import binomial_series, induction, inductive_multiples
from tests.strands.asked import derived, reading_of, statements, texts
from tests.strands.test_chained import told

PROVED = (
    "Prove by induction that 1 + 2 + 3 + ... + n = n(n + 1)/2 for all positive integers n.",
    "Prove by mathematical induction that 1² + 2² + 3² + … + n² = n(n + 1)(2n + 1)/6.",
    "Prove by induction that Σ_{r=1}^{n} r³ = n²(n + 1)²/4.",
    "Prove by induction that 1 + 3 + 5 + ... + (2n − 1) = n² for n ≥ 1.",
    "Prove by induction that 2 + 4 + 8 + ... + 2^n = 2^(n + 1) − 2.",
    "Prove by induction that Σ_{r=1}^{n} 1/(r(r + 1)) = n/(n + 1).",
    "Prove by induction that 7^n − 1 is divisible by 6 for all positive integers n.",
    "Prove by induction that n³ + 5n is divisible by 6.",
    "Use mathematical induction to prove that 3^(2n) − 1 is divisible by 8, for n ∈ ℕ.",
    "Prove by induction that 11^(n + 1) + 12^(2n − 1) is divisible by 133 for all positive integers n.",
    "Prove by contradiction that √2 is irrational.",
    "Prove by contradiction that √12 is irrational.",
    "Prove by contradiction that ∛2 is irrational.",
    "Prove by contradiction that there is no largest even number.",
    "Prove by contradiction that there is no smallest positive rational number.",
    "Prove by contradiction that there are infinitely many prime numbers.",
    "Prove by contradiction that if n² is even then n is even.",
    "Prove by contradiction that if n² is a multiple of 3, then n is a multiple of 3.",
    "Prove by contradiction that there are no integers a and b such that 10a + 15b = 1.",
)
"""Euclid IX.20 for the primes, X.117 (appended in some editions) for √2; the others are common practice, no source."""


@pytest.mark.parametrize("text", PROVED)
def test_claims_that_school_proves(text: str) -> None:
    assert texts(told(text)) == ["proved"]


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("Prove by induction that 1 + 2 + 3 + ... + n = n(n + 2)/2.", "for n = 1 the sum is 1, the right side 3/2"),
        ("Prove by induction that 5^n + 3 is divisible by 7.", "for n = 1 it is 8, no multiple of 7"),
        ("Prove by induction that n² + n + 41 is divisible by 43.", "for n = 2 it is 47, no multiple of 43"),
        ("Prove by contradiction that √9 is irrational.", "√9 = 3"),
        ("Prove by contradiction that if n² is a multiple of 4 then n is a multiple of 4.",
         "n = 2: n² = 4 is a multiple of 4, and 2 is not"),
        ("Prove by contradiction that there are no integers x and y for which 3x + 5y = 1.",
         "x = 2 and y = −1 are integers that satisfy it"),
    ],
)  # fmt: skip
def test_claims_that_are_false_are_refuted(text: str, why: str) -> None:
    (answer,) = texts(told(text))
    assert answer.startswith("false: ")
    if "x and y" not in text:
        assert answer == f"false: {why}"
    else:
        x, y = (
            int(part.split("= ")[1].replace("−", "-")) for part in answer.split(": ")[1].split(" are")[0].split(" and ")
        )
        assert 3 * x + 5 * y == 1


@pytest.mark.parametrize(
    "text",
    [
        "Prove by induction that 1 + 2 + 4 + ... + n = n(n + 1)/2.",
        "Prove by induction that 1 + 2 + 3 + ... + n = k(k + 1)/2.",
        "Prove by contradiction that there is no smallest positive integer.",
        "Prove by contradiction that there are no positive integers x and y for which 3x + 5y = 1.",
        "Prove by contradiction that the sail is red.",
    ],
)
def test_what_is_not_understood_is_not_read(text: str) -> None:
    assert reading_of(text.rstrip(".")).unread


def test_the_lines_of_an_induction() -> None:
    assert statements(told(PROVED[0])) == [
        "n = 1: left side = 1, right side = [1 × (1 + 1)]/2 = 1",
        "assume it for n = k: 1 + 2 + 3 + … + k = k(k + 1)/2",
        "n = k + 1: 1 + 2 + 3 + … + (k + 1) = k(k + 1)/2 + (k + 1)",
        "= k²/2 + 3k/2 + 1",
        "= (k + 1)(k + 2)/2, as this is k²/2 + 3k/2 + 1 too",
        "true for n = 1, and true for n = k + 1 where it is true for n = k: by induction it is true for every integer "
        "n ≥ 1",
    ]


def test_a_wrong_step_of_an_induction_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(induction, "after", lambda name: read_expression(f"{name} + 2"))
    assert isinstance(told(PROVED[0]), NotRead)


def test_a_wrong_multiple_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(inductive_multiples, "_step", lambda *ends: (2, (Term(Fraction(6)),)))
    outcome = told(PROVED[6])
    assert isinstance(outcome, NotRead), outcome


SERIES = (
    ("Expand (1 + x)^(−2) up to the term in x³", "1 − 2x + 3x² − 4x³"),
    ("Expand √(4 + x) in ascending powers of x up to and including the term in x²", "2 + x/4 − x²/64"),
    ("Find the first three terms in the expansion of (8 − 3x)^(1/3) in ascending powers of x", "2 − x/4 − x²/32"),
    ("Expand (1 + 2x)/(1 − x)² in ascending powers of x up to and including the term in x²", "1 + 4x + 7x²"),
    ("Find the binomial expansion of (1 + 3x)^(1/2) up to and including the term in x³, stating the range of values of "
     "x for which it is valid", "1 + 3x/2 − 9x²/8 + 27x³/16, |x| < 1/3"),
)  # fmt: skip
"""The series of √(1 + x) and 1/(1 + x)²: Newton's letter to Oldenburg of June 1676 has the rule, from memory."""


@pytest.mark.parametrize(("ask", "answer"), SERIES)
def test_first_terms_of_other_exponents(ask: str, answer: str) -> None:
    assert texts(derived(ask)[1]) == [answer]


@pytest.mark.parametrize(
    "ask",
    [
        "Find the first three terms, in ascending powers of x, of the expansion of (2 + x)^(1/2)",
        "Expand (x − 1)^(−2) up to the term in x³",
        "Expand (1 + x)⁵ up to the term in x³, stating the values of x for which the expansion is valid",
    ],
)
def test_series_that_are_refused(ask: str) -> None:
    assert not isinstance(derived(ask)[1], Derived)


def test_a_wrong_coefficient_of_a_series_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    right = binomial_series._coefficient
    monkeypatch.setattr(
        binomial_series,
        "_coefficient",
        lambda power, place: right(power, place) + (Fraction(1, 500) if place == 3 else 0),
    )
    assert isinstance(derived(SERIES[0][0])[1], NotRead)


@pytest.mark.parametrize(
    ("stated", "agreement"),
    [
        ("1 + 6x + 24x² + ..., −1/2 < x < 1/2", Agreement.AGREES),
        ("1 + 6x + 24x², |2x| < 1", Agreement.AGREES),
        ("1 + 6x + 24x² for |x| < 0.5", Agreement.AGREES),
        ("1 + 6x + 24x², |x| < 2", Agreement.DIFFERS),
        ("1 + 6x − 24x², |x| < 1/2", Agreement.DIFFERS),
        ("1 + 6x + 24x²", Agreement.CANNOT_TELL),
    ],
)
def test_a_key_has_the_terms_and_the_range(stated: str, agreement: Agreement) -> None:
    value = read_expression("1 + 6x + 24x^2")
    answer = Answer("1 + 6x + 24x², |x| < 1/2", value, "x", kind="expansion and range")
    assert compare_with_range(stated, (answer,), Ask(Find(()), "")).agreement is agreement
