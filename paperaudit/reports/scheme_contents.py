"""Fills a mark scheme: cover, legend, and each question's lines with their marks and remarks."""

import re
from collections.abc import Iterable, Mapping
from itertools import zip_longest

from paperaudit.marking import convention as conventions
from paperaudit.marking.allocation import allocate
from paperaudit.marking.carried import carried_lines, established
from paperaudit.marking.convention import Convention
from paperaudit.marking.mark import Allocation, PartScheme
from paperaudit.model.audited import AuditedPaper, AuditedPart
from paperaudit.model.derivation import Derivation
from paperaudit.model.finding import Severity
from paperaudit.model.paper import Question
from paperaudit.reports.account import counted, reason_of
from paperaudit.reports.scheme_sheet import (
    Alternative,
    LegendEntry,
    PartSheet,
    PrintedMark,
    QuestionSheet,
    Row,
    SchemeSheet,
)
from paperaudit.reports.scheme_spacing import spaced
from paperaudit.reports.scheme_words import (
    answers_in_words,
    remarks_on,
    statements_beside,
    totals_in_words,
    why_not_derived,
)

_EARLIER = re.compile(r"answer\s+to\b", re.IGNORECASE)
"""A given that changes nothing in the figure: what an earlier part has found."""

RULED_LINES = (2, 4)
"""The fewest and the most lines left for the examiner at a part that was not derived."""


def contents(audited: AuditedPaper) -> SchemeSheet:
    """The mark scheme of an audited paper, under the paper's own convention and wording of reasons.

    Raises InputError for a convention or a system of wording that there is no file for.
    """
    convention = conventions.load(audited.paper.marking)
    schemes = [allocate(part, convention, established(audited.parts, part)) for part in audited.parts]
    used = [mark for scheme in schemes for allocation in _allocations(scheme) for mark in allocation.marks]
    codes, notes = {mark.kind for mark in used}, {mark.note for mark in used}
    return spaced(
        SchemeSheet(
            title=audited.paper.title or "Untitled test",
            facts=_facts(audited),
            convention=convention.title,
            about=convention.about,
            legend=_legend(convention, codes),
            notes=tuple(
                LegendEntry(note.printed, note.means) for key, note in convention.notes.items() if key in notes
            ),
            warning=_warning(audited, ""),
            questions=tuple(_questions(audited, schemes, convention)),
        )
    )


def _facts(audited: AuditedPaper) -> tuple[tuple[str, str], ...]:
    paper = audited.paper
    minutes = counted(paper.minutes, "minute") if paper.minutes is not None else ""
    questions = counted(sum(1 for _ in paper.questions()), "question")
    facts = (("Level", paper.level), ("Total", totals_in_words(audited)), ("Time", minutes), ("Length", questions))
    return tuple(fact for fact in facts if fact[1])


def _legend(convention: Convention, codes: set[str]) -> tuple[LegendEntry, ...]:
    """The letters in use, in the convention's order, then any that only the setter uses."""
    known = [
        LegendEntry(code, f"{kind.title}: {kind.earned_for}")
        for code, kind in convention.kinds.items()
        if code in codes
    ]
    own = [LegendEntry(code, "as the setter uses it") for code in sorted(codes - set(convention.kinds))]
    return (*known, *own)


def _questions(audited: AuditedPaper, schemes: list[PartScheme], convention: Convention) -> Iterable[QuestionSheet]:
    """Questions in order of print; a section's title stands at its first question."""
    at = 0
    for section in audited.paper.sections:
        title = section.title
        for question in section.questions:
            own = schemes[at : at + len(question.parts)]
            at += len(question.parts)
            yield _question(question, title, own, audited, convention)
            title = ""


def _question(
    question: Question, section: str, schemes: list[PartScheme], audited: AuditedPaper, convention: Convention
) -> QuestionSheet:
    one_part = len(schemes) == 1 and schemes[0].audited.part.id == question.number
    return QuestionSheet(
        number=question.number,
        section=section,
        text=question.text.text if question.text else "",
        statements="; ".join(line.text for line in (*question.figure, *question.given)),
        marks=str(sum(part.marks or 0 for part in question.parts) or ""),
        warning="" if one_part else _warning(audited, question.number),
        parts=tuple(_part(scheme, at == 0, audited, convention) for at, scheme in enumerate(schemes)),
        table=_table(question),
    )


