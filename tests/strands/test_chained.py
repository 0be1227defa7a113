"""Letters and functions that the givens settle one after the other, put into what is asked for."""

from fractions import Fraction

import pytest

from paperaudit.errors import PaperauditError
from paperaudit.maths.parse import read_expression
from paperaudit.model.derivation import Derived, NotRead, Outcome
from paperaudit.model.expression import Number
from paperaudit.model.paper import Line, Part, Question
from paperaudit.strands import functions_given, settling
from paperaudit.strands.finishing import ChecksDisagree
from paperaudit.strands.functions_checked import confirm_applied, value_of_call
from paperaudit.strands.functions_given import Formula
from paperaudit.strands.registry import derive
from paperaudit.wording.reading import read
from tests.strands.asked import statements, texts


def told(text: str) -> Outcome:
    """What becomes of a text that holds everything."""
    part = Part("1", "", Line(text))
    reading = read(Question("1", (part,)), part)
    assert not reading.unread, reading.unread
    return derive(reading)[1]


@pytest.mark.parametrize(
    ("text", "answers"),
    [
        ("Let f(x) = 2x + 3 and g(x) = x². Find 3f(2) − g(4).", ["5"]),
        ("Let u(x) = 3x − 1. Let b(h) = h² + 2. Determine 3u(j) + 2b(j).", ["2j² + 9j + 1"]),
        ("Let m = 7 − 5. Let f(x) = x² − m. Factorise f(2x).", ["2(2x² − 1)"]),
        ("Let f(x) = x² + 3x. Simplify f(x + 1) − f(x).", ["2x + 4"]),
        ("Given that f(x) = 3x + 2 and f(k) = 11, find k.", ["k = 3"]),
        ("Let f(x) = x² − 4x. Let f(k) = 5. Find k.", ["k = −1", "k = 5"]),
        ("f(x) = ax + b. f(2) = 7 and f(5) = 16. Find a and b.", ["a = 3", "b = 1"]),
        ("The function f is defined by f(x) = 3x − 5. Solve f(x) = f(2x) + 4.", ["x = −4/3"]),
        ("f(x) = 2x − 1 and g(x) = x + 4. Solve f(x) = 3g(x).", ["x = −13"]),
        ("Let s(t) be the second derivative of t⁴ − 6t³. Solve s(j) = 0.", ["j = 0", "j = 3"]),
        ("Let k = 2 + 1. Find the second derivative of 2x⁴ + 5x^k with respect to x.", ["24x² + 30x"]),
        ("Let c = 4 × 2. What is v(c), where v(j) = 2j − 1?", ["15"]),
        ("Let h(z) = z + 28. Let m be h(−7). Let n = m/7. Solve x² = n + 1.", ["x = −2", "x = 2"]),
        ("f(x) = 3x + 2 and g(x) = 1/(x + 1). Find f(2) × g(3).", ["2"]),
        ("Find a if f(a) = 2a, where f(x) = x² − 3.", ["a = −1", "a = 3"]),
        ("If f(x) = 2x + 1 and f(a) = a + 5, find a.", ["a = 4"]),
        ("Let g(x) = 2x − 5. For what value of x is g(x) = 9?", ["x = 7"]),
        ("Solve f(x) + g(x) = 0 where f(x) = x² − 1 and g(x) = 2x − 2.", ["x = −3", "x = 1"]),
        ("Solve x + a = 5 for x where a = 2.", ["x = 3"]),
        ("Given f(x) = 2x + 3 and g(x) = x², show that f(g(x)) = 2x² + 3.", ["proved"]),
    ],
)
def test_what_is_asked_of_functions_and_letters_that_are_given(text: str, answers: list[str]) -> None:
    assert texts(told(text)) == answers


def test_the_lines_are_those_of_a_pupil() -> None:
    outcome = told("Let s(t) be the second derivative of t⁴ − 6t³. Let k = 5 − 3. Find 3s(k) + k.")
    assert statements(outcome) == [
        "k = 2",
        "t⁴ − 6t³",
        "first derivative = 4t³ − 18t²",
        "s(t) = 12t² − 36t",
        "3s(k) + k = 3 × (12 × 2² − 36 × 2) + 2",
        "3 × (12 × 2² − 36 × 2) + 2 = 3 × (12 × 4 − 36 × 2) + 2",
        "= 3 × (48 − 72) + 2",
        "= 3 × (−24) + 2",
        "= −72 + 2",
        "= −70",
    ]


def test_every_given_that_was_put_to_use_is_named() -> None:
    outcome = told("Let f(x) = 2x + 3. Let g(x) = x². Let h(x) = 4x. Find 3f(2) − g(4).")
    assert isinstance(outcome, Derived)
    assert outcome.derivations[0].givens_used == ("Let f(x) = 2x + 3.", "Let g(x) = x².")


@pytest.mark.parametrize(
    "text",
    [
        "Let f(x) = 2x + 3. Let f(x) = x². Find 3f(2) + 1.",
        "Let f(x) = 2x + 3. Find 3f² + 1.",
        "Let f(x) = 2x + k. Let k + m = 4. Find 3f(2) + 1.",
        "Let f(x) = g(x) + 1. Find 3f(2) + 1.",
        "Let f(x) = g(x) + 1. Let g(x) = f(x) − 1. Find 3f(2) + 1.",
        "Let f(x) = 2x. Let a + b = 3, 2a + 2b = 7. Find 3f(a) + 1.",
    ],
)
def test_what_is_left_open_is_not_derived(text: str) -> None:
    assert not isinstance(told(text), Derived)


def test_a_formula_that_is_put_in_wrongly_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    text = "Let f(x) = 2x + 3. Find 3f(2) + 1."
    assert texts(told(text)) == ["22"]
    monkeypatch.setattr(functions_given, "substituted", lambda *arguments: Number(Fraction(77)))
    assert isinstance(outcome := told(text), NotRead) and "put in for" in outcome.why


def test_a_wrong_derivative_of_a_given_function_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    text = "Let f(t) be the second derivative of t⁴. Find 3f(2) + 1."
    assert texts(told(text)) == ["145"]
    monkeypatch.setattr(settling, "derivative_of", lambda formula, letter: read_expression("5t"))
    assert isinstance(told(text), NotRead)


def test_the_second_way_differentiates_by_differences() -> None:
    cube = Formula("x", read_expression("x^3"), 2)
    functions = {"f": cube, "g": Formula("x", read_expression("2fx"), 1)}
    assert abs(value_of_call("f", Fraction(5), functions, {}) - 30) < Fraction(1, 10**6)
    assert abs(value_of_call("g", Fraction(5), functions, {}) - 12) < Fraction(1, 10**6)
    with pytest.raises(ChecksDisagree):
        confirm_applied(read_expression("fx"), read_expression("6x + 1"), functions, {})


def test_functions_of_functions_without_end_are_refused() -> None:
    functions = {"f": Formula("x", read_expression("fx"))}
    with pytest.raises(PaperauditError):
        value_of_call("f", Fraction(1), functions, {})
    with pytest.raises(functions_given.NotApplied):
        functions_given.applied(read_expression("fx"), functions)
