"""Bounds and error intervals as answers: 12.45 cm, 12.35 and 12.45, 12.35 ≤ x < 12.45."""

import re
from fractions import Fraction

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.measure import UnitClash, bare
from paperaudit.maths.parse import read_expression
from paperaudit.maths.same_value import number_of
from paperaudit.maths.units import conversion
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison
from paperaudit.model.expression import Expression

_BETWEEN = re.compile(
    r"(?P<low>[^<>≤≥=]+?)\s*(?P<first>≤|<=|<)\s*[^<>≤≥=]+?\s*(?P<second>≤|<=|<)\s*(?P<high>[^<>≤≥=]+)"
)
_TURNED = re.compile(r"(?P<high>[^<>≤≥=]+?)\s*(?P<second>≥|>=|>)\s*[^<>≤≥=]+?\s*(?P<first>≥|>=|>)\s*(?P<low>[^<>≤≥=]+)")
_HALF_OPEN = re.compile(r"(?P<first>\[|\()\s*(?P<low>[^\[\](),;]+)[,;]\s*(?P<high>[^\[\](),;]+)(?P<second>\]|\))")
_INCLUDED = ("≤", "<=", "≥", ">=", "[", "]")
_PARTS = re.compile(r"\s*(?:;|,\s|\s+and\s+|\s+to\s+|\n)\s*")
_LEAD = re.compile(r"(?:lower|upper)(?: bound)?\s*(?:is|=|:)?\s*|(?:LB|UB)\s*(?:is|=|:)?\s*", re.IGNORECASE)


def _size(text: str, unit: str = "") -> tuple[Fraction, str]:
    """A number and its unit; raises ExpressionNotRead where there is none."""
    try:
        amount, own = bare(read_expression(_LEAD.sub("", text.strip().rstrip("."))))
    except UnitClash as error:
        raise ExpressionNotRead(str(error), 0, "one number") from None
    value = number_of(amount)
    if value is None:
        raise ExpressionNotRead(f"{text.strip()} is no number", 0, "a number")
    return Fraction(value), own or unit


def _ours(value: Expression | None) -> tuple[Fraction, str]:
    assert value is not None
    amount, unit = bare(value)
    return Fraction(number_of(amount) or 0), unit


def _same(theirs: tuple[Fraction, str], ours: tuple[Fraction, str]) -> bool:
    scale = conversion(theirs[1], ours[1]) if theirs[1] and ours[1] else Fraction(1)
    return scale is not None and theirs[0] * scale == ours[0]


def compare_bound(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """One bound, with or without its unit."""
    try:
        same = _same(_size(stated.rpartition("=")[2]), _ours(derived[0].value))
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read: {error}")
    return Comparison(Agreement.AGREES) if same else Comparison(Agreement.DIFFERS, f"the bound is {derived[0].text}")


def compare_bounds(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """Both bounds, the lower one first."""
    pieces = [piece for piece in _PARTS.split(stated.strip()) if piece]
    text = " and ".join(answer.text for answer in derived)
    try:
        theirs = sorted(_size(piece.rpartition("=")[2]) for piece in pieces)
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read: {error}")
    ours = sorted(_ours(answer.value) for answer in derived)
    if len(theirs) == len(ours) and all(map(_same, theirs, ours)):
        return Comparison(Agreement.AGREES)
    return Comparison(Agreement.DIFFERS, f"the bounds are {text}")


def compare_interval(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """An error interval: both ends, the lower one included and the upper one not."""
    ours, theirs = _read(derived[0].text), _read(stated)
    if theirs is None or ours is None:
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” is not read as an interval")
    if not all(map(_same, theirs[:2], ours[:2])):
        return Comparison(Agreement.DIFFERS, f"the interval is {derived[0].text}")
    if theirs[2:] != ours[2:]:
        why = "the lower bound belongs to the interval, the upper bound does not"
        return Comparison(Agreement.DIFFERS, f"{why}: {derived[0].text}")
    return Comparison(Agreement.AGREES)


def _read(text: str) -> tuple[tuple[Fraction, str], tuple[Fraction, str], bool, bool] | None:
    """Lower end, upper end, and whether each is included."""
    plain = text.strip().rstrip(".")
    for pattern in (_BETWEEN, _TURNED, _HALF_OPEN):
        found = pattern.fullmatch(plain)
        if found is None:
            continue
        try:
            high = _size(found["high"])
            low = _size(found["low"], high[1])
        except ExpressionNotRead:
            return None
        return low, high, found["first"] in _INCLUDED, found["second"] in _INCLUDED
    return None
