"""Stories of packs and prices: which one is the better buy."""

import re

from parsimonious.nodes import Node

from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.reckoning import Amount, Reckoning
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.amount_words import amount_of, story
from paperaudit.wording.topics.topic import Readers

_MOST = 6
_ARTICLE = re.compile(r"^(?:at |in )?(?:the |an? )?")


def _reckoning(node: Node) -> Reckoning:
    offers = every(node, "offer")
    if not 2 <= len(offers) <= _MOST or len(every(node, "which")) != 1 or has(node, "each_price"):
        raise NotUnderstood("packs to choose from", 0)
    labels = [_label(piece) for piece in offers]
    if any(labels) and (not all(labels) or len(set(labels)) != len(labels)):
        raise NotUnderstood("a name for each pack", 0)
    amounts = [
        one
        for piece in offers
        for one in (Amount("size", amount_of(the(piece, "size"))), Amount("price", amount_of(the(piece, "money"))))
    ]
    if not any(labels) and len({amount.value for amount in amounts[::2]}) != len(offers):
        raise NotUnderstood("packs that are told apart", 0)
    return Reckoning("best buy", tuple(amounts), ("better buy",), tuple(label for label in labels if label))


def _label(piece: Node) -> str:
    found = first(piece, "label")
    if found is None:
        return ""
    words = _ARTICLE.sub("", found.text)
    return f"{words[:-1]}{words[-1].upper()}" if re.search(r" [a-z]$", words) else words


READERS = Readers(story=story("best buy", _reckoning))
