"""Stories of a ratio with one share, a difference or the whole known; ratios with a term in common."""

import re

from parsimonious.nodes import Node

from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.expression import Expression, Number
from paperaudit.model.reckoning import Amount, Reckoning
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.amount_words import amount_of, story
from paperaudit.wording.topics.stories.amounts import number_in
from paperaudit.wording.topics.topic import Readers

_LARGE = re.compile(r"\b(?:larg|bigg|long)")
_ASKS = ("more_ask", "each_ask", "total_ask", "end_ask", "many_ask", "much_ask")
_PLACES = ("first", "second", "third", "fourth", "fifth")


def _reckoning(node: Node) -> Reckoning:
    if has(node, "pair_ask"):
        return _joined(node)
    shared = every(node, "shared", "pair_told")
    asks = every(node, *_ASKS)
    if len(shared) != 1 or len(asks) != 1:
        raise NotUnderstood("one ratio and one thing to be found", 0)
    terms = [number_in(piece.text) for piece in every(the(shared[0], "ratio"), "figure")]
    found = [piece.text for piece in every(shared[0], "name", "letter_of")]
    names = found or list(_PLACES[: len(terms)])
    if len(set(names)) != len(terms) or len(names) != len(terms):
        raise NotUnderstood("a name for each term of the ratio", 0)
    parts = dict(zip(names, terms, strict=True))
    facts = [fact for piece in every(node, *_FACTS) for fact in _fact(piece, parts)]
    facts += [Amount("total", _value(piece)) for piece in every(shared[0], "amount_in")]
    if not facts or len({fact.name for fact in facts}) != len(facts):
        raise NotUnderstood("a share or a difference that is known", 0)
    wanted = _wanted(asks[0], parts)
    if any(fact.name == wanted for fact in facts):
        raise NotUnderstood("what is known already", 0)
    amounts = (*(Amount(f"parts of {name}", term) for name, term in parts.items()), *facts)
    counted = asks[0].text.startswith("how many") or "number of" in asks[0].text
    details = ("whole",) * counted + ("named",) * has(shared[0], "names")
    return Reckoning("known shares", amounts, (wanted,), details)


_FACTS = ("more_told", "share_told", "end_told", "gap_told", "there_told", "total_told")


def _fact(piece: Node, parts: dict[str, Number]) -> list[Amount]:
    names = [one.text for one in every(piece, "name")]
    if piece.expr_name == "there_told" and names[0] not in parts:
        if not re.search(r"altogether|in (?:total|all|an?|the|this)\b", piece.text):
            raise NotUnderstood(names[0], piece.start, "one of those in the ratio")
        return [Amount("total", _value(piece))]
    if any(name not in parts for name in names):
        raise NotUnderstood(piece.text, piece.start, "one of those in the ratio")
    match piece.expr_name:
        case "more_told":
            one, other = names if " more " in f" {piece.text} " else reversed(names)
            return [Amount(f"{one} more than {other}", _value(piece))]
        case "share_told" | "there_told":
            return [Amount(names[0], _value(piece))]
        case "end_told":
            return [Amount(_end(piece.text, parts), _value(piece))]
        case "gap_told" if len(parts) == 2:
            larger, smaller = sorted(parts, key=lambda name: parts[name].value, reverse=True)
            return [Amount(f"{larger} more than {smaller}", _value(piece))]
        case "total_told":
            return [Amount("total", _value(piece))]
    raise NotUnderstood("which of the differences", piece.start)


def _value(piece: Node) -> Expression:
    return amount_of(first(piece, "amount_in") or piece)


def _end(words: str, parts: dict[str, Number]) -> str:
    """The name of the larger or smaller share."""
    ordered = sorted(parts, key=lambda name: parts[name].value)
    end, beside = (-1, -2) if _LARGE.search(words) else (0, 1)
    if parts[ordered[end]].value == parts[ordered[beside]].value:
        raise NotUnderstood("two equal shares", 0)
    return ordered[end]


def _wanted(ask: Node, parts: dict[str, Number]) -> str:
    names: list[str] = [one.text for one in every(ask, "name")]
    match ask.expr_name:
        case "total_ask" if not (names and names[0] in parts):
            return "total"
        case "each_ask":
            return "every share"
        case "end_ask":
            return _end(ask.text, parts)
        case "more_ask" if set(names) <= parts.keys() and len(set(names)) == 2:
            return f"{names[0]} more than {names[1]}"
    if len(names) == 1 and names[0] in parts:
        return names[0]
    raise NotUnderstood("whose share", 0)


def _joined(node: Node) -> Reckoning:
    told, asks = every(node, "pair_told", "shared"), every(node, "pair_ask")
    if len(told) != 2 or len(asks) != 1 or has(node, *_FACTS, *_ASKS):
        raise NotUnderstood("two ratios", 0)
    amounts = []
    for piece in told:
        names = [one.text for one in every(piece, "letter_of", "name")]
        terms = [number_in(one.text) for one in every(the(piece, "ratio"), "figure")]
        if len(names) != 2 or len(terms) != 2:
            raise NotUnderstood("a ratio of two terms", piece.start)
        amounts += [Amount(name, term) for name, term in zip(names, terms, strict=True)]
    wanted = tuple(one.text for one in every(asks[0], "letter_of", "name"))
    known = {amount.name for amount in amounts}
    if len(known) != 3 or not set(wanted) <= known or len(set(wanted)) != len(wanted):
        raise NotUnderstood("ratios with one term in common", 0)
    return Reckoning("joined ratios", tuple(amounts), wanted)


READERS = Readers(story=story("known shares", _reckoning))
