"""Plain number questions: the small cases, published answers, and derivations that are broken on purpose."""

import json
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from paperaudit.maths import arithmetic
from paperaudit.maths.equality import compare
from paperaudit.maths.parse import read_expression
from paperaudit.model.ask import Accuracy, Ask, Find, Transform
from paperaudit.model.derivation import Agreement, Derived, NotRead, StepKind
from paperaudit.model.expression import (
    Expression,
    Measured,
    Negative,
    Number,
    NumberForm,
    Of,
    Power,
    Product,
    Quotient,
    Root,
    Sum,
)
from paperaudit.strands import calculating, finishing
from paperaudit.strands.number import NumberStrand
from paperaudit.strands.registry import derive
from tests.strands.asked import FIXTURES, cases, check, derived, reading_by_hand, reading_of, statements, texts

CASES = cases("number")


@pytest.mark.parametrize("case", CASES, ids=[case["title"] for case in CASES])
def test_small_cases(case: dict[str, Any]) -> None:
    check(case, "number")


# Prealgebra 2e and Elementary Algebra 2e, OpenStax, CC BY 4.0 (fixtures/published/README.md): item, the calculation
# that its symbolic givens amount to, and which of its answers it gives.
OPENSTAX = [
    ("osx-067", "calculate 338 ÷ 52", 0),
    ("osx-068", "calculate 235 ÷ 65, correct to 1 decimal place", 0),
    ("osx-076", "write 37.5% as a fraction", 0),
    ("osx-077", "write 5/8 as a percentage", 0),
    ("osx-077", "write 11/4 as a percentage", 1),
    ("osx-077", "write 3 2/5 as a percentage", 2),
    ("osx-081", "16% of $74.25", 0),
    ("osx-082", "write (17.36 − 15.50)/15.50 as a percentage", 0),
    ("osx-083", "write (38 − 22)/22 as a percentage, correct to 1 decimal place", 0),
    ("osx-084", "write (203400 − 192300)/203400 as a percentage, correct to 1 decimal place", 0),
    ("osx-085", "6.25% of $724", 0),
    ("osx-085", "calculate $724 + 6.25% of $724", 1),
    ("osx-086", "write 1140/28500 as a percentage", 0),
    ("osx-087", "40% of $29", 0),
    ("osx-087", "calculate $29 − 40% of $29", 1),
    ("osx-088", "calculate $560 − $375.20", 0),
    ("osx-088", "write 184.80/560 as a percentage", 1),
    ("osx-089", "calculate $850 − $480", 0),
    ("osx-089", "write 370/850 as a percentage, correct to 1 decimal place", 1),
    ("osx-090", "35% of $949.95, to the nearest cent", 0),
    ("osx-091", "50% of $1200", 0),
    ("osx-091", "calculate $1200 + 50% of $1200", 1),
    ("osx-095", "calculate 2.7% of $8200 × 1.5", 0),
    ("osx-101", "write 27/12 in its lowest terms", 0),
    ("osx-102", "calculate 1 2/3 ÷ 2 5/6", 0),
    ("osx-103", "calculate 43 ÷ 16, correct to 2 decimal places", 0),
    ("osx-104", "calculate 3.99 ÷ 18, correct to 3 decimal places", 0),
    ("osx-104", "calculate 3.29 ÷ 14, correct to 3 decimal places", 1),
    ("osx-118", "calculate 25 − [10 − (3 − 12)]", 0),
    ("osx-119", "calculate (−3)² − 24/(8 − 2)", 0),
    ("osx-120", "calculate 12(−9)/(−3)³", 0),
    ("osx-121", "calculate (−5/6)/(−2/3)", 0),
    ("osx-122", "calculate 7/12 + 11/15", 0),
    ("osx-123", "calculate (1/3 + 1/2)/(3/4 − 1/3)", 0),
    ("osx-124", "calculate 5.9 × 7.12", 0),
    ("osx-125", "calculate 5.2/2.5", 0),
    ("osx-126", "calculate 8 1/2 − 3 4/5", 0),
    ("osx-128", "calculate −19 + 26", 0),
    ("osx-129", "calculate 3 × $0.75 + 6 × $0.62", 0),
    ("osx-130", "calculate √11, correct to 2 decimal places", 0),
]
PUBLISHED = {
    item["id"]: item
    for item in json.loads((FIXTURES / "published" / "openstax_worked_examples.json").read_text("utf-8"))["items"]
}


@pytest.mark.parametrize(("item", "ask", "place"), OPENSTAX, ids=[f"{item} {ask}" for item, ask, _ in OPENSTAX])
def test_answers_that_openstax_prints(item: str, ask: str, place: int) -> None:
    name, outcome = derived(ask)
    assert name == "number"
    assert isinstance(outcome, Derived)
    value = outcome.answers[0].value
    assert value is not None
    amount = calculating.rational(value)
    printed = Fraction(PUBLISHED[item]["values"][place])
    percentage = texts(outcome)[0].endswith("%")
    assert amount * (100 if percentage else 1) == printed


