"""Standard form: a number from 1 up to 10 times a power of ten."""

from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.number_forms import as_decimal, whole_or_fraction
from paperaudit.maths.rounding import magnitude
from paperaudit.model.expression import Expression, Negative, Number, Power, Product

TEN = Number(Fraction(10))


def power_of_ten(exponent: int) -> Expression:
    """A power of ten in index form: 10⁵, 10⁻³."""
    size = Number(Fraction(abs(exponent)))
    return Power(TEN, Negative(size) if exponent < 0 else size)


def standard_form(value: Fraction, places: int = 0) -> Expression:
    """A number in standard form, with noughts up to `places` decimals of its first factor.

    Raises NoValue for nought and for endless decimals.

    >>> from paperaudit.maths.write import write
    >>> write(standard_form(Fraction(45600))), write(standard_form(Fraction("-0.0032")))
    ('4.56 × 10⁴', '−3.2 × 10⁻³')
    """
    if not value:
        raise NoValue("nought has no standard form")
    exponent = magnitude(value)
    return with_power(value, exponent, places)


def with_power(value: Fraction, exponent: int, places: int = 0) -> Expression:
    """A number as a decimal times this power of ten: 12 × 10³."""
    first = as_decimal(value / Fraction(10) ** exponent, places)
    if first is None:
        raise NoValue(f"{whole_or_fraction(value).value} has endless decimals, and no accuracy is asked for")
    return Product((first, power_of_ten(exponent)), "×")


def parts(expression: Expression) -> tuple[Fraction, int] | None:
    """The two factors of 3.2 × 10⁵ as written, whatever the first one is; None for anything else.

    >>> from paperaudit.maths.parse import read_expression
    >>> parts(read_expression("12 × 10^-4"))
    (Fraction(12, 1), -4)
    """
    match expression:
        case Negative(operand):
            inner = parts(operand)
            return None if inner is None else (-inner[0], inner[1])
        case Product((first, Power(base, exponent))) if base == TEN:
            above, power = _plain(first), _plain(exponent)
            if above is not None and power is not None and power.denominator == 1:
                return above, int(power)
        case Power(base, exponent) if base == TEN:
            power = _plain(exponent)
            return (Fraction(1), int(power)) if power is not None and power.denominator == 1 else None
    return None


def _plain(expression: Expression) -> Fraction | None:
    match expression:
        case Number(value):
            return value
        case Negative(Number(value)):
            return -value
    return None


def standard_fault(stated: Expression) -> str:
    """Why an expression is not in standard form, "" where it is."""
    if isinstance(stated, Number) and 1 <= abs(stated.value) < 10:
        return ""
    found = parts(stated)
    if found is None:
        return "it is not written in standard form"
    return "" if 1 <= abs(found[0]) < 10 else "its first factor is not from 1 up to 10"
