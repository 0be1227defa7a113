"""The outcomes of an experiment, one by one, and whether an event holds of them."""

from collections.abc import Iterator
from fractions import Fraction
from math import isqrt, prod

from paperaudit.errors import BudgetExceeded
from paperaudit.maths.primes import is_prime
from paperaudit.model.chance_task import (
    Alike,
    Both,
    Condition,
    Either,
    Event,
    Experiment,
    InTurn,
    Is,
    Score,
    Single,
    Source,
    Thing,
    Times,
    Together,
)

MOST_OUTCOMES = 60_000


def meets(condition: Condition, thing: Thing) -> bool:
    """Whether an outcome of one draw is what a condition says.

    >>> meets(Is("even"), Thing("4", 1, Fraction(4)))
    True
    """
    match condition:
        case Either(options):
            return any(meets(one, thing) for one in options)
        case Both(conditions):
            return all(meets(one, thing) for one in conditions)
    return _is(condition, thing) != condition.negated


def _is(condition: Is, thing: Thing) -> bool:
    match condition.what:
        case "any":
            return True
        case "named":
            return condition.name == thing.name or condition.name in thing.tags
        case "vowel" | "consonant":
            letter = thing.name.lower()
            return len(letter) == 1 and letter.isalpha() and (letter in "aeiou") == (condition.what == "vowel")
    return thing.number is not None and number_meets(condition, thing.number)


def number_meets(condition: Is, value: Fraction) -> bool:
    """Whether a number is what a condition on numbers says."""
    whole = value.numerator if value.denominator == 1 else None
    match condition.what:
        case "equal":
            return value == condition.number
        case "more":
            return value > condition.number
        case "less":
            return value < condition.number
        case "at least":
            return value >= condition.number
        case "at most":
            return value <= condition.number
        case "between":
            return condition.number <= value <= condition.upper
    if whole is None:
        return False
    match condition.what:
        case "even" | "odd":
            return (whole % 2 == 0) == (condition.what == "even")
        case "prime":
            return whole > 1 and is_prime(whole)
        case "square":
            return whole >= 0 and isqrt(whole) ** 2 == whole
        case "cube":
            return any(one**3 == whole for one in range(whole + 1)) if 0 <= whole < 10**6 else False
        case "multiple":
            return whole % condition.number.numerator == 0
        case "factor":
            return whole != 0 and condition.number.numerator % whole == 0
    return False


def holds(event: Event, drawn: tuple[Thing, ...]) -> bool:
    """Whether an event holds of the things that were drawn, in their order."""
    match event:
        case Single(condition):
            return meets(condition, drawn[0])
        case Times(condition, least, most):
            return least <= sum(meets(condition, one) for one in drawn) <= most
        case InTurn(conditions):
            return all(meets(condition, one) for condition, one in zip(conditions, drawn, strict=True))
        case Together(parts):
            return _in_some_order([one for one, times in parts for _ in range(times)], drawn)
        case Alike(same):
            kinds = len({one.name for one in drawn})
            return kinds == 1 if same else kinds == len(drawn)
        case Score(how, condition):
            numbers = [one.number for one in drawn if one.number is not None]
            return len(numbers) == len(drawn) and meets(condition, Thing("", 1, score(how, numbers)))


def score(how: str, numbers: list[Fraction]) -> Fraction:
    """The sum or the product of numbers, or the difference of two."""
    if how == "sum":
        return sum(numbers, Fraction(0))
    return prod(numbers, start=Fraction(1)) if how == "product" else abs(numbers[0] - numbers[-1])


def _in_some_order(conditions: list[Condition], drawn: tuple[Thing, ...]) -> bool:
    if not conditions:
        return True
    return any(
        meets(condition, drawn[0]) and _in_some_order([*conditions[:at], *conditions[at + 1 :]], drawn[1:])
        for at, condition in enumerate(conditions)
    )


def outcomes(experiment: Experiment) -> Iterator[tuple[tuple[Thing, ...], int]]:
    """Every way to draw, kind by kind, with how many equally likely outcomes it stands for.

    Raises BudgetExceeded where there are too many.
    """
    if prod(len(draw.things) for draw in experiment.draws) > MOST_OUTCOMES:
        raise BudgetExceeded("an experiment with tens of thousands of outcomes")
    yield from _drawn(experiment.draws, experiment.replaced, {}, ())


def _drawn(
    draws: tuple[Source, ...], replaced: bool, taken: dict[str, int], before: tuple[Thing, ...]
) -> Iterator[tuple[tuple[Thing, ...], int]]:
    if not draws:
        yield before, 1
        return
    for thing in draws[0].things:
        gone = 0 if replaced else taken.get(thing.name, 0)
        if thing.count <= gone:
            continue
        after = {**taken, thing.name: gone + 1}
        for drawn, ways in _drawn(draws[1:], replaced, after, (*before, thing)):
            yield drawn, ways * (thing.count - gone)


def where_known(experiment: Experiment, event: Event, known: Event) -> tuple[int, int]:
    """How many outcomes meet both of two events, and how many meet the second one."""
    both = under = 0
    for drawn, ways in outcomes(experiment):
        if holds(known, drawn):
            under += ways
            both += ways if holds(event, drawn) else 0
    return both, under


def by_enumeration(experiment: Experiment, event: Event) -> Fraction:
    """The probability of an event as favourable outcomes over all outcomes, each looked at."""
    favourable = total = 0
    for drawn, ways in outcomes(experiment):
        total += ways
        favourable += ways if holds(event, drawn) else 0
    return Fraction(favourable, total)
