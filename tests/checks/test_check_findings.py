"""Checks on question files through the whole audit, where one example is not enough."""

import pytest

from paperaudit.audit import audit
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding
from paperaudit.readers.question_file import read_question_file


def audited(text: str) -> AuditedPaper:
    return audit(read_question_file(text, "example.yaml").whole())


def found(text: str, name: str) -> list[Finding]:
    return [finding for finding in audited(text).findings if finding.name == name]


def panel(*lines: str, given: str = "[∠ACD = 112°]") -> str:
    """A question on the panel of a sail; `lines` are the keys below its figure."""
    return "\n".join(
        (
            "questions:",
            "  - number: 1",
            "    figure: [triangle ABC, BC is produced to D]",
            f"    given: {given}",
            *(f"    {line}" for line in lines),
        )
    )


def test_the_message_says_what_the_key_says_and_what_follows() -> None:
    (finding,) = found(panel("ask: ∠ACB", "answer: 62°", "marks: 1"), "answer-differs")
    assert finding.message == "Question 1: the key says 62°, but ∠ACB = 68°."
    assert finding.because[0].startswith("∠ACB = 180° − 112° = 68° (angles on a straight line")
    assert finding.suggestion == "Change the key to ∠ACB = 68°."
    assert finding.place.line == 6


def test_the_key_of_an_option_is_named_with_what_it_says() -> None:
    text = panel("ask: ∠ACB", "options: {A: 58°, B: 62°, C: 68°, D: 112°}", "answer: B", "marks: 1")
    (finding,) = found(text, "answer-differs")
    assert finding.message == "Question 1: the key says B (62°), but ∠ACB = 68°."
    assert finding.suggestion == "Change the key to C."


@pytest.mark.parametrize(("key", "other"), [("68", 1), ("68°", 0), ("62", 0)])
def test_a_bare_number_lacks_its_unit_only_if_it_is_the_right_one(key: str, other: int) -> None:
    assert len(found(panel("ask: ∠ACB", f'answer: "{key}"', "marks: 1"), "unit-missing")) == other


def test_the_value_of_a_letter_may_go_without_degrees() -> None:
    text = panel("ask: x", "answer: x = 20", "marks: 2", given="[∠ACD = 3x + 8°, ∠ACB = 5x + 12°]")
    assert not found(text, "unit-missing")


@pytest.mark.parametrize(
    ("given", "unused"),
    [
        ("[∠ACD = 112°]", []),
        ("[∠ACD = 112°, ∠BAC = 50°]", ["∠BAC = 50°"]),
        ("[AB = AC, ∠ACD = 112°]", ["AB = AC"]),
    ],
)
def test_a_given_is_unused_if_no_line_rests_on_it(given: str, unused: list[str]) -> None:
    messages = [finding.message for finding in found(panel("ask: ∠ACB", "marks: 1", given=given), "unused-given")]
    assert messages == [f"Question 1: “{text}” is not needed for any answer." for text in unused]


def test_a_given_that_another_part_needs_is_not_unused() -> None:
    parts = "parts: [{number: a, ask: ∠ACB, marks: 1}, {number: b, ask: ∠BAC, marks: 2}]"
    assert not found(panel(parts, given="[AB = AC, ∠ACD = 112°]"), "unused-given")


def test_nothing_is_called_unused_where_a_part_was_not_derived() -> None:
    parts = "parts: [{number: a, ask: ∠ACB, marks: 1}, {number: b, ask: ∠BAC, marks: 2}]"
    assert not found(panel(parts, given="[∠ACD = 112°, AD = 9 cm]"), "unused-given")


def test_lines_of_an_earlier_part_are_not_asked_to_be_paid_twice() -> None:
    parts = "parts: [{number: a, ask: x, marks: 3}, {number: b, ask: ∠ACD, marks: 1}]"
    assert not found(panel(parts, given="[∠ACD = 3x + 8°, ∠ACB = 5x + 12°]"), "too-few-marks")
    alone = panel("ask: ∠ACD", "marks: 1", given="[∠ACD = 3x + 8°, ∠ACB = 5x + 12°]")
    assert found(alone, "too-few-marks")


