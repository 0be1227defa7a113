"""Picks the figure that is meant by a question's or a part's number."""

from collections.abc import Iterator, Sequence

from paperaudit.errors import Complaint, InputError
from paperaudit.model.audited import AuditedPaper, AuditedPart
from paperaudit.model.derivation import Impossible, NotDetermined, Several
from paperaudit.readers.complaints import did_you_mean
from paperaudit.reports import figure


def figure_of(audited: AuditedPaper, number: str, colours: figure.Colours = "", scale: figure.Scale = "true") -> str:
    """The SVG of the part `number` ("1.a"), or of the first part of the question `number` that has a figure.

    The figure of a whole question with several parts does not show what one of them asks for.
    Raises InputError where there is no such question, or no figure that can be drawn.
    """
    drawn = _first_drawn(_meant(audited, number), colours, scale)
    if not drawn:
        raise InputError(Complaint(f"question {number.strip()} has no figure that can be drawn from its givens"))
    return drawn


def cases_of(audited: AuditedPaper, number: str) -> str:
    """The SVG of all cases of an open question or part, side by side.

    Raises InputError where there is no such question, or none of its parts has more than one figure.
    """
    drawn = next(filter(None, (figure.render_cases(part) for part in _meant(audited, number))), "")
    if not drawn:
        raise InputError(Complaint(f"question {number.strip()} has no second figure, expected one with several cases"))
    return drawn


def caution(audited: AuditedPaper, number: str) -> str:
    """What must be said with the figure of a question or part, "" for one that is true to scale."""
    part = next((part for part in _meant(audited, number) if figure.render(part)), None)
    match part.outcome if part else None:
        case Impossible():
            return f"no figure satisfies the givens of question {number.strip()}; what was drawn is not to scale"
        case NotDetermined() | Several():
            return f"the givens of question {number.strip()} leave several figures open; one of them was drawn"
        case _:
            return ""


def _meant(audited: AuditedPaper, number: str) -> list[AuditedPart]:
    """The part or the parts of the question of this number; raises InputError where there is none."""
    wanted = number.strip()
    parts = [part for part in audited.parts if wanted in (part.part.id, part.question.number)]
    if not parts:
        known = dict.fromkeys(name for part in audited.parts for name in (part.question.number, part.part.id))
        message = f"the question '{number[:20]}' was read, expected one of {', '.join(known)}"
        raise InputError(Complaint(message + did_you_mean(number, known)))
    return parts


def drawn_questions(audited: AuditedPaper) -> Iterator[tuple[str, str]]:
    """Every question with a figure: its number and the SVG of the first of its parts that has one."""
    for number in dict.fromkeys(part.question.number for part in audited.parts):
        parts = [part for part in audited.parts if part.question.number == number]
        drawn = _first_drawn(parts)
        if drawn:
            yield number, drawn


def _first_drawn(parts: Sequence[AuditedPart], colours: figure.Colours = "", scale: figure.Scale = "true") -> str:
    asked = len(parts) == 1
    drawn = (figure.render(part, colours=colours, scale=scale, asked=asked) for part in parts)
    return next(filter(None, drawn), "")
