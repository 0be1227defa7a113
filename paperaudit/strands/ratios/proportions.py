"""Direct and inverse proportion of two amounts: the amount for another number of things, workers or hours."""

from dataclasses import replace
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.model.derivation import Derived
from paperaudit.model.expression import Expression
from paperaudit.model.reading import Reading
from paperaudit.model.reckoning import Reckoning
from paperaudit.strands.numbers.working import Working, require
from paperaudit.strands.ratios.plain_amounts import answered, bare_of, in_one_unit, text_of, working_of


def direct_amounts(task: Reckoning, reading: Reading) -> Derived:
    """The amount for another number of the same things; compared crosswise."""
    first, second, amount, unit, working = _given(task, reading)
    row = f"{text_of(second)} ÷ {text_of(first)}"
    if amount != 1:
        row = f"{text_of(amount, unit)}{'' if first == 1 else f' ÷ {text_of(first)}'} × {text_of(second)}"
    working.say(row, row)
    result = direct(amount, first, second)
    require(result * first == amount * second, "the products crosswise differ")
    return _closed(result, unit, task, reading, working, "multiplied crosswise")


def inverse_amounts(task: Reckoning, reading: Reading) -> Derived:
    """The amount for another number where the product stays the same, as workers and their hours; both products."""
    first, second, amount, unit, working = _given(task, reading)
    product = first * amount
    working.say(f"{text_of(first)} × {text_of(amount)} = {text_of(product)}", text_of(product))
    working.say(f"{text_of(product)} ÷ {text_of(second)}", "")
    result = inverse(amount, first, second)
    require(result * second == product, "the products of both pairs differ")
    return _closed(result, unit, task, reading, working, "the products of both pairs")


def direct(amount: Fraction, first: Fraction, second: Fraction) -> Fraction:
    """The amount for `second` where there is `amount` for `first`."""
    return amount / first * second


def inverse(amount: Fraction, first: Fraction, second: Fraction) -> Fraction:
    """The amount for `second` where `first` times `amount` stays the same."""
    return first * amount / second


def _given(task: Reckoning, reading: Reading) -> tuple[Fraction, Fraction, Fraction, str, Working]:
    """Both numbers in one unit, the amount that goes with the first, its unit, and a sheet for the lines."""
    working = working_of("proportion", reading)
    values = [task.one("first"), task.one("second")]
    named: list[Expression] = [value for value in values if value is not None]
    (first, second), unit = in_one_unit(named)
    own = bare_of(named[1])[1]
    if own != unit:
        working.say(f"{text_of(bare_of(named[1])[0], own)} = {text_of(second, unit)}", text_of(second, unit))
    value = task.one("that goes with it")
    assert value is not None
    amount, amount_unit = bare_of(value)
    if min(first, second, amount) <= 0:
        raise NoValue("an amount that is not positive")
    return first, second, amount, amount_unit, working


def _closed(
    result: Fraction, unit: str, task: Reckoning, reading: Reading, working: Working, confirmed_by: str
) -> Derived:
    assert reading.ask is not None
    if "whole" in task.details and result.denominator != 1:
        raise NoValue(f"there would be {text_of(result)} of them, which is not whole")
    if "rounded up" in task.details and result.denominator != 1:
        working.say(f"= {text_of(result)}, which is rounded up", text_of(result))
        result = Fraction(result.__ceil__())
    asked = task.wanted[0].removeprefix("amount").strip().removeprefix("in ")
    ask = replace(reading.ask, unit=reading.ask.unit or asked)
    return working.derived(answered(result, unit, ask, working), confirmed_by=confirmed_by)
