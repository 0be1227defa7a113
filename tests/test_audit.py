"""The stages of the audit: verdicts, options, proposals, and what happens when a stage fails."""

import textwrap
import time

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from paperaudit.audit import audit, audit_read, has_errors
from paperaudit.errors import BudgetExceeded, ExpressionNotRead, InputError
from paperaudit.model.audited import AuditedPaper, AuditedPart
from paperaudit.model.derivation import Derived, NotRead, Outcome
from paperaudit.model.reading import Reading
from paperaudit.readers.question_file import read_question_file
from paperaudit.strands import limits

DERIVE = "paperaudit.strands.registry.derive"


def audited(text: str) -> AuditedPaper:
    return audit_read(read_question_file(textwrap.dedent(text), "paper.yaml"))


def only(text: str) -> AuditedPart:
    (part,) = audited(f"questions: [{{number: 1, marks: 2, {text}}}]").parts
    return part


@pytest.mark.parametrize(
    ("part", "verdict"),
    [
        ("ask: solve x + 2 = 5, answer: x = 3", "confirmed"),
        ("ask: solve x + 2 = 5, answer: 3", "confirmed"),
        ("ask: solve x + 2 = 5", "derived"),
        ("ask: solve x + 2 = 5, answer: x = 4", "differs"),
        ("ask: solve x + 2 = 5, answer: as in class", "not-read"),
        ("text: Explain how a sail is cut.", "not-read"),
        ("figure: [triangle ABC], given: [∠BAC = 40°, ∠ABC = 50°], ask: ∠ACB, answer: 90°", "confirmed"),
        ("figure: [triangle ABC], given: [∠BAC = 140°, ∠ABC = 50°], ask: ∠ACB", "impossible"),
        ("figure: [triangle ABC], given: [∠BAC = 40°], ask: ∠ACB", "not-determined"),
        ("ask: 'calculate 1 + 1', options: {A: 1, B: 2, C: 3}, answer: B", "confirmed"),
        ("ask: 'calculate 1 + 1', options: {A: 1, B: 2, C: 3}, answer: (b)", "confirmed"),
        ("ask: 'calculate 1 + 1', options: {A: 1, B: 2, C: 3}, answer: '2'", "confirmed"),
        ("ask: 'calculate 1 + 1', options: {A: 1, B: 2, C: 3}, answer: A", "differs"),
        ("ask: 'calculate 1 + 1', options: {A: 1, B: 2, C: 4/2}, answer: B", "confirmed"),
        ("ask: 'calculate 1 + 1', options: {A: 1, B: the second, C: 3}, answer: B", "not-read"),
    ],
)
def test_the_verdict_on_a_part(part: str, verdict: str) -> None:
    assert only(part).verdict == verdict


def test_a_setters_own_skills_and_level_are_kept_and_the_others_proposed() -> None:
    own = only("ask: solve x + 2 = 5, skills: [knots], level: complex")
    assert (own.skills, own.level, own.proposed) == (("knots",), "complex", ())
    unread = only("text: Explain how a sail is cut.")
    assert (unread.skills, unread.level, unread.proposed) == ((), None, ())
    proposed = only("ask: solve x + 2 = 5")
    assert proposed.skills and proposed.proposed == ("skills", "level")


def test_a_part_may_build_on_another() -> None:
    paper = audited("""\
        questions:
          - number: 1
            parts:
              - {number: a, ask: solve x + 2 = 5, answer: x = 3, marks: 2}
              - {number: b, given: [y = answer to a], ask: calculate 2y + 1, answer: 7, marks: 2}
          - number: 2
            figure: [triangle ABC, BC is produced to D]
            given: [∠ACD = 112°]
            parts:
              - {number: a, ask: ∠ACB, answer: 60°, marks: 2}
              - {number: b, given: [answer to a, ∠BAC = 50°], ask: ∠ABC, answer: 62°, marks: 2}
              - {number: c, given: [∠BAC = answer to 2.b], ask: ∠ABC, answer: 50°, marks: 2}
              - {number: d, given: [∠BAC = answer to e], ask: ∠ABC, answer: 50°, marks: 2}
        """)
    # What was derived counts, not the wrong key of 2.a.
    verdicts = [part.verdict for part in paper.parts]
    assert verdicts == ["confirmed", "confirmed", "differs", "confirmed", "confirmed", "not-read"]
    assert paper.parts[-1].outcome == NotRead("it builds on the answer to e, and no part e stands above it")


def test_parts_with_numbers_build_on_each_other_by_every_way_of_naming_a_part() -> None:
    paper = audited("""\
        questions:
          - number: 1
            parts:
              - {number: a, ask: 150 + 40 × 3, answer: R270, marks: 2}
              - {number: b, given: [answer to a], ask: 5 × answer to a, answer: R1 350, marks: 2}
              - number: c
                parts:
                  - {number: i, ask: 20% of answer to a, given: [answer to 1.a], answer: 54, marks: 2}
                  - {number: ii, ask: 2 × answer to c.i, given: [the answer to c(i)], answer: 108, marks: 2}
                  - {number: iii, ask: 2 × answer to (c)(i), answer: 108, marks: 2}
                  - {number: iv, ask: 2 × answer to i, answer: 108, marks: 2}
        """)
    assert {part.verdict for part in paper.parts} == {"confirmed"}
    assert not [finding for finding in paper.findings if finding.name in ("not-read", "unused-given")]


