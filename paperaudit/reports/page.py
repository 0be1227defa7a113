"""The audit as one self-contained HTML page: verdict, table of parts, findings, workings, cautions."""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from paperaudit.checks import discovered
from paperaudit.model.audited import AuditedPaper, AuditedPart
from paperaudit.model.derivation import Derivation, Derived, Several
from paperaudit.model.finding import Finding
from paperaudit.model.place import Place
from paperaudit.reports.account import (
    SEVERITY_SIGNS,
    SIGNS,
    STANDING_SIGNS,
    WORDS,
    asked,
    counted,
    derived,
    place_in_words,
    reason_of,
    remarks,
    stated,
    summary,
)
from paperaudit.resources import shipped

if TYPE_CHECKING:
    from markupsafe import Markup

_UNBROKEN = "\u00a0"
_RELATION = re.compile(r" ([=∥⊥≡∼]) ")

CAUTIONS = (
    "Confidential: this page is about a draft test and shows its answers.",
    "It does not replace the judgement of the examiner and the moderator.",
    "Where it differs from the marking policy of the school or the examining authority, that policy prevails.",
    "Skills and levels that the paper does not state are proposals.",
)


@dataclass(frozen=True, slots=True)
class _Line:
    """One line of working with its reason in words."""

    statement: str
    reason: str


@dataclass(frozen=True, slots=True)
class _Working:
    """One way to the answer, and what confirmed it; `title` is "" where it is the only one."""

    title: str
    lines: tuple[_Line, ...]
    has_reasons: bool
    confirmed_by: str


@dataclass(frozen=True, slots=True)
class _Part:
    """A part as the page shows it; `question_lines` and `figure` are there where they were not shown before."""

    id: str
    anchor: str
    asked: str
    marks: str
    marks_in_words: str
    derived: str
    stated: str
    verdict: str
    sign: str
    words: str
    question_lines: tuple[str, ...]
    figure: "Markup | None"
    workings: tuple[_Working, ...]
    remarks: tuple[str, ...]
    tags: str


@dataclass(frozen=True, slots=True)
class _Finding:
    """A finding as the page shows it; `anchor` leads to its part, "" where it concerns the paper."""

    name: str
    title: str
    severity: str
    sign: str
    message: str
    because: tuple[str, ...]
    suggestion: str
    place: str
    anchor: str


