"""Kinds of question that a few laws settle, each a table of names, laws and units."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.measure import UnitClash
from paperaudit.maths.number_forms import as_decimal, whole_or_fraction
from paperaudit.maths.units import conversion, unit_named
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Derived
from paperaudit.model.expression import Expression, Measured, Number, Product, Sum
from paperaudit.model.reading import Reading
from paperaudit.model.reckoning import Reckoning
from paperaudit.strands.numbers.working import Working, require
from paperaudit.strands.ratios.amounts_worked import has_decimals, simplest, size_of
from paperaudit.strands.ratios.ending import ended
from paperaudit.strands.ratios.laws import Known, Law, apply, chain

Units = Mapping[str, str]
"""The unit that each letter is worked in, "" for none."""


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of question: the letter of each name, its laws, the units to work in, a second way to the results."""

    skill: str
    letters: Mapping[str, str]
    laws: tuple[Law, ...]
    units: Callable[[Reckoning, Ask], Units]
    check: Callable[[Mapping[str, Fraction]], None] | None = None
    confirmed_by: str = "put back into the law"


def by_laws(kind: Kind, task: Reckoning, reading: Reading) -> Derived:
    """The wanted amounts by the laws of a kind. Raises NoValue, UnitClash and ChecksDisagree."""
    assert reading.ask is not None
    wished = next((one.removeprefix("in ") for one in task.details if one.startswith("in ")), "")
    ask = replace(reading.ask, unit=reading.ask.unit or wished)
    working = Working(kind.skill, tuple(given.text for given in reading.givens))
    known, units = Known(), kind.units(task, ask)
    for amount in task.amounts:
        letter = kind.letters[amount.name]
        known.values[letter] = in_unit(amount.value, units[letter], working)
    answers = []
    for name in task.wanted:
        letter = kind.letters[name]
        path = chain(kind.laws, known.values, letter)
        if path is None:
            raise NoValue(f"the {name} does not follow from what is given")
        for law, found in path:
            apply(law, found, known, working)
        value = known.values[letter]
        if size_of(value) < 0:
            raise NoValue(f"the {name} would be negative")
        answers.append(ended(Measured(value, units[letter]) if units[letter] else value, ask, working, letter))
    if kind.check is not None:
        sizes = {letter: Fraction(size_of(value)) for letter, value in known.values.items()}
        kind.check(sizes)
    return working.derived(*answers, confirmed_by=kind.confirmed_by)


def in_unit(value: Expression, unit: str, working: Working) -> Expression:
    """The bare amount in a unit, with the line that changes it where it was in another one."""
    parts = value.terms if isinstance(value, Sum) else (value,)
    if not any(isinstance(part, Measured) for part in parts):
        return value
    total: list[Expression] = []
    for part in parts:
        if not isinstance(part, Measured):
            raise UnitClash(f"{write(part)} has no unit")
        scale = conversion(part.unit, unit)
        if scale is None:
            raise UnitClash(f"{part.unit} is not {unit or 'a bare number'}")
        total.append(_scaled(part.amount, scale))
    amount = total[0] if len(total) == 1 else simplest(Sum(tuple(total)))
    amount = short(amount)
    _same_in_base_units(parts, amount, unit)
    changed = Measured(amount, unit)
    if changed != value and write(changed) != write(value):
        working.say(f"{write(value)} = {write(changed)}", write(changed), working.used)
    return amount


def _same_in_base_units(parts: tuple[Expression, ...], amount: Expression, unit: str) -> None:
    """The parts and their sum, each brought to the base unit on its own."""
    found = Fraction(0)
    for part in parts:
        known = unit_named(part.unit) if isinstance(part, Measured) else None
        if known is None or not isinstance(part, Measured):
            return
        found += Fraction(size_of(part.amount)) * known.size
    target = unit_named(unit)
    if target is not None:
        close = abs(Fraction(size_of(amount)) * target.size - found) <= abs(found) / 10**30
        require(close, f"{' + '.join(map(write, parts))} in {unit}")


def short(amount: Expression) -> Expression:
    """A fraction as a decimal where that has at most three places: 2.5 hours, but 7/3 hours."""
    decimal = as_decimal(amount.value) if isinstance(amount, Number) else None
    return decimal if decimal is not None and decimal.places <= 3 else amount


def _scaled(amount: Expression, scale: Fraction) -> Expression:
    if scale == 1:
        return amount
    if isinstance(amount, Number):
        value = amount.value * scale
        return (as_decimal(value) if has_decimals(amount) or value.denominator in (2, 4, 5, 10) else None) or (
            whole_or_fraction(value)
        )
    return simplest(Product((amount, Number(scale)), "×"))
