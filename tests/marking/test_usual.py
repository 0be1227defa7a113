"""Which allocations draw a warning: ordinary ones never do, and the scheme and the checks say the same."""

import pytest

from paperaudit.audit import audit_read
from paperaudit.marking.allocation import allocate
from paperaudit.marking.convention import conventions, load
from paperaudit.marking.usual import usual_marks
from paperaudit.model.derivation import Derivation, Reason, Step, StepKind
from paperaudit.readers.question_file import read_question_file
from tests import sail_loft

S, E, A, C = StepKind.STATEMENT, StepKind.EQUATION, StepKind.ALGEBRA, StepKind.CALCULATION
OPPOSITE = Reason("parallelogram-opposite-sides")

TWO_LINES = (Step("x/2 = 4", A), Step("x = 8", A, value="8"))
FOUR_LINES = (
    Step("5(x − 4) + 3 = 2(x + 7) − 1", StepKind.GIVEN, Reason("given")),
    Step("5x − 20 + 3 = 2x + 14 − 1", A),
    Step("5x − 17 = 2x + 13", A),
    Step("3x = 30", A),
    Step("x = 10", A, value="10"),
)
ONE_OPERATION = (Step("12 + 5 = 17", C, value="17"),)
PERIMETER = (
    Step("AB = CD", S, OPPOSITE),
    Step("CD = AB = 8 cm", S, OPPOSITE, ("AB = CD",), "8 cm"),
    Step("AD = BC", S, OPPOSITE),
    Step("AD = BC = 5 cm", S, OPPOSITE, ("AD = BC",), "5 cm"),
    Step("perimeter of ABCD = 8 cm + 5 cm + 8 cm + 5 cm = 26 cm", C, value="26 cm"),
)
PERIMETER_WITH_X = (
    Step("2x + x + 3 + 2x + x + 3 = 36", E),
    Step("6x + 6 = 36", A),
    Step("6x = 30", A),
    Step("x = 5", A, value="5"),
)
RATIO = (
    Step("Let ∠ABC = t", StepKind.CONSTRUCTION),
    Step("∠ACB = 4 × t ÷ 3 = (1 1/3)t", S, Reason("given"), value="(1 1/3)t"),
    Step("∠BAC = 2 × t ÷ 3 = (2/3)t", S, Reason("given"), value="(2/3)t"),
    Step("(2/3)t + t + (1 1/3)t = 180°", E, Reason("angle-sum-triangle")),
    Step("2t + 3t + 4t = 540°", A),
    Step("9t = 540°", A),
    Step("t = 60°", A, value="60°"),
    Step("∠ACB = (1 1/3)t = 1 1/3 × 60° = 80°", C, Reason("substitution"), value="80°"),
)
EQUAL_SIDES = (
    Step("AB = AC", S, Reason("equal-sides-given")),
    Step("∠ABC = ∠ACB", S, Reason("isosceles-base-angles")),
    Step("∠ABC = (180° − 60°) ÷ 2 = 60°", S, Reason("angle-sum-triangle"), value="60°"),
    Step("CA = CB", S, Reason("isosceles-converse")),
    Step("BC = AC = 6 cm", S, Reason("isosceles-converse"), value="6 cm"),
)


# What ordinary class tests give: common practice, no source.
@pytest.mark.parametrize("name", conventions())
@pytest.mark.parametrize(
    ("steps", "least", "most"),
    [
        (TWO_LINES, 1, 4),
        (FOUR_LINES, 1, 4),
        (ONE_OPERATION, 1, 2),
        (PERIMETER, 1, 4),
        (PERIMETER_WITH_X, 2, 4),
        (RATIO, 2, 4),
        (EQUAL_SIDES, 2, 5),
        (sail_loft.PANEL_STEPS, 2, 5),
        (sail_loft.SHARE_STEPS, 1, 3),
    ],
)
def test_ordinary_allocations_draw_no_warning(name: str, steps: tuple[Step, ...], least: int, most: int) -> None:
    for reasons in (False, True):
        usual = usual_marks(Derivation(steps, ""), load(name), reasons)
        assert usual.fewest <= least <= most <= usual.most


