"""Percentages: one amount of another, change as a percentage, before and after changes."""

from dataclasses import replace
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.exact import rational_value
from paperaudit.maths.number_forms import as_decimal, as_percentage, whole_or_fraction
from paperaudit.maths.units import MONEY
from paperaudit.maths.write import write
from paperaudit.model.ask import Accuracy, Ask
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import Expression, Measured, Number, NumberForm
from paperaudit.model.reading import Reading
from paperaudit.model.reckoning import Reckoning
from paperaudit.strands.numbers.working import Working, require
from paperaudit.strands.ratios.ending import ended
from paperaudit.strands.ratios.lawful import in_unit

SKILL = "percentages"


def percentage_of(task: Reckoning, reading: Reading) -> Derived:
    """One amount as a percentage of another."""
    working = _working(reading)
    part, whole = _same_unit(task, ("part", "whole"), working)
    share = _share(part, whole, working)
    require(share * whole == part, "the percentage taken of the whole is not the part")
    return working.derived(_percent_answer(share, reading, working), confirmed_by="the percentage taken of the whole")


def percentage_change(task: Reckoning, reading: Reading) -> Derived:
    """A change as a percentage of what was there before."""
    working = _working(reading)
    old, new = _same_unit(task, ("original", "new"), working)
    down = new < old
    if task.details and ("down" in task.details) != down:
        raise NoValue(f"it goes {'down' if down else 'up'}, from {_text(old)} to {_text(new)}")
    change = abs(new - old)
    larger, smaller = (old, new) if down else (new, old)
    word = "decrease" if down else "increase"
    working.say(f"{word} = {_text(larger)} − {_text(smaller)} = {_text(change)}", _text(change), working.used)
    share = _share(change, old, working)
    require(old * (1 - share if down else 1 + share) == new, "the change put back does not give the new amount")
    answer = _percent_answer(share, reading, working)
    return working.derived(answer, confirmed_by="the old amount changed by the percentage")


def share_of_whole(task: Reckoning, reading: Reading) -> Derived:
    """The whole from a part and its percentage."""
    working = _working(reading)
    share, part = _value(task, "percentage"), task.one("part")
    assert part is not None and reading.ask is not None
    size, unit = _bare(part)
    if share <= 0:
        raise NoValue("a share that is not positive")
    decimal = _text(share)
    working.say(f"{_text(share * 100)}% of the whole = {_text(size)}", "", working.used)
    working.say(f"the whole = {_text(size)} ÷ {decimal}", f"{_text(size)} ÷ {decimal}")
    whole = size / share
    working.say(f"= {_text(whole)}", _text(whole))
    require(whole * share == size, "the share of the whole is not the part")
    return working.derived(
        _amount_answer(whole, unit, reading.ask, working), confirmed_by="the share of it taken again"
    )


def changed(task: Reckoning, reading: Reading) -> Derived:
    """An amount after changes by percentages, before them, or the change itself."""
    working = _working(reading)
    assert reading.ask is not None
    changes = [_rational(one) for one in task.all_of("percentage")]
    forward = task.one("original") is not None
    given = task.one("original") if forward else task.one("new")
    assert given is not None
    size, unit = _bare(given)
    if any(change <= -1 for change in changes):
        raise NoValue("a fall by 100% or more")
    factors = [1 + change for change in changes]
    for change, factor in zip(changes, factors, strict=True) if task.wanted != ("change",) or not forward else ():
        sign = "−" if change < 0 else "+"
        working.say(f"100% {sign} {_text(abs(change) * 100)}% = {_text(factor * 100)}%", _text(factor), working.used)
    other = size
    for factor in factors:
        other = other * factor if forward else other / factor
    only_change = task.wanted == ("change",) and forward
    row = f" {'×' if forward else '÷'} ".join((_text(size), *map(_text, factors)))
    name = "new amount" if forward else "original amount"
    if not only_change:
        working.say(f"{name} = {row}", row)
        if "change" in task.wanted:
            working.say(f"= {_text(other)}", _text(other))
    old, new = (size, other) if forward else (other, size)
    again = old
    for change in changes:
        again += again * change
    require(again == new, "changed step by step it comes to something else")
    answers = []
    for wanted in task.wanted:
        value = abs(new - old) if wanted == "change" else new if wanted == "new" else old
        if only_change:
            row = f"{_text(abs(changes[0]))} × {_text(size)}"
            working.say(f"change = {row}", row)
        elif wanted == "change":
            working.say(f"change = {_text(max(old, new))} − {_text(min(old, new))}", "")
        answers.append(_amount_answer(value, unit, reading.ask, working))
    return working.derived(*answers, confirmed_by="the amount changed again step by step")


def _working(reading: Reading) -> Working:
    return Working(SKILL, tuple(given.text for given in reading.givens))


def _share(part: Fraction, whole: Fraction, working: Working) -> Fraction:
    if whole <= 0 or part < 0:
        raise NoValue("a percentage of nought or less")
    working.say(f"{_text(part)}/{_text(whole)} × 100%", f"{_text(part)}/{_text(whole)}")
    return part / whole


def _percent_answer(share: Fraction, reading: Reading, working: Working) -> Answer:
    assert reading.ask is not None
    hundredfold = share * 100
    value: Expression = as_percentage(share)
    if as_decimal(hundredfold) is None:
        mixed = write(Number(hundredfold, NumberForm.MIXED if hundredfold > 1 else NumberForm.FRACTION))
        if reading.ask.accuracy is None:
            working.say(f"= {mixed}%", f"{mixed}%")
            return Answer(f"{mixed}%", Number(share, NumberForm.PERCENT))
    return ended(value, replace(reading.ask, unit=""), working)


def _amount_answer(value: Fraction, unit: str, ask: Ask, working: Working) -> Answer:
    number = as_decimal(value) or whole_or_fraction(value)
    if unit in MONEY and ask.accuracy is None and (value * 100).denominator != 1:
        ask = replace(ask, accuracy=Accuracy("decimal places", "2"))
    return ended(Measured(number, unit) if unit else number, ask, working)


def _same_unit(task: Reckoning, names: tuple[str, str], working: Working) -> tuple[Fraction, Fraction]:
    one, other = (task.one(name) for name in names)
    assert one is not None and other is not None
    units = [value.unit for value in (one, other) if isinstance(value, Measured)]
    if len(units) == 1:
        raise NoValue(f"{write(one)} and {write(other)}: only one of them has a unit")
    if not units:
        return _rational(one), _rational(other)
    smaller = min(units, key=_size)
    return _rational(in_unit(one, smaller, working)), _rational(in_unit(other, smaller, working))


def _size(unit: str) -> Fraction:
    from paperaudit.maths.units import unit_named

    known = unit_named(unit)
    return known.size if known is not None else Fraction(1)


def _bare(value: Expression) -> tuple[Fraction, str]:
    return (_rational(value.amount), value.unit) if isinstance(value, Measured) else (_rational(value), "")


def _value(task: Reckoning, name: str) -> Fraction:
    value = task.one(name)
    assert value is not None
    return _rational(value)


def _rational(value: Expression) -> Fraction:
    exact = rational_value(value)
    if exact is None:
        raise NoValue(f"{write(value)} is irrational")
    return exact


def _text(value: Fraction) -> str:
    return write(as_decimal(value) or whole_or_fraction(value))
