"""Ratios as answers: 2 : 3, 2 to 3 or, of two terms, 2/3."""

import re
from fractions import Fraction

from paperaudit.errors import ExpressionNotRead, NoValue
from paperaudit.maths.exact import rational_value
from paperaudit.maths.parse import read_expression
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison

_LONGEST = 200


def terms_of(text: str) -> tuple[Fraction, ...]:
    """The terms of a ratio; raises ExpressionNotRead where it is none.

    >>> terms_of("2 : 3") == terms_of("2/3")
    True
    """
    pieces = [piece for piece in re.split(r"\s*(?::|∶|\bto\b)\s*", text.strip().rstrip(".")[:_LONGEST]) if piece]
    try:
        values = [rational_value(read_expression(piece)) for piece in pieces]
    except NoValue as error:
        raise ExpressionNotRead(str(error), 0) from None
    if None in values or not values:
        raise ExpressionNotRead("no ratio of numbers", 0, "a ratio such as 2 : 3")
    numbers = tuple(value for value in values if value is not None)
    if len(numbers) == 1:
        return Fraction(numbers[0].numerator), Fraction(numbers[0].denominator)
    return numbers


def compare_ratio(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """A ratio in the form that was asked for; the same ratio in another form differs."""
    answer = derived[0]
    try:
        theirs, ours = terms_of(stated), terms_of(answer.text)
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read: {error}")
    if theirs == ours:
        return Comparison(Agreement.AGREES)
    crosswise = zip(theirs, ours, strict=False)
    same = len(theirs) == len(ours) and all(one * ours[0] == other * theirs[0] for one, other in crosswise)
    if same:
        return Comparison(Agreement.DIFFERS, f"it is the same ratio, but not in the form asked for, {answer.text}")
    return Comparison(Agreement.DIFFERS, f"the answer is {answer.text}")
