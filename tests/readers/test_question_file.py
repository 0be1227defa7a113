"""Question files in YAML: what is read, where from, and every complaint at once."""

import textwrap

import pytest

from paperaudit.errors import InputError
from paperaudit.model.paper import Paper
from paperaudit.readers.question_file import read_question_file


def read(text: str) -> Paper:
    return read_question_file(textwrap.dedent(text), "test.yaml").whole()


def complaints(text: str) -> list[str]:
    return [one.describe() for one in read_question_file(textwrap.dedent(text), "test.yaml").complaints]


PANEL = """\
    title: Term 2 test
    level: Grade 9
    minutes: 45
    total: 14
    marking: statement-reason
    questions:
      - number: 1
        total: 9
        text: The sketch shows one panel of a sail.
        figure: [triangle ABC, BC is produced to D]
        given: ["AB = AC", "∠ACD = 112°"]
        sketch: {A: [0, 0], B: [60, 4.5], C: [-1, 3]}
        parts:
          - number: a
            text: Calculate, giving reasons, the size of ∠ABC.
            ask: ∠ABC
            answer: 68°
            marks: 3
            split: [M1, R1, A1]
            reasons: required
            skills: [exterior angle of a triangle]
            level: routine
          - number: b
            ask: ∠BAC
            marks: 2
      - number: 2
        text: Solve for x.
        marks: 3
        ask: solve 3(x - 4) = 2x + 5
        answer: x = 17
    """


def test_every_value_arrives_where_it_belongs() -> None:
    paper = read(PANEL)
    first, second = paper.questions()
    part = first.parts[0]
    assert (paper.title, paper.level, paper.minutes, paper.total) == ("Term 2 test", "Grade 9", 45, 14)
    assert [line.text for line in first.figure] == ["triangle ABC", "BC is produced to D"]
    assert first.sketch == (("A", 0, 0), ("B", 60, 4.5), ("C", -1, 3))
    assert (first.total, part.marks, part.split) == (9, 3, ("M1", "R1", "A1"))
    assert (part.reasons, part.level) == (True, "routine")
    assert part.skills == ("exterior angle of a triangle",)
    assert (part.answer and part.answer.text) == "68°"
    assert [part.id for part in second.parts] == ["2"]
    assert second.text and second.text.text == "Solve for x."
    assert second.parts[0].text is None
    assert paper.marks_sum() == 8


def test_every_value_knows_its_line() -> None:
    paper = read(PANEL)
    first = next(paper.questions())
    part = first.parts[0]
    assert part.answer and (part.answer.place.file, part.answer.place.line) == ("test.yaml", 17)
    assert [line.place.line for line in first.given] == [11, 11]
    assert first.place.line == 7
    assert part.place.line == 14


@pytest.mark.parametrize(
    ("question", "part", "sub", "expected"),
    [
        ("3", "b", "ii", "3.b.ii"),
        ("3", "(b)", "(ii)", "3.b.ii"),
        ("3.", "b)", "ii.", "3.b.ii"),
        ("3", "3.2", "3.2.1", "3.2.1"),
        ("3", "2", "1", "3.2.1"),
    ],
)
def test_ids_join_the_printed_levels(question: str, part: str, sub: str, expected: str) -> None:
    paper = read(f"""\
        questions:
          - number: {question}
            parts:
              - number: {part}
                text: Above.
                given: ["x = 1"]
                parts: [{{number: {sub}, text: Below., given: ["y = 2"], marks: 1}}]
        """)
    ((_, found),) = paper.parts()
    assert found.id == expected
    assert found.text and found.text.text == "Above. Below."
    assert [line.text for line in found.given] == ["x = 1", "y = 2"]


def test_a_trailing_nought_of_a_number_is_kept() -> None:
    paper = read("questions: [{number: 3.10, answer: 0.50, marks: 1}]")
    ((_, part),) = paper.parts()
    assert part.id == "3.10"
    assert part.answer and part.answer.text == "0.50"


def test_a_repeated_question_number_stays_readable_with_ids_of_its_own() -> None:
    paper = read("questions: [{number: 2, marks: 1}, {number: 2, parts: [{number: a}]}, {number: 2}]")
    assert [part.id for _, part in paper.parts()] == ["2", "2′.a", "2′′"]
    assert [question.number for question in paper.questions()] == ["2", "2", "2"]


def test_sections_keep_their_titles_and_totals() -> None:
    paper = read("""\
        cover: {questions: 2}
        sections:
          - {title: Section A, total: 3, questions: [{number: 1, marks: 3}]}
          - {title: Section B, questions: [{number: 2, marks: 1}]}
        """)
    assert [(one.title, one.total) for one in paper.sections] == [("Section A", 3), ("Section B", None)]
    assert paper.claims == (("questions", 2),)


def test_options_and_tables_keep_their_order() -> None:
    paper = read("""\
        questions:
          - number: 1
            options: {A: 40°, C: 50°, B: 70°}
            answer: C
            table: {mass: [12, 15], length: [1.50, 2]}
        """)
    ((question, part),) = paper.parts()
    assert [(letter, line.text) for letter, line in part.options] == [("A", "40°"), ("C", "50°"), ("B", "70°")]
    assert question.table == (("mass", ("12", "15")), ("length", ("1.50", "2")))