def _table(question: Question) -> tuple[tuple[str, ...], ...]:
    """The question's table as rows, its names first; a short column ends in empty cells."""
    if not question.table:
        return ()
    names, columns = zip(*question.table, strict=True)
    return (names, *zip_longest(*columns, fillvalue=""))


def _part(scheme: PartScheme, is_first: bool, audited: AuditedPaper, convention: Convention) -> PartSheet:
    from paperaudit.reports import figure

    part = scheme.audited
    derivation = part.derivation()
    system = audited.paper.reasons
    known = {text: _label(source) for text, source in established(audited.parts, part).items()}
    rows = _rows(derivation, scheme.allocation, known, convention, system) if derivation else ()
    least, most = RULED_LINES
    own_figure = not is_first and bool(part.part.figure or any(not _EARLIER.match(g.text) for g in part.part.given))
    return PartSheet(
        label=_label(part),
        text=part.part.text.text if part.part.text else "",
        statements=statements_beside(part),
        options=tuple(f"{letter}  {line.text}" for letter, line in part.part.options),
        marks=str(part.part.marks or ""),
        rows=rows,
        has_reasons=_has_reasons(derivation),
        answer=answers_in_words(part, rows[-1].statement if rows else ""),
        remarks=(*why_not_derived(part), *remarks_on(scheme)),
        warning=_warning(audited, part.part.id),
        alternatives=tuple(
            Alternative(
                _rows(other.derivation, other.allocation, known, convention, system), _has_reasons(other.derivation)
            )
            for other in scheme.alternatives
        ),
        ruled=0 if rows else max(least, min(most, part.part.marks or 0)),
        figure=figure.render(part, asked=own_figure or len(part.question.parts) == 1) if is_first or own_figure else "",
    )


def _has_reasons(derivation: Derivation | None) -> bool:
    """Whether a column for reasons is due: "given" and the name of an algebraic move alone don't fill one."""
    steps = derivation.steps if derivation else ()
    return any(step.reason is not None and step.reason.name not in ("given", "algebra") for step in steps)


def _allocations(scheme: PartScheme) -> tuple[Allocation, ...]:
    """Every allocation that the scheme prints, for the legend."""
    return (scheme.allocation, *(other.allocation for other in scheme.alternatives))


def _rows(
    derivation: Derivation, allocation: Allocation, known: Mapping[str, str], convention: Convention, system: str
) -> tuple[Row, ...]:
    """The lines of a derivation; `known` has the statements of earlier parts with the labels of these."""
    last = len(derivation.steps) - 1
    carried = carried_lines(derivation, known)
    rows = []
    for at, step in enumerate(derivation.steps):
        marks = _marks_at(at, allocation, convention)
        source = f"as in {known[carried[at]]}" if carried.get(at) and not marks else ""
        rows.append(Row(step.statement, reason_of(step, system), marks, source, is_answer=at == last))
    return tuple(rows)


def _marks_at(step: int, allocation: Allocation, convention: Convention) -> tuple[PrintedMark, ...]:
    notes = convention.notes
    return tuple(
        PrintedMark(mark.printed(), notes[mark.note].printed if mark.note in notes else mark.note)
        for mark in allocation.at(step)
    )


def _label(part: AuditedPart) -> str:
    """A part's number as printed: (a), (b)(ii), 3.2.1, or "" for a question's only part.

    Levels that are digits are taken for decimal numbering, which has no brackets; the sign that tells
    repeated numbers apart is not printed.
    """
    question, part_id = part.question.number, part.part.id.replace("′", "")
    if part_id == question:
        return ""
    levels = part_id.removeprefix(f"{question}.").split(".")
    if all(level.isdigit() for level in levels):
        return part_id
    return "".join(f"({level})" for level in levels)


def _warning(audited: AuditedPaper, place: str) -> str:
    """One short line that names what the audit found at a place, "" where it found nothing to settle.

    That a part was not read is said in its remarks already.
    """
    names = [
        finding.name.replace("-", " ")
        for finding in audited.findings
        if finding.part == place and finding.severity is not Severity.NOTE and finding.name != "not-read"
    ]
    if not names and any(part.part.id == place and part.verdict == "differs" for part in audited.parts):
        names = ["answer differs"]
    return f"Settle before use. The audit found: {', '.join(dict.fromkeys(names))}." if names else ""
