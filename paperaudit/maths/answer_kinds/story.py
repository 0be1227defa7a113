"""Compares the answers of a word problem: "Ann 14, Ben 11", "14 and 11 years", "15 and 16 or −16 and −15"."""

import re
from collections.abc import Sequence
from dataclasses import replace
from itertools import permutations

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.parse import read_expression
from paperaudit.maths.stated import LONGEST_ANSWER, Stated
from paperaudit.maths.units import unit_named
from paperaudit.maths.value_comparison import compare_value
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison
from paperaudit.model.expression import Expression

_PARTS = re.compile(r"\s*(?:;|\n)\s*|,\s+(?:and\s+)?|\s+(?:and|by|×|x)\s+(?=\D{0,40}\d)")
_VALUE = re.compile(
    r"(?:[R$£€₦₹]\s?)?[-−–]?(?:\d+ \d+/\d+|\d+/\d+|\d{1,3}(?: \d{3})+(?:[.,]\d+)?|\d+(?:[.,]\d+)?)"
    r"(?:\s?(?:%|[A-Za-z°/]+[²³]?|[²³]))?"
)
_PLAIN_WORDS = frozenset(
    [
        "the",
        "a",
        "an",
        "is",
        "are",
        "was",
        "of",
        "has",
        "have",
        "had",
        "gets",
        "get",
        "now",
        "old",
        "years",
        "year",
        "costs",
        "cost",
        "and",
        "number",
        "age",
        "price",
        "in",
        "at",
        "he",
        "she",
        "it",
        "they",
        "each",
        "one",
        "its",
        "to",
        "be",
        "will",
        "there",
        "share",
        "answer",
        "so",
        "therefore",
        "x",
        "y",
        "n",
        "long",
        "wide",
    ]
)


def compare_story(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """The setter's text against the answers of a story: by name where it has names, else in order, or as a set.

    Answers without a name are numbers that may come in any order. Solutions that stand in place of each
    other ("or") are compared one by one.
    """
    if len(stated) > LONGEST_ANSWER:
        return Comparison(Agreement.CANNOT_TELL, "the stated answer is too long")
    if len(derived) > 1 and all(answer.value is None for answer in derived):
        return _alternatives(stated, derived)
    ask = replace(ask, unit=ask.unit)
    try:
        pieces = _pieces(stated, len(derived))
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read: {error}")
    if len(pieces) != len(derived):
        if len(pieces) < len(derived) and pieces:
            return Comparison(Agreement.DIFFERS, f"{len(derived)} values are asked for, {len(pieces)} are stated")
        return Comparison(Agreement.CANNOT_TELL, f"{len(derived)} values are asked for, {len(pieces)} were read")
    values = [value for _, value in pieces]
    if len(derived) == 1:
        return compare_value(Stated(values[0]), derived[0], ask)
    if not any(answer.letter for answer in derived):
        return _as_set(values, derived, ask)
    order = _by_name([words for words, _ in pieces], derived)
    if order is None:
        return Comparison(Agreement.CANNOT_TELL, "which of the values is whose was not told")
    results = [compare_value(Stated(values[at]), answer, ask) for at, answer in zip(order, derived, strict=True)]
    return next((one for one in results if one.agreement is not Agreement.AGREES), results[0])


def _pieces(stated: str, count: int) -> list[tuple[frozenset[str], Expression]]:
    """The values of a text, each with the words that stand with it; raises ExpressionNotRead."""
    pieces = []
    texts = _PARTS.split(stated.strip().rstrip(".")) if count > 1 else [stated.strip().rstrip(".")]
    for text in filter(None, texts):
        found = list(_VALUE.finditer(text))
        if not found:
            raise ExpressionNotRead(f"no value in “{text}”")
        if len(found) > 1:
            raise ExpressionNotRead(f"several values in “{text}”")
        value, words = _value(found[0].group())
        rest = f"{text[: found[0].start()]} {words} {text[found[0].end() :]}"
        if re.search(r"[<>≤≥≠±+*^√]|\d", rest):
            raise ExpressionNotRead(f"more than a value in “{text}”")
        pieces.append((_names(rest), value))
    return pieces


def _value(text: str) -> tuple[Expression, str]:
    """A number with its unit, and the word behind it where that is no unit: 14 shells."""
    word = re.search(r"[A-Za-z/]+[²³]?$", text)
    if word is not None and unit_named(word.group()) is None:
        return read_expression(text[: word.start()].strip()), word.group()
    return read_expression(text), ""


def _names(text: str) -> frozenset[str]:
    words = re.findall(r"[A-Za-z]+", re.sub(r"['’]s\b", "", text))
    return (
        frozenset(word.casefold().rstrip("s") for word in words)
        - _PLAIN_WORDS
        - {word.rstrip("s") for word in _PLAIN_WORDS}
    )


def _by_name(words: Sequence[frozenset[str]], derived: Sequence[Answer]) -> tuple[int, ...] | None:
    """Which stated value is whose: by the words that tell the answers apart; in order where there are none."""
    names = [_names(answer.letter) for answer in derived]
    common = frozenset.intersection(*names)
    own = [name - common for name in names]
    told = [one - common for one in words]
    if not any(told):
        return tuple(range(len(derived)))
    fitting = [
        order
        for order in permutations(range(len(derived)))
        if all(not told[at] or told[at] & own[place] for place, at in enumerate(order))
    ]
    exact = [
        order
        for order in fitting
        if sum(bool(told[at] & own[place]) for place, at in enumerate(order)) == sum(map(bool, told))
    ]
    clear = [
        order
        for order in exact
        if not any(
            told[at] & own[other] for place, at in enumerate(order) for other in range(len(own)) if other != place
        )
    ]
    return clear[0] if len(clear) == 1 else None


def _as_set(values: Sequence[Expression], derived: Sequence[Answer], ask: Ask) -> Comparison:
    for order in permutations(values):
        results = [compare_value(Stated(value), answer, ask) for value, answer in zip(order, derived, strict=True)]
        if all(result.agreement is Agreement.AGREES for result in results):
            return results[0]
    results = [compare_value(Stated(value), answer, ask) for value in values for answer in derived]
    if any(result.agreement is Agreement.CANNOT_TELL for result in results):
        return Comparison(Agreement.CANNOT_TELL, "some of the values could not be compared")
    return Comparison(Agreement.DIFFERS, f"the answer is {' and '.join(answer.text for answer in derived)}")


def _alternatives(stated: str, derived: tuple[Answer, ...]) -> Comparison:
    """Solutions of several numbers each; every one must be stated."""
    try:
        told = [_numbers(one) for one in re.split(r"\s+or\s+|;", stated)]
        ours = {answer: _numbers(answer.text) for answer in derived}
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read: {error}")
    if any(one not in ours.values() for one in told):
        return Comparison(Agreement.DIFFERS, f"the answers are {' or '.join(answer.text for answer in derived)}")
    missing = tuple(answer for answer, numbers in ours.items() if numbers not in told)
    if missing:
        texts = ", ".join(answer.text for answer in missing)
        return Comparison(Agreement.DIFFERS, f"not all answers are stated: {texts} is missing", missing)
    return Comparison(Agreement.AGREES)


def _numbers(text: str) -> tuple[str, ...]:
    found = [one.replace("−", "-").replace("–", "-") for one in re.findall(r"[-−–]?\d+(?:\.\d+)?(?:/\d+)?", text)]
    if not found:
        raise ExpressionNotRead(f"no value in “{text}”")
    return tuple(sorted(found))
