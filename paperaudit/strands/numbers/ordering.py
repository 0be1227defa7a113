"""Numbers put in order, the biggest or closest of several, and which sign stands between two."""

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from functools import cmp_to_key
from itertools import pairwise

from paperaudit.errors import NoValue
from paperaudit.maths.approximate import to_decimal
from paperaudit.maths.exact import NotSurd, exact_value, rational_value
from paperaudit.maths.number_forms import as_decimal, decimal_places, form_of
from paperaudit.maths.postfix import agree, decimal_value
from paperaudit.maths.rounding import magnitude
from paperaudit.maths.surd import Surd
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import Expression, Negative, Number, NumberForm, Sum
from paperaudit.model.number_task import InOrder, Picked, Related
from paperaudit.model.reading import Reading
from paperaudit.strands.numbers.working import Working, require, with_givens

SKILL = "ordering numbers"
_AGAIN = "compared a second time on decimals of eighty figures"
_APART = Decimal("1e-40")
_SIGNS = {-1: "<", 0: "=", 1: ">"}
_RANKS = ("", "second ", "third ", "fourth ", "fifth ", "sixth ", "seventh ", "eighth ", "ninth ", "tenth ")


@dataclass(frozen=True, slots=True)
class _Sized:
    """A number as it stands on the paper, with the numbers of the givens put in."""

    printed: Expression
    value: Expression


def _sized(numbers: tuple[Expression, ...], reading: Reading, working: Working) -> list[_Sized]:
    found = []
    for one in numbers:
        value, used = with_givens(one, reading)
        working.used = tuple(dict.fromkeys((*working.used, *used)))
        found.append(_Sized(one, value))
    return found


def compared(one: Expression, other: Expression) -> int:
    """−1, 0 or 1: exactly, and the same by decimals; raises ChecksDisagree where the two ways differ."""
    difference = Sum((one, Negative(other)))
    try:
        exact = exact_value(difference)
        sign = exact.to_decimal() if isinstance(exact, Surd) else exact
    except NotSurd:
        sign = to_decimal(difference)
        if abs(sign) < _APART:
            raise
    result = (sign > 0) - (sign < 0)
    left, right = decimal_value(one), decimal_value(other)
    again = 0 if agree(left, right) else 1 if left > right else -1
    require(result == again, f"which of {write(one)} and {write(other)} is greater")
    return result


def _compared(one: _Sized, other: _Sized) -> int:
    return compared(one.value, other.value)


def _line_of(item: _Sized) -> str:
    """The number as a decimal, where it is not written as one: 3/8 = 0.375."""
    if item.printed == item.value and form_of(item.value) in (NumberForm.INTEGER, NumberForm.DECIMAL):
        return ""
    printed = write(item.printed)
    value = _fraction(item.value)
    decimal = as_decimal(value) if value is not None else None
    if decimal is not None and decimal.places <= 8 and abs(decimal.value) < 10**15:
        shown = write(decimal)
        return f"{printed} = {shown}" if shown != printed else ""
    return f"{printed} = {_cut(decimal_value(item.value))}…"


def _fraction(value: Expression) -> Fraction | None:
    try:
        return rational_value(value)
    except NotSurd:
        return None


def _cut(value: Decimal) -> str:
    """The first figures of an endless decimal."""
    exact = Fraction(value)
    places = max(3, 2 - (magnitude(exact) if exact else 0))
    scaled = abs(exact) * 10**places
    cut = Fraction(scaled.__floor__(), 10**places)
    return write(Number(-cut if exact < 0 else cut, NumberForm.DECIMAL, places))


def _in_decimals(items: list[_Sized], working: Working) -> tuple[str, ...]:
    """A line for each number that is not a decimal, where some are fractions or roots."""
    for item in items:
        if said := _line_of(item):
            working.say(said, uses=working.used)
    return tuple(step.statement for step in working.steps) or working.used


def _sorted(items: list[_Sized], descending: bool = False) -> list[_Sized]:
    ordered = sorted(items, key=cmp_to_key(_compared))
    for one, other in pairwise(ordered):
        require(compared(one.value, other.value) <= 0, "the order of the numbers")
    return ordered[::-1] if descending else ordered


