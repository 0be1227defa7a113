"""What a mark scheme says in words beside its lines: the answer, what was not derived, marks that don't fit."""

import re

from paperaudit.marking.mark import Fit, PartScheme
from paperaudit.model.ask import Establish
from paperaudit.model.audited import AuditedPart
from paperaudit.model.derivation import Derived, Impossible, NotDetermined, NotRead, Several
from paperaudit.reports.account import counted, stated

_COMMAND = re.compile(r"^(?:[a-z]{2,} )+")
"""The words in front of what a command is about: show that, solve, calculate."""


def statements_beside(part: AuditedPart) -> str:
    """A part's own statements, and its ask where its words do not say it."""
    words = part.part.text.text if part.part.text else ""
    ask = part.part.ask.text if part.part.ask else ""
    own = [line.text for line in (*part.part.figure, *part.part.given)]
    subject = _COMMAND.sub("", ask)
    return "; ".join([*own, ask] if subject and subject not in words else own)


def answers_in_words(part: AuditedPart, last_line: str) -> str:
    """The answer where the last line does not show it by itself: several answers, an option's letter.

    The claim of a proof is its own last line.
    """
    outcome = part.outcome
    answers = [answer.text for answer in outcome.answers] if isinstance(outcome, Derived | Several) else []
    if not answers:
        return ""
    own = part.part.answer.text.strip() if part.part.answer else ""
    task = part.reading.ask.task if part.reading.ask else None
    if part.verdict == "confirmed" and own in dict(part.part.options):
        return f"{own} ({answers[0]})"
    if isinstance(task, Establish) and task.how != "decide":
        return ""
    if len(answers) == 1 and re.search(rf"(?<!\w){re.escape(answers[0])}(?!\w)", last_line):
        return ""
    return (" or " if isinstance(outcome, Several) else ", ").join(answers)


def why_not_derived(part: AuditedPart) -> tuple[str, ...]:
    """For a part without a derivation: what stopped it, and the setter's own answer, marked as unconfirmed."""
    match part.outcome:
        case Impossible(clash):
            reason = f"Nothing satisfies what is given ({'; '.join(clash)}), so there is no answer to mark."
        case NotDetermined():
            reason = "What is given leaves the answer open, so there is no one answer to mark."
        case NotRead(why):
            reason = f"This part was not derived: {why}. The examiner writes its marking here."
        case _ if part.derivation() is None:
            reason = "No lines lead to this answer yet. The examiner writes its marking here."
        case _:
            return ()
    own = stated(part)
    split = f"Setter's split: {' '.join(part.part.split)}." if part.part.split else ""
    return tuple(line for line in (reason, own and f"Setter's own answer, not confirmed: {own}", split) if line)


def remarks_on(scheme: PartScheme) -> tuple[str, ...]:
    """What an examiner should know of the marks: no marks printed, marks too few or too many, a split set aside."""
    if scheme.fit is Fit.NOT_DERIVED:
        return ()
    remarks = [scheme.remark] if scheme.remark else []
    if scheme.fit is Fit.UNMARKED:
        remarks.append("The paper prints no marks here; the usual ones are shown.")
    if not scheme.fits():
        printed = counted(scheme.allocation.total() + scheme.unplaced, "mark")
        remarks.append(f"The paper gives {printed}; usual for these lines is {scheme.usual.advice()}.")
        if scheme.unplaced:
            verb = "has" if scheme.unplaced == 1 else "have"
            remarks.append(f"{counted(scheme.unplaced, 'mark')} {verb} no line to rest on.")
    elif scheme.unplaced:
        remarks.append(f"The examiner says what earns {_other(scheme.unplaced)}: the lines show no step for it.")
    return tuple(remarks)


def _other(marks: int) -> str:
    return "the other mark" if marks == 1 else f"the other {marks} marks"
