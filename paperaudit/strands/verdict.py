"""Compares a part's key with what was derived, and gives the verdict on the part."""

import re

from paperaudit.maths.equality import compare
from paperaudit.maths.options import key_letter, match_options
from paperaudit.model.ask import Ask, Establish
from paperaudit.model.audited import Verdict
from paperaudit.model.derivation import (
    Agreement,
    Comparison,
    Derived,
    Impossible,
    NotDetermined,
    NotRead,
    Outcome,
    Several,
)
from paperaudit.model.reading import Reading
from paperaudit.model.topic import TopicTask

_GAP_IN_A_DECIMAL = re.compile(r"(?<=\d), (?=\d)")


def compare_with_key(reading: Reading, outcome: Outcome) -> Comparison | None:
    """The stated answer against the derived one, or None where one of the two is missing."""
    part, ask = reading.part, reading.ask
    if part.answer is None or ask is None or not isinstance(outcome, Derived | Several):
        return None
    letter = key_letter(part)
    if not letter:
        return _compared(part.answer.text, outcome, ask)
    option = dict(part.options)[letter].text
    matched = match_options(part, outcome.answers, ask)
    if letter in matched.right:
        return Comparison(Agreement.AGREES)
    if letter in matched.unclear:
        return Comparison(Agreement.CANNOT_TELL, f"the option {letter}, {option}, was not read")
    answers = " and ".join(answer.text for answer in outcome.answers)
    return Comparison(Agreement.DIFFERS, f"the option {letter} says {option}, and the answer is {answers}")


def _compared(stated: str, outcome: Derived | Several, ask: Ask) -> Comparison:
    """A stated answer beside the derived ones; a decimal comma may be printed with a gap, 1, 27 for 1,27.

    Typesetting puts the same narrow gap behind the comma of a list, so the key counts by the reading that agrees.
    """
    found = compare(stated, outcome.answers, ask)
    closed = _GAP_IN_A_DECIMAL.sub(",", stated)
    if found.agreement is Agreement.DIFFERS and closed != stated:
        again = compare(closed, outcome.answers, ask)
        return again if again.agreement is Agreement.AGREES else found
    return found


def verdict_on(reading: Reading, outcome: Outcome, comparison: Comparison | None) -> Verdict:
    """The verdict on a part. A key that names one of two right options is confirmed: the fault is the options'."""
    match outcome:
        case NotRead():
            return "not-read"
        case Impossible():
            return "impossible"
        case NotDetermined():
            return "not-determined"
    if claims_what_is_false(reading, outcome):
        return "differs"
    if comparison is None:
        return "several" if isinstance(outcome, Several) else "derived"
    if comparison.agreement is Agreement.CANNOT_TELL:
        return "not-read"
    if comparison.agreement is Agreement.DIFFERS:
        return "several" if isinstance(outcome, Several) else "differs"
    return "confirmed"


def claims_what_is_false(reading: Reading, outcome: Outcome) -> bool:
    """Whether the part asks to show or prove what the derivation contradicts: the claim is its stated answer."""
    task = reading.ask.task if reading.ask else None
    if isinstance(task, Establish) and task.how == "decide":
        return False
    if not isinstance(task, Establish | TopicTask) or not isinstance(outcome, Derived | Several):
        return False
    return any(answer.text.startswith("false") for answer in outcome.answers)