def test_the_published_answers_themselves_agree() -> None:
    outcome = derived("calculate 8 1/2 − 3 4/5")[1]
    assert isinstance(outcome, Derived)
    ask = reading_of("calculate 8 1/2 − 3 4/5").ask
    assert ask is not None
    assert compare(PUBLISHED["osx-126"]["answer"], outcome.answers, ask).agreement is Agreement.AGREES


def test_steps_rest_on_the_line_before_and_name_their_skill() -> None:
    outcome = derived("calculate 25 − [10 − (3 − 12)]")[1]
    assert isinstance(outcome, Derived)
    steps = outcome.derivations[0].steps
    assert [step.uses for step in steps[1:]] == [(step.statement,) for step in steps[:-1]]
    assert {step.kind for step in steps} == {StepKind.CALCULATION}
    assert {step.skill for step in steps} == {"order of operations"}
    assert [step.value for step in steps] == ["25 − [10 − (−9)]", "25 − 19", "6"]


@pytest.mark.parametrize(
    ("ask", "skill"),
    [
        ("65% of 240 litres", "percentage of a quantity"),
        ("calculate 2/3 − 1/4", "fractions"),
        ("calculate 5.9 × 7.12", "decimals"),
        ("calculate −19 + 26", "directed numbers"),
        ("calculate √49", "powers and roots"),
        ("calculate 2 + 3 × 4", "order of operations"),
        ("round 2.446 to 1 decimal place", "rounding"),
        ("write 5/8 as a percentage", "percentages"),
        ("write 2.5 km in metres", "units"),
        ("calculate 1.5 m + 20 cm", "units"),
    ],
)
def test_skills(ask: str, skill: str) -> None:
    outcome = derived(ask)[1]
    assert isinstance(outcome, Derived)
    assert {step.skill for step in outcome.derivations[0].steps} == {skill}


def test_several_calculations_in_one_ask() -> None:
    both = Find((read_expression("1 + 1"), read_expression("√9")))
    name, outcome = derive(reading_by_hand(Ask(both, "1 + 1 and √9")))
    assert (name, texts(outcome)) == ("number", ["2", "3"])


def test_a_context_without_a_mathematical_ask_is_left_with_its_reason() -> None:
    reading = reading_of("65% of 240 litres")
    without = type(reading)(reading.question, reading.part, (), None)
    assert derive(without) == ("", NotRead("no mathematical ask: nothing says what is to be found"))


def test_an_ask_that_no_strand_takes_says_what_was_read() -> None:
    ask = Ask(Transform("evaluate", read_expression("2x + 1")), "evaluate 2x + 1")
    name, outcome = derive(reading_by_hand(ask))
    assert name == "" and isinstance(outcome, NotRead)
    assert "evaluate 2x + 1" in outcome.why


def wrong_once(expression: Expression) -> Expression:
    """A slip of one in the last figure of a number."""
    if not isinstance(expression, Number):
        return expression
    return Number(expression.value + 1, expression.form, expression.places)


@pytest.mark.parametrize(
    "ask", ["calculate 2 + 3 × 4", "65% of 240 litres", "calculate 7/12 + 11/15", "calculate 8 1/2 − 3 4/5"]
)
@pytest.mark.parametrize("line", [1, -1])
def test_a_broken_line_is_caught_by_the_second_evaluation(monkeypatch: pytest.MonkeyPatch, ask: str, line: int) -> None:
    right = arithmetic.worked_lines

    def broken(expression: Expression, unit: str = "") -> tuple[Expression, ...]:
        lines = list(right(expression, unit))
        lines[line] = read_expression("1234567")
        return tuple(lines)

    monkeypatch.setattr(calculating, "worked_lines", broken)
    outcome = derived(ask)[1]
    assert isinstance(outcome, NotRead)
    assert "disagree" in outcome.why


def test_a_broken_rule_of_arithmetic_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    right = arithmetic._Calculation._value_of
    monkeypatch.setattr(arithmetic._Calculation, "_value_of", lambda self, part: wrong_once(right(self, part)))
    outcome = derived("calculate 2 + 3 × 4")[1]
    assert isinstance(outcome, NotRead)
    assert "disagree" in outcome.why


def test_a_broken_rounding_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    right = finishing.round_to
    monkeypatch.setattr(finishing, "round_to", lambda *arguments: wrong_once(right(*arguments)))
    outcome = derived("round 2.446 to 1 decimal place")[1]
    assert isinstance(outcome, NotRead)
    assert "two ways" in outcome.why


def test_a_broken_form_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    from paperaudit.strands import number

    monkeypatch.setattr(number, "form_texts", lambda *_: ((), Number(Fraction(3, 7))))
    outcome = derived("write 0.375 as a fraction")[1]
    assert isinstance(outcome, NotRead)
    assert "disagree" in outcome.why