def in_order(task: InOrder, reading: Reading) -> Derived:
    """The numbers in ascending or descending order."""
    working = Working(SKILL)
    items = _sized(task.numbers, reading, working)
    ordered = _sorted(items, task.descending)
    lines = _in_decimals(items, working)
    sign = ">" if task.descending else "<"
    said = write(ordered[0].printed)
    for one, other in pairwise(ordered):
        said += f" {sign if compared(one.value, other.value) else '='} {write(other.printed)}"
    text = ", ".join(write(item.printed) for item in ordered)
    wrong = 1 if task.descending else -1
    require(all(compared(other.value, one.value) != wrong for one, other in pairwise(ordered)), text)
    working.say(said, text, lines)
    return working.derived(Answer(text, kind="numbers in order"), confirmed_by=_AGAIN)


def picked(task: Picked, reading: Reading) -> Derived:
    """The k-th biggest or smallest of the numbers, or the closest to a target."""
    working = Working(SKILL)
    items = _sized(task.numbers, reading, working)
    chosen = _closest(task, items, reading, working) if task.which == "closest" else _ranked(task, items, working)
    label = task.labels[items.index(chosen)] if task.labels else ""
    text = f"({label}) {write(chosen.printed)}" if label else write(chosen.printed)
    return working.derived(Answer(text, chosen.value, label, kind="choice"), confirmed_by=_AGAIN)


def _ranked(task: Picked, items: list[_Sized], working: Working) -> _Sized:
    ordered = _sorted(items, descending=task.which == "biggest")
    if not 1 <= task.rank <= len(ordered):
        raise NoValue(f"a {_RANKS[task.rank - 1]}{task.which} of {len(ordered)} numbers")
    chosen = ordered[task.rank - 1]
    if any(item is not chosen and not compared(item.value, chosen.value) for item in items):
        raise NoValue(f"two of the numbers are equal: {write(chosen.printed)}")
    before = sum(
        (compared(chosen.value, item.value) < 0) == (task.which == "biggest") for item in items if item is not chosen
    )
    require(before == task.rank - 1, f"how many of the numbers come before {write(chosen.printed)}")
    lines = _in_decimals(items, working)
    sign = " > " if task.which == "biggest" else " < "
    working.say(sign.join(write(item.printed) for item in ordered), uses=lines)
    working.conclude(f"the {_RANKS[task.rank - 1]}{task.which} is {write(chosen.printed)}", write(chosen.printed))
    return chosen


def _closest(task: Picked, items: list[_Sized], reading: Reading, working: Working) -> _Sized:
    assert task.target is not None
    target, used = with_givens(task.target, reading)
    working.used = tuple(dict.fromkeys((*working.used, *used)))
    away = [_Sized(item.printed, _distance(item.value, target)) for item in items]
    for item, apart in zip(items, away, strict=True):
        working.say(f"from {write(task.target)} to {write(item.printed)}: {_size(apart.value)}", uses=working.used)
    lines = tuple(step.statement for step in working.steps)
    nearest, following, *_ = _sorted(away)
    if not compared(nearest.value, following.value):
        raise NoValue("two of the numbers are equally close")
    chosen = items[away.index(nearest)]
    working.say(f"the closest is {write(chosen.printed)}", write(chosen.printed), lines)
    return chosen


def _distance(one: Expression, other: Expression) -> Expression:
    larger, smaller = (one, other) if compared(one, other) > 0 else (other, one)
    return Sum((larger, Negative(smaller)))


def _size(value: Expression) -> str:
    exact = _fraction(value)
    if exact is not None and decimal_places(exact) is not None:
        return write(as_decimal(exact) or Number(exact))
    return f"{_cut(decimal_value(value))}…"


def related(task: Related, reading: Reading) -> Derived:
    """Yes or no, or the sign that stands between two numbers."""
    working = Working(SKILL)
    left, right = _sized((task.left, task.right), reading, working)
    result = compared(left.value, right.value)
    lines = _in_decimals([left, right], working)
    said = f"{write(task.left)} {_SIGNS[result]} {write(task.right)}"
    if said in lines:
        working.steps, lines = [], working.used
    if not task.sign:
        working.say(said, _SIGNS[result], lines)
        return working.derived(Answer(_SIGNS[result], kind="sign"), confirmed_by=_AGAIN)
    holds = {"<": result < 0, ">": result > 0, "=": result == 0, "≠": result != 0, "≤": result <= 0, "≥": result >= 0}
    text = "yes" if holds[task.sign] else "no"
    working.say(said, text, lines)
    return working.derived(Answer(text), confirmed_by=_AGAIN)
