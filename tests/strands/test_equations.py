"""Equations and expressions in letters: the small cases, published answers, and derivations broken on purpose."""

import json
from fractions import Fraction
from typing import Any

import pytest

from paperaudit.maths.algebra.terms import Term
from paperaudit.maths.equality import compare
from paperaudit.maths.parse import read_expression, read_relation
from paperaudit.maths.rewriting import rewritten_lines
from paperaudit.maths.simultaneous import SimultaneousSolution, solve_simultaneous
from paperaudit.maths.solving import LinearSolution, solve_linear
from paperaudit.model.ask import Ask, Find, Solve
from paperaudit.model.derivation import Agreement, Derived, Impossible, NotRead, StepKind
from paperaudit.model.expression import Letter, Number, Relation, Sum
from paperaudit.strands import equations, functions_given, solving_steps
from paperaudit.strands.calculating import rational
from paperaudit.strands.finishing import ChecksDisagree
from paperaudit.strands.registry import derive
from tests.strands.asked import FIXTURES, cases, check, derived, reading_by_hand, reading_of, statements, texts

CASES = cases("equations")


@pytest.mark.parametrize("case", CASES, ids=[case["title"] for case in CASES])
def test_small_cases(case: dict[str, Any]) -> None:
    check(case, "equations")


# Prealgebra 2e and Elementary Algebra 2e, OpenStax, CC BY 4.0 (fixtures/published/README.md).
PUBLISHED = json.loads((FIXTURES / "published" / "openstax_worked_examples.json").read_text("utf-8"))
ITEMS = {item["id"]: item for item in PUBLISHED["items"]}
LINEAR = [f"osx-{number}" for number in range(131, 143)]
FORMED = {  # what each asks for, in the order of its values
    "osx-004": "A B",
    "osx-005": "A B",
    "osx-006": "A B",
    "osx-007": "A B",
    "osx-143": "n",
    "osx-144": "a b",
    "osx-145": "n",
    "osx-146": "n",
    "osx-147": "h",
    "osx-148": "n q",
    "osx-149": "c a",
    "osx-164": "a b",
    "osx-165": "s w",
    "osx-166": "n d",
    "osx-167": "W L",
}
SYSTEMS = [f"osx-{number}" for number in range(157, 164)]
WORDS = {
    "osx-137": "infinitely many solutions",
    "osx-138": "no solution",
    "osx-162": "infinitely many solutions",
    "osx-163": "no solution",
}


def relations(item: dict[str, Any]) -> tuple[Relation, ...]:
    return tuple(read_relation(text) for text in item["givens"])


def solve(item: dict[str, Any]) -> tuple[Ask, Derived]:
    ask = Ask(Solve(relations(item)), item["asked"])
    name, outcome = derive(reading_by_hand(ask))
    assert name == "equations" and isinstance(outcome, Derived), outcome
    return ask, outcome


def values(outcome: Derived) -> list[Fraction]:
    found = []
    for answer in outcome.answers:
        value = answer.value
        assert value is not None
        found.append(rational(value))
    return found


@pytest.mark.parametrize("item", [*LINEAR, *SYSTEMS])
def test_equations_that_openstax_solves(item: str) -> None:
    ask, outcome = solve(ITEMS[item])
    if item in WORDS:
        assert texts(outcome) == [WORDS[item]]
    else:
        names = [answer.letter for answer in outcome.answers]
        printed = dict(zip(sorted(names), map(Fraction, ITEMS[item]["values"]), strict=True))
        assert dict(zip(names, values(outcome), strict=True)) == printed
    assert compare(ITEMS[item]["answer"], outcome.answers, ask).agreement is Agreement.AGREES


@pytest.mark.parametrize("item", FORMED)
def test_letters_that_openstax_finds_from_equations(item: str) -> None:
    asked = tuple(map(Letter, FORMED[item].split()))
    givens = ITEMS[item]["givens"]
    name, outcome = derive(reading_by_hand(Ask(Find(asked), FORMED[item]), givens))
    assert name == "equations" and isinstance(outcome, Derived), outcome
    printed = list(map(Fraction, ITEMS[item]["values"]))[: len(asked)]
    assert values(outcome) == printed
    assert outcome.derivations[0].givens_used == tuple(givens)


