"""Counter-examples: any numbers at which the statement fails are right."""

import re
from fractions import Fraction

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.integer_claims import fails_at, letters_of_claim
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison
from paperaudit.model.proof_task import CounterExample

_NUMBER = r"[-−–]?\s?\d{1,9}(?:[./]\d{1,9})?"
_NAMED = re.compile(rf"(?<![a-zA-Z])([a-z])\s*=\s*({_NUMBER})")
_ALONE = re.compile(rf"^({_NUMBER})(?![\d/])")


def compare_counter_example(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """The stated numbers put into the statement."""
    task = ask.task
    text = stated.strip()
    if not isinstance(task, CounterExample):
        return Comparison(Agreement.CANNOT_TELL, "no statement to try it in")
    letters = letters_of_claim(task)
    values: dict[str, Fraction] = {}
    for name, number in _NAMED.findall(text):
        if name in letters and name not in values:
            values[name] = _value(number)
    alone = _ALONE.match(text)
    if not values and alone and len(letters) == 1:
        values = {letters[0]: _value(alone[1])}
    if set(values) != set(letters):
        return Comparison(Agreement.CANNOT_TELL, f"“{text}” was not read as numbers for {', '.join(letters)}")
    try:
        fails = fails_at(task, values)
    except (NoValue, BudgetExceeded):
        fails = None
    if fails is None:
        return Comparison(Agreement.DIFFERS, f"the statement says nothing about {text}")
    if fails:
        return Comparison(Agreement.AGREES)
    return Comparison(Agreement.DIFFERS, f"the statement is true there; it is false for {derived[0].text}")


def _value(text: str) -> Fraction:
    return Fraction(re.sub(r"[−–]", "-", text).replace(" ", ""))
