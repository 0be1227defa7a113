"""Answers worked with the value that the paper takes for π: 25π cm² with π = 3.14 is 78.5 cm²."""

import re
from dataclasses import replace
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.exact import exact_expression, exact_value
from paperaudit.maths.measure import bare
from paperaudit.maths.number_forms import as_decimal, whole_or_fraction
from paperaudit.maths.same_value import number_of
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Derived, Impossible, NotRead, Outcome, Several, Step, StepKind
from paperaudit.model.expression import Expression, Letter, Measured, Number, leaves, with_leaves
from paperaudit.strands.finishing import answer_of

PI = Letter("π")
SAME = Fraction(1, 10**9)


def with_pi(outcome: Outcome, pi: Number | None) -> Outcome:
    """The outcome with π in its answers taken for `pi`; NotRead where it went into a number that was rounded.

    Givens that clash for π itself may agree for the paper's value, so that an impossible figure cannot be told either.
    """
    if pi is None:
        return outcome
    if isinstance(outcome, Impossible) and any("circle" in text or "π" in text for text in outcome.why):
        return NotRead(f"the givens clash for π itself; whether they do with π = {write(pi)} cannot be told")
    if not isinstance(outcome, Derived | Several):
        return outcome
    lines = (
        [step.statement for one in outcome.derivations for step in one.steps] if isinstance(outcome, Derived) else []
    )
    taken = [_taken(answer, pi) for answer in outcome.answers]
    uses_pi = any("π" in line for line in lines) or isinstance(outcome, Several)
    if any(found is None or (found[0].rounded and uses_pi) for found in taken):
        return NotRead(f"the answer depends on π in a way that cannot be worked with π = {write(pi)}")
    ends = [found for found in taken if found is not None]
    answers = tuple(answer for answer, _ in ends)
    steps = tuple(step for _, found in ends for step in found)
    if isinstance(outcome, Several):
        return replace(outcome, answers=answers)
    return replace(
        outcome,
        answers=answers,
        derivations=tuple(replace(one, steps=(*one.steps, *steps)) for one in outcome.derivations),
    )


def _taken(answer: Answer, pi: Number) -> tuple[Answer, tuple[Step, ...]] | None:
    """The answer with its number for π, and its line; None where that cannot be worked out in two ways alike."""
    if answer.value is None or PI not in leaves(answer.value):
        return answer, ()
    amount, unit = bare(answer.value)
    put = with_leaves(amount, lambda leaf: pi if leaf == PI else leaf)
    try:
        value = exact_value(put)
    except NoValue:
        return None
    number = number_of(put)
    if number is None:
        return None
    plain: Expression
    if isinstance(value, Fraction):
        plain = as_decimal(value) or whole_or_fraction(value)
        if abs(Fraction(number) - value) > SAME * abs(value):
            return None
    else:
        plain = exact_expression(value)
    found = answer_of(plain, unit, answer.letter)
    name = f"{answer.letter} " if answer.letter else ""
    worked = _with_signs(write(Measured(put, unit) if unit else put), write(pi))
    said = f"{name}= {worked} = {found.text.partition('= ')[2] if answer.letter else found.text} (π = {write(pi)})"
    step = Step(said, StepKind.CALCULATION, None, (answer.text,), found.text, "substitution")
    return replace(found, rounded=answer.rounded), (step,)


def _with_signs(text: str, pi: str) -> str:
    """100(3.14) as a pupil writes it: 100 × 3.14.

    >>> _with_signs("100(3.14) cm²", "3.14")
    '100 × 3.14 cm²'
    """
    return re.sub(rf"(?<=[\d)])\({re.escape(pi)}\)(?![²³^])", f" × {pi}", text)
