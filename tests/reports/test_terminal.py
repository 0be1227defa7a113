"""The terminal report: readable at 80 columns without colour, and deaf to what a paper may slip into a terminal."""

import io
from dataclasses import replace

import pytest
from rich.console import Console

from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding, Severity
from paperaudit.model.paper import Line
from paperaudit.model.place import Place
from paperaudit.reports.terminal import plain, show
from tests import sail_loft

FINDINGS = (
    Finding(
        "paper-total-differs",
        Severity.ERROR,
        "The questions carry 22 marks, 2 marks fewer than the total of 24.",
        because=("Q1 (9) + Q2 (3) = 12", "printed total: 24"),
        suggestion="Print 12 on the cover.",
    ),
    Finding(
        "unused-given",
        Severity.NOTE,
        "Question 1: “∠ACD = 112°” is not needed for any answer.",
        "1",
        place=Place(file="loft.yaml", line=9),
    ),
)


def shown(audited: AuditedPaper, width: int = 80) -> str:
    out = io.StringIO()
    show(audited, Console(file=out, width=width))
    return out.getvalue()


def test_the_verdict_comes_first_and_then_every_part() -> None:
    lines = shown(replace(sail_loft.paper(), findings=FINDINGS)).splitlines()
    assert lines[0] == "Harbour Loft School: Term 2 test"
    assert lines[1] == "✗ Not ready to print: 1 error found"
    assert lines[2].strip() == "6 of 9 parts re-derived; 1 error, no warnings, 1 note"
    for number, verdict in (
        ("1.a", "✓ confirmed"),
        ("3", "• derived, no key"),
        ("6", "? not audited"),
        ("7", "✗ impossible"),
        ("8", "✗ not determined"),
    ):
        assert any(line.startswith(f"{number} ") and line.rstrip().endswith(verdict) for line in lines), number


def test_each_finding_says_where_why_and_what_would_mend_it() -> None:
    text = shown(replace(sail_loft.paper(), findings=FINDINGS))
    assert "✗ error paper-total-differs, whole paper" in text
    assert "why  Q1 (9) + Q2 (3) = 12" in text
    assert "mend Print 12 on the cover." in text
    assert "i note unused-given, question 1, loft.yaml, line 9" in text


@pytest.mark.parametrize("width", [40, 60, 80])
def test_no_line_is_wider_than_the_terminal(width: int) -> None:
    long = Finding(
        "not-read",
        Severity.WARNING,
        "Question 6 " + "was not audited, for a reason " * 12,
        "6",
        because=("∠" + "A" * 200,),
    )
    text = shown(replace(sail_loft.paper(), findings=(long,)), width)
    assert max(len(line.rstrip()) for line in text.splitlines()) <= width


def test_nothing_but_text_is_printed_where_there_is_no_terminal() -> None:
    assert "\x1b" not in shown(replace(sail_loft.paper(), findings=FINDINGS))


def test_a_paper_cannot_command_the_terminal() -> None:
    evil = "\x1b[2J[bold red]Term 2[/bold red]\u202e:smile:\x07"
    part = sail_loft.base_angle(answer=Line("\x1b]0;gotcha\x07 68°"))
    text = shown(replace(sail_loft.paper(part, title=evil), findings=(Finding("x", Severity.ERROR, evil, "1.a"),)))
    assert not any(character in text for character in "\x1b\x07\u202e")
    assert "[bold red]Term 2[/bold red]" in text
    assert ":smile:" in text


def test_line_ends_inside_a_statement_do_not_break_the_layout() -> None:
    assert plain("AB\n=\tAC") == "AB = AC"


def test_a_sound_paper_is_told_so() -> None:
    lines = shown(sail_loft.paper(sail_loft.base_angle(), sail_loft.equation())).splitlines()
    assert lines[1] == "✓ No error found: every part was re-derived"
    assert not any(line.startswith("Findings") for line in lines)


def test_a_part_that_nobody_checked_keeps_the_paper_from_being_called_sound() -> None:
    lines = shown(sail_loft.paper(sail_loft.base_angle(), sail_loft.not_read())).splitlines()
    assert lines[1] == "! 1 of 2 parts audited, no error found in it"
