"""Totals against sums, on random trees of marks: a finding exactly when a sum differs."""

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from paperaudit.checks import discovered
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding, Severity
from paperaudit.model.paper import Paper, Part, Question, Section
from paperaudit.readers.question_file import read_question_file

MARKS = st.integers(0, 20)


def found(name: str, paper: Paper) -> list[Finding]:
    return list(discovered()[name].find(AuditedPaper(paper, ())))


def question(number: int, marks: list[int | None], total: int | None = None) -> Question:
    letters = "abcdefgh"
    parts = tuple(Part(f"{number}.{letters[at]}", letters[at], marks=worth) for at, worth in enumerate(marks))
    return Question(str(number), parts, total=total)


@st.composite
def papers(draw: st.DrawFn) -> Paper:
    """Sections of questions of parts, with totals that are sometimes right, sometimes not, sometimes absent."""
    sections, number = [], 0
    for _ in range(draw(st.integers(1, 3))):
        questions = []
        for _ in range(draw(st.integers(1, 3))):
            number += 1
            marks: list[int | None] = list(draw(st.lists(MARKS, min_size=1, max_size=4)))
            right = sum(mark or 0 for mark in marks)
            questions.append(question(number, marks, draw(st.sampled_from([right, None, right + 1, right - 1]))))
        own = sum(part.marks or 0 for asked in questions for part in asked.parts)
        title, total = f"Section {len(sections) + 1}", draw(st.sampled_from([own, None, 7]))
        sections.append(Section(tuple(questions), title, total))
    paper = Paper("Spars", tuple(sections))
    return replace(paper, total=draw(st.sampled_from([paper.marks_sum(), None, paper.marks_sum() + 3])))


@given(papers())
def test_a_question_is_found_exactly_when_its_total_is_not_the_sum(paper: Paper) -> None:
    wrong = [
        asked.number
        for asked in paper.questions()
        if asked.total is not None and asked.total != sum(part.marks or 0 for part in asked.parts)
    ]
    assert [finding.part for finding in found("question-total-differs", paper)] == wrong


@given(papers())
def test_a_section_is_found_exactly_when_its_total_is_not_the_sum(paper: Paper) -> None:
    wrong = [
        section.title
        for section in paper.sections
        if section.total is not None
        and section.total != sum(part.marks or 0 for asked in section.questions for part in asked.parts)
    ]
    findings = found("section-total-differs", paper)
    assert [title for title in wrong if any(f"“{title}”" in finding.message for finding in findings)] == wrong
    assert len(findings) == len(wrong)


@given(papers())
def test_the_paper_is_found_exactly_when_its_total_is_not_the_sum(paper: Paper) -> None:
    wrong = paper.total is not None and paper.total != paper.marks_sum()
    assert bool(found("paper-total-differs", paper)) is wrong


@given(papers())
def test_the_sum_that_a_finding_shows_is_the_sum(paper: Paper) -> None:
    for finding in found("paper-total-differs", paper):
        terms, result = finding.because[0].split(" = ")
        shown = [int(term[term.index("(") + 1 : -1]) for term in terms.split(" + ")]
        assert sum(shown) == int(result) == paper.marks_sum()


def test_missing_marks_are_not_reported_as_a_wrong_total() -> None:
    paper = Paper("Spars", (Section((question(1, [3, None], total=9),)),), total=9)
    assert not found("question-total-differs", paper)
    assert not found("paper-total-differs", paper)
    (finding,) = found("marks-missing", paper)
    assert (finding.part, finding.severity) == ("1.b", Severity.ERROR)
    assert "leaves 6 marks" in finding.suggestion


def test_marks_that_overrun_the_total_are_reported_though_some_are_missing() -> None:
    paper = Paper("Spars", (Section((question(1, [8, None], total=7),)),))
    assert [finding.part for finding in found("question-total-differs", paper)] == ["1"]


def test_a_question_with_missing_marks_counts_with_its_own_total() -> None:
    asked = (question(1, [3, None], total=5), question(2, [4]))
    assert not found("paper-total-differs", Paper("Spars", (Section(asked),), total=9))
    (finding,) = found("paper-total-differs", Paper("Spars", (Section(asked),), total=12))
    assert finding.because == ("Q1 (3) + Q2 (4) = 7", "without marks: 1.b", "printed total: 12")
    assert finding.suggestion == "Give 1.b its marks first; then print the new sum on the cover."


def test_a_paper_without_any_marks_is_told_so_once_and_mildly() -> None:
    paper = Paper("Spars", (Section((question(1, [None, None]), question(2, [None]))),))
    (finding,) = found("marks-missing", paper)
    assert (finding.part, finding.severity) == ("", Severity.WARNING)


def test_marks_of_the_key_and_of_the_split_are_compared_with_the_papers() -> None:
    parts = (
        Part("1", "1", marks=3, key_marks=3, split=("M1", "A2")),
        Part("2", "2", marks=3, key_marks=4),
        Part("3", "3", marks=3, split=("M1", "A1")),
        Part("4", "4", marks=3, split=("three",)),
    )
    paper = Paper("Spars", (Section(tuple(Question(part.id, (part,)) for part in parts)),))
    findings = found("key-marks-differ", paper)
    assert [(finding.part, "key" in finding.message, "split" in finding.message) for finding in findings] == [
        ("2", True, False),
        ("3", False, True),
    ]


def test_minutes_for_marks_are_in_order_from_nine_tenths_to_one_and_a_half() -> None:
    """0.9 and 1.5 minutes a mark: common practice, no source. GCSE (80 marks, 90 minutes; from memory) lies within."""

    def pressed(minutes: int, marks: int) -> bool:
        return bool(found("time-pressure", Paper("Spars", (Section((question(1, [marks]),)),), minutes=minutes)))

    assert [pressed(minutes, 80) for minutes in (71, 72, 90, 120, 121)] == [True, False, False, False, True]
    assert not pressed(180, 150)
    assert not found("time-pressure", Paper("Spars", (Section((question(1, [4]),)),)))


def test_the_marks_themselves_are_set_against_the_minutes_and_not_the_cover() -> None:
    paper = Paper("Spars", (Section((question(1, [10, None]),)),), minutes=8, total=8)
    (finding,) = found("time-pressure", paper)
    assert finding.message == "8 minutes for 10 marks is very little time."
    assert not found("time-pressure", replace(paper, minutes=60))


def test_a_question_without_any_marks_is_named_and_not_counted() -> None:
    paper = Paper("Spars", (Section((question(1, [9]), question(2, [None]))),), total=5)
    (finding,) = found("paper-total-differs", paper)
    assert finding.because == ("Q1 (9) = 9", "without marks: 2.a", "printed total: 5")


def test_marks_printed_at_a_part_with_parts_are_their_total() -> None:
    file = """
questions:
  - number: 1
    parts:
      - number: a
        total: {total}
        parts:
          - {{number: i, ask: 12 + 5, marks: 1}}
          - {{number: ii, ask: 12 - 5, marks: 2}}
      - {{number: b, ask: 12 × 5, marks: 4}}
"""
    assert found("question-total-differs", read_question_file(file.format(total=3), "t.yaml").whole()) == []
    (wrong,) = found("question-total-differs", read_question_file(file.format(total=5), "t.yaml").whole())
    assert wrong.part == "1.a"
    assert wrong.message == "Part 1.a: its parts carry 3 marks, 2 marks fewer than the printed 5."
