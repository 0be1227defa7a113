"""Stories of currencies: a rate of exchange, an amount to be changed, commission."""

from parsimonious.nodes import Node

from paperaudit.maths.tree import every, first
from paperaudit.model.expression import Measured
from paperaudit.model.reckoning import Amount, Reckoning
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.amount_words import amount_of, percent_of, story
from paperaudit.wording.topics.topic import Readers

_SYMBOLS = (
    ("rand", "R"), ("zar", "R"), ("dollar", "$"), ("usd", "$"), ("pound", "£"), ("gbp", "£"), ("eur", "€"),
    ("naira", "₦"), ("rupee", "₹"),
)  # fmt: skip
_ASKS = ("ask_change", "much_ask", "many_ask", "cost_ask")


def _reckoning(node: Node) -> Reckoning:
    rates = every(node, "rate")
    if len(rates) != 1:
        raise NotUnderstood("one rate of exchange", 0)
    one, other = (amount_of(piece) for piece in every(rates[0], "money"))
    told = [piece for clause in every(node, "changes", "prices", *_ASKS) for piece in every(clause, "money", "rate")]
    values = list(dict.fromkeys(amount_of(piece) for piece in told if piece.expr_name == "money"))
    currencies = {
        _symbol(piece.text) for clause in every(node, "changes", *_ASKS) for piece in every(clause, "currency")
    }
    known = {value.unit for value in (one, other) if isinstance(value, Measured)}
    if len(values) != 1 or len(every(node, *_ASKS)) != 1 or len(known) != 2:
        raise NotUnderstood("one amount to be changed", 0)
    value = values[0]
    assert isinstance(value, Measured)
    targets = (currencies or known) - {value.unit}
    if value.unit not in known or len(targets) != 1 or not targets <= known or len(currencies) > 1:
        raise NotUnderstood("an amount in a currency of the rate", 0)
    amounts = [Amount("rate", one), Amount("rate", other), Amount("amount", value)]
    for piece in every(node, "commission"):
        share = first(piece, "percent")
        amounts.append(Amount("commission", percent_of(share) if share is not None else amount_of(piece)))
    if len(amounts) > 4:
        raise NotUnderstood("two commissions", 0)
    return Reckoning("exchange", tuple(amounts), (f"amount in {targets.pop()}",))


def _symbol(words: str) -> str:
    return next(symbol for word, symbol in _SYMBOLS if word in words)


READERS = Readers(story=story("exchange", _reckoning))
