"""Recurring decimals as answers: 0.4̇5̇, 0.(45), 0.4545 and so on."""

from fractions import Fraction

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.parse import read_expression
from paperaudit.maths.recurring import read_recurring
from paperaudit.maths.rounding import nearest_multiple
from paperaudit.maths.same_value import number_of
from paperaudit.model.ask import Ask, WriteAs
from paperaudit.model.derivation import Agreement, Answer, Comparison
from paperaudit.model.expression import Number


def compare_recurring(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """A recurring decimal by its value; the fraction itself, or a decimal that ends, is another form or value."""
    answer = derived[0]
    assert isinstance(answer.value, Number)
    text = stated.strip().rpartition("=")[2].strip()
    try:
        same = read_recurring(text).fraction() == answer.value.value
    except ExpressionNotRead:
        return _compare_plain(text.rstrip("."), answer, ask)
    return Comparison(Agreement.AGREES) if same else Comparison(Agreement.DIFFERS, f"the answer is {answer.text}")


def _compare_plain(text: str, answer: Answer, ask: Ask) -> Comparison:
    try:
        written = read_expression(text)
        value = number_of(written)
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read: {error}")
    assert isinstance(answer.value, Number)
    if value is None:
        return Comparison(Agreement.CANNOT_TELL, f"“{text}” could not be compared with {answer.text}")
    if value == answer.value.value:
        return Comparison(Agreement.DIFFERS, "it is equal, but it is not written as a recurring decimal")
    places = written.places if isinstance(written, Number) else 0
    recurring = isinstance(ask.task, WriteAs) and ask.task.form == "recurring decimal"
    if places > 1 and not recurring and nearest_multiple(answer.value.value, Fraction(1, 10**places)) == value:
        return Comparison(Agreement.AGREES, f"rounded to {places} decimal places, though no accuracy is asked for")
    return Comparison(Agreement.DIFFERS, f"it is not exact: the answer is {answer.text}")
