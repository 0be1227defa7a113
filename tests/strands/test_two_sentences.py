"""Asks of algebra and of curves that papers put into two sentences, and the roots of an equation by their letters."""

import pytest

from paperaudit.model.derivation import Derived, NotRead
from paperaudit.strands.algebra import symmetric
from tests.strands.asked import statements, texts
from tests.strands.test_chained import told


@pytest.mark.parametrize(
    ("text", "answers"),
    [
        ("The function f is such that f(x) = 4x − 1. Find f⁻¹(x).", ["f⁻¹(x) = (x + 1)/4"]),
        ("f(x) = 2x³ − 5x² − x + 6. Factorise f(x) completely.", ["(x + 1)(x − 2)(2x − 3)"]),
        ("The equation x² + px + 16 = 0 has equal roots. Find the possible values of p.", ["p = −8", "p = 8"]),
        ("(x − 2) is a factor of x³ + ax² − 4x + 12. Find the value of a.", ["a = −3"]),
        ("When x³ + ax + 3 is divided by x − 2 the remainder is 7. Find a.", ["a = −2"]),
        ("The expression 2x² − 12x + 7 can be written as a(x + p)² + q. Find the values of a, p and q.",
         ["a = 2", "p = −3", "q = −11"]),
        ("x² − 8x + 3 ≡ (x − a)² + b. Find the values of a and b.", ["a = 4", "b = −13"]),
        ("A curve has equation y = x³ − 3x² − 9x + 5. Find the coordinates of the stationary points.",
         ["(−1, 10) and (3, −22)"]),
        ("The curve C has equation y = x³ − 3x² − 9x + 5. Find the stationary points of C.", ["(−1, 10) and (3, −22)"]),
        ("Given that y = 3x² + 4x, find the value of dy/dx when x = 2.", ["16"]),
        ("Evaluate ∫ from 1 to 3 of (2x + 1) dx.", ["10"]),
        ("Find the first four terms, in ascending powers of x, of the expansion of (1 − 2x)^(−3). State the values of "
         "x for which the expansion is valid.", ["1 + 6x + 24x² + 80x³, |x| < 1/2"]),
        ("The roots of x² − 6x + 4 = 0 are α and β. Find α + β and αβ.", ["6", "4"]),
        ("The roots of the equation 2x² − 3x − 4 = 0 are α and β. Find 1/α + 1/β.", ["−3/4"]),
        ("The equation x² + 4x + 9 = 0 has roots α and β. Find the value of α³ + β³.", ["44"]),
        ("The equation 3x² − x + 2 = 0 has roots p and q. Find p/q + q/p.", ["−11/6"]),
        ("Given x + y = 7 and xy = 12, find x² + y².", ["25"]),
    ],
)  # fmt: skip
def test_two_sentences_are_one_ask(text: str, answers: list[str]) -> None:
    assert texts(told(text)) == answers


@pytest.mark.parametrize(
    "text",
    [
        "Given that (x + 3)(ax + b) = 2x² + 5x − 3, find a and b.",
        "The equation x² − 5x + 3 = 0 has roots α and β. Find α − β.",
        "The equation x³ − 5x + 3 = 0 has roots α and β. Find α + β.",
        "Given that x + y = 5 and x²y = 3, find x² + y².",
        "The equation kx² + 4x + (5 − k) = 0 has two distinct real roots. Find the range of values of k.",
    ],
)
def test_what_is_doubtful_is_refused(text: str) -> None:
    assert not isinstance(told(text), Derived)


def test_the_lines_go_by_sum_and_product() -> None:
    outcome = told("The quadratic equation x² − 5x + 3 = 0 has roots α and β. Find the value of α² + β².")
    assert statements(outcome) == [
        "x² − 5x + 3 = 0",
        "α + β = −b/a = 5",
        "αβ = c/a = 3",
        "α² + β² = (α + β)² − 2(αβ)",
        "= 5² − 2 × 3",
        "= 19",
    ]


def test_a_wrong_identity_of_roots_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    right = symmetric._in_sum_and_product
    monkeypatch.setattr(symmetric, "_in_sum_and_product", lambda *both: right(*both)[:1])
    text = "The quadratic equation x² − 5x + 3 = 0 has roots α and β. Find the value of α² + β²."
    assert isinstance(told(text), NotRead)
