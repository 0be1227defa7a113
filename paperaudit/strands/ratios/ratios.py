"""Ratios in simplest form, sharing in a ratio, direct and inverse proportion."""

from dataclasses import replace
from fractions import Fraction
from functools import reduce
from math import gcd, lcm

from paperaudit.errors import NoValue
from paperaudit.maths.number_forms import as_decimal, whole_or_fraction
from paperaudit.maths.units import MONEY, conversion, unit_named
from paperaudit.maths.write import write
from paperaudit.model.ask import Accuracy
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import Expression, Measured
from paperaudit.model.reading import Reading
from paperaudit.model.reckoning import Reckoning
from paperaudit.strands.numbers.working import Working, require
from paperaudit.strands.ratios.ending import ended
from paperaudit.strands.ratios.plain_amounts import rational, text_of, working_of


def ratio(task: Reckoning, reading: Reading) -> Derived:
    """A ratio in its simplest form, or as 1 : n."""
    working = working_of("ratio", reading)
    terms = task.all_of("term")
    values = _in_one_unit(terms, working)
    if any(value <= 0 for value in values):
        raise NoValue("a term of a ratio that is not positive")
    shown = _text(values)
    if any(isinstance(term, Measured) for term in terms):
        working.say(shown, shown)
    if task.wanted != ("simplest form",):
        if len(values) != 2:
            raise NoValue("a ratio of more than two terms")
        divisor = values[0] if task.wanted == ("form 1 : n",) else values[1]
        result = [value / divisor for value in values]
    else:
        below = lcm(*(value.denominator for value in values))
        whole = [int(value * below) for value in values]
        if below > 1:
            working.say(f"= {_text([Fraction(one) for one in whole])}", "")
        common = reduce(gcd, whole)
        result = [Fraction(one, common) for one in whole]
        if common > 1 and not working.steps:
            working.say(f"{shown} = {' : '.join(f'({one} ÷ {common})' for one in whole)}")
    require(
        all(one * values[0] == other * result[0] for one, other in zip(result, values, strict=True)),
        "the terms are not in the same ratio",
    )
    text = _text(result)
    working.conclude(f"{'= ' if working.steps else f'{shown} = '}{text}", text)
    return working.derived(Answer(text, kind="ratio"), confirmed_by="each term multiplied crosswise")


def sharing(task: Reckoning, reading: Reading) -> Derived:
    """An amount shared in a ratio."""
    assert reading.ask is not None
    working = working_of("ratio", reading)
    total = task.one("total")
    assert total is not None
    unit = total.unit if isinstance(total, Measured) else ""
    size = rational(total.amount if isinstance(total, Measured) else total)
    terms = [rational(term) for term in task.all_of("term")]
    if any(term <= 0 for term in terms) or size <= 0:
        raise NoValue("a share that is not positive")
    parts = sum(terms, Fraction(0))
    working.say(f"{' + '.join(map(text_of, terms))} = {text_of(parts)} parts", text_of(parts), working.used)
    shares = [size * term / parts for term in terms]
    wanted = task.wanted[0].removesuffix(" share")
    chosen = [
        index
        for index, term in enumerate(terms)
        if wanted == "every" or (term == (max if wanted == "largest" else min)(terms))
    ]
    answers = []
    for index in chosen[:1] if wanted != "every" else chosen:
        row = f"{text_of(terms[index])}/{text_of(parts)} × {write(total)}"
        working.say(row, row, (working.steps[0].statement,))
        value = as_decimal(shares[index]) or whole_or_fraction(shares[index])
        ask = reading.ask
        if unit in MONEY and ask.accuracy is None and (shares[index] * 100).denominator != 1:
            ask = replace(ask, accuracy=Accuracy("decimal places", "2"))
        answers.append(ended(Measured(value, unit) if unit else value, ask, working))
    require(sum(shares, Fraction(0)) == size, "the shares do not add up to the whole")
    require(
        all(one * terms[0] == shares[0] * term for one, term in zip(shares, terms, strict=True)),
        "the shares are not in the ratio",
    )
    return working.derived(*answers, confirmed_by="the shares added up, and compared with the ratio")


def direct(task: Reckoning, reading: Reading) -> Derived:
    """The amount for another number of the same things."""
    assert reading.ask is not None
    working = working_of("proportion", reading)
    one, other, amount = task.one("first number"), task.one("second number"), task.one("first amount")
    assert one is not None and other is not None and amount is not None
    unit = amount.unit if isinstance(amount, Measured) else ""
    size = rational(amount.amount if isinstance(amount, Measured) else amount)
    count, target = rational(one), rational(other)
    if count <= 0 or target <= 0:
        raise NoValue("a number of things that is not positive")
    row = f"{write(amount)} ÷ {text_of(count)} × {text_of(target)}"
    result = size / count * target
    working.say(row, row)
    require(result * count == size * target, "the products crosswise differ")
    value = as_decimal(result) or whole_or_fraction(result)
    ask = reading.ask
    if unit in MONEY and ask.accuracy is None and (result * 100).denominator != 1:
        ask = replace(ask, accuracy=Accuracy("decimal places", "2"))
    return working.derived(
        ended(Measured(value, unit) if unit else value, ask, working), confirmed_by="multiplied crosswise"
    )


def _in_one_unit(terms: tuple[Expression, ...], working: Working) -> list[Fraction]:
    units = [term.unit for term in terms if isinstance(term, Measured)]
    if len(units) not in (0, len(terms)):
        raise NoValue("only some terms have a unit")
    if not units:
        return [rational(term) for term in terms]
    smallest = min(units, key=lambda unit: conversion(unit, units[0]) or Fraction(0))
    values = []
    for term in terms:
        assert isinstance(term, Measured)
        scale = conversion(term.unit, smallest)
        if scale is None:
            raise NoValue(f"{term.unit} and {smallest} in one ratio")
        values.append(rational(term.amount) * scale)
    sizes = [rational(term.amount) * _size(term.unit) for term in terms if isinstance(term, Measured)]
    require(
        all(one * values[0] == other * sizes[0] for one, other in zip(sizes, values, strict=True)),
        "the terms in their base unit",
    )
    return values


def _size(unit: str) -> Fraction:
    known = unit_named(unit)
    return known.size if known is not None else Fraction(1)


def _text(values: list[Fraction]) -> str:
    return " : ".join(map(text_of, values))
