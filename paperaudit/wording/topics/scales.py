"""Stories of maps, plans and models: a scale, a size on the map, the size in reality."""

import re

from parsimonious.nodes import Node

from paperaudit.maths.tree import every, first, has, the
from paperaudit.maths.units import unit_named
from paperaudit.model.expression import Measured
from paperaudit.model.reckoning import Amount, Reckoning
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.amount_words import amount_of, story
from paperaudit.wording.topics.stories.amounts import number_in, unit_symbol
from paperaudit.wording.topics.topic import Readers

_REAL = re.compile(r"\b(?:real|actual|true|reality|really|full-size)\b")
_DRAWN = re.compile(r"\b(?:map|plan|drawing|model|chart)\b")


def _reckoning(node: Node) -> Reckoning:
    amounts = [one for piece in every(node, "scale_of")[:1] for one in _scale(piece)]
    if len(every(node, "scale_of")) > 1:
        raise NotUnderstood("two scales", 0)
    for piece in every(node, "size_ask"):
        if (inner := first(piece, "measure")) is not None:
            amounts.append(Amount(_side(the(piece, "where").text), amount_of(inner)))
    for piece in every(node, "size_told"):
        amounts.append(Amount(_side(piece.text, has(node, "on_scaled")), amount_of(the(piece, "measure"))))
    wanted, details = _wanted(node, amounts)
    names = [amount.name for amount in amounts]
    lengths, sizes = {"length on the map", "real length"}, {"real size", "size on the map"}
    enough = sizes == set(names) or lengths == set(names) if wanted == "scale" else lengths <= set(names)
    if len(names) != len(set(names)) or wanted in names or not enough:
        raise NotUnderstood("too little or too much is said about the map", 0)
    return Reckoning("map scale", tuple(amounts), (wanted,), details)


def _scale(piece: Node) -> tuple[Amount, Amount]:
    parts = every(piece, "measure", "figure")
    values = [amount_of(one) if one.expr_name == "measure" else number_in(one.text) for one in parts]
    lengths = [unit_named(one.unit) for one in values if isinstance(one, Measured)]
    if any(unit is None or unit.dimension != "length" for unit in lengths):
        raise NotUnderstood("a scale of lengths", 0)
    return Amount("length on the map", values[0]), Amount("real length", values[1])


def _side(words: str, drawn: bool = False) -> str:
    """Whether a size is one of the map or one of the thing itself."""
    if _REAL.search(words):
        return "real size"
    return "size on the map" if drawn or _DRAWN.search(words) else "real size"


def _wanted(node: Node, amounts: list[Amount]) -> tuple[str, tuple[str, ...]]:
    asks = every(node, "scale_ask", "size_ask", "far_ask")
    sizes = [amount for amount in amounts if amount.name in ("size on the map", "real size")]
    if len(asks) != 1 or any(not isinstance(size.value, Measured) for size in sizes):
        raise NotUnderstood("one thing to be found", 0)
    ask = asks[0]
    if ask.expr_name == "scale_ask":
        return "scale", ()
    if len(sizes) != 1:
        raise NotUnderstood("one size of the map or of the thing", 0)
    value = sizes[0].value
    unit = unit_named(value.unit) if isinstance(value, Measured) else None
    asked = "area" if re.search(r"\barea\b", ask.text) else "volume" if "volume" in ask.text else "length"
    if unit is None or unit.dimension != asked:
        raise NotUnderstood(f"{asked} from another kind of size", 0)
    wanted = _side(ask.text)
    if not _REAL.search(ask.text) and not _DRAWN.search(ask.text):
        wanted = "size on the map" if sizes[0].name == "real size" else "real size"
    named = first(ask, "unit_in")
    return wanted, (f"in {unit_symbol(the(named, 'unit').text)}",) if named is not None else ()


READERS = Readers(story=story("map scale", _reckoning))
