"""What a mark scheme says in words beside its lines: the answer, what was not derived, marks that don't fit."""

import re

from paperaudit.checks.grounds.options import all_wrong, right_options
from paperaudit.marking.mark import Fit, PartScheme
from paperaudit.model.ask import Establish
from paperaudit.model.audited import AuditedPaper, AuditedPart
from paperaudit.model.derivation import Derived, Impossible, NotDetermined, NotRead, Several
from paperaudit.reports.account import counted, stated

NOT_DERIVED = "This part was not derived; the examiner writes its marking here."

_COMMAND = re.compile(r"^(?:[a-z]{2,} )+")
"""The words in front of what a command is about: show that, solve, calculate."""


def statements_beside(part: AuditedPart) -> str:
    """A part's own statements, and its ask where its words do not say it."""
    words = " ".join(line.text for line in (part.question.text, part.part.text) if line)
    ask = part.part.ask.text if part.part.ask else ""
    own = [line.text for line in (*part.part.figure, *part.part.given)]
    subject = _COMMAND.sub("", ask)
    return "; ".join([*own, ask] if subject and subject not in words else own)


def answers_in_words(part: AuditedPart, last_line: str) -> str:
    """The answer where the last line does not show it by itself: several answers; of a choice always its letter.

    The claim of a proof is its own last line.
    """
    outcome = part.outcome
    answers = [answer.text for answer in outcome.answers] if isinstance(outcome, Derived | Several) else []
    if not answers:
        return ""
    task = part.reading.ask.task if part.reading.ask else None
    if part.part.options:
        return _option(part, answers)
    if isinstance(task, Establish) and task.how != "decide":
        return ""
    if len(answers) == 1 and re.search(rf"(?<!\w){re.escape(answers[0])}(?!\w)", last_line):
        return ""
    return (" or " if isinstance(outcome, Several) else ", ").join(answers)


def _option(part: AuditedPart, answers: list[str]) -> str:
    """The right option with what it says, "C (70°)"; else the answer, and that it is none of the options."""
    right = [f"{letter} ({line.text})" for letter, line in right_options(part)]
    if right or not all_wrong(part):
        return " or ".join(right or answers)
    return f"{' or '.join(answers)}, which is none of the options"


def why_not_derived(part: AuditedPart) -> tuple[str, ...]:
    """For a part without a derivation: that it has none, and the setter's own answer, marked as unconfirmed.

    What stopped the reading is the audit's to tell; examiners need not know.
    """
    match part.outcome:
        case Impossible(clash):
            reason = f"Nothing satisfies what is given ({'; '.join(clash)}), so there is no answer to mark."
        case NotDetermined():
            reason = "What is given leaves the answer open, so there is no one answer to mark."
        case NotRead():
            reason = NOT_DERIVED
        case _ if part.derivation() is None:
            reason = NOT_DERIVED
        case _:
            return ()
    own = stated(part)
    split = f"Setter's split: {' '.join(part.part.split)}." if part.part.split else ""
    return tuple(line for line in (reason, own and f"Setter's own answer, not confirmed: {own}", split) if line)


def totals_in_words(audited: AuditedPaper) -> str:
    """The sum of the marks that are printed, with what an examiner should know of it.

    A total on the cover that differs is named, and so are parts without marks, which add nothing:
    "30 marks (the cover says 40; without marks: 4.b)".
    """
    paper = audited.paper
    without = [part.id for _, part in paper.parts() if part.marks is None]
    if len(without) == len(audited.parts):
        return "no marks printed" if paper.total is None else f"no marks printed (the cover says {paper.total})"
    total = paper.marks_sum()
    cover = f"the cover says {paper.total}" if paper.total not in (None, total) else ""
    unmarked = f"without marks: {', '.join(without)}" if without else ""
    beside = "; ".join(filter(None, (cover, unmarked)))
    return counted(total, "mark") + (f" ({beside})" if beside else "")


def remarks_on(scheme: PartScheme) -> tuple[str, ...]:
    """What an examiner should know of the marks: no marks printed, marks too few or too many, a split set aside."""
    if scheme.fit is Fit.NOT_DERIVED:
        return ()
    remarks = [scheme.remark] if scheme.remark else []
    if scheme.fit is Fit.UNMARKED:
        remarks.append("The paper prints no marks here; the usual ones are shown and count in no total.")
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
