"""Picks the figure that is meant by a question's or a part's number."""

from collections.abc import Iterator

from paperaudit.errors import Complaint, InputError
from paperaudit.model.audited import AuditedPaper, AuditedPart
from paperaudit.model.derivation import Derived
from paperaudit.readers.complaints import did_you_mean


def figure_of(audited: AuditedPaper, number: str) -> str:
    """The SVG of the part `number` ("1.a"), or of the first part of the question `number` that has a figure.

    Raises InputError where there is no such question, or no figure that can be drawn true to scale.
    """
    from paperaudit.reports import figure

    wanted = number.strip()
    parts = [part for part in audited.parts if wanted in (part.part.id, part.question.number)]
    if not parts:
        known = dict.fromkeys(name for part in audited.parts for name in (part.question.number, part.part.id))
        message = f"the question '{number[:20]}' was read, expected one of {', '.join(known)}"
        raise InputError(Complaint(message + did_you_mean(number, known)))
    drawn = next(drawable(parts), None)
    if drawn is None:
        raise InputError(Complaint(f"question {wanted} has no figure that can be drawn from its givens"))
    return figure.render(drawn)


def drawable(parts: list[AuditedPart]) -> Iterator[AuditedPart]:
    """The parts whose derivation came with a figure."""
    return (part for part in parts if isinstance(part.outcome, Derived) and part.outcome.figure)


def drawn_questions(audited: AuditedPaper) -> Iterator[tuple[str, AuditedPart]]:
    """Every question with a figure: its number and the first of its parts that has one."""
    numbers = dict.fromkeys(part.question.number for part in audited.parts)
    for number in numbers:
        first = next(drawable([part for part in audited.parts if part.question.number == number]), None)
        if first is not None:
            yield number, first