def render(audited: AuditedPaper) -> str:
    """The page. It needs no script and no other file, and shows what the paper says as text only."""
    from jinja2 import Environment, FileSystemLoader, StrictUndefined

    environment = Environment(
        loader=FileSystemLoader(shipped("schemes", "templates", "page")),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
    verdict = summary(audited)
    return environment.get_template("page.html").render(
        title=audited.paper.title or "Untitled test",
        cover=_cover(audited),
        summary=verdict,
        sign=STANDING_SIGNS[verdict.standing],
        parts=_parts(audited),
        findings=[_finding(finding, audited) for finding in audited.findings],
        cautions=CAUTIONS,
    )


def _cover(audited: AuditedPaper) -> tuple[str, ...]:
    paper = audited.paper
    total = counted(paper.total if paper.total is not None else paper.marks_sum(), "mark")
    minutes = counted(paper.minutes, "minute") if paper.minutes is not None else ""
    return tuple(line for line in (paper.level, total, minutes) if line)


def _parts(audited: AuditedPaper) -> tuple[_Part, ...]:
    """Every part; what the parts of a question share, its figure too, is shown at the first of them."""
    from markupsafe import Markup

    from paperaudit.reports import figure

    shown: list[_Part] = []
    begun: set[tuple[str, Place]] = set()
    drawn: set[tuple[str, Place]] = set()
    for index, part in enumerate(audited.parts):
        question = (part.question.number, part.question.place)
        adds_to_it = bool(part.part.figure or part.part.given)
        drawing = figure.render(part) if adds_to_it or question not in drawn else ""
        shown.append(
            _part(
                part,
                anchor=_anchor(index),
                system=audited.paper.reasons,
                drawing=Markup(drawing) if drawing else None,
                with_question=question not in begun,
            )
        )
        begun.add(question)
        if drawing:
            drawn.add(question)
    return tuple(shown)


def _part(part: AuditedPart, anchor: str, system: str, drawing: "Markup | None", with_question: bool) -> _Part:
    marks = part.part.marks
    return _Part(
        id=part.part.id,
        anchor=anchor,
        asked=asked(part),
        marks="–" if marks is None else str(marks),
        marks_in_words="no marks printed" if marks is None else counted(marks, "mark"),
        derived="; ".join(derived(part)),
        stated=stated(part),
        verdict=part.verdict,
        sign=SIGNS[part.verdict],
        words=WORDS[part.verdict],
        question_lines=_question_lines(part, with_question),
        figure=drawing,
        workings=_workings(part, system),
        remarks=remarks(part),
        tags=_tags(part),
    )


def _workings(part: AuditedPart, system: str) -> tuple[_Working, ...]:
    """Every way to the one answer, or the way to each of several."""
    outcome = part.outcome
    if not isinstance(outcome, Derived | Several):
        return ()
    others = ("Another way",) * (len(outcome.derivations) - 1)
    titles = tuple(f"For {text}" for text in derived(part)) if isinstance(outcome, Several) else ("", *others)
    return tuple(_working(one, title, system) for one, title in zip(outcome.derivations, titles, strict=False))


def _working(derivation: Derivation, title: str, system: str) -> _Working:
    lines = tuple(_Line(step.statement, _unbroken(reason_of(step, system))) for step in derivation.steps)
    return _Working(title, lines, any(line.reason for line in lines), derivation.confirmed_by)


def _unbroken(sentence: str) -> str:
    """A sentence whose relations (AB = AC) stay on one line."""
    return _RELATION.sub(f"{_UNBROKEN}\\1{_UNBROKEN}", sentence)


def _question_lines(part: AuditedPart, with_question: bool) -> tuple[str, ...]:
    """The printed words, statements and options: the question's at its first part, then the part's own."""
    question = part.question
    prose = [line.text for line in (question.text if with_question else None, part.part.text) if line is not None]
    shared = (*question.figure, *question.given) if with_question else ()
    statements = "; ".join(line.text for line in (*shared, *part.part.figure, *part.part.given))
    options = "; ".join(f"{letter}: {line.text}" for letter, line in part.part.options)
    return tuple(line for line in (*prose, statements, options) if line)


def _tags(part: AuditedPart) -> str:
    """Skills and level, each with the word "proposed" where the paper does not state it."""
    told: Iterable[tuple[str, str]] = (("skills", ", ".join(part.skills)), ("level", part.level))
    tags = "; ".join(f"{'proposed ' if kind in part.proposed else ''}{kind}: {text}" for kind, text in told if text)
    return tags[:1].upper() + tags[1:]


def _finding(finding: Finding, audited: AuditedPaper) -> _Finding:
    check = discovered().get(finding.name)
    return _Finding(
        name=finding.name,
        title=check.title if check else finding.name,
        severity=finding.severity.value,
        sign=SEVERITY_SIGNS[finding.severity],
        message=_unbroken(finding.message),
        because=finding.because,
        suggestion=_unbroken(finding.suggestion),
        place=place_in_words(finding),
        anchor=_anchor_of(finding.part, audited),
    )


def _anchor_of(place: str, audited: AuditedPaper) -> str:
    """Where on the page a part, or the first part of a question, is; "" where it is not known."""
    numbers = [(part.part.id, part.question.number) for part in audited.parts]
    for index, names in enumerate(numbers):
        if place and place == names[0]:
            return _anchor(index)
    return next((_anchor(index) for index, names in enumerate(numbers) if place and place == names[1]), "")


def _anchor(index: int) -> str:
    """By position, since printed numbers may repeat."""
    return f"part-{index + 1}"
