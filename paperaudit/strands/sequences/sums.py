"""Sums of arithmetic and geometric series, to infinity too, and sums in sigma notation."""

from fractions import Fraction
from itertools import pairwise

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.exact import bounded_power, rational_value
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.powers import put_in
from paperaudit.model.derivation import Answer, Outcome
from paperaudit.model.expression import Number
from paperaudit.model.reading import Reading
from paperaudit.model.sequence_task import OfSequence, Sigma
from paperaudit.strands.numbers.worked_rows import say_worked
from paperaudit.strands.numbers.working import Working, exact, require
from paperaudit.strands.refusals import impossible
from paperaudit.strands.sequences.rules import Rule, rule_of
from paperaudit.strands.sequences.terms import (
    ADDED_ONE_BY_ONE,
    LOWERED,
    SERIES,
    bracketed,
    number_text,
    place_of,
    say_formula,
)

_ADDED = "the terms added one by one"


def summed(task: OfSequence, reading: Reading) -> Outcome:
    """The sum of the first terms of a sequence, or of all terms of a series that ends."""
    rule, working = rule_of(task, reading, SERIES)
    count = task.count
    if task.what == "sum of all":
        if rule.last is None:
            raise NoValue("the series does not end")
        say_formula(rule, working)
        found = place_of(rule, rule.last, working)
        if found is None:
            last = number_text(rule.last)
            raise impossible(working.used or (last,), working.steps[-1].statement, f"that {last} is a term is false")
        count = found
    if not 0 < count <= ADDED_ONE_BY_ONE:
        raise BudgetExceeded("a sum of so many terms")
    value = sum((rule.term(place) for place in range(1, count + 1)), Fraction(0))
    name = f"S{str(count).translate(LOWERED)}"
    a, step = rule.first, rule.step
    if rule.kind == "arithmetic":
        working.say("Sₙ = n/2 × [2a + (n − 1)d]")
        row = f"{count}/2 × [2 × {bracketed(a)} + ({count} − 1) × {bracketed(step)}]"
        working.say(f"{name} = {row}")
        require(Fraction(count, 2) * (2 * a + (count - 1) * step) == value, name)
    elif rule.kind == "geometric" and step != 1:
        working.say("Sₙ = a(rⁿ − 1)/(r − 1)")
        raised = f"{bracketed(step)}{_raised(count)}"
        row = f"{bracketed(a)} × ({raised} − 1) ÷ ({number_text(step)} − 1)"
        working.say(f"{name} = {row}")
        require(a * (bounded_power(step, count) - 1) / (step - 1) == value, name)
    elif count <= 12:
        row = number_text(value)
        working.say(f"{name} = {' + '.join(bracketed(rule.term(place)) for place in range(1, count + 1))}")
    else:
        raise NoValue("the sum of many terms of such a sequence")
    say_worked(row, number_text(value), working)
    return working.derived(Answer(number_text(value), whole_or_fraction(value)), confirmed_by=_ADDED)


def _raised(count: int) -> str:
    return str(count).translate(str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹"))


def to_infinity(task: OfSequence, reading: Reading) -> Outcome:
    """The sum to infinity of a geometric series."""
    rule, working = rule_of(task, reading, SERIES)
    return _endless(rule, working)


def _endless(rule: Rule, working: Working) -> Outcome:
    if rule.kind != "geometric":
        raise NoValue("only a geometric series has a sum to infinity")
    if abs(rule.step) >= 1:
        working.conclude(f"r = {number_text(rule.step)} is not between −1 and 1: there is no sum to infinity", "no")
        return working.derived(Answer("no sum to infinity", kind="no sum"), confirmed_by="the terms do not come to 0")
    value = rule.first / (1 - rule.step)
    working.say("S∞ = a/(1 − r)")
    less = f"({number_text(rule.step)})" if rule.step < 0 else number_text(rule.step)
    working.say(f"= {bracketed(rule.first)} ÷ (1 − {less})")
    working.say(f"= {bracketed(rule.first)} ÷ {bracketed(1 - rule.step)}")
    working.say(f"= {number_text(value)}", number_text(value))
    total, term = Fraction(0), rule.first
    count = 60
    for _ in range(count):
        total, term = total + term, term * rule.step
    left = abs(rule.first / (1 - rule.step) * bounded_power(rule.step, count))
    require(abs(value - total) == left, "the sum to infinity")
    return working.derived(Answer(number_text(value), whole_or_fraction(value)), confirmed_by="sixty terms added")


def sigma(task: Sigma, reading: Reading) -> Outcome:
    """A sum in sigma notation."""
    low = exact(task.low)
    if low.denominator != 1:
        raise NoValue("a sum from a number that is not whole")
    working = Working(SERIES)
    start = int(low)
    if task.high is None:
        terms = [_at(task, start + place) for place in range(4)]
        if not all(terms) or len({other / one for one, other in pairwise(terms)}) > 1:
            raise NoValue("a sum without end that is not geometric")
        ratio = terms[1] / terms[0]
        working.say(f"a = {number_text(terms[0])}, r = {number_text(ratio)}")
        return _endless(Rule("geometric", tuple(terms), None, terms[0], ratio), working)
    high = exact(task.high)
    count = high - low + 1
    if high.denominator != 1 or not 0 < count <= ADDED_ONE_BY_ONE:
        raise BudgetExceeded("a sum of so many terms, or of none")
    terms = [_at(task, start + place) for place in range(int(count))]
    value = sum(terms, Fraction(0))
    _say_sigma(terms, working)
    working.say(f"= {number_text(value)}", number_text(value))
    return working.derived(Answer(number_text(value), whole_or_fraction(value)), confirmed_by=_ADDED)


def _at(task: Sigma, place: int) -> Fraction:
    value = rational_value(put_in(task.formula, task.letter, Number(Fraction(place))))
    if value is None:
        raise NoValue("an irrational term")
    return value


def _say_sigma(terms: list[Fraction], working: Working) -> None:
    count, value = len(terms), sum(terms, Fraction(0))
    steps = {other - one for one, other in pairwise(terms)}
    ratios = {other / one for one, other in pairwise(terms)} if all(terms) else set()
    if count <= 6:
        working.say(f"= {' + '.join(map(bracketed, terms))}")
        return
    shown = " + ".join(map(bracketed, terms[:3]))
    working.say(f"= {shown} + … + {bracketed(terms[-1])} ({count} terms)")
    if len(steps) == 1:
        working.say(f"= {count}/2 × ({bracketed(terms[0])} + {bracketed(terms[-1])})")
        require(Fraction(count, 2) * (terms[0] + terms[-1]) == value, "the sum")
    elif len(ratios) == 1 and 1 not in ratios:
        ratio = ratios.pop()
        working.say(f"= {bracketed(terms[0])} × ({bracketed(ratio)}{_raised(count)} − 1) ÷ ({number_text(ratio)} − 1)")
        require(terms[0] * (bounded_power(ratio, count) - 1) / (ratio - 1) == value, "the sum")
    elif count > 40:
        raise NoValue("the sum of many terms of such a sequence")