@pytest.mark.parametrize("name", conventions())
@pytest.mark.parametrize(
    ("steps", "marks", "reasons"),
    [
        (ONE_OPERATION, 6, False),
        (RATIO, 1, False),
        (TWO_LINES, 7, False),
        (sail_loft.PANEL_STEPS * 3, 1, True),
        (PERIMETER, 14, True),
    ],
)
def test_what_is_clearly_off_draws_one(name: str, steps: tuple[Step, ...], marks: int, reasons: bool) -> None:
    distinct = (
        tuple(
            Step(step.statement + "′" * (at // 2), step.kind, step.reason, (), step.value)
            for at, step in enumerate(steps)
        )
        if steps == sail_loft.PANEL_STEPS * 3
        else steps
    )
    usual = usual_marks(Derivation(distinct, ""), load(name), reasons)
    assert not usual.fewest <= marks <= usual.most


@pytest.mark.parametrize("name", conventions())
def test_a_property_and_its_value_count_once(name: str) -> None:
    part = sail_loft.angle("1", "1", PERIMETER, 26, None)
    marks = allocate(part, load(name)).allocation.marks
    assert {mark.step for mark in marks} <= {1, 3, 4}
    assert len(marks) == 3


@pytest.mark.parametrize("name", conventions())
@pytest.mark.parametrize("steps", [TWO_LINES, FOUR_LINES, RATIO, PERIMETER_WITH_X, sail_loft.SOLVING_STEPS])
def test_a_line_of_algebra_has_one_mark_at_most(name: str, steps: tuple[Step, ...]) -> None:
    for marks in range(1, 12):
        allocation = allocate(sail_loft.angle("1", "1", steps, 5, marks), load(name)).allocation
        for at, step in enumerate(steps):
            if step.kind is A:
                assert sum(mark.worth for mark in allocation.at(at)) <= 1


@pytest.mark.parametrize("name", conventions())
def test_reasons_bear_marks_where_the_statements_alone_cannot(name: str) -> None:
    steps = (Step("∠ACB = 180° − 112° = 68°", S, Reason("angles-on-a-line"), value="68°"),)
    scheme = allocate(sail_loft.angle("1", "1", steps, 68, 3), load(name))
    assert scheme.allocation.printed() == "M1 A1 R1"
    assert scheme.unplaced == 0


BOAT = """
title: t
marking: method-accuracy
questions:
  - {number: 1, text: "Hiring the boat costs R150 and R40 an hour. Ama paid R470. For how many hours did she hire it?",
     ask: solve 40x + 150 = 470, answer: x = 8, marks: 3}
  - {number: 2, text: "Solve for x: 40x + 150 = 470", ask: solve 40x + 150 = 470, answer: x = 8, marks: 2}
"""


def test_setting_up_an_equation_from_words_earns_a_mark() -> None:
    from_words, printed = audit_read(read_question_file(BOAT, "t.yaml")).parts
    scheme = allocate(from_words, load("method-accuracy"))
    assert (scheme.allocation.marks[0].printed(), scheme.allocation.marks[0].step) == ("M1", 0)
    assert (scheme.allocation.total(), scheme.unplaced) == (3, 0)
    assert all(mark.step > 0 for mark in allocate(printed, load("method-accuracy")).allocation.marks)


SUMS = """
title: t
marking: {marking}
questions:
  - {{number: 1, ask: 12 + 5, answer: "17", marks: {marks}}}
  - {{number: 2, ask: solve 2x + 3 = 11, answer: x = 4, marks: {marks}}}
  - {{number: 3, figure: [triangle ABC, BC is produced to D], given: [AB = AC, ∠ACD = 112°], ask: ∠ABC, marks: {marks}}}
"""


@pytest.mark.parametrize("name", conventions())
@pytest.mark.parametrize("marks", range(1, 10))
def test_the_scheme_and_the_checks_say_the_same(name: str, marks: int) -> None:
    audited = audit_read(read_question_file(SUMS.format(marks=marks, marking=name), "t.yaml"))
    found = {finding.part for finding in audited.findings if finding.name in ("too-many-marks", "too-few-marks")}
    for part in audited.parts:
        assert allocate(part, load(name)).fits() == (part.part.id not in found)


# In South African practice accuracy marks stand alone (from memory).
def test_a_calculation_for_one_mark_earns_accuracy() -> None:
    part = sail_loft.angle("1", "1", ONE_OPERATION, 17, 1)
    assert allocate(part, load("statement-reason")).allocation.printed() == "A1"
    equation = allocate(sail_loft.equation(1), load("statement-reason"))
    assert equation.allocation.printed() == "A1"