def test_keys_with_nothing_behind_them_count_as_left_out() -> None:
    paper = read("questions: [{number: 1, answer: , marks: ~, split: , ask: ''}]")
    ((_, part),) = paper.parts()
    assert (part.answer, part.marks, part.split, part.ask) == (None, None, (), None)


def test_not_drawn_to_scale_is_noticed_in_the_text() -> None:
    paper = read("questions: [{number: 1, text: The figure is not drawn to scale.}, {number: 2, text: A sail.}]")
    assert [question.not_to_scale for question in paper.questions()] == [True, False]


def test_all_complaints_of_a_file_come_at_once_with_line_part_and_nearest_word() -> None:
    found = complaints("""\
        title: Term 2
        nonsense: 3
        marking: statment-reason
        questions:
          - number: 1
            parts:
              - number: a
                makrs: 3
                level: routin
              - number: b
                marks: three
                reasons: requird
                given: [{AB: 7}]
              - text: no number
        """)
    assert [one.split(": ")[0] for one in found] == [f"test.yaml, line {line}" for line in (2, 3, 8, 9, 11, 12, 13, 14)]
    assert "'nonsense'" in found[0]
    assert "did you mean 'statement-reason'?" in found[1]
    assert "part 1.a" in found[2] and "'makrs'" in found[2] and "did you mean 'marks'?" in found[2]
    assert "part 1.a" in found[3] and "did you mean 'routine'?" in found[3]
    assert "part 1.b" in found[4] and "'three'" in found[4] and "expected a whole number" in found[4]
    assert "did you mean 'required'?" in found[5]
    assert "in quotes, where it holds a colon" in found[6]
    assert "no 'number' was read" in found[7]


def test_what_is_left_of_a_faulty_file_can_still_be_searched_for_unreadable_statements() -> None:
    found = read_question_file("questions: [{number: 1, makrs: 3, ask: solve (}]", "test.yaml")
    assert found.complaints and found.paper
    ((_, part),) = found.paper.parts()
    assert part.ask and part.ask.text == "solve ("
    with pytest.raises(InputError):
        found.whole()


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("hello", "expected keys such as title and questions"),
        ("- number: 1", "expected keys such as title and questions"),
        ("title: x", "no 'questions' were read"),
        ("questons: []", "did you mean 'questions'?"),
        ("questions: []", "expected at least one"),
        ("questions: 3", "questions is '3', expected a list"),
        ("{questions: [{number: 1}], sections: [{questions: [{number: 2}]}]}", "expected one of them"),
        ("questions: [{number: 1, marks: -2}]", "marks is '-2', expected a whole number from 0"),
        ("questions: [{number: 1, marks: 2.5}]", "marks is '2.5', expected a whole number"),
        ("questions: [{number: 1, marks: '3'}]", "without quotes"),
        ("questions: [{number: 1, marks: [1, 2]}]", "marks is a list of 2, expected a whole number"),
        ("questions: [{number: 1, sketch: {A: [1]}}]", "sketch A is a list of 1, expected two numbers"),
        ("questions: [{number: 1, sketch: {A: [1, inf]}}]", "sketch A 2 is 'inf', expected a number"),
        ("questions: [{number: 1, split: [m1]}]", "expected a mark such as M1"),
        ("questions: [{number: 1, given: [~]}]", "given 1 is nothing, expected a statement"),
        ("questions: [{number: a b c}]", "number is 'a b c', expected a number as printed"),
        ("{blueprint: ../../etc/passwd, questions: [{number: 1}]}", "blueprint is '../../etc/passwd', expected one of"),
        ("questions: [{number: 1, parts: [{number: a}, {number: (a)}]}]", "the number '(a)' was read twice"),
        ("questions: [{number: 1, number: 2}]", "the key 'number' was read twice"),
        ("questions: [{number: 1, marks: 3, parts: [{number: a}]}]", "expected it at each of the parts"),
        ("questions: [{number: 1, ask: " + "x + " * 30_000 + "x}]", "expected at most 500 characters"),
        ("questions: [{number: 1, text: " + "x" * 6000 + "}]", "expected at most 5000 characters"),
    ],
)
def test_a_complaint_says_what_was_expected(text: str, expected: str) -> None:
    found = complaints(text)
    assert len(found) == 1
    assert expected in found[0]
    assert len(found[0]) < 500


def test_a_stem_runs_on_into_its_part() -> None:
    nested = (
        "questions: [{number: 1, parts: [{number: b, text: Now, parts: ["
        "{number: i, text: Given that AD = AC. Find ∠CAD.}, {number: ii, text: AB is drawn.}]}]}]"
    )
    texts = [part.text.text for _, part in read_question_file(nested, "t.yaml").whole().parts() if part.text]
    assert texts == ["Now given that AD = AC. Find ∠CAD.", "Now AB is drawn."]
