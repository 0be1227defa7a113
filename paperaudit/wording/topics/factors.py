"""Asks about factors and multiples: "Find the HCF of 24 and 36", "Is 91 prime?"."""

import re
from fractions import Fraction
from typing import Literal

from parsimonious.nodes import Node

from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.ask import Task
from paperaudit.model.expression import Expression, Number
from paperaudit.model.number_task import (
    Common,
    CommonName,
    FromList,
    IsOfKind,
    Listed,
    NumberKind,
    PrimeFactors,
    Remainder,
)
from paperaudit.wording.accuracy import COUNTS
from paperaudit.wording.asides import Asides
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.numbers_named import number_in, numbers_in, without_units
from paperaudit.wording.topics.topic import Readers

_NAMES: dict[str, CommonName] = {
    "hcf": "highest common factor",
    "lcm": "lowest common multiple",
    "lcd": "lowest common denominator",
    "all_common": "common factors",
}
_KINDS: tuple[tuple[str, NumberKind], ...] = (
    ("prime", "prime"),
    ("composite", "composite"),
    ("even", "even"),
    ("odd", "odd"),
    ("triang", "triangular"),
    ("square", "square"),
    ("perfect square", "square"),
    ("cube", "cube"),
    ("perfect cube", "cube"),
    ("rational", "rational"),
    ("irrational", "irrational"),
)
_RULES = (
    "common", "primes", "index_only", "listed", "listed_first", "counted", "remainder", "from_list", "divides",
    "either", "kind",
)  # fmt: skip
_INDEX = re.compile(r"\b(?:index|exponent(?:ial)?|power) (?:form|notation)\b|\b(?:indices|exponents|powers)\b")


def _task(node: Node, asides: Asides) -> Task:
    chosen = first(node, *_RULES)
    if chosen is None or asides.accuracy is not None or asides.unit:
        raise NotUnderstood("an accuracy or a unit with a question about factors", 0)
    match chosen.expr_name:
        case "common":
            return _common(chosen)
        case "primes" | "index_only":
            listed = has(chosen, "prime_list")
            index = _INDEX.search(asides.rest.source) is not None
            form: Literal["list", "product", "index"] = "list" if listed else "index" if index else "product"
            return PrimeFactors(number_in(the(chosen, "item")), form)
        case "remainder":
            return Remainder(*without_units(numbers_in(chosen)))
        case "from_list":
            return _from_list(chosen)
        case "either":
            return IsOfKind(number_in(the(chosen, "item"), letters=False), "rational", named=True)
        case "divides":
            return _divides(chosen)
        case "kind":
            return IsOfKind(number_in(the(chosen, "item")), _kind(the(chosen, "single_kind").text))
    return _listed(chosen)


def _common(node: Node) -> Common:
    """One of what numbers have in common, or the highest factor and the lowest multiple in the order asked for."""
    asked = [next(_NAMES[rule] for rule in _NAMES if has(one, rule)) for one in every(node, "common_name")]
    if len(asked) == 2 and set(asked) != {"highest common factor", "lowest common multiple"}:
        raise NotUnderstood("two things that numbers have in common", node.start)
    return Common(asked[0], without_units(numbers_in(node)), asked[1] if len(asked) == 2 else None)


def _from_list(node: Node) -> FromList:
    """The numbers of a list that are prime, square, factors of 24 …; any one where the words are singular."""
    words = the(node, "listed_kind")
    of = first(words, "count_of")
    if of is not None:
        kind: NumberKind = "factor" if re.match(r"(?:an? |the )?(?:factor|divisor)", words.text) else "multiple"
    else:
        kind = _kind(words.text)
    numbers = tuple(number_in(item, letters=False) for item in every(the(node, "items"), "item"))
    plural = re.search(r"(?:factors|divisors|multiples|numbers|primes|squares|cubes)\b|\bare\b|\ball\b", node.text)
    return FromList(numbers, kind, Number(Fraction(of.text)) if of is not None else None, plural is None)


def _divides(node: Node) -> IsOfKind:
    one, other = without_units(numbers_in(node))
    relation = first(node, "relation_name")
    name = relation.text if relation is not None else "factor of "
    return IsOfKind(one, "multiple" if name.startswith(("multiple", "divisible")) else "factor", other)


def _kind(words: str) -> NumberKind:
    return next(kind for start, kind in _KINDS if words.startswith(start))


def _listed(node: Node) -> Listed:
    items = tuple(number_in(item) for item in every(node, "item", "range") if item.expr_name == "item")
    plural, count, bounds = first(node, "plural_kind"), first(node, "count"), first(node, "range")
    kind: NumberKind = _kind(plural.text) if plural is not None else "factor"
    if plural is None and "multiples of" in node.text:
        kind = "multiple"
    single = first(node, "single_kind")
    kind = _kind(single.text) if single is not None else kind
    low, high = _bounds(bounds) if bounds is not None else (None, None)
    amount = int(COUNTS.get(count.text, count.text)) if count is not None else 0
    of = items[0] if items else None
    return Listed(kind, of, amount, low, high, node.expr_name == "counted", single is not None)


def _bounds(node: Node) -> tuple[Expression | None, Expression | None]:
    """The ends of a range: between 20 and 40, from 1 to 50, below 30. Ends "between" must not be of the kind."""
    ends = [number_in(item) for item in every(node, "item")]
    if len(ends) == 2:
        return ends[0], ends[1]
    if not isinstance(ends[0], Number):
        raise NotUnderstood("an end that is no number", node.start, "a whole number")
    return None, Number(ends[0].value - Fraction(1))


READERS = Readers(task=_task)
