"""Answers of a figure in the unit and to the accuracy that the question asks for."""

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.measure import UnitClash, bare
from paperaudit.maths.number_forms import decimal_places
from paperaudit.maths.same_value import number_of
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Answer, Derivation, Derived, Outcome, Several, Step
from paperaudit.strands.finishing import ChecksDisagree, finished


def to_accuracy(outcome: Outcome, ask: Ask) -> Outcome:
    """The outcome with answers that need it converted and rounded as asked, each with the lines that this takes.

    Whole and exact answers, and angles and lengths that the accuracy does not touch, stay as they are.
    """
    if not isinstance(outcome, Derived | Several) or (ask.accuracy is None and not ask.unit):
        return outcome
    ends = [_finished(answer, ask) for answer in outcome.answers]
    answers = tuple(answer for answer, _ in ends)
    steps = tuple(step for _, lines in ends for step in lines)
    if not steps and answers == outcome.answers:
        return outcome
    if isinstance(outcome, Derived):
        return replace(outcome, answers=answers, derivations=tuple(_with(one, steps) for one in outcome.derivations))
    return replace(outcome, answers=answers)


def _with(derivation: Derivation, steps: tuple[Step, ...]) -> Derivation:
    return replace(derivation, steps=(*derivation.steps, *steps))


def _finished(answer: Answer, ask: Ask) -> tuple[Answer, tuple[Step, ...]]:
    if answer.value is None:
        return answer, ()
    try:
        amount, unit = bare(answer.value)
        needs_unit = bool(ask.unit) and ask.unit != unit
        if not needs_unit and not _endless(number_of(amount)):
            return answer, ()
        if needs_unit and unit == "°":
            return answer, ()
        return finished(answer.value, ask, answer.text, answer.letter)
    except (UnitClash, NoValue, ChecksDisagree):
        return answer, ()


def _endless(value: Fraction | Decimal | None) -> bool:
    return isinstance(value, Decimal) or (isinstance(value, Fraction) and decimal_places(value) is None)