@pytest.mark.parametrize(
    ("text", "points"),
    [
        ("Calculate the size of ∠ACE.", ["E"]),
        ("The point F is not drawn. Find ∠ACB.", ["F"]),
        ("In triangle ABC, side BC is produced to D. Find ∠ACB.", []),
        ("NOTE: A LEARNER MAY USE ANGLE FACTS. Find ∠ACB.", []),
    ],
)
def test_points_of_the_text_that_the_figure_lacks_are_named(text: str, points: list[str]) -> None:
    messages = [one.message for one in found(panel(f"text: '{text}'", "ask: ∠ACB", "marks: 1"), "label-mismatch")]
    assert [point for point in "EFGU" if any(f"point {point}," in message for message in messages)] == points
    assert len(messages) == bool(points)


@pytest.mark.parametrize(
    ("words", "missing"),
    [
        ("In the diagram a rope hangs from a mast.", True),
        ("The figure alongside shows a hull.", True),
        ("Give the answer to three significant figures.", False),
        ("Draw a sketch of a buoy.", False),
    ],
)
def test_words_for_a_figure_without_one(words: str, missing: bool) -> None:
    text = f"questions: [{{number: 1, text: '{words}', ask: 12 + 5, answer: '17', marks: 1}}]"
    assert bool(found(text, "figure-missing")) is missing


def test_a_figure_described_in_the_text_is_there() -> None:
    text = (
        "questions: [{number: 1, text: 'In the diagram, ABC is a triangle with ∠A = 70° and ∠B = 60°. "
        "Calculate the size of ∠C.', answer: 50°, marks: 2}]"
    )
    assert audited(text).findings == ()


@pytest.mark.parametrize(
    "sketch",
    [
        "{A: [2, 3], B: [0, 0], C: [4, 0], D: [6, 0]}",
        "{A: [2, 30], B: [0, 0], C: [4, 0.1], D: [6, 0]}",  # stretched
        "{A: [-2, 3], B: [0, 0], C: [-4, 0], D: [-6, 0]}",  # mirrored
        "{A: [2, 3], B: [0, 0], C: [4, 0], D: [4.1, 0.2]}",  # a slip of the pen
    ],
)
def test_a_rough_sketch_contradicts_nothing(sketch: str) -> None:
    assert not found(panel(f"sketch: {sketch}", "ask: ∠ACB", "marks: 1"), "drawing-contradicts-givens")


def test_a_sketch_marked_not_to_scale_is_left_alone() -> None:
    lines = ("sketch: {A: [2, 3], B: [0, 0], C: [6, 0], D: [4, 0]}", "ask: ∠ACB", "marks: 1")
    assert found(panel(*lines), "drawing-contradicts-givens")
    assert not found(panel("text: The figure is not drawn to scale.", *lines), "drawing-contradicts-givens")


@pytest.mark.parametrize(
    ("line", "doubtful"),
    [
        ("answer: 68o", True),
        ("answer: 6O°", True),
        ("answer: 6l8", True),
        ("answer: 68°", False),
    ],
)
def test_symbols_that_look_like_others(line: str, doubtful: bool) -> None:
    assert bool(found(panel("ask: ∠ACB", line, "marks: 1"), "symbol-doubtful")) is doubtful


@pytest.mark.parametrize("answer", ["x = 4", "x = -4", "2 - 6", "x=4"])
def test_plain_keyboard_forms_are_not_doubtful(answer: str) -> None:
    text = f"questions: [{{number: 1, ask: 'solve 2x + 3 = 11', answer: '{answer}', marks: 2}}]"
    assert not found(text, "symbol-doubtful")


def multiple_choice(options: str, answer: str = "B") -> str:
    return f"questions: [{{number: 1, ask: 9 × 6, options: {options}, answer: {answer}, marks: 1}}]"


@pytest.mark.parametrize(
    ("options", "names"),
    [
        ("{A: '45', B: '54', C: '63', D: '96'}", set()),
        ("{A: '45', B: '54', C: '63', D: '54'}", {"repeated-option"}),
        ("{A: '45', B: '54', C: '108/2', D: '54'}", {"repeated-option", "two-correct-options"}),
        ("{A: '45', B: '54', C: '63', D: '108/2'}", {"two-correct-options"}),
        ("{A: '0.5', B: '54', C: '1/2', D: '96'}", {"repeated-option"}),
        ("{A: '45', B: '56', C: '63', D: '96'}", {"no-correct-option", "answer-differs"}),
        ("{A: '45', B: '56', C: 'none of these', D: '96'}", {"answer-differs"}),
    ],
)
def test_options_against_the_answer_and_each_other(options: str, names: set[str]) -> None:
    assert {finding.name for finding in audited(multiple_choice(options)).findings} == names


