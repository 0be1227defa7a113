"""One of several numbers as an answer: the number itself, or the letter that it carries on the paper."""

import re

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.parse import read_expression
from paperaudit.maths.same_value import same_value
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison

_LABEL = re.compile(r"\(?([a-zA-Z])\)?\.?")


def compare_choice(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """The stated letter or number against the one derived; the letter stands in `letter` of the answer."""
    answer = derived[0]
    label = _LABEL.fullmatch(stated.strip())
    if label and answer.letter:
        agrees = label[1].casefold() == answer.letter.casefold()
        return Comparison(Agreement.AGREES if agrees else Agreement.DIFFERS, "" if agrees else f"it is {answer.text}")
    try:
        value = read_expression(stated.strip().rstrip("."))
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read: {error}")
    assert answer.value is not None
    same = same_value(value, answer.value)
    if same is None:
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” could not be compared with {answer.text}")
    return Comparison(Agreement.AGREES) if same else Comparison(Agreement.DIFFERS, f"the answer is {answer.text}")
