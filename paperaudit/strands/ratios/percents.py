"""Percentages: one amount of another, change as a percentage, before and after changes."""

from dataclasses import replace
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.number_forms import as_decimal, as_percentage
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import Expression, Measured, Number, NumberForm
from paperaudit.model.reading import Reading
from paperaudit.model.reckoning import Reckoning
from paperaudit.strands.numbers.working import Working, require
from paperaudit.strands.ratios.ending import ended
from paperaudit.strands.ratios.lawful import in_unit
from paperaudit.strands.ratios.plain_amounts import answered, bare_of, rational, text_of, working_of

SKILL = "percentages"


def percentage_of(task: Reckoning, reading: Reading) -> Derived:
    """One amount as a percentage of another."""
    working = working_of(SKILL, reading)
    part, whole = _same_unit(task, ("part", "whole"), working)
    share = _share(part, whole, working)
    require(share * whole == part, "the percentage taken of the whole is not the part")
    return working.derived(_percent_answer(share, reading, working), confirmed_by="the percentage taken of the whole")


def percentage_change(task: Reckoning, reading: Reading) -> Derived:
    """A change as a percentage of what was there before."""
    working = working_of(SKILL, reading)
    old, new = _same_unit(task, ("original", "new"), working)
    down = new < old
    if task.details and ("down" in task.details) != down:
        raise NoValue(f"it goes {'down' if down else 'up'}, from {text_of(old)} to {text_of(new)}")
    change = abs(new - old)
    larger, smaller = (old, new) if down else (new, old)
    word = "decrease" if down else "increase"
    working.say(f"{word} = {text_of(larger)} − {text_of(smaller)} = {text_of(change)}", text_of(change), working.used)
    share = _share(change, old, working)
    require(old * (1 - share if down else 1 + share) == new, "the change put back does not give the new amount")
    answer = _percent_answer(share, reading, working)
    return working.derived(answer, confirmed_by="the old amount changed by the percentage")


def share_of_whole(task: Reckoning, reading: Reading) -> Derived:
    """The whole from a part and its percentage."""
    working = working_of(SKILL, reading)
    share, part = _value(task, "percentage"), task.one("part")
    assert part is not None and reading.ask is not None
    size, unit = bare_of(part)
    if share <= 0:
        raise NoValue("a share that is not positive")
    decimal = text_of(share)
    working.say(f"{text_of(share * 100)}% of the whole = {text_of(size)}", "", working.used)
    working.say(f"the whole = {text_of(size)} ÷ {decimal}", f"{text_of(size)} ÷ {decimal}")
    whole = size / share
    working.say(f"= {text_of(whole)}", text_of(whole))
    require(whole * share == size, "the share of the whole is not the part")
    return working.derived(answered(whole, unit, reading.ask, working), confirmed_by="the share of it taken again")


def changed(task: Reckoning, reading: Reading) -> Derived:
    """An amount after changes by percentages, before them, or the change itself."""
    working = working_of(SKILL, reading)
    assert reading.ask is not None
    changes = [rational(one) for one in task.all_of("percentage")]
    forward = task.one("original") is not None
    given = task.one("original") if forward else task.one("new")
    assert given is not None
    size, unit = bare_of(given)
    if any(change <= -1 for change in changes):
        raise NoValue("a fall by 100% or more")
    factors = [1 + change for change in changes]
    for change, factor in zip(changes, factors, strict=True) if task.wanted != ("change",) or not forward else ():
        sign = "−" if change < 0 else "+"
        working.say(
            f"100% {sign} {text_of(abs(change) * 100)}% = {text_of(factor * 100)}%", text_of(factor), working.used
        )
    other = size
    for factor in factors:
        other = other * factor if forward else other / factor
    only_change = task.wanted == ("change",) and forward
    row = f" {'×' if forward else '÷'} ".join((text_of(size), *map(text_of, factors)))
    name = "new amount" if forward else "original amount"
    if not only_change:
        working.say(f"{name} = {row}", row)
        if "change" in task.wanted:
            working.say(f"= {text_of(other)}", text_of(other))
    old, new = (size, other) if forward else (other, size)
    again = old
    for change in changes:
        again += again * change
    require(again == new, "changed step by step it comes to something else")
    answers = []
    for wanted in task.wanted:
        value = abs(new - old) if wanted == "change" else new if wanted == "new" else old
        if only_change:
            row = f"{text_of(abs(changes[0]))} × {text_of(size)}"
            working.say(f"change = {row}", row)
        elif wanted == "change":
            working.say(f"change = {text_of(max(old, new))} − {text_of(min(old, new))}", "")
        answers.append(answered(value, unit, reading.ask, working))
    return working.derived(*answers, confirmed_by="the amount changed again step by step")


def _share(part: Fraction, whole: Fraction, working: Working) -> Fraction:
    if whole <= 0 or part < 0:
        raise NoValue("a percentage of nought or less")
    working.say(f"{text_of(part)}/{text_of(whole)} × 100%", f"{text_of(part)}/{text_of(whole)}")
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


def _same_unit(task: Reckoning, names: tuple[str, str], working: Working) -> tuple[Fraction, Fraction]:
    one, other = (task.one(name) for name in names)
    assert one is not None and other is not None
    units = [value.unit for value in (one, other) if isinstance(value, Measured)]
    if len(units) == 1:
        raise NoValue(f"{write(one)} and {write(other)}: only one of them has a unit")
    if not units:
        return rational(one), rational(other)
    smaller = min(units, key=_size)
    return rational(in_unit(one, smaller, working)), rational(in_unit(other, smaller, working))


def _size(unit: str) -> Fraction:
    from paperaudit.maths.units import unit_named

    known = unit_named(unit)
    return known.size if known is not None else Fraction(1)


def _value(task: Reckoning, name: str) -> Fraction:
    value = task.one(name)
    assert value is not None
    return rational(value)
