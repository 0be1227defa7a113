"""Numbers that stand finished in a line of arithmetic, and the writing of a new one."""

from dataclasses import dataclass
from fractions import Fraction

from paperaudit.maths.exact import rational_value
from paperaudit.maths.measure import unit_of, without_units
from paperaudit.maths.number_forms import as_decimal, decimal_places, whole_or_fraction, within_limits
from paperaudit.maths.units import MONEY
from paperaudit.model.expression import Expression, Measured, Negative, Number, NumberForm, Quotient, leaves, parts_of

_LONGEST_DECIMAL = 6
_CENTS = 2


@dataclass(frozen=True, slots=True)
class Numerals:
    """How the numbers of a calculation are written: as fractions, as decimals, with a mixed number at the end."""

    fractions: bool = False
    decimals: bool = False
    mixed: bool = False

    @staticmethod
    def of(expression: Expression) -> "Numerals":
        """The way that fits the numbers of an expression; a mixture goes by decimals where all of them end."""
        numbers = [leaf for leaf in leaves(expression) if isinstance(leaf, Number)]
        forms = {number.form for number in numbers}
        mixed = NumberForm.MIXED in forms
        fractions = mixed or NumberForm.FRACTION in forms or any(map(_is_proper_quotient, _parts(expression)))
        decimals = bool(forms & {NumberForm.DECIMAL, NumberForm.PERCENT})
        if fractions and decimals:
            endless = any(decimal_places(number.value) is None for number in numbers)
            return Numerals(endless, not endless, mixed and endless)
        return Numerals(fractions, decimals, mixed)

    def number(self, value: Fraction, unit: str = "", divided: bool = False) -> Expression:
        """A new number in this way; `divided` says that it came from a ÷ sign, which gives a decimal."""
        within_limits(value)
        cents = _CENTS if unit in MONEY and value.denominator > 1 else 0
        decimal = as_decimal(value, cents)
        short = decimal is not None and decimal.places <= _LONGEST_DECIMAL
        as_it_ends = self.decimals or cents or (divided and short) or bool(unit and short)
        number = decimal if decimal is not None and as_it_ends and not self.fractions else whole_or_fraction(value)
        return Measured(number, unit) if unit else number


def _parts(expression: Expression) -> tuple[Expression, ...]:
    return (expression, *(inner for part in parts_of(expression) for inner in _parts(part)))


def _is_proper_quotient(part: Expression) -> bool:
    """Whether two whole numbers stand over a bar and do not divide."""
    value = fraction_parts(part)
    return value is not None and value[1] > 1 and value[0] % value[1] != 0


def fraction_parts(expression: Expression) -> tuple[int, int] | None:
    """Numerator and denominator of a fraction as written, 6 and 8 of 6/8; a whole number is over 1.

    None where it is neither: a decimal, a measure, a calculation.
    """
    match expression:
        case Number(value, NumberForm.INTEGER | NumberForm.FRACTION | NumberForm.MIXED):
            return value.numerator, value.denominator
        case Negative(operand):
            inner = fraction_parts(operand)
            return (-inner[0], inner[1]) if inner else None
        case Quotient(numerator, denominator, "/"):
            above, below = fraction_parts(numerator), fraction_parts(denominator)
            if above and below and above[1] == below[1] == 1 and below[0]:
                sign = -1 if below[0] < 0 else 1
                return sign * above[0], sign * below[0]
    return None


def is_settled(expression: Expression) -> bool:
    """Whether nothing is left to work out: a number, with its sign and unit, or a fraction of two whole numbers."""
    match expression:
        case Number():
            return True
        case Measured(amount):
            return is_settled(amount)
        case Negative(operand):
            return is_settled(operand)
        case Quotient():
            parts = fraction_parts(expression)
            return parts is not None and parts[0] % parts[1] != 0
    return False


def settled_value(expression: Expression, unit: str = "") -> Fraction:
    """The value of a settled number, a measure in `unit`."""
    value = rational_value(without_units(expression, unit or unit_of(expression)))
    assert value is not None
    return value
