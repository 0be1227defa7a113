"""Shares in a ratio of which one, a difference or the whole is known; ratios joined by a common term."""

from collections.abc import Mapping
from fractions import Fraction
from functools import reduce
from math import gcd, lcm

from paperaudit.errors import NoValue
from paperaudit.model.derivation import Answer, Derived, Impossible, Outcome
from paperaudit.model.reading import Reading
from paperaudit.model.reckoning import Reckoning
from paperaudit.strands.numbers.working import Working, require
from paperaudit.strands.ratios.plain_amounts import answered, bare_of, rational, text_of, working_of

Parts = Mapping[str, Fraction]


def known_shares(task: Reckoning, reading: Reading) -> Outcome:
    """What is wanted of a sharing, by the worth of one part; every fact is checked on the shares themselves."""
    assert reading.ask is not None
    working = working_of("ratio", reading)
    parts = {one.name[9:]: rational(one.value) for one in task.amounts if one.name.startswith("parts of ")}
    facts = [(one.name, *bare_of(one.value)) for one in task.amounts if not one.name.startswith("parts of ")]
    unit = facts[0][2]
    if min(parts.values()) <= 0 or any(own != unit for _, _, own in facts):
        raise NoValue("shares that are not positive, or not in one unit")
    worths = {value / _count(name, parts) for name, value, _ in facts if _count(name, parts) > 0}
    if len(worths) != 1 or any(_count(name, parts) <= 0 or value <= 0 for name, value, _ in facts):
        return _impossible(facts, parts, reading)
    name, value, _ = facts[0]
    worth = _one_part(name, value, unit, parts, "named" in task.details, working)
    shares = {one: worth * count for one, count in parts.items()}
    if "whole" in task.details and not unit and any(share.denominator != 1 for share in shares.values()):
        return _not_whole(shares, reading)
    _facts_hold(facts, parts, shares)
    answers = []
    for wanted in parts if task.wanted == ("every share",) else task.wanted:
        count = _count(wanted, parts)
        require(count * worth == _from_shares(wanted, shares), f"{wanted}, from the shares themselves")
        row = f"{text_of(count)} × {text_of(worth, unit)}"
        working.say(f"{_label(wanted, task)}{row}", row)
        answers.append(answered(count * worth, unit, reading.ask, working))
    return working.derived(*answers, confirmed_by="the shares put back into what is said of them")


def _label(wanted: str, task: Reckoning) -> str:
    if task.wanted != ("every share",) or "named" not in task.details:
        return ""
    return f"{_printed(wanted, True)}: "


def _printed(name: str, person: bool) -> str:
    return name.capitalize() if person else name


def _count(name: str, parts: Parts) -> Fraction:
    """How many parts a share, a difference or the whole is."""
    if name == "total":
        return sum(parts.values(), Fraction(0))
    one, _, other = name.partition(" more than ")
    return parts[one] - parts[other] if other else parts[one]


def _from_shares(name: str, shares: Parts) -> Fraction:
    """A share, how much more one is than another, or the whole, from the shares."""
    if name == "total":
        return sum(shares.values(), Fraction(0))
    larger, _, smaller = name.partition(" more than ")
    return shares[larger] + (-shares[smaller] if smaller else Fraction(0))


def _one_part(name: str, value: Fraction, unit: str, parts: Parts, person: bool, working: Working) -> Fraction:
    count = _count(name, parts)
    if name == "total":
        working.say(f"{' + '.join(map(text_of, parts.values()))} = {text_of(count)} parts", "", working.used)
    elif " more than " in name:
        one, _, other = name.partition(" more than ")
        working.say(f"{text_of(parts[one])} − {text_of(parts[other])} = {_parts(count)}", "", working.used)
    known = text_of(value, unit)
    working.say(f"{_parts(count)} = {known}", known)
    if count == 1:
        return value
    worth = value / count
    working.say(f"1 part = {known} ÷ {text_of(count)} = {text_of(worth, unit)}", text_of(worth, unit))
    return worth