def test_the_wrong_value_that_a_book_prints_is_contradicted() -> None:
    doubtful = {item["id"]: item for item in PUBLISHED["questionable"]}
    ask, outcome = solve(doubtful["osx-q01"])
    assert compare(doubtful["osx-q01"]["printed"], outcome.answers, ask).agreement is Agreement.DIFFERS
    assert compare(doubtful["osx-q01"]["answer"], outcome.answers, ask).agreement is Agreement.AGREES
    # osx-q02 (a): x − 2y = 5 with x = −3; the book prints 4 with the wrong sign.
    find = Ask(Find((Letter("y"),)), "y")
    found = derive(reading_by_hand(find, ["x − 2y = 5", "x = −3"]))[1]
    assert isinstance(found, Derived) and texts(found) == ["y = −4"]
    assert compare("4", found.answers, find).agreement is Agreement.DIFFERS


def test_steps_name_their_kind_their_skill_and_what_they_rest_on() -> None:
    outcome = derived("solve 3(x − 4) = 2x + 5")[1]
    assert isinstance(outcome, Derived)
    given, expanded, collected, solved = outcome.derivations[0].steps
    assert given.kind is StepKind.GIVEN and not given.skill
    assert (expanded.skill, collected.skill, solved.skill) == (
        "expanding brackets",
        "linear equations",
        "linear equations",
    )
    assert solved.uses == ("x − 12 = 5",) and solved.value == "x = 17"


def test_a_line_of_a_system_rests_on_the_equations_that_it_names() -> None:
    outcome = derived("solve 4x + y = 2 and 3x + 2y = −1")[1]
    assert isinstance(outcome, Derived)
    uses = {step.statement: step.uses for step in outcome.derivations[0].steps}
    assert uses["(3) − (2): 5x = 5"] == ("(3) = 2 × (1): 8x + 2y = 4", "(2): 3x + 2y = −1")
    assert uses["x = 1 in (1): 4(1) + y = 2"] == ("x = 1", "(1): 4x + y = 2")


def test_clashing_givens_are_as_few_as_can_be() -> None:
    givens = ["a + b = 10", "a − b = 4", "c = 3", "2a + b = 20"]
    outcome = derived("a", givens)[1]
    assert isinstance(outcome, Impossible)
    assert outcome.clash == ("a + b = 10", "a − b = 4", "2a + b = 20")
    for left_out in outcome.clash:
        rest = [text for text in givens if text != left_out]
        assert isinstance(derived("a", rest)[1], Derived)


def shifted_linear(relation: Relation, unknown: Any, unit: str = "") -> LinearSolution:
    """The solution of another equation in place of the one asked for."""
    moved = Relation(Sum((relation.left, Number(Fraction(1)))), "=", relation.right)
    return solve_linear(moved, unknown, unit)


def broken_line(relation: Relation, unknown: Any, unit: str = "") -> LinearSolution:
    """The right solution with a wrong line on the way."""
    right = solve_linear(relation, unknown, unit)
    return LinearSolution((*right.lines[:1], "3x − 4 = 2x + 5", *right.lines[2:]), right.moves, right.value)


def no_solution(relation: Relation, unknown: Any, unit: str = "") -> LinearSolution:
    return LinearSolution(("1 = 3",), ("letters",), "none")


@pytest.mark.parametrize("slip", [shifted_linear, broken_line, no_solution])
def test_a_broken_solution_is_caught_by_putting_it_back(monkeypatch: pytest.MonkeyPatch, slip: Any) -> None:
    monkeypatch.setattr(solving_steps, "solve_linear", slip)
    outcome = derived("solve 3(x − 4) = 2x + 5")[1]
    assert isinstance(outcome, NotRead)
    assert "two ways of working it out disagree" in outcome.why


def test_a_broken_system_is_caught_by_putting_it_back(monkeypatch: pytest.MonkeyPatch) -> None:
    def swapped(*arguments: Any) -> SimultaneousSolution:
        right = solve_simultaneous(*arguments)
        assert not isinstance(right.values, str)
        (one, first), (two, second) = right.values
        return SimultaneousSolution(right.lines, right.moves, ((one, second), (two, first)))

    monkeypatch.setattr(solving_steps, "solve_simultaneous", swapped)
    for ask, givens in (("solve 2x + y = 11 and x − y = 1", ()), ("x and y", ("2x + y = 11", "x − y = 1"))):
        outcome = derived(ask, givens)[1]
        assert isinstance(outcome, NotRead)
        assert "disagree" in outcome.why


