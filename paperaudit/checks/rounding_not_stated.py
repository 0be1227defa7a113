"""The answer is not exact as a decimal, and no accuracy is asked for."""

import re
from collections.abc import Iterator
from fractions import Fraction

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.units import Pair, pairs
from paperaudit.checks.grounds.words import called
from paperaudit.maths.measure import UnitClash, bare
from paperaudit.maths.number_forms import decimal_places, form_of
from paperaudit.maths.same_value import number_of
from paperaudit.maths.units import MONEY
from paperaudit.model.audited import AuditedPaper, AuditedPart
from paperaudit.model.derivation import Agreement, Answer, Derived
from paperaudit.model.expression import Expression, NumberForm
from paperaudit.model.finding import Finding, Severity

_SAYS_HOW_EXACT = re.compile(
    r"\b(?:exact|surd|root form|in terms of|fraction|mixed number|nearest|decimal places?|significant|round"
    r"|recurring|repeating)",
    re.I,
)
_DECIMAL_FORMS = (NumberForm.DECIMAL, NumberForm.INTEGER)


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a part whose key is rounded, or whose measured answer has to be, without being told how far.

    Money is left alone: it is rounded to the cent without being told to.
    """
    for audited_part in audited.parts:
        if _accuracy_is_told(audited_part) or not isinstance(audited_part.outcome, Derived):
            continue
        answer = _has_to_be_rounded(audited_part, audited_part.outcome.answers)
        if answer is not None:
            part = audited_part.part
            key = f"; the key says {part.answer.text}" if part.answer else ""
            yield CHECK.found(
                f"{called(audited_part.question, part)}: the answer, {answer.text}, has endless decimals, "
                f"and the question does not say how far to round{key}.",
                part=part.id,
                places=(part.place, audited_part.question.place),
                suggestion="Ask for an accuracy (“correct to 2 decimal places”) or for the exact value.",
            )


def _accuracy_is_told(audited_part: AuditedPart) -> bool:
    ask = audited_part.reading.ask
    lines = (audited_part.question.text, audited_part.part.text, audited_part.part.ask)
    told = any(line is not None and _SAYS_HOW_EXACT.search(line.text) for line in lines)
    return ask is None or ask.accuracy is not None or told or bool(audited_part.part.options)


def _has_to_be_rounded(audited_part: AuditedPart, answers: tuple[Answer, ...]) -> Answer | None:
    """The first answer that the key rounds; without a key, the first that has a unit and endless decimals."""
    if audited_part.part.answer is None:
        return next((answer for answer in answers if answer.value and _is_measured_and_endless(answer.value)), None)
    comparison = audited_part.comparison
    if comparison is None or comparison.agreement is not Agreement.AGREES:
        return None
    return next((pair.answer for pair in pairs(audited_part) if _is_rounded(pair)), None)


def _is_rounded(pair: Pair) -> bool:
    is_decimal = form_of(pair.stated) in _DECIMAL_FORMS and pair.derived_unit not in MONEY
    return is_decimal and _is_endless(pair.derived)


def _is_measured_and_endless(value: Expression) -> bool:
    try:
        amount, unit = bare(value)
    except UnitClash:
        return False
    return bool(unit) and unit not in MONEY and _is_endless(amount)


def _is_endless(value: Expression) -> bool:
    """Whether the decimals of a number never end; letters have none."""
    number = number_of(value)
    return number is not None and (not isinstance(number, Fraction) or decimal_places(number) is None)


CHECK = Check(
    name="rounding-not-stated",
    severity=Severity.WARNING,
    title="It is not said how far to round",
    meaning="The decimals of the answer never end, the key rounds them, and the question asks for no accuracy.",
    matters="Learners round in different places. Which of them are right is then decided by each marker alone.",
    mend="Ask for a number of decimal places or significant figures, or for the exact value, and let the key follow.",
    faulty="""
questions:
  - {number: 1, ask: 20 litres ÷ 3, answer: 6.67 litres, marks: 2}
""",
    clean="""
questions:
  - {number: 1, ask: 20 litres ÷ 4, answer: 5 litres, marks: 2}
""",
    find=find,
)
