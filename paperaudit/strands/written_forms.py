"""A number written in another form: as a decimal, a fraction, a percentage, a mixed number, in another unit."""

from fractions import Fraction
from math import gcd

from paperaudit.errors import NoValue
from paperaudit.maths.number_forms import as_decimal, as_mixed, as_percentage, decimal_places, whole_or_fraction
from paperaudit.maths.settled import fraction_parts
from paperaudit.maths.write import number_text, write
from paperaudit.model.expression import Expression, Number, NumberForm

FORMS = ("decimal", "fraction", "percentage", "mixed number", "improper fraction", "lowest terms")


def form_texts(
    value: Fraction, start: Expression, form: str, to_be_rounded: bool
) -> tuple[tuple[str, ...], Expression]:
    """What a pupil writes between `start`, which has this value, and the form, and the number in that form.

    Raises NoValue where the form cannot hold the value exactly and no accuracy is asked for.

    >>> form_texts(Fraction(3, 8), Number(Fraction(3, 8), NumberForm.FRACTION), "decimal", False)[0]
    ('3 ÷ 8',)
    """
    match form:
        case "decimal":
            return _decimal(value, start, to_be_rounded)
        case "percentage":
            return _percentage(value, start, to_be_rounded)
        case "mixed number":
            return (), as_mixed(value)
        case "improper fraction":
            return _improper(value, start), whole_or_fraction(value)
    return _fraction(value, start), whole_or_fraction(value)


def _decimal(value: Fraction, start: Expression, to_be_rounded: bool) -> tuple[tuple[str, ...], Expression]:
    decimal = as_decimal(value)
    if decimal is None and not to_be_rounded:
        raise NoValue(f"{write(whole_or_fraction(value))} has endless decimals, and no accuracy is asked for")
    parts = fraction_parts(start)
    if isinstance(start, Number) and start.form is NumberForm.PERCENT:
        return (f"{_size(value * 100)} ÷ 100",), decimal or whole_or_fraction(value)
    if isinstance(start, Number) and start.form is NumberForm.MIXED:
        whole, rest = divmod(abs(value), 1)
        sign = "−" if value < 0 else ""
        sum_text = f"{whole} + {rest.numerator} ÷ {rest.denominator}"
        return (f"−({sum_text})" if sign else sum_text,), decimal or whole_or_fraction(value)
    divided = (f"{write(Number(Fraction(parts[0])))} ÷ {parts[1]}",) if parts and parts[1] > 1 else ()
    return divided, decimal or whole_or_fraction(value)


def _percentage(value: Fraction, start: Expression, to_be_rounded: bool) -> tuple[tuple[str, ...], Expression]:
    if decimal_places(value * 100) is None and not to_be_rounded:
        mixed = as_mixed(value * 100)
        raise NoValue(f"{write(start)} is {number_text(mixed)}%, and no accuracy is asked for")
    return (f"{write(start)} × 100%",), as_percentage(value)


def _improper(value: Fraction, start: Expression) -> tuple[str, ...]:
    if not (isinstance(start, Number) and start.form is NumberForm.MIXED):
        return ()
    whole, rest = divmod(abs(value), 1)
    text = f"({whole} × {rest.denominator} + {rest.numerator})/{rest.denominator}"
    return (f"−{text}" if value < 0 else text,)


def _fraction(value: Fraction, start: Expression) -> tuple[str, ...]:
    """A decimal over a power of ten, a percentage over 100, and the common factor that is divided out."""
    texts: list[str] = []
    above, below = fraction_parts(start) or (0, 0)
    if isinstance(start, Number) and start.form in (NumberForm.PERCENT, NumberForm.DECIMAL):
        shown = value * 100 if start.form is NumberForm.PERCENT else value
        places = decimal_places(shown) or 0
        if start.form is NumberForm.PERCENT and places:
            texts.append(f"{_size(shown)}/100")
        below = 10**places * (100 if start.form is NumberForm.PERCENT else 1)
        above = int(value * below)
        texts.append(f"{write(Number(Fraction(above)))}/{below}")
    common = gcd(above, below)
    if common > 1 and below > common:
        texts.append(f"({write(Number(Fraction(above)))} ÷ {common})/({below} ÷ {common})")
    return tuple(texts)


def _size(value: Fraction) -> str:
    return write(as_decimal(value) or whole_or_fraction(value))
