"""The forms that a number is written in: whole, decimal, fraction, mixed number, percentage."""

from fractions import Fraction

from paperaudit.errors import BudgetExceeded
from paperaudit.model.expression import Expression, Measured, Negative, Number, NumberForm, Quotient

MAX_BITS = 3000
"""No number beyond about 900 digits is worked with; a school paper has none."""


def within_limits(value: Fraction) -> Fraction:
    """The value itself; raises BudgetExceeded where it has more digits than any school paper's."""
    if value.numerator.bit_length() + value.denominator.bit_length() > MAX_BITS:
        raise BudgetExceeded("a number with hundreds of digits")
    return value


def decimal_places(value: Fraction) -> int | None:
    """How many decimals an exact decimal of the value has; None where it never ends.

    >>> decimal_places(Fraction(3, 8)), decimal_places(Fraction(1, 3))
    (3, None)
    """
    rest, twos, fives = value.denominator, 0, 0
    while rest % 2 == 0:
        rest, twos = rest // 2, twos + 1
    while rest % 5 == 0:
        rest, fives = rest // 5, fives + 1
    return max(twos, fives) if rest == 1 else None


def whole_or_fraction(value: Fraction | int) -> Number:
    """A number as a whole number where it is one, else as a fraction in lowest terms."""
    exact = Fraction(value)
    return Number(exact, NumberForm.INTEGER if exact.denominator == 1 else NumberForm.FRACTION)


def as_decimal(value: Fraction, least_places: int = 0) -> Number | None:
    """A number as a decimal, with noughts up to `least_places`; None where its decimals never end."""
    places = decimal_places(value)
    if places is None:
        return None
    places = max(places, least_places)
    return Number(value, NumberForm.DECIMAL if places else NumberForm.INTEGER, places)


def as_mixed(value: Fraction) -> Number:
    """A number as a mixed number where it is above 1 and not whole, else as `whole_or_fraction` has it."""
    return Number(value, NumberForm.MIXED) if abs(value) > 1 and value.denominator > 1 else whole_or_fraction(value)


def as_percentage(value: Fraction) -> Number:
    """A number as a percentage: 0.65 is 65%. The decimals of the percentage are counted in `places`."""
    return Number(value, NumberForm.PERCENT, decimal_places(value * 100) or 0)


def form_of(expression: Expression) -> NumberForm | None:
    """The form of a number as it stands, sign and unit left aside; None where it is more than a number.

    >>> form_of(Quotient(Number(Fraction(2)), Number(Fraction(8)))).value
    'fraction'
    """
    match expression:
        case Number(_, form):
            return form
        case Negative(operand) | Measured(operand):
            return form_of(operand)
        case Quotient(Number(_, NumberForm.INTEGER) as above, Number(_, NumberForm.INTEGER) as below, "/"):
            return NumberForm.FRACTION if above.value and below.value else None
        case Quotient(Negative(operand), below, "/"):
            return form_of(Quotient(operand, below))
    return None
