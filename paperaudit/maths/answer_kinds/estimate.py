"""Estimates as answers: the value that the rounding gives; how else one may round is told only where the ask says."""

from fractions import Fraction

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.measure import UnitClash, bare
from paperaudit.maths.parse import read_expression
from paperaudit.maths.rounding import round_to
from paperaudit.maths.same_value import number_of
from paperaudit.model.accuracy_task import Estimated
from paperaudit.model.ask import Accuracy, Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison

_NEAR = Fraction(1, 3)


def compare_estimate(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """The derived estimate agrees, rounded to one to three figures too; another near value cannot be told from it."""
    answer = derived[0]
    text = stated.strip().rstrip(".").strip("≈~ ").rpartition("≈")[2]
    try:
        theirs = number_of(bare(read_expression(text))[0])
    except (ExpressionNotRead, UnitClash) as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read: {error}")
    ours = number_of(bare(answer.value)[0]) if answer.value is not None else None
    if ours is None or theirs is None:
        return Comparison(Agreement.CANNOT_TELL, f"“{text}” could not be compared with {answer.text}")
    value, key = Fraction(ours), Fraction(theirs)
    rounded = [round_to(value, Accuracy("significant figures", figures)).value for figures in "123"]
    if key == value or key in rounded:
        return Comparison(Agreement.AGREES)
    told = isinstance(ask.task, Estimated) and ask.task.told and "√" not in ask.text
    if not told and abs(key - value) <= abs(value) * _NEAR:
        return Comparison(Agreement.CANNOT_TELL, f"rounding to 1 significant figure gives {answer.text}")
    return Comparison(Agreement.DIFFERS, f"rounding its numbers gives {answer.text}")
