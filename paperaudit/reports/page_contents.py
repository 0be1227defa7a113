"""What the page of an audit shows, as plain values: parts with workings and figures, findings with their places."""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from paperaudit.checks import discovered
from paperaudit.checks.grounds.words import as_printed
from paperaudit.model.audited import AuditedPaper, AuditedPart
from paperaudit.model.derivation import Derivation, Derived, NotDetermined, Several
from paperaudit.model.finding import Finding
from paperaudit.model.place import Place
from paperaudit.reports.account import (
    SEVERITY_SIGNS,
    SIGNS,
    WORDS,
    asked,
    counted,
    derived,
    place_in_words,
    reason_of,
    remarks,
    stated,
)

if TYPE_CHECKING:
    from markupsafe import Markup

_MOST_CASES = 4
_UNBROKEN = "\u00a0"
_RELATION = re.compile(r" ([=∥⊥≡∼]) ")


@dataclass(frozen=True, slots=True)
class LineShown:
    """One line of working with its reason in words."""

    statement: str
    reason: str


@dataclass(frozen=True, slots=True)
class WorkingShown:
    """One way to the answer, and what confirmed it; `title` is "" where it is the only one."""

    title: str
    lines: tuple[LineShown, ...]
    has_reasons: bool
    confirmed_by: str


@dataclass(frozen=True, slots=True)
class FigureShown:
    """A drawing as SVG, and what it shows where there is more than one."""

    drawing: "Markup"
    caption: str


@dataclass(frozen=True, slots=True)
class PartShown:
    """A part as the page shows it; `question_lines` leaves out what an earlier part has shown."""

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
    figures: tuple[FigureShown, ...]
    workings: tuple[WorkingShown, ...]
    remarks: tuple[str, ...]
    tags: str


@dataclass(frozen=True, slots=True)
class FindingShown:
    """A finding as the page shows it; `anchor` leads to its part, "" where it concerns the paper; `page` may be 0."""

    name: str
    title: str
    severity: str
    sign: str
    message: str
    because: tuple[str, ...]
    suggestion: str
    place: str
    anchor: str
    number: int
    page: int


def cover(audited: AuditedPaper) -> tuple[str, ...]:
    """What the paper's cover says: level, total and minutes, where they are known."""
    paper = audited.paper
    total = counted(paper.marks_sum(), "mark")
    if paper.total is not None and paper.total != paper.marks_sum():
        total += f" (the cover says {paper.total})"
    minutes = counted(paper.minutes, "minute") if paper.minutes is not None else ""
    return tuple(line for line in (paper.level, total, minutes) if line)


def parts(audited: AuditedPaper) -> tuple[PartShown, ...]:
    """Every part; the words that the parts of a question share are shown at the first of them."""
    shown: list[PartShown] = []
    begun: set[tuple[str, Place]] = set()
    for index, part in enumerate(audited.parts):
        question = (part.question.number, part.question.place)
        shown.append(_part(part, _anchor(index), audited.paper.reasons, question not in begun))
        begun.add(question)
    return tuple(shown)


def _figures(part: AuditedPart) -> tuple[FigureShown, ...]:
    """The part's figure; of an open question the first figures that meet its givens, each with what it shows."""
    from markupsafe import Markup

    from paperaudit.reports import figure

    match part.outcome:
        case NotDetermined(cases) | Several(cases=cases) if cases:
            drawn = [(figure.render_case(part, case), case.description) for case in cases[:_MOST_CASES]]
        case _:
            drawn = [(figure.render(part), "")]
    return tuple(FigureShown(Markup(drawing), caption) for drawing, caption in drawn if drawing)


def _part(part: AuditedPart, anchor: str, system: str, with_question: bool) -> PartShown:
    marks, figures = part.part.marks, _figures(part)
    return PartShown(
        id=as_printed(part.part.id),
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
        figures=figures,
        workings=_workings(part, system),
        remarks=() if any(figure.caption for figure in figures) else remarks(part),
        tags=_tags(part),
    )


def _workings(part: AuditedPart, system: str) -> tuple[WorkingShown, ...]:
    """Every way to the one answer, or the way to each of several."""
    outcome = part.outcome
    if not isinstance(outcome, Derived | Several):
        return ()
    others = ("Another way",) * (len(outcome.derivations) - 1)
    titles = tuple(f"For {text}" for text in derived(part)) if isinstance(outcome, Several) else ("", *others)
    return tuple(_working(one, title, system) for one, title in zip(outcome.derivations, titles, strict=False))


def _working(derivation: Derivation, title: str, system: str) -> WorkingShown:
    lines = tuple(LineShown(step.statement, _unbroken(reason_of(step, system))) for step in derivation.steps)
    return WorkingShown(title, lines, any(line.reason for line in lines), derivation.confirmed_by)


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
    told: Iterable[tuple[str, str]] = (("skills", ", ".join(part.skills)), ("level", part.level or ""))
    tags = "; ".join(f"{'proposed ' if kind in part.proposed else ''}{kind}: {text}" for kind, text in told if text)
    return tags[:1].upper() + tags[1:]


def finding_shown(finding: Finding, audited: AuditedPaper, number: int = 1) -> FindingShown:
    """A finding with its check's title; a finding of no check of ours keeps its name. `number` is its rank."""
    check = discovered().get(finding.name)
    return FindingShown(
        name=finding.name,
        title=check.title if check else finding.name,
        severity=finding.severity.value,
        sign=SEVERITY_SIGNS[finding.severity],
        message=_unbroken(finding.message),
        because=finding.because,
        suggestion=_unbroken(finding.suggestion),
        place=place_in_words(finding),
        anchor=_anchor_of(finding.part, audited),
        number=number,
        page=finding.place.page,
    )


def _anchor_of(place: str, audited: AuditedPaper) -> str:
    """Where on the page a part, or the first part of a question, is; "" where it is not known."""
    numbers = [(part.part.id, part.question.number) for part in audited.parts]
    for index, names in enumerate(numbers):
        if place and place == names[0]:
            return _anchor(index)
    below = (index for index, (id, number) in enumerate(numbers) if place == number or id.startswith(f"{place}."))
    return next((_anchor(index) for index in below if place), "")


def _anchor(index: int) -> str:
    """By position, since printed numbers may repeat."""
    return f"part-{index + 1}"
