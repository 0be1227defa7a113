"""Every check on its own two examples, through the whole audit: the fault is found, and is gone when mended."""

from functools import cache

import pytest

from paperaudit.audit import audit
from paperaudit.checks import discovered, explain, find_all, names
from paperaudit.errors import InputError
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding, Severity
from paperaudit.model.paper import Paper, Part, Question, Section
from paperaudit.readers.question_file import read_question_file

PROMISED = {
    "answer-differs",
    "impossible-givens",
    "not-determined",
    "several-answers",
    "unused-given",
    "drawing-contradicts-givens",
    "label-mismatch",
    "figure-missing",
    "rounding-not-stated",
    "unit-missing",
    "unit-clash",
    "symbol-doubtful",
    "marks-missing",
    "question-total-differs",
    "section-total-differs",
    "paper-total-differs",
    "key-marks-differ",
    "too-few-marks",
    "too-many-marks",
    "reasons-not-rewarded",
    "numbering-gap",
    "numbering-repeat",
    "cover-differs",
    "no-correct-option",
    "two-correct-options",
    "repeated-option",
    "key-not-an-option",
    "level-off-target",
    "skill-off-target",
    "time-pressure",
    "not-read",
    "wrong-method-right-answer",
}

OF_THE_PRINTED_PAGE = {"page-number-missing", "small-print", "faint-print", "figure-overleaf", "answer-space"}
"""Findings that only a draft's own pages can give."""


@cache
def findings(text: str) -> tuple[Finding, ...]:
    return audit(read_question_file(text, "example.yaml").whole()).findings


@pytest.mark.parametrize("name", names())
def test_the_faulty_example_has_the_fault_and_no_other(name: str) -> None:
    check = discovered()[name]
    found = {finding.name for finding in findings(check.faulty)}
    assert name in found
    assert found <= {name, *check.alongside}


@pytest.mark.parametrize("name", names())
def test_the_mended_example_has_no_fault_at_all(name: str) -> None:
    assert [finding.message for finding in findings(discovered()[name].clean)] == []


@pytest.mark.parametrize("name", names())
def test_a_finding_says_what_it_is_and_what_would_mend_it(name: str) -> None:
    check = discovered()[name]
    for finding in findings(check.faulty):
        assert finding.message.endswith(".")
        assert finding.suggestion.endswith(".")
        assert "  " not in finding.message
    (first, *_) = [finding for finding in findings(check.faulty) if finding.name == name]
    assert first.severity is check.severity
    assert first.place.line > 0 or first.part == ""


def test_every_promised_finding_is_there() -> None:
    assert set(names()) == PROMISED | OF_THE_PRINTED_PAGE


@pytest.mark.parametrize("name", names())
def test_the_page_of_a_finding_explains_it(name: str) -> None:
    page = explain(name)
    headings = ["What it means", "Why it matters", "An example with this fault", "How to mend it"]
    assert page.startswith(f"{name} ({discovered()[name].severity.value})")
    places = [page.index(heading) for heading in headings]
    assert places == sorted(places)
    prose = [line for line in page.splitlines() if not line.startswith("    ")]
    assert max(map(len, prose)) <= 80


def test_an_unknown_finding_is_refused_with_the_nearest_name() -> None:
    with pytest.raises(InputError, match="did you mean 'answer-differs'"):
        explain("answer-difers")
    with pytest.raises(InputError, match=r"no finding named 'sail'\. The findings are: answer-differs"):
        explain("sail")


def test_findings_are_sorted_the_gravest_first_and_then_as_the_paper_is_printed() -> None:
    parts = (Part("1.a", "a"), Part("1.b", "b", marks=2, split=("M1",)), Part("1.d", "d", marks=1))
    paper = Paper(
        "Spars",
        (Section((Question("1", parts, total=2), Question("1", (Part("1′", "1", marks=1),)))),),
        total=2,
        claims=(("questions", 1),),
        minutes=1,
    )
    found = [(finding.part, finding.severity, finding.name) for finding in find_all(AuditedPaper(paper, ()))]
    assert found == [
        ("", Severity.ERROR, "cover-differs"),
        ("", Severity.ERROR, "paper-total-differs"),
        ("1", Severity.ERROR, "question-total-differs"),
        ("1.a", Severity.ERROR, "marks-missing"),
        ("1.b", Severity.ERROR, "key-marks-differ"),
        ("1′", Severity.ERROR, "numbering-repeat"),
        ("", Severity.WARNING, "time-pressure"),
        ("1.d", Severity.WARNING, "numbering-gap"),
    ]
