"""Picks the figure that is meant by a question's or a part's number."""

from collections.abc import Iterator, Sequence

from paperaudit.errors import Complaint, InputError
from paperaudit.model.audited import AuditedPaper, AuditedPart
from paperaudit.readers.complaints import did_you_mean
from paperaudit.reports import figure


def figure_of(audited: AuditedPaper, number: str) -> str:
    """The SVG of the part `number` ("1.a"), or of the first part of the question `number` that has a figure.

    Raises InputError where there is no such question, or no figure that can be drawn.
    """
    wanted = number.strip()
    parts = [part for part in audited.parts if wanted in (part.part.id, part.question.number)]
    if not parts:
        known = dict.fromkeys(name for part in audited.parts for name in (part.question.number, part.part.id))
        message = f"the question '{number[:20]}' was read, expected one of {', '.join(known)}"
        raise InputError(Complaint(message + did_you_mean(number, known)))
    drawn = _first_drawn(parts)
    if not drawn:
        raise InputError(Complaint(f"question {wanted} has no figure that can be drawn from its givens"))
    return drawn


def drawn_questions(audited: AuditedPaper) -> Iterator[tuple[str, str]]:
    """Every question with a figure: its number and the SVG of the first of its parts that has one."""
    for number in dict.fromkeys(part.question.number for part in audited.parts):
        drawn = _first_drawn([part for part in audited.parts if part.question.number == number])
        if drawn:
            yield number, drawn


def _first_drawn(parts: Sequence[AuditedPart]) -> str:
    return next(filter(None, map(figure.render, parts)), "")
