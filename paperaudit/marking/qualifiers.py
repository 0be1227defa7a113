"""Puts the notes behind marks: follow-through, equivalent forms, answers that the question prints."""

from dataclasses import replace

from paperaudit.marking.convention import Convention
from paperaudit.marking.mark import Allocation, Mark
from paperaudit.marking.tariff import as_answer
from paperaudit.model.ask import Establish, Rounded, Transform, WriteAs
from paperaudit.model.audited import AuditedPart
from paperaudit.model.derivation import Answer, Derivation, Derived, Several
from paperaudit.model.expression import Measured, Number, NumberForm

_VALUE_CODES = frozenset({"A", "S", "S/R", "B"})


def qualified(allocation: Allocation, derivation: Derivation, convention: Convention, part: AuditedPart) -> Allocation:
    """The marks with their notes; a note that the setter wrote is kept.

    A mark for an answer is `ag` where the question prints the answer, `cao` where it asks for a
    form or an accuracy, `oe` where the answer has other forms (a fraction, an expression). A mark for
    a value that rests on the pupil's own earlier line is `ft`, the answer's only where the convention
    carries it so far; never the part's first mark, and never in a proof, which cannot be followed
    through (statement-and-reason practice, from memory). A note that the convention lacks is left out.
    """
    values = [at for at, mark in enumerate(allocation.marks) if mark.kind in _VALUE_CODES]
    last = allocation.marks[values[-1]].step if values else -1
    texts = {answer.text for answer in answers_of(part)}

    def note(at: int, mark: Mark) -> str:
        carried = _carried(mark, derivation, part) if at > 0 else ""
        answers = at in values and (mark.step == last or as_answer(derivation.steps[mark.step]) in texts)
        if answers and carried in convention.notes and not convention.notes[carried].to_answer:
            carried = ""
        name = (_answer_note(part) or carried) if answers else carried
        return name if name in convention.notes else ""

    return Allocation(
        tuple(mark if mark.note else replace(mark, note=note(at, mark)) for at, mark in enumerate(allocation.marks))
    )


def _carried(mark: Mark, derivation: Derivation, part: AuditedPart) -> str:
    """`ft` for a value that an earlier line leads to."""
    task = part.reading.ask.task if part.reading.ask else None
    if mark.kind not in _VALUE_CODES or isinstance(task, Establish):
        return ""
    earlier = {step.statement for step in derivation.steps[: mark.step]}
    step = derivation.steps[mark.step]
    return "ft" if step.value and earlier.intersection(step.uses) else ""


def _answer_note(part: AuditedPart) -> str:
    ask = part.reading.ask
    if ask is not None and isinstance(ask.task, Establish):
        return "" if ask.task.how == "decide" else "ag"
    if ask is not None and (ask.accuracy is not None or isinstance(ask.task, Rounded | WriteAs | Transform)):
        return "cao"
    return "oe" if any(_has_other_forms(answer) for answer in answers_of(part)) else ""


def answers_of(part: AuditedPart) -> tuple[Answer, ...]:
    """The derived answers, none where a part has no such outcome."""
    return part.outcome.answers if isinstance(part.outcome, Derived | Several) else ()


def _has_other_forms(answer: Answer) -> bool:
    """A whole number, with a unit or without, has one form; a fraction, decimal or expression has several."""
    value = answer.value.amount if isinstance(answer.value, Measured) else answer.value
    if value is None:
        return False
    return not (isinstance(value, Number) and value.form is NumberForm.INTEGER)