def test_the_strand_leaves_letters_and_figures_to_others() -> None:
    strand = NumberStrand()
    assert not strand.recognises(reading_of("solve 2x = 6"))
    assert not strand.recognises(reading_by_hand(Ask(Find((read_expression("∠ABC"),)), "∠ABC")))
    assert strand.recognises(reading_of("2 + 3 × 4"))
    assert statements(derived("2 + 3 × 4")[1])[-1] == "= 14"


def measured(number: Number) -> st.SearchStrategy[Expression]:
    units = [""] if number.form is NumberForm.PERCENT else ["", "", "cm", "kg", "$"]
    return st.sampled_from(units).map(lambda unit: Measured(number, unit) if unit else number)


numbers = st.one_of(
    st.integers(0, 20).map(lambda value: Number(Fraction(value))),
    st.integers(1, 999).map(lambda value: Number(Fraction(value, 100), NumberForm.DECIMAL, 2)),
    st.integers(1, 150).map(lambda value: Number(Fraction(value, 100), NumberForm.PERCENT)),
    st.integers(1, 30).map(lambda value: Number(Fraction(2 * value + 1, 4), NumberForm.FRACTION)),
    st.integers(1, 9).map(lambda value: Number(value + Fraction(1, 3), NumberForm.MIXED)),
)


def calculations(inner: st.SearchStrategy[Expression]) -> st.SearchStrategy[Expression]:
    term = st.tuples(st.booleans(), inner).map(lambda pair: Negative(pair[1]) if pair[0] else pair[1])
    return st.one_of(
        st.lists(term, min_size=2, max_size=3).map(lambda terms: Sum(tuple(terms))),
        st.lists(term, min_size=2, max_size=3).map(lambda factors: Product(tuple(factors), "×")),
        st.tuples(term, inner, st.sampled_from("/÷")).map(lambda parts: Quotient(*parts)),
        st.tuples(inner, st.integers(2, 3)).map(lambda parts: Power(parts[0], Number(Fraction(parts[1])))),
        st.tuples(numbers, inner).map(lambda parts: Of(*parts)),
        st.integers(2, 50).map(lambda value: Root(Number(Fraction(value)))),
    )


accuracies = st.sampled_from(
    [None, Accuracy("decimal places", "2"), Accuracy("significant figures", "3"), Accuracy("nearest", "10")]
)


@settings(max_examples=200, deadline=None)
@given(st.recursive(numbers.flatmap(measured), calculations, max_leaves=5), accuracies)
def test_whatever_is_derived_agrees_with_itself_when_it_is_stated(
    expression: Expression, accuracy: Accuracy | None
) -> None:
    ask = Ask(Transform("evaluate", expression), "", accuracy)
    _, outcome = derive(reading_by_hand(ask))
    if isinstance(outcome, NotRead):
        assert "disagree" not in outcome.why
        return
    stated = texts(outcome)[0]
    comparison = compare(stated, outcome.answers, ask) if isinstance(outcome, Derived) else None
    assert comparison is not None
    # A mixed number or a surd of money is written and not read: $15 2/3.
    assert comparison.agreement is Agreement.AGREES or ("was not read: " in comparison.why and "$" in stated)


@pytest.mark.parametrize(
    ("sign", "lines"),
    [
        (1, ["80 + 15% of 80 = 80 + 15/100 × 80", "= 80 + 12", "= 92"]),
        (-1, ["80 − 15% of 80 = 80 − 15/100 × 80", "= 80 − 12", "= 68"]),
    ],
)
def test_an_increase_or_decrease_by_a_share_of_the_whole(sign: int, lines: list[str]) -> None:
    whole = read_expression("80")
    share = Of(read_expression("15%"), whole)
    changed = Sum((whole, share if sign > 0 else Negative(share)))
    _, outcome = derive(reading_by_hand(Ask(Find((changed,)), "increase or decrease 80 by 15%")))
    assert isinstance(outcome, Derived)
    assert statements(outcome) == lines
    assert outcome.derivations[0].steps[0].skill == "percentage of a quantity"


@pytest.mark.parametrize(
    ("ask", "answer"),
    [
        ("Round 2290 to the nearest one hundred.", "2300"),
        ("Round −17 590 000 to the nearest million.", "−18000000"),
        ("Round 12 345 to the nearest ten thousand.", "10000"),
        ("Round 0.00093651674 to 5 dps.", "0.00094"),
        ("What is 0.020823 rounded to three decimal places?", "0.021"),
        ("Round 5.5 to zero decimal places.", "6"),
    ],
)
def test_steps_of_rounding_in_words(ask: str, answer: str) -> None:
    assert texts(derived(ask)[1]) == [answer]


def test_a_surd_over_a_number_is_worked_out() -> None:
    ask = "Simplify 3√18 × √34/(4√12 ÷ √6)"
    outcome = derived(ask)[1]
    asked = reading_of(ask).ask
    assert isinstance(outcome, Derived) and asked is not None
    assert compare("9*sqrt(17)/(2*sqrt(2))*sqrt(2)/2*2", outcome.answers, asked).agreement is Agreement.DIFFERS
    assert compare(texts(outcome)[0].split(" ≈")[0], outcome.answers, asked).agreement is Agreement.AGREES