@pytest.mark.parametrize(("key", "there"), [("B", True), ("(b)", True), ("'54'", True), ("E", False), ("'57'", False)])
def test_the_key_names_an_option_by_letter_or_by_what_it_says(key: str, there: bool) -> None:
    text = multiple_choice("{A: '45', B: '54', C: '63', D: '96'}", key)
    assert bool(found(text, "key-not-an-option")) is not there


@pytest.mark.parametrize(
    ("ask", "answer", "named"),
    [
        ("calculate √45", "6.7", "rounding-not-stated"),
        ("calculate √45", "3√5", None),
        ("20 ÷ 3", "20/3", None),
        ("20 ÷ 3", "6.67", "rounding-not-stated"),
        ("R 100 ÷ 3", "R 33.33", None),
        ("20 ÷ 8", "2.5", None),
        ("write 3/8 as a percentage", "37.5%", None),
        ("65% of 240 litres", "156", "unit-missing"),
        ("65% of 240 litres", "156 m", "unit-clash"),
        ("65% of 240 litres", "150 m", "answer-differs"),
    ],
)
def test_rounding_and_units_of_numbers(ask: str, answer: str, named: str | None) -> None:
    text = f"questions: [{{number: 1, ask: '{ask}', answer: '{answer}', marks: 2}}]"
    names = {finding.name for finding in audited(text).findings}
    of_interest = {"rounding-not-stated", "unit-missing", "unit-clash", "answer-differs"}
    assert names & of_interest == ({named} if named else set())


def test_sizes_of_the_givens_have_units_that_fit() -> None:
    text = panel("ask: ∠ACB", "marks: 1", given="[∠ACD = 112°, AB = 7.5, BC = 4 cm]")
    (finding,) = found(text, "unit-missing")
    assert finding.message == "Question 1: “AB = 7.5” has no unit, “BC = 4 cm” has one."
    (finding,) = found(panel("ask: ∠ACB", "marks: 1", given="[∠ACD = 112°, AB = 7.5 cm²]"), "unit-clash")
    assert finding.message == "Question 1: “AB = 7.5 cm²” gives a length in a unit of area."


def test_x_between_numbers_is_doubtful_beside_the_letter_x_only() -> None:
    def doubtful(text: str) -> bool:
        return bool(found(f"questions: [{{number: 1, text: '{text}', answer: '17', marks: 2}}]", "symbol-doubtful"))

    assert doubtful("Solve 3x + 2 x 5 = 61 for x.")
    assert not doubtful("Calculate 7 + 2 x 5.")


def test_a_form_or_an_answer_in_words_is_told_in_words() -> None:
    def message(ask: str, answer: str) -> str:
        text = f"questions: [{{number: 1, ask: '{ask}', answer: '{answer}', marks: 2}}]"
        (finding,) = found(text, "answer-differs")
        return f"{finding.message} {finding.because[-1]}."

    assert message("solve 2x + 3 = 2x + 5", "x = 1").startswith(
        "Question 1: the key says x = 1, but the answer is no solution."
    )
    assert message("write 3/8 as a decimal", "3/8") == (
        "Question 1: the key says 3/8, but the answer is 0.375. it is equal, but it is not written as a decimal."
    )


def test_asking_for_a_proof_of_what_is_false_is_an_error() -> None:
    text = (
        "questions: [{number: 1, figure: triangle ABC, given: [∠A = 70°, ∠B = 50°], ask: prove that AB = AC, marks: 2}]"
    )
    (finding,) = found(text, "answer-differs")
    assert finding.message == "Question 1: “prove that AB = AC” asks for what is false; in truth ∠B = 50°, ∠ACB = 60°."
    assert audited(text).parts[0].verdict == "differs"


def test_asking_for_a_proof_of_what_is_true_is_none() -> None:
    text = (
        "questions: [{number: 1, figure: triangle ABC, given: [∠A = 70°, ∠B = 55°], ask: prove that AB = AC, marks: 2}]"
    )
    assert not found(text, "answer-differs")


