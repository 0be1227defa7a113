"""Expansions and their first terms, with or without dots behind them."""

import re

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.parse import read_expression
from paperaudit.maths.same_value import same_value
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison
from paperaudit.model.expression import Expression, Power, Product, Sum, parts_of

_DOTS = re.compile(r"\s*(?:[-+−–]\s*)?(?:…|\.{2,}|⋯)\s*$")


def compare_expansion(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """The stated terms against the derived ones; a bracket that is left is a wrong form."""
    answer = derived[0]
    assert answer.value is not None
    try:
        value = read_expression(_DOTS.sub("", stated.strip()).rstrip("."))
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read: {error}")
    same = same_value(value, answer.value)
    if same is None:
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” could not be compared with {answer.text}")
    if not same:
        return Comparison(Agreement.DIFFERS, f"{write(value)} is not {answer.text}")
    if _has_brackets(value):
        return Comparison(Agreement.DIFFERS, "it is equal, but brackets are left")
    return Comparison(Agreement.AGREES)


def _has_brackets(value: Expression) -> bool:
    own = isinstance(value, Product | Power) and any(isinstance(part, Sum) for part in parts_of(value))
    return own or any(map(_has_brackets, parts_of(value)))