def test_what_a_part_builds_on_is_not_blamed_where_the_earlier_part_is_missing() -> None:
    paper = audited("""\
        questions:
          - {number: 1, text: Explain the knot., marks: 2}
          - {number: 2, ask: 5 × answer to 1, given: [answer to 1], marks: 2}
        """)
    (finding,) = [one for one in paper.findings if one.part == "2" and one.name == "not-read"]
    assert "part 1, which has no single derived answer" in finding.message
    assert finding.because == ()


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ("Find the mode.", "statistics (mode) is not audited in this form: “Find the mode.”"),
    ],
)
def test_topics_that_are_not_audited_yet_are_called_so(words: str, said: str) -> None:
    part = only(f"text: '{words}'")
    assert isinstance(part.outcome, NotRead)
    assert said in part.outcome.why


def test_findings_come_with_the_audit_and_errors_are_told_from_the_rest() -> None:
    wrong = audited("questions: [{number: 1, ask: solve x + 2 = 5, answer: x = 4, marks: 2}]")
    assert "answer-differs" in [finding.name for finding in wrong.findings]
    assert has_errors(wrong)
    assert not has_errors(audited("questions: [{number: 1, ask: solve x + 2 = 5, answer: x = 3, marks: 2}]"))


def failing(error: Exception) -> object:
    def derive(reading: Reading, *_: object) -> tuple[str, Outcome]:
        raise error

    return derive


@pytest.mark.parametrize(
    ("error", "why"),
    [
        (ZeroDivisionError("x"), "internal error: ZeroDivisionError"),
        (RecursionError(), "internal error: RecursionError"),
        (BudgetExceeded("more than 1000 figures"), "more than 1000 figures"),
        (BudgetExceeded(), "the search was longer than allowed"),
    ],
)
def test_what_goes_wrong_inside_a_stage_leaves_the_part_unread(
    error: Exception, why: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(DERIVE, failing(error))
    paper = audited("questions: [{number: 1, ask: solve x + 2 = 5, answer: x = 3, marks: 2}]")
    assert paper.parts[0].verdict == "not-read"
    assert paper.parts[0].outcome == NotRead(why)
    assert [finding.name for finding in paper.findings if finding.part == "1"] == ["not-read"]


def test_a_statement_beyond_the_limits_is_bad_input(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(DERIVE, failing(ExpressionNotRead("a power that is too high")))
    with pytest.raises(InputError, match=r"paper.yaml, line 1: part 1: .*a power that is too high"):
        audited("questions: [{number: 1, ask: solve x + 2 = 5, marks: 2}]")


def test_a_part_has_a_limited_time(monkeypatch: pytest.MonkeyPatch) -> None:
    def derive(reading: Reading, *_: object) -> tuple[str, Outcome]:
        time.sleep(30)
        raise AssertionError

    monkeypatch.setattr(DERIVE, derive)
    monkeypatch.setattr(limits, "SECONDS_A_PART", 1)
    part = only("ask: solve x + 2 = 5")
    assert part.outcome == NotRead("the search took longer than 1 seconds")


def test_prose_that_cannot_be_read_stops_its_part_and_no_other() -> None:
    paper = audited("""\
        questions:
          - {number: 1, text: Describe the knot at ∠ABC of the glorp., marks: 1}
          - {number: 2, ask: solve x + 2 = 5, marks: 2}
        """)
    assert [part.verdict for part in paper.parts] == ["not-read", "derived"]
    assert "not-read" in [finding.name for finding in paper.findings if finding.part == "1"]


def test_a_figure_that_the_program_knows_of_and_cannot_treat_yet_stops_its_part_and_no_other() -> None:
    paper = audited("""\
        questions:
          - {number: 1, figure: ["cylinder with centre O through A, B and C"], ask: ∠AOB, marks: 1}
          - {number: 2, ask: solve x + 2 = 5, marks: 2}
        """)
    assert [part.verdict for part in paper.parts] == ["not-read", "derived"]


def test_unreadable_statements_are_all_named_once_with_their_owner() -> None:
    with pytest.raises(InputError) as raised:
        audited("""\
            questions:
              - number: 1
                given: [AB glorps AC]
                parts:
                  - {number: a, ask: ∠ABC}
                  - {number: b, ask: ∠(((}
            """)
    lines = [complaint.describe().split(": '")[0] for complaint in raised.value.complaints]
    assert lines == ["paper.yaml, line 3: question 1: given", "paper.yaml, line 6: part 1.b: ask"]


def test_an_audit_of_a_paper_is_the_audit_of_its_file() -> None:
    text = "questions: [{number: 1, ask: solve x + 2 = 5, marks: 2}]"
    assert audit(read_question_file(text, "paper.yaml").whole()) == audited(text)


@settings(max_examples=60, deadline=None)
@given(st.text(alphabet=st.sampled_from("ABCxy∠°=+-−×/^()[]0123456789.,%:√ solve calculate triangle"), max_size=40))
def test_any_ask_is_audited_or_complained_of(ask: str) -> None:
    quoted = ask.replace("'", "")
    try:
        paper = audited(f"questions: [{{number: 1, marks: 2, ask: '{quoted}'}}]")
    except InputError as error:
        assert error.complaints
    else:
        assert paper.parts[0].verdict in ("derived", "not-read", "not-determined", "impossible", "several")
        assert (paper.parts[0].verdict == "derived") == isinstance(paper.parts[0].outcome, Derived)


def test_a_story_beside_an_ask_of_the_setters_own_need_not_be_understood() -> None:
    story = "A tank of the Tidewater loft holds 240 litres. It is filled to 65% of its height by the tide."
    file = f"questions: [{{number: 1, text: {story}, ask: 65% of 240 litres, answer: 156 litres, marks: 2}}]"
    (part,) = audit(read_question_file(file, "t.yaml").whole()).parts
    assert part.verdict == "confirmed"
