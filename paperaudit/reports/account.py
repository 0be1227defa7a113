"""What the reports of an audit have in common: the verdicts in words, and a part as rows and lines."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import PurePath
from types import MappingProxyType
from typing import Literal

from paperaudit.checks.grounds.words import as_printed, stated_by_key
from paperaudit.marking.reasons import word
from paperaudit.model.audited import AuditedPaper, AuditedPart, Verdict
from paperaudit.model.derivation import Derived, Impossible, NotDetermined, NotRead, Several, Step
from paperaudit.model.finding import Finding, Severity

SIGNS: Mapping[Verdict, str] = MappingProxyType(
    {
        "confirmed": "✓",
        "derived": "•",
        "differs": "✗",
        "impossible": "✗",
        "not-determined": "✗",
        "several": "✗",
        "not-read": "?",
    }
)
"""A sign for each verdict, so that colour is never needed to tell them apart."""

WORDS: Mapping[Verdict, str] = MappingProxyType(
    {
        "confirmed": "confirmed",
        "derived": "derived, no key",
        "differs": "key differs",
        "impossible": "impossible",
        "not-determined": "not determined",
        "several": "several answers",
        "not-read": "not audited",
    }
)
"""Each verdict in a teacher's words, short enough for a column."""

SEVERITY_SIGNS: Mapping[Severity, str] = MappingProxyType(
    {
        Severity.ERROR: "✗",
        Severity.WARNING: "!",
        Severity.NOTE: "i",
    }
)

STANDING_SIGNS = MappingProxyType({"errors": "✗", "look": "!", "clear": "✓"})
"""A sign for how the whole paper stands."""


@dataclass(frozen=True, slots=True)
class Summary:
    """The verdict on the whole paper: how it stands, a headline, and the counts behind it."""

    standing: Literal["errors", "look", "clear"]
    headline: str
    counts: tuple[str, ...]


def summary(audited: AuditedPaper) -> Summary:
    """The verdict on the whole paper; a part that was not audited is never passed over."""
    errors, warnings, notes = (_having(audited.findings, severity) for severity in Severity)
    unread = sum(part.verdict == "not-read" for part in audited.parts)
    total = len(audited.parts)
    answers = f"{rederived(audited)} of {counted(total, 'part')} re-derived"
    findings = ", ".join((counted(errors, "error"), counted(warnings, "warning"), counted(notes, "note")))
    if errors:
        return Summary("errors", f"Not ready to print: {counted(errors, 'error')} found", (answers, findings))
    if unread:
        headline = f"{total - unread} of {counted(total, 'part')} audited, no error found in {_these(total - unread)}"
        return Summary("look", headline, (answers, findings))
    if warnings:
        headline = f"No error found; {counted(warnings, 'warning')} to look at"
        return Summary("look", headline, (answers, findings))
    return Summary("clear", "No error found: every part was re-derived", (answers, findings))


def _these(amount: int) -> str:
    return {0: "the marks and the numbering", 1: "it"}.get(amount, "them")


def rederived(audited: AuditedPaper) -> int:
    """How many parts have an answer that two independent ways agree on."""
    return sum(isinstance(part.outcome, Derived | Several) for part in audited.parts)


def asked(part: AuditedPart) -> str:
    """What a part asks, as read, else as printed."""
    if part.reading.ask is not None:
        ask = part.reading.ask
        return f"{ask.text} (read as: {ask.read_as})" if ask.read_as else ask.text
    for line in (part.part.ask, part.part.text, part.question.text):
        if line is not None:
            return line.text
    return ""


def derived(part: AuditedPart) -> tuple[str, ...]:
    """The derived answers, a text each; none where there is none."""
    outcome = part.outcome
    return tuple(answer.text for answer in outcome.answers) if isinstance(outcome, Derived | Several) else ()


def stated(part: AuditedPart) -> str:
    """The setter's own answer as printed, "" where none is stated; an option with what it says."""
    return stated_by_key(part.part)


def reason_of(step: Step, system: str) -> str:
    """The reason of a line in a system's wording, "" where the line has none."""
    return word(step.reason, system) if step.reason else ""


def remarks(part: AuditedPart) -> tuple[str, ...]:
    """What stands in place of a working, or beside it: the clash, the cases, what stopped the reading."""
    match part.outcome:
        case Impossible(clash, why):
            return (*clash, *why)
        case NotDetermined(cases):
            return tuple(case.description for case in cases)
        case Several(cases=cases, derivations=()):
            return tuple(case.description for case in cases)
        case _:
            return tuple(why for why in (stopped_by(part),) if why)


def stopped_by(part: AuditedPart) -> str:
    """What kept a part from being audited, "" where it was: its reading, its derivation or the comparison."""
    if isinstance(part.outcome, NotRead):
        return part.outcome.why
    return part.comparison.why if part.comparison and part.verdict == "not-read" else ""


def place_in_words(finding: Finding) -> str:
    """Where a finding is, for a reader: the part, and the spot in the file (by its bare name) where it is known."""
    where = replace(finding.place, file=PurePath(finding.place.file).name).describe()
    what = f"{'part' if '.' in finding.part else 'question'} {as_printed(finding.part)}"
    return ", ".join(words for words in (what if finding.part else "whole paper", where) if words)


def counted(amount: int, thing: str) -> str:
    """A number of things: "no errors", "1 error", "3 errors"."""
    return f"{amount or 'no'} {thing}" if amount == 1 else f"{amount or 'no'} {thing}s"


def _having(findings: tuple[Finding, ...], severity: Severity) -> int:
    return sum(finding.severity is severity for finding in findings)
