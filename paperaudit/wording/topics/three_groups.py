"""The words for parts of a Venn diagram of three groups: all three, tea and coffee only, exactly two, none."""

import itertools
import re
from functools import reduce

from paperaudit.model.set_task import Combined, Complement, NamedSet, SetExpression

_THREE = (
    r"(?: (?:of )?(?:them|these|the three|three|the [a-z]+|the three [a-z]+|three [a-z]+|these(?: three)? [a-z]+"
    r"|[a-z]+))?"
)
_AND = r"(?:,? and|, (?:and )?)"


def of_three(words: str, names: tuple[str, str, str]) -> SetExpression | None:
    """The set that words name, "tea and coffee" with or without the third; None for other words.

    >>> from paperaudit.model.set_task import set_text
    >>> set_text(of_three("tea and milk only", ("tea", "milk", "juice")))
    'tea ∩ milk ∩ juice′'
    """
    return _of_all(words, names) or _of_two(words, names) or _of_one(words, names)


def _of_all(words: str, names: tuple[str, str, str]) -> SetExpression | None:
    sets: list[SetExpression] = [NamedSet(name) for name in names]
    union, common = reduce(_or, sets), reduce(_and, sets)
    pairs = reduce(_or, (_and(one, other) for one, other in itertools.combinations(sets, 2)))
    forms: tuple[tuple[str, SetExpression], ...] = (
        (rf"all(?: of)? (?:three|3|of them|the three){_THREE}|all of them", common),
        (rf"(?:none|not any|neither|no){_THREE}", Complement(union)),
        (rf"at least (?:one|1){_THREE}", union),
        (rf"at least (?:two|2){_THREE}", pairs),
        (rf"(?:exactly|only|just) (?:one|1){_THREE}", Combined(union, "−", pairs)),
        (rf"(?:exactly|only|just) (?:two|2){_THREE}", Combined(pairs, "−", common)),
    )
    for pattern, found in forms:
        if re.fullmatch(pattern, words):
            return found
    for one, other, third in itertools.permutations(names):
        if re.fullmatch(rf"{re.escape(one)}{_AND} {re.escape(other)}{_AND} {re.escape(third)}", words):
            return common
    return None


def _of_two(words: str, names: tuple[str, str, str]) -> SetExpression | None:
    for one, other, third in itertools.permutations(names):
        a, b, c = re.escape(one), re.escape(other), re.escape(third)
        both = _and(NamedSet(one), NamedSet(other))
        alone = _and(both, Complement(NamedSet(third)))
        if re.fullmatch(rf"(?:only|just) {a} and {b}|{a} and {b},? (?:only|but not {c})|both {a} and {b} but not {c}",
                        words):  # fmt: skip
            return alone
        if re.fullmatch(rf"(?:both )?{a} and {b}", words):
            return both
        if re.fullmatch(rf"(?:either )?{a} or {b}(?: or both)?", words):
            return _or(NamedSet(one), NamedSet(other))
        if re.fullmatch(rf"{a},? (?:but|and) not {b}", words):
            return _and(NamedSet(one), Complement(NamedSet(other)))
        if re.fullmatch(rf"{a},? (?:but|and) (?:not|neither) {b} n?or {c}", words):
            return _and(_and(NamedSet(one), Complement(NamedSet(other))), Complement(NamedSet(third)))
    return None


def _of_one(words: str, names: tuple[str, str, str]) -> SetExpression | None:
    for one, other, third in itertools.permutations(names):
        a = re.escape(one)
        if re.fullmatch(rf"(?:only|just) {a}|{a} only", words):
            return _and(_and(NamedSet(one), Complement(NamedSet(other))), Complement(NamedSet(third)))
        if words in (one, f"not {one}"):
            return NamedSet(one) if words == one else Complement(NamedSet(one))
    return None


def _and(one: SetExpression, other: SetExpression) -> SetExpression:
    return Combined(one, "∩", other)


def _or(one: SetExpression, other: SetExpression) -> SetExpression:
    return Combined(one, "∪", other)
