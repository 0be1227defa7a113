"""The audit in the terminal: the verdict first, a line a part, then each finding with its why and its mend."""

import unicodedata
from textwrap import shorten

from rich.console import Console, RenderableType
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

from paperaudit.checks.grounds.words import as_printed
from paperaudit.model.audited import AuditedPaper, AuditedPart
from paperaudit.model.finding import Finding, Severity
from paperaudit.reports.account import (
    SEVERITY_SIGNS,
    SIGNS,
    STANDING_SIGNS,
    WORDS,
    asked,
    derived,
    place_in_words,
    stated,
    summary,
)

_WIDEST = 100
_LONGEST_ASK = 72
_LOUD = {"✗": "bold red", "!": "yellow", "?": "yellow", "i": "cyan", "✓": "green", "•": ""}
_TURNS_TEXT_ROUND = frozenset("\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")


def show(audited: AuditedPaper, console: Console) -> None:
    """Prints the report. Signs and words say everything; colour only repeats it, and only on a terminal."""
    width = min(console.width, _WIDEST)
    _show_verdict(audited, console, width)
    console.print()
    console.print(_parts(audited), width=width)
    for index, finding in enumerate(audited.findings):
        console.print()
        if index == 0:
            console.print(_told("Findings", "bold"))
            console.print()
        _show_finding(finding, console, width)


def plain(text: str) -> str:
    """Text without what a terminal would obey: control characters and marks that turn the direction round."""
    return "".join(
        " " if character in "\t\n\r" else "\ufffd" if _is_command(character) else character for character in text
    )


def _is_command(character: str) -> bool:
    return unicodedata.category(character) == "Cc" or character in _TURNS_TEXT_ROUND


def _told(text: str, style: str = "") -> Text:
    return Text(plain(text), style=style, overflow="fold")


def _signed(sign: str, text: str) -> Text:
    return _told(f"{sign} {text}", _LOUD[sign])


def _show_verdict(audited: AuditedPaper, console: Console, width: int) -> None:
    verdict = summary(audited)
    if audited.paper.title:
        console.print(_told(audited.paper.title, "bold"), width=width)
    console.print(_signed(STANDING_SIGNS[verdict.standing], verdict.headline), width=width)
    console.print(_indented(_told("; ".join(verdict.counts))), width=width)


def _parts(audited: AuditedPaper) -> Table:
    table = Table(box=None, padding=(0, 2, 0, 0), pad_edge=False, header_style="bold")
    table.add_column("Part", no_wrap=True)
    table.add_column("Ask", ratio=3, overflow="fold")
    table.add_column("Marks", justify="right", no_wrap=True)
    table.add_column("Derived", ratio=2, overflow="fold")
    table.add_column("Key", ratio=2, overflow="fold")
    table.add_column("Verdict", no_wrap=True)
    for part in audited.parts:
        table.add_row(*_row(part))
    return table


def _row(part: AuditedPart) -> tuple[Text, ...]:
    marks = "–" if part.part.marks is None else str(part.part.marks)
    return (
        _told(as_printed(part.part.id)),
        _told(shorten(plain(asked(part)), _LONGEST_ASK, placeholder=" …")),
        _told(marks),
        _told("; ".join(derived(part)) or "–"),
        _told(stated(part) or "–"),
        _signed(SIGNS[part.verdict], WORDS[part.verdict]),
    )


def _show_finding(finding: Finding, console: Console, width: int) -> None:
    head = _signed(SEVERITY_SIGNS[finding.severity], f"{finding.severity.value} {finding.name}")
    head.append(plain(f", {place_in_words(finding)}"), "dim" if finding.severity is Severity.NOTE else "not bold")
    console.print(head, width=width)
    console.print(_indented(_told(finding.message)), width=width)
    rows = Table.grid(padding=(0, 1))
    rows.add_column(width=4, no_wrap=True)
    rows.add_column(overflow="fold")
    for index, line in enumerate(finding.because):
        rows.add_row("" if index else "why", _told(line))
    if finding.suggestion:
        rows.add_row("mend", _told(finding.suggestion))
    if rows.row_count:
        console.print(_indented(rows), width=width)


def _indented(inner: RenderableType) -> Padding:
    return Padding(inner, (0, 0, 0, 2), expand=False)
