"""Marks on lines: the published tariffs, the binding rules, and sums that always come out."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paperaudit.marking.allocation import allocate, natural
from paperaudit.marking.carried import carried_lines, established
from paperaudit.marking.convention import conventions, load
from paperaudit.marking.mark import Allocation, Fit
from paperaudit.marking.reasons import theorems
from paperaudit.marking.split import read_split
from paperaudit.marking.tariff import shows_working
from paperaudit.marking.usual import UsualMarks, usual_marks
from paperaudit.model.derivation import Derivation, Reason, Step, StepKind
from tests import sail_loft

STATEMENTS = ("∠ABC = 180° − 112° = 68°", "∠ABC = ∠ACB = 68°", "3x − 12 = 2x + 5", "x = 17", "AB ∥ CD", "= 156 litres")


@st.composite
def derivations(draw: st.DrawFn) -> Derivation:
    steps = draw(
        st.lists(
            st.builds(
                Step,
                statement=st.sampled_from(STATEMENTS),
                kind=st.sampled_from(StepKind),
                reason=st.none() | st.builds(Reason, st.sampled_from(sorted(theorems()))),
                uses=st.lists(st.sampled_from(STATEMENTS), max_size=2).map(tuple),
                value=st.sampled_from(("", "68°", "x = 17")),
            ),
            min_size=1,
            max_size=9,
        )
    )
    return Derivation(tuple(steps), "made up")


def obeys(allocation: Allocation, name: str) -> bool:
    """No reason without a statement or value on its line, and where accuracy cannot stand alone, none without method.

    By statement and reason accuracy may stand alone (South African practice, from memory).
    """
    marks = allocation.marks
    for at, mark in enumerate(marks):
        before = marks[:at]
        if name == "method-accuracy" and mark.kind == "A" and not any(other.kind == "M" for other in before):
            return False
        if mark.kind == "R" and not any(other.step == mark.step and other.kind in "SMAB" for other in before):
            return False
    return all(mark.kind in load(name).kinds for mark in marks)


@given(derivations(), st.booleans(), st.sampled_from(conventions()))
def test_natural_marks_obey_the_binding_rules(derivation: Derivation, reasons: bool, name: str) -> None:
    allocation = natural(derivation, load(name), reasons)
    usual = usual_marks(derivation, load(name), reasons)
    assert obeys(allocation, name)
    assert 1 <= usual.fewest <= usual.low <= usual.high <= usual.most
    assert usual.fewest <= allocation.total() <= usual.most
    assert all(0 <= mark.step < len(derivation.steps) for mark in allocation.marks)


@given(derivations(), st.booleans(), st.integers(0, 20), st.sampled_from(conventions()))
def test_a_part_gets_exactly_its_marks(derivation: Derivation, reasons: bool, marks: int, name: str) -> None:
    part = sail_loft.angle("1", "1", derivation.steps, 68, marks, reasons=reasons)
    scheme = allocate(part, load(name))
    assert scheme.allocation.total() + scheme.unplaced == marks
    assert obeys(scheme.allocation, name)
    assert [mark.step for mark in scheme.allocation.marks] == sorted(mark.step for mark in scheme.allocation.marks)
    assert scheme.unplaced >= 0
    if marks > scheme.usual.most:
        assert scheme.unplaced > 0
    if marks:
        assert scheme.allocation.marks[-1].step == scheme.natural.marks[-1].step, "the answer keeps its mark"


@given(derivations(), st.integers(2, 20))
def test_a_reason_stays_rewarded_where_reasons_are_required(derivation: Derivation, marks: int) -> None:
    part = sail_loft.angle("1", "1", derivation.steps, 68, marks, reasons=True)
    for name in conventions():
        scheme = allocate(part, load(name))
        rewarded = {kind.code for kind in load(name).kinds.values() if kind.rewards_reason}
        # With no mark for statement and reason together, two can't reach an earlier reason and the answer.
        at_answer = any(mark.kind in rewarded for mark in scheme.natural.at(scheme.natural.marks[-1].step))
        within_reach = at_answer or "S/R" in rewarded or marks > 2
        if within_reach and any(mark.kind in rewarded for mark in scheme.natural.marks):
            assert any(mark.kind in rewarded for mark in scheme.allocation.marks)


# One mark for recall or one operation, two as M1 A1, three as M1 M1 A1: common practice, no source.
def test_method_and_accuracy_tariff() -> None:
    convention = load("method-accuracy")
    assert allocate(sail_loft.share(1), convention).allocation.printed() == "B1"
    assert allocate(sail_loft.share(2), convention).allocation.printed() == "M1 A1"
    assert allocate(sail_loft.equation(3), convention).allocation.printed() == "M1 M1 A1"


# Two marks for a line with a new theorem (S and R), one for a routine line (S/R): South African practice, from memory.
def test_statement_and_reason_tariff() -> None:
    convention = load("statement-reason")
    assert natural(Derivation(sail_loft.PANEL_STEPS, ""), convention, True).printed() == "S1 R1 S1 R1"
    again = (*sail_loft.PANEL_STEPS, Step("∠AEC = 40°", StepKind.STATEMENT, Reason("angles-on-a-line")))
    assert natural(Derivation(again, ""), convention, True).printed() == "S1 R1 S1 R1 S/R1"
    assert natural(Derivation(sail_loft.PANEL_STEPS, ""), convention, False).printed() == "S1 S1"


@pytest.mark.parametrize(
    ("marks", "printed", "fit"),
    [
        (2, "S/R1 S/R1", Fit.MERGED),
        (3, "S/R1 S1 R1", Fit.MERGED),
        (4, "S1 R1 S1 R1", Fit.NATURAL),
        (5, "M1 A1 R1 S1 R1", Fit.SPLIT),
        (9, "M1 A1 R1 S1 R1", Fit.TOO_MANY),
    ],
)
def test_merging_and_splitting(marks: int, printed: str, fit: Fit) -> None:
    scheme = allocate(sail_loft.base_angle(marks), load("statement-reason"))
    assert (scheme.allocation.printed(), scheme.fit) == (printed, fit)
    assert scheme.unplaced == (4 if marks == 9 else 0)
    assert scheme.fits() == (marks < 9)


def test_the_setters_split_wins_where_it_adds_up() -> None:
    scheme = allocate(sail_loft.base_angle(3, split=("M1", "R1", "A1")), load("statement-reason"))
    assert scheme.fit is Fit.SETTER
    assert [(mark.printed(), mark.step) for mark in scheme.allocation.marks] == [("M1", 0), ("R1", 0), ("A1", 1)]


def test_a_split_of_two_marks_at_once() -> None:
    scheme = allocate(sail_loft.equation(3, split=("M2", "A1")), load("method-accuracy"))
    assert [(mark.printed(), mark.step) for mark in scheme.allocation.marks] == [("M2", 1), ("A1", 3)]


@pytest.mark.parametrize("split", [("M1", "A1"), ("three",), ("M9",) * 50])
def test_a_split_that_does_not_add_up_is_set_aside_and_said_so(split: tuple[str, ...]) -> None:
    scheme = allocate(sail_loft.base_angle(3, split=split), load("statement-reason"))
    assert scheme.fit is Fit.MERGED
    assert scheme.allocation.total() == 3
    assert split[0] in scheme.remark


@given(st.lists(st.text(max_size=8), max_size=5))
def test_any_text_may_stand_in_a_split(split: list[str]) -> None:
    assert all(mark.worth >= 1 for mark in read_split(tuple(split)))


def test_a_part_without_marks_shows_the_natural_ones() -> None:
    scheme = allocate(sail_loft.share(None), load("method-accuracy"))
    assert scheme.fit is Fit.UNMARKED
    assert scheme.allocation.printed() == "M1 A1"


def test_a_part_that_was_not_derived_leaves_its_marks_to_the_examiner() -> None:
    scheme = allocate(sail_loft.not_read(), load("method-accuracy"))
    assert (scheme.fit, scheme.unplaced, scheme.allocation.marks) == (Fit.NOT_DERIVED, 2, ())


@pytest.mark.parametrize(
    ("part", "name", "note"),
    [
        (sail_loft.half(1), "method-accuracy", "oe"),  # a fraction has other forms
        (sail_loft.share(2), "method-accuracy", "cao"),  # an accuracy is asked for
        (sail_loft.proof(1), "statement-reason", "ag"),  # the claim is printed
        (sail_loft.base_angle(2), "statement-reason", "ft"),  # consistent accuracy reaches the answer
        (sail_loft.base_angle(2), "method-accuracy", ""),  # follow-through stops before the answer
    ],
)
def test_notes_behind_the_last_value(part: object, name: str, note: str) -> None:
    marks = allocate(part, load(name)).allocation.marks  # type: ignore[arg-type]
    values = [mark for mark in marks if mark.kind in ("A", "S", "S/R", "B")]
    assert values[-1].note == note


def test_what_an_earlier_part_has_shown_is_not_marked_twice() -> None:
    first, second = sail_loft.base_angle(4), sail_loft.apex_angle(2)
    known = established((first, second), second)
    assert list(known) == [step.statement for step in sail_loft.PANEL_STEPS]
    scheme = allocate(second, load("statement-reason"), known)
    assert [(mark.printed(), mark.step) for mark in scheme.allocation.marks] == [("S1", 2), ("R1", 2)]
    assert (scheme.fit, scheme.usual) == (Fit.NATURAL, UsualMarks(fewest=1, low=1, high=2, most=10))


def test_earlier_lines_bear_marks_again_where_the_new_ones_cannot_bear_them_all() -> None:
    first, second = sail_loft.base_angle(4), sail_loft.apex_angle(6)
    scheme = allocate(second, load("statement-reason"), established((first, second), second))
    assert scheme.allocation.printed() == "S1 R1 S1 R1 S1 R1"
    assert scheme.fits()


def test_only_parts_before_it_in_the_same_question_count() -> None:
    first, second, other = sail_loft.base_angle(), sail_loft.apex_angle(), sail_loft.equation()
    assert established((first, second, other), first) == {}
    assert established((first, second, other), other) == {}


@pytest.mark.parametrize(
    ("known", "statement", "same"),
    [
        ("∠ABC = ∠ACB = 68°", "∠ABC = ∠ACB", True),
        ("3x + 10° = 5x − 30°", "5x − 30° = 3x + 10°", True),
        ("AB ∥ CD", "AB ∥ CD", True),
        ("∠ABC = 68°", "∠ABC = ∠ACB = 68°", False),
        ("AB ∥ CD", "AB ∥ EF", False),
    ],
)
def test_a_statement_is_known_in_any_order_of_its_sides(known: str, statement: str, same: bool) -> None:
    steps = (Step(statement, StepKind.STATEMENT), Step("∠BAC = 44°", StepKind.STATEMENT))
    assert bool(carried_lines(Derivation(steps, ""), [known])) == same


def test_a_line_that_only_leads_to_what_is_known_is_carried_with_it() -> None:
    steps = (
        Step("AB ∥ CD", StepKind.STATEMENT),
        Step("∠ACB = ∠DAC", StepKind.STATEMENT, uses=("AB ∥ CD",)),
        Step("∠BAC = 44°", StepKind.STATEMENT, uses=("∠ACB = ∠DAC",)),
    )
    assert carried_lines(Derivation(steps, ""), ["∠ACB = ∠DAC = 68°"]) == {0: "", 1: "∠ACB = ∠DAC = 68°"}
    assert carried_lines(Derivation(steps, ""), []) == {}


def test_what_is_given_or_stands_above_already_earns_nothing() -> None:
    steps = (
        Step("y = 16", StepKind.EQUATION, Reason("given")),
        Step("∠ADC = ∠BAD", StepKind.STATEMENT, Reason("alternate-angles", "AB ∥ CD"), value="54°"),
        Step("y = 16", StepKind.ALGEBRA),
        Step("∠ADC = 54°", StepKind.CONCLUSION, value="54°"),
    )
    allocation = natural(Derivation(steps, ""), load("statement-reason"), True)
    assert [(mark.printed(), mark.step) for mark in allocation.marks] == [("S1", 1), ("R1", 1), ("A1", 3)]


@pytest.mark.parametrize(
    ("statement", "kind", "shows"),
    [
        ("∠ACB = 180° − 112° = 68°", StepKind.STATEMENT, True),
        ("2/3 − 1/4 = 8/12 − 3/12", StepKind.CALCULATION, True),
        ("3x − 12 = 2x + 5", StepKind.ALGEBRA, True),
        ("= 5/12", StepKind.CALCULATION, False),
        ("x = −17", StepKind.ALGEBRA, False),
        ("∠ABC = ∠ACB = 68°", StepKind.STATEMENT, False),
        ("65% of 240 = 65/100 × 240", StepKind.CALCULATION, False),
        ("2x = 40", StepKind.ALGEBRA, False),
    ],
)
def test_lines_that_show_method_and_value_apart(statement: str, kind: StepKind, shows: bool) -> None:
    assert shows_working(Step(statement, kind)) == shows
