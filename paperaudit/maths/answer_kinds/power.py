"""A single power as an answer: 2⁸ and not 256."""

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.parse import read_expression
from paperaudit.maths.same_value import same_value
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison
from paperaudit.model.expression import Letter, Number, Power


def compare_power(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """The same value, as one power; of the same base."""
    answer = derived[0]
    try:
        value = read_expression(stated.strip().rstrip(".").rpartition("=")[2].strip())
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read: {error}")
    assert answer.value is not None
    same = same_value(value, answer.value)
    if same is None:
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” could not be compared with {answer.text}")
    if not same:
        return Comparison(Agreement.DIFFERS, f"the answer is {answer.text}")
    single = isinstance(value, Power) and isinstance(value.base, Number | Letter)
    if not single and isinstance(answer.value, Power):
        return Comparison(Agreement.DIFFERS, "it is equal, but it is not written as a single power")
    return Comparison(Agreement.AGREES)