def test_marks_of_parts_that_were_not_derived_have_no_level() -> None:
    text = (
        "{blueprint: even-spread, questions: [{number: 1, ask: 12 + 5, marks: 1, level: knowledge}, "
        "{number: 2, text: Explain the knot., marks: 9}]}"
    )
    (finding,) = found(text, "level-off-target")
    assert finding.because[0].startswith("knowledge: 100% of the marks")
    assert finding.because[-1] == "9 marks of parts that were not derived and state no level are left out"
    assert "proposals" not in finding.suggestion


def test_a_point_that_an_answer_was_derived_about_is_there() -> None:
    text = (
        "questions: [{number: 1, marks: 4, text: 'ABC is a straight line. ∠ABD = 3x and ∠DBC = 2x + 30°. "
        "Calculate x and ∠ABD.', answer: 'x = 30°, ∠ABD = 90°'}]"
    )
    assert audited(text).parts[0].verdict == "confirmed"
    assert not found(text, "label-mismatch")


@pytest.mark.parametrize(
    ("given", "ask", "mend"),
    [
        ("['∠A = 90°', '∠B = 30°']", "BC", "Add a length, such as that of AB: no given states one."),
        ("['∠A = 40°']", "∠B", "Add a given that fixes the answer"),
    ],
)
def test_an_open_question_is_told_what_could_settle_it(given: str, ask: str, mend: str) -> None:
    text = f"questions: [{{number: 1, figure: triangle ABC, given: {given}, ask: {ask}}}]"
    (finding,) = found(text, "not-determined")
    assert finding.suggestion.startswith(mend)


def test_the_parts_of_a_repeated_question_are_told_by_the_printed_number() -> None:
    text = (
        "questions: [{number: 1, ask: 12 + 5, answer: '17', marks: 1}, {number: 1, ask: 9 × 6, answer: '45', marks: 1}]"
    )
    (finding,) = found(text, "answer-differs")
    assert (finding.part, finding.message.split(":")[0]) == ("1′", "Question 1")


def test_a_key_that_names_no_option_is_told_the_right_one_and_nothing_else() -> None:
    findings = audited(multiple_choice("{A: '45', B: '54', C: '63', D: '96'}", "E")).findings
    assert [(finding.name, finding.suggestion) for finding in findings] == [
        ("key-not-an-option", "Name the right option in the key: B."),
    ]


def test_a_claim_that_is_false_is_told_in_every_topic() -> None:
    text = """
questions:
  - number: 1
    given: ["A(1, 2), B(3, 6), C(4, 9)"]
    ask: Show that A, B and C are collinear.
    marks: 3
  - number: 2
    ask: Show that the lines y = 2x + 1 and 2y = x + 3 are parallel.
    marks: 2
  - number: 3
    ask: Prove that sin x + cos x = 1.
    marks: 3
"""
    found = [finding for finding in audited(text).findings if finding.name == "answer-differs"]
    assert [finding.part for finding in found] == ["1", "2", "3"]
    assert all("asks for what is false" in finding.message for finding in found)


def test_a_numbered_figure_has_to_be_there_in_a_draft_only() -> None:
    asked = "questions:\n  - {number: 1, text: Look at Fig. 2 and Table 1., ask: 12 + 5, answer: '17', marks: 1}\n"
    assert found(asked, "figure-missing") == []
    draft = "printed: [{page: 1}]\ncaptions: [Figure 1, Table 1]\n" + asked
    (missing,) = found(draft, "figure-missing")
    assert missing.message == "Question 1 speaks of Figure 2, which is nowhere in the paper."
    assert found(draft.replace("Figure 1", "Diagram 2"), "figure-missing") == []


def test_the_first_page_and_a_single_sheet_need_no_number() -> None:
    asked = "questions: [{number: 1, ask: 12 + 5, answer: '17', marks: 1}]\n"
    assert found("printed: [{page: 1, numbered: false}]\n" + asked, "page-number-missing") == []
    (bare,) = found(
        "printed: [{page: 1}, {page: 2, numbered: false}, {page: 3, numbered: false}]\n" + asked, "page-number-missing"
    )
    assert bare.message == "Pages 2, 3 have no page number."
