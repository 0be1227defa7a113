"""Lists of numbers as answers: in any order (factors), or in the order asked for (from the smallest up)."""

import re
from collections.abc import Callable
from fractions import Fraction

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.parse import read_expression
from paperaudit.maths.same_value import same_value
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison
from paperaudit.model.expression import Expression, Number

LONGEST = 1_000
_NONE = ("none", "there is none", "there are none", "∅", "{}", "empty", "the empty set", "empty set", "no numbers")
_LEAD = re.compile(r"^(?:[A-Z][A-Za-z′']*|[a-z]+(?: [a-z]+){0,4})\s*[:=]\s*|^the (?:[a-z]+ ){1,5}(?:are|is):? ")
_AND = re.compile(r"\s*(?:;|\n|\s+and\s+|\s+to\s+(?!\d))\s*|,\s*(?:and\s+)?(?=\s|$)|,\s+")
_SIGN = re.compile(r"\s*[<>≤≥]\s*")


def read_numbers(text: str, count: int = 0) -> tuple[Expression, ...]:
    """The numbers of a list in the order written, in braces or not; `count` settles a comma without a space.

    Raises ExpressionNotRead where a piece is no number.

    >>> [write(one) for one in read_numbers("{1, 2, 3/4}")]
    ['1', '2', '3/4']
    """
    if len(text) > LONGEST:
        raise ExpressionNotRead(f"an answer of more than {LONGEST} characters", LONGEST, "a shorter one")
    trimmed = _LEAD.sub("", text.strip().rstrip(".").strip())
    if trimmed[:1] + trimmed[-1:] in ("{}", "()", "[]"):
        trimmed = trimmed[1:-1].strip()
    if trimmed.casefold() in _NONE or not trimmed:
        return ()
    pieces = _SIGN.split(trimmed) if _SIGN.search(trimmed) else [one for one in _AND.split(trimmed) if one.strip()]
    tight = [one for one in trimmed.split(",") if one.strip()]
    if len(pieces) < len(tight) and (len(tight) == count or (not count and len(tight) > 2)) and ";" not in trimmed:
        pieces = tight
    return tuple(map(read_expression, pieces))


def _compare(
    stated: str, derived: tuple[Answer, ...], same: Callable[[list[Expression], list[Expression]], str]
) -> Comparison:
    text = derived[0].text
    ours = list(read_numbers(text))
    try:
        theirs = list(read_numbers(stated, len(ours)))
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read: {error}")
    fault = same(ours, theirs)
    return Comparison(Agreement.DIFFERS, fault) if fault else Comparison(Agreement.AGREES)


def compare_numbers(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """A list in which the order and repeats count for nothing."""
    return _compare(stated, derived, lambda ours, theirs: _set_fault(ours, theirs, derived[0].text))


def compare_one(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """One or more of the numbers of a list, any of which will do."""
    text = derived[0].text
    return _compare(stated, derived, lambda ours, theirs: _foreign(ours, theirs, text) or ("" if theirs else "none"))


def compare_in_order(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """A list in the order that was asked for."""
    return _compare(stated, derived, lambda ours, theirs: _order_fault(ours, theirs, derived[0].text))


def _foreign(ours: list[Expression], theirs: list[Expression], text: str) -> str:
    return next((f"{write(value)} is not one of them: {text}" for value in theirs if not _among(value, ours)), "")


def _set_fault(ours: list[Expression], theirs: list[Expression], text: str) -> str:
    if fault := _foreign(ours, theirs, text):
        return fault
    missing = [write(value) for value in ours if not _among(value, theirs)]
    return f"not all of them are stated: {', '.join(missing)} is missing" if missing else ""


def _order_fault(ours: list[Expression], theirs: list[Expression], text: str) -> str:
    if fault := _set_fault(ours, theirs, text):
        return fault
    in_order = len(ours) == len(theirs) and all(map(_equal, ours, theirs))
    return "" if in_order else f"they are in another order than was asked for: {text}"


def _among(value: Expression, values: list[Expression]) -> bool:
    return any(_equal(value, other) for other in values)


def _equal(one: Expression, other: Expression) -> bool:
    if isinstance(one, Number) and isinstance(other, Number):
        return one.value == other.value
    return same_value(one, other) is True


def as_fractions(values: tuple[Expression, ...]) -> tuple[Fraction, ...]:
    """The values of plain numbers, for those who know that there is nothing else."""
    return tuple(value.value for value in values if isinstance(value, Number))
