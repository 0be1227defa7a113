"""Plain amounts, a fraction with its unit, in and out of the lines of money, ratio and scale."""

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.exact import rational_value
from paperaudit.maths.measure import UnitClash
from paperaudit.maths.number_forms import as_decimal, whole_or_fraction
from paperaudit.maths.units import MONEY, conversion
from paperaudit.maths.write import write
from paperaudit.model.ask import Accuracy, Ask
from paperaudit.model.derivation import Answer
from paperaudit.model.expression import Expression, Measured
from paperaudit.model.reading import Reading
from paperaudit.strands.numbers.working import Working
from paperaudit.strands.ratios.ending import ended


def rational(value: Expression) -> Fraction:
    """The exact value of a number; raises NoValue where it is irrational."""
    exact = rational_value(value)
    if exact is None:
        raise NoValue(f"{write(value)} is irrational")
    return exact


def bare_of(value: Expression) -> tuple[Fraction, str]:
    """An amount's number and its unit, "" for none."""
    return (rational(value.amount), value.unit) if isinstance(value, Measured) else (rational(value), "")


def text_of(value: Fraction, unit: str = "") -> str:
    """A number as it is written in a line, with its unit: 0.45, 2/3, R24.50, 6 cm."""
    number = as_decimal(value) or whole_or_fraction(value)
    if unit in MONEY and value.denominator != 1:
        number = as_decimal(value, 2) or number
    return write(Measured(number, unit) if unit else number)


def answered(value: Fraction, unit: str, ask: Ask, working: Working, name: str = "") -> Answer:
    """The answer with its last lines; money that does not end with its cents is rounded to them."""
    number = as_decimal(value) or whole_or_fraction(value)
    if unit in MONEY and ask.accuracy is None and (value * 100).denominator != 1:
        ask = replace(ask, accuracy=Accuracy("decimal places", "2"))
    return ended(Measured(number, unit) if unit else number, ask, working, name)


def working_of(skill: str, reading: Reading) -> Working:
    """Lines of one skill that rest on all that the part says."""
    return Working(skill, tuple(given.text for given in reading.givens))


def in_one_unit(values: Iterable[Expression]) -> tuple[list[Fraction], str]:
    """Amounts in the unit of the first. Raises UnitClash where they measure different things."""
    bare = [bare_of(value) for value in values]
    unit = bare[0][1]
    numbers = []
    for number, own in bare:
        scale = conversion(own, unit)
        if scale is None:
            raise UnitClash(f"{own or 'a bare number'} and {unit or 'a bare number'} do not compare")
        numbers.append(number * scale)
    return numbers, unit
