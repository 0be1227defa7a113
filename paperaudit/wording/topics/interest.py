"""Asks and stories about interest and depreciation: R5000 at 8% a year, compounded monthly, for 3 years."""

import re

from parsimonious.nodes import Node

from paperaudit.maths.parse import read_expression
from paperaudit.maths.tree import every, has, the
from paperaudit.maths.units import unit_named
from paperaudit.model.ask import Task
from paperaudit.model.expression import Expression, Measured
from paperaudit.model.paper import Part, Question
from paperaudit.model.reckoning import Amount, Reckoning
from paperaudit.wording.asides import Asides
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.topics.registry import topic_named
from paperaudit.wording.topics.topic import Readers, Told
from paperaudit.wording.topics.whole_text import story_of

_PERIODS = (
    (r"half[- ]yearly|semi-annually|every six months", "half-yearly"),
    (r"quarter", "quarterly"),
    (r"month", "monthly"),
    (r"week", "weekly"),
    (r"daily", "daily"),
    (r"annual|year", "yearly"),
)
_NAMES = (
    (r"interest", "interest"),
    (r"depreciation", "loss"),
    (r"principal|capital|original|cost price", "principal"),
    (r"", "final"),
)


def _task(node: Node, asides: Asides) -> Task:
    if asides.terms:
        raise NotUnderstood("letters", 0)
    return _reckoning(node)


def _reckoning(node: Node) -> Reckoning:
    kind, details = _kind(node)
    amounts: list[Amount] = []
    for piece in every(node, "rate", "duration", "money_fact", "final_money", "interest_named", "money_named"):
        amounts.extend(_amounts(piece, kind))
    unique = list(dict.fromkeys(amounts))
    names = [amount.name for amount in unique]
    wanted = list(dict.fromkeys(_wanted(piece, kind) for piece in every(node, "want")))
    known_twice = len(set(names)) != len(names) or set(wanted) & set(names)
    if not wanted or known_twice or "money" in wanted or len(names) != 3:
        raise NotUnderstood("too little or too much is said about the money", 0)
    return Reckoning(kind, tuple(unique), tuple(wanted), details)


def _kind(node: Node) -> tuple[str, tuple[str, ...]]:
    text = node.text
    compounded = {one.text for one in every(node, "compounded")}
    details = tuple(_period(one) for one in sorted(compounded))
    if has(node, "lost"):
        reducing = re.search(r"reducing|diminishing|compound|of its value at the", text)
        straight = re.search(r"straight|linear|simple|of its (?:original|initial|cost)", text)
        if bool(reducing) == bool(straight):
            return "depreciation", ()
        return ("reducing-balance depreciation" if reducing else "straight-line depreciation"), ()
    compound = "compound" in text
    if re.search(r"(?<!compound )\bsimple (?:interest|growth)|simple\b", text):
        if compound:
            raise NotUnderstood("simple and compound interest", 0)
        return "simple interest", ()
    if not compound:
        return "interest", ()
    if len(details) > 1:
        raise NotUnderstood("two kinds of compounding", 0)
    return "compound interest", tuple(one for one in details if one != "yearly")


def _period(node: str) -> str:
    return next(name for pattern, name in _PERIODS if re.search(pattern, node))


def _amounts(piece: Node, kind: str) -> list[Amount]:
    match piece.expr_name:
        case "rate":
            return [_rate(piece)]
        case "duration":
            return [Amount("time", _measure(piece))]
        case "interest_named":
            return [Amount("interest", read_expression(piece.text))]
        case "final_money":
            return [Amount("final", read_expression(piece.text))]
        case "money_named":
            return [Amount("principal", read_expression(piece.text))]
    found = [Amount("time", _measure(one)) for one in every(piece, "duration")]
    found += [one for inner in every(piece, "rate") for one in _amounts(inner, kind)]
    money = read_expression(the(piece, "money_named").text)
    if not has(piece, "money_name"):
        return [*found, Amount("final", money)]
    words = the(piece, "money_name").text
    if words in ("amount", "capital", "balance") and not found:
        raise NotUnderstood("whether the amount is before or after interest", 0)
    return [*found, Amount(_named(words, kind), money)]


def _rate(piece: Node) -> Amount:
    percent = the(piece, "percent").text
    if not re.search(r"%|percent|per cent", percent) or re.search(r"month", piece.text):
        raise NotUnderstood("a rate that is no percentage a year", 0)
    return Amount("rate", read_expression(percent.strip()))


def _measure(node: Node) -> Expression:
    number = the(node, "number").text
    unit = unit_named(node.text.replace(number, "", 1).strip(" -"))
    if unit is None:
        raise NotUnderstood(node.text, 0, "years or months")
    return Measured(read_expression(number), unit.symbol)


def _named(words: str, kind: str) -> str:
    return next(name for pattern, name in _NAMES if re.search(pattern, words))


def _wanted(piece: Node, kind: str) -> str:
    inner = piece.children[0]
    match inner.expr_name:
        case "want_named":
            return _named(the(inner, "money_name").text, kind)
        case "want_interest":
            return "interest"
        case "want_much" | "want_value":
            return "final"
        case "want_rate":
            return "rate"
        case "want_sum":
            return "principal"
    return "time"


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    return story_of(lambda: topic_named("interest"), _reckoning, question, part, scene)


READERS = Readers(task=_task, story=_story)
