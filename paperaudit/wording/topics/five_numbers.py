"""The five numbers of a box plot told in words, and what is asked of them."""

from parsimonious.nodes import Node

from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.reckoning import Amount, Reckoning
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.amount_words import amount_of, story
from paperaudit.wording.topics.stories.amounts import number_in
from paperaudit.wording.topics.topic import Readers

_NAMES = {
    "smallest": "smallest value", "lower": "lower quartile", "middle": "median", "upper": "upper quartile",
    "largest": "largest value", "iqr": "interquartile range", "range": "range",
}  # fmt: skip
_FIVE = ("smallest value", "lower quartile", "median", "upper quartile", "largest value")
_ASKS = ("ask_outlier", "ask_share", "ask_count", "ask_skew", "ask_named")


def _reckoning(node: Node) -> Reckoning:
    amounts: list[Amount] = []
    for piece in every(node, "summary", "fact"):
        if piece.expr_name == "fact":
            amounts.append(Amount(_label(piece), amount_of(the(piece, "amount"))))
        else:
            values = every(the(piece, "five"), "amount")
            amounts += [Amount(name, amount_of(one)) for name, one in zip(_FIVE, values, strict=True)]
    groups = [number_in(the(piece, "figure").text) for piece in every(node, "group", "whose") if has(piece, "figure")]
    names = [amount.name for amount in amounts]
    asked = every(node, *_ASKS)
    if len(set(names)) != len(names) or len(asked) != 1 or not amounts or len(set(groups)) > 1:
        raise NotUnderstood("one box plot and one ask", 0)
    (ask,) = asked
    amounts += [Amount("number of values", group) for group in groups[:1]]
    match ask.expr_name:
        case "ask_named":
            wanted = tuple(_label(piece) for piece in every(ask, *_NAMES, "label"))
            if set(wanted) & set(names):
                raise NotUnderstood("a number that is told", 0)
            return Reckoning("five numbers", tuple(amounts), wanted)
        case "ask_skew":
            return Reckoning("five numbers", tuple(amounts), ("skewness",))
        case "ask_outlier":
            value = Amount("value", amount_of(the(ask, "amount")))
            return Reckoning("five numbers", (*amounts, value), ("outlier",))
    between = the(ask, "between", "above", "below")
    limits = [Amount("limit", amount_of(one)) for one in every(between, "amount")]
    share = first(ask, "share")
    if share is None and not groups:
        raise NotUnderstood("how many values there are", 0)
    want = "count" if share is None else "percentage" if share.text == "percentage" else "fraction"
    return Reckoning("five numbers", (*amounts, *limits), (want,), (between.expr_name,))


def _label(piece: Node) -> str:
    found = piece if piece.expr_name in _NAMES else the(piece, *_NAMES)
    return _NAMES[found.expr_name]


READERS = Readers(story=story("box plots", _reckoning))