def test_a_solution_that_is_not_the_only_one_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    def one_of_many(*arguments: Any) -> SimultaneousSolution:
        right = solve_simultaneous(*arguments)
        return SimultaneousSolution(right.lines, right.moves, ((Letter("x"), Fraction(4)), (Letter("y"), Fraction(1))))

    monkeypatch.setattr(solving_steps, "solve_simultaneous", one_of_many)
    outcome = derived("solve x + y = 5 and 2x + 2y = 10")[1]
    assert isinstance(outcome, NotRead)


@pytest.mark.parametrize(
    ("ask", "wrong"),
    [("expand 3(x − 4)", "3x − 4"), ("factorise 6x + 9", "3(2x + 9)"), ("simplify 3(x + 2) − 2(x − 1)", "x + 4")],
)
def test_a_broken_rewriting_is_caught_by_evaluating_it(monkeypatch: pytest.MonkeyPatch, ask: str, wrong: str) -> None:
    def broken(*arguments: Any) -> Any:
        return (*rewritten_lines(*arguments)[:-1], read_expression(wrong))

    monkeypatch.setattr(equations, "rewritten_lines", broken)
    outcome = derived(ask)[1]
    assert isinstance(outcome, NotRead)
    assert "disagree" in outcome.why


@pytest.mark.parametrize("ask", ["solve 3(x − 4) = 2x + 5", "solve x − 4y = −4 and −3x + 4y = 0", "simplify 2(x + 1)"])
def test_the_same_question_with_another_letter_or_turned_round(ask: str) -> None:
    first = derived(ask)[1]
    renamed = derived(ask.replace("x", "k"))[1]
    assert [text.replace("k", "x") for text in texts(renamed)] == texts(first)
    if ask.startswith("solve 3"):
        turned = derived("solve 2x + 5 = 3(x − 4)")[1]
        assert texts(turned) == texts(first)


def test_equations_are_left_to_geometry_where_a_figure_is_given() -> None:
    reading = reading_of("x", ["∠ABC = 2x", "x = 20°"])
    assert not equations.EquationsStrand().recognises(reading)
    assert statements(derived("x", ["2x = 40"])[1])[-1] == "x = 20"


@pytest.mark.parametrize(
    ("ask", "givens", "answers"),
    [
        ("solve 2y + z = 10 for z", ["y = 3"], ["z = 4"]),
        ("solve 2y + z = 10", ["y = 3"], ["z = 4"]),
        ("solve 2y + z = 10 for z", ["y = z + 2"], ["z = 2"]),
        ("solve x + y + k = 9 and x − y = k for x and y", ["k = 3"], ["x = 9/2", "y = 3/2"]),
        ("solve 2x + 3 = 7", ["w = 5"], ["x = 2"]),
    ],
)
def test_numbers_of_the_givens_are_put_into_the_equations(ask: str, givens: list[str], answers: list[str]) -> None:
    assert texts(derived(ask, givens)[1]) == answers


def test_a_number_that_is_put_in_is_seen_in_the_working() -> None:
    outcome = derived("solve 2y + z = 10 for z", ["y = 3"])[1]
    assert statements(outcome) == ["2y + z = 10", "2 × 3 + z = 10", "6 + z = 10", "z = 4"]
    assert isinstance(outcome, Derived)
    assert outcome.derivations[0].givens_used == ("y = 3",)
    assert outcome.derivations[0].steps[1].uses == ("2y + z = 10", "y = 3")


def test_a_function_that_is_put_in_wrongly_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    givens = ("k(g) = 42 − 8g", "o = k(5)")
    assert texts(derived("solve r = 1 + o for r", givens)[1]) == ["r = 3"]
    monkeypatch.setattr(functions_given, "substituted", lambda *arguments: Number(Fraction(77)))
    assert not isinstance(derived("solve r = 1 + o for r", givens)[1], Derived)


def test_a_wrong_derivative_is_caught() -> None:
    terms = (Term(Fraction(3), (("g", 2),)),)
    with pytest.raises(ChecksDisagree):
        functions_given._confirm_slopes(terms, terms, "g")