def _parts(count: Fraction) -> str:
    return f"{text_of(count)} part{'s' * (count != 1)}"


def _facts_hold(facts: list[tuple[str, Fraction, str]], parts: Parts, shares: Parts) -> None:
    for name, value, _ in facts:
        one, _, other = name.partition(" more than ")
        found = sum(shares.values(), Fraction(0)) if name == "total" else shares[one] - shares.get(other, Fraction(0))
        require(found == value, f"{name}: {found} in place of {value}")
    first, count = next(iter(parts.items()))
    require(
        all(shares[name] * count == shares[first] * other for name, other in parts.items()),
        "the shares are not in the ratio",
    )


def _impossible(facts: list[tuple[str, Fraction, str]], parts: Parts, reading: Reading) -> Impossible:
    why = [f"{name} has {_parts(count)}" for name, count in parts.items()]
    for name, value, unit in facts:
        count = _count(name, parts)
        said = "the whole" if name == "total" else name
        if count <= 0:
            why.append(f"{said}: {text_of(value, unit)} would be {_parts(count)}, which is false")
        else:
            why.append(
                f"{said}: {_parts(count)} are {text_of(value, unit)}, so 1 part is {text_of(value / count, unit)}"
            )
    if "false" not in why[-1]:
        why.append("1 part cannot be worth two different amounts: it is false")
    return Impossible(tuple(given.text for given in reading.givens), tuple(why))


def _not_whole(shares: Parts, reading: Reading) -> Impossible:
    name, share = next((one, share) for one, share in shares.items() if share.denominator != 1)
    why = (f"there would be {text_of(share)} {name}", "a number of things that is not whole is false")
    return Impossible(tuple(given.text for given in reading.givens), why)


def joined_ratios(task: Reckoning, reading: Reading) -> Derived:
    """Two ratios made one by their common term; each of them is found in the result again."""
    working = working_of("ratio", reading)
    (a, one), (b, two), (c, three), (d, four) = ((one.name, rational(one.value)) for one in task.amounts)
    if min(one, two, three, four) <= 0:
        raise NoValue("a term of a ratio that is not positive")
    common = next(name for name in (a, b) if name in (c, d))
    mine, other = (one if common == a else two), (three if common == c else four)
    terms = common_terms({a: one, b: two}, {c: three, d: four}, mine, other)
    for first, second, before in ((a, b, (one, two)), (c, d, (three, four))):
        now = f"{text_of(terms[first])} : {text_of(terms[second])}"
        was = f"{text_of(before[0])} : {text_of(before[1])}"
        working.say(f"{first} : {second} = {was}{f' = {now}' if now != was else ''}", now, working.used)
        require(terms[first] * before[1] == terms[second] * before[0], f"{first} : {second} has become another ratio")
    values = [terms[name] for name in task.wanted]
    text = " : ".join(map(text_of, values))
    working.say(f"{' : '.join(task.wanted)} = {text}", text)
    simplest = _lowest(values)
    require(
        all(one * values[0] == other * simplest[0] for one, other in zip(simplest, values, strict=True)),
        "the ratio in its simplest form",
    )
    final = " : ".join(map(text_of, simplest))
    if final != text:
        working.conclude(f"= {final}", final)
    return working.derived(Answer(final, kind="ratio"), confirmed_by="each of the two ratios crosswise")


def common_terms(one: Parts, other: Parts, mine: Fraction, theirs: Fraction) -> dict[str, Fraction]:
    """All terms where the common one, `mine` and `theirs`, is the same in both ratios."""
    meet = Fraction(lcm(mine.numerator, theirs.numerator), gcd(mine.denominator, theirs.denominator))
    first = {name: value * meet / mine for name, value in one.items()}
    return first | {name: value * meet / theirs for name, value in other.items()}


def _lowest(values: list[Fraction]) -> list[Fraction]:
    below = lcm(*(value.denominator for value in values))
    whole = [int(value * below) for value in values]
    common = reduce(gcd, whole)
    return [Fraction(value, common) for value in whole]
