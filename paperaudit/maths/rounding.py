"""Rounding once, from the exact value, halves away from zero, as schools do."""

import re
from fractions import Fraction

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.number_forms import decimal_places
from paperaudit.maths.units import MONEY, conversion
from paperaudit.model.ask import Accuracy
from paperaudit.model.expression import Number, NumberForm

_STEPS = {
    "whole": "1",
    "whole number": "1",
    "integer": "1",
    "unit": "1",
    "one": "1",
    "ten": "10",
    "hundred": "100",
    "thousand": "1000",
    "ten thousand": "10000",
    "million": "1000000",
    "tenth": "1/10",
    "hundredth": "1/100",
    "thousandth": "1/1000",
    "half": "1/2",
    "quarter": "1/4",
    "percent": "1/100",
    "per cent": "1/100",
    "%": "1/100",
}
_SPOKEN = {
    "1": "whole number",
    "c": "cent",
    "p": "penny",
    "R": "rand",
    "$": "dollar",
    "£": "pound",
    "€": "euro",
    "°": "degree",
}
_COINS = ("cent", "cents", "c", "penny", "p")
_STEP = re.compile(r"[R$£€₦₹]? ?(?P<step>\d{1,12}(?:[.,]\d{1,12})?)? ?(?P<unit>[^\d\s_][^\d_]{0,20})?")
MAX_PLACES = 60


def nearest_multiple(value: Fraction, step: Fraction) -> Fraction:
    """The multiple of `step` nearest to the value; halfway cases go away from zero.

    School usage, not rule A of ISO 80000-1 annex B (halves to even), which Python's `round` follows.

    >>> nearest_multiple(Fraction("12.25"), Fraction("0.1"))
    Fraction(123, 10)
    """
    count = (abs(value) / step + Fraction(1, 2)).__floor__()
    return (count if value >= 0 else -count) * step


def magnitude(value: Fraction) -> int:
    """The power of ten of a number's first figure: 2 for 345, −3 for 0.0012; raises ValueError for 0.

    >>> magnitude(Fraction(345)), magnitude(Fraction("0.0012"))
    (2, -3)
    """
    if not value:
        raise ValueError("nought has no first figure")
    size = abs(value)
    power = len(str(size.numerator)) - len(str(size.denominator))
    return power if size >= Fraction(10) ** power else power - 1


def step_of(accuracy: Accuracy, value: Fraction, unit: str = "") -> Fraction:
    """The step that rounding goes by: 1/100 for two decimal places, 10 for the nearest ten.

    `unit` is the value's own: "nearest cm" of a length in metres has the step 1/100. Raises
    ExpressionNotRead where the accuracy makes no sense.
    """
    amount = accuracy.amount.strip()
    if accuracy.kind == "nearest":
        return _nearest_step(amount, unit)
    if not amount.isdecimal() or int(amount) > MAX_PLACES or (accuracy.kind == "significant figures" and amount == "0"):
        raise ExpressionNotRead(f"accuracy of {amount!r} {accuracy.kind}", expected="a small whole number")
    if accuracy.kind == "decimal places":
        return Fraction(1, 10 ** int(amount))
    return Fraction(10) ** (magnitude(value) - int(amount) + 1) if value else Fraction(1)


def _nearest_step(amount: str, unit: str) -> Fraction:
    named = _STEPS.get(amount.lower())
    if named:
        return Fraction(named)
    if unit in MONEY and amount.lower() in (_SPOKEN.get(unit, ""), f"{_SPOKEN.get(unit, '')}s"):
        return Fraction(1)
    if amount.lower() in _COINS:
        return Fraction(1, 100) if unit in MONEY or not unit else Fraction(1)
    read = _STEP.fullmatch(amount)
    if read is None:
        raise ExpressionNotRead(f"accuracy to the nearest {amount!r}", expected="a step such as 10, 0.5 or cm")
    step = Fraction((read["step"] or "1").replace(",", "."))
    scale = conversion(read["unit"], unit) if read["unit"] and unit else Fraction(1)
    if not step or scale is None:
        raise ExpressionNotRead(f"accuracy to the nearest {amount!r}", expected=f"a step in {unit or 'the unit'}")
    return step * scale


def round_to(value: Fraction, accuracy: Accuracy, unit: str = "") -> Number:
    """The value rounded to an accuracy, with the noughts that the accuracy asks for.

    >>> from paperaudit.maths.write import write
    >>> write(round_to(Fraction("3.996"), Accuracy("decimal places", "2")))
    '4.00'
    """
    step = step_of(accuracy, value, unit)
    rounded = nearest_multiple(value, step)
    if accuracy.kind == "significant figures" and rounded and magnitude(rounded) > magnitude(value):
        step *= 10
    places = decimal_places(step) or 0
    return Number(rounded, NumberForm.DECIMAL if places else NumberForm.INTEGER, places)


def accuracy_text(accuracy: Accuracy) -> str:
    """The accuracy in words: "2 decimal places", "1 significant figure", "nearest 10"."""
    if accuracy.kind == "nearest":
        return f"the nearest {_SPOKEN.get(accuracy.amount, accuracy.amount)}"
    kind = accuracy.kind if accuracy.amount != "1" else accuracy.kind.removesuffix("s")
    return f"{accuracy.amount} {kind}"
