"""Stories of similar solids and figures: what two lengths, areas or volumes say of another size."""

import re
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.maths.tree import every, first, has, the
from paperaudit.maths.units import unit_named
from paperaudit.model.expression import Expression, Measured, Number
from paperaudit.model.reckoning import Amount, Reckoning
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.amount_words import amount_of, story
from paperaudit.wording.topics.stories.amounts import number_in
from paperaudit.wording.topics.topic import Readers

_WHO = {"small": "smaller", "smaller": "smaller", "1st": "first", "first": "first", "2nd": "second", "second": "second"}
_SINGULAR = {"radii": "radius", "capacities": "volume", "capacity": "volume", "masses": "mass"}
_OF_WHAT = {"length": ("height",), "mass": ("mass",), "volume": ("volume",)}


def _reckoning(node: Node) -> Reckoning:
    pairs, ratios = every(node, "pair_told"), every(node, "ratio_told")
    if "similar" not in node.text or len(pairs) + len(ratios) > 1:
        raise NotUnderstood("similar solids", 0)
    amounts = [_one(piece) for piece in every(node, "one_told")]
    asks = every(node, "one_ask")
    if len(asks) != 1:
        raise NotUnderstood("one size to be found", 0)
    wanted = f"{_who(the(asks[0], 'one'))} {_size(the(asks[0], 'size_name').text)}"
    words = {amount.name.split(" ")[0] for amount in amounts} | {wanted.split(" ")[0]}
    for piece in (*pairs, *ratios):
        amounts += _both(piece, words)
    if len({amount.name for amount in amounts}) != len(amounts) or any(one.name == wanted for one in amounts):
        raise NotUnderstood("two values of one size", 0)
    return Reckoning("similar solids", tuple(amounts), (wanted,))


def _who(piece: Node) -> str:
    if (lettered := first(piece, "lettered")) is not None:
        return str(lettered.text)[-1].upper()
    found = re.search(r"smaller|larger|bigger|small|large|big|1st|2nd|first|second", piece.text)
    assert found is not None
    return _WHO.get(found[0], "larger")


def _size(words: str) -> str:
    """The name of a size in the singular: surface areas → surface area."""
    plain = re.sub(r"^(?:total |corresponding )+| of (?:the |their )?bases?$", "", words)
    return _SINGULAR.get(plain, re.sub(r"(?<=[a-rt-z])s$", "", plain) if plain not in ("radius", "mass") else plain)


def _one(piece: Node) -> Amount:
    value = amount_of(the(piece, "measure"))
    assert isinstance(value, Measured)
    if not has(piece, "size_name"):
        unit = unit_named(value.unit)
        names = _OF_WHAT.get(unit.dimension if unit is not None else "", ())
        if not names:
            raise NotUnderstood(piece.text, piece.start, "a named size")
        return Amount(f"{_who(the(piece, 'one'))} {names[0]}", value)
    return Amount(f"{_who(the(piece, 'one'))} {_size(the(piece, 'size_name').text)}", value)


def _both(piece: Node, words: set[str]) -> list[Amount]:
    """Two sizes of one kind: of the smaller and the larger, or of the first and the second."""
    name = _size(the(piece, "size_name").text)
    values: list[Expression] = [amount_of(one) for one in every(piece, "measure")]
    numbers = [number_in(one.text) for one in every(piece, "figure")] if not values else []
    sizes = [one.value if isinstance(one, Number) else _number(one) for one in (values or numbers)]
    if words <= {"smaller", "larger"}:
        small, large = sorted(range(2), key=lambda at: sizes[at])
        labels = {small: "smaller", large: "larger"}
    elif words <= {"first", "second"}:
        labels = {0: "first", 1: "second"}
    elif words <= {"A", "B"}:
        labels = {0: "A", 1: "B"}
    else:
        raise NotUnderstood("which is which", piece.start)
    if len(labels) != 2 or sizes[0] == sizes[1]:
        raise NotUnderstood("two different sizes", piece.start)
    return [Amount(f"{labels[at]} {name}", one) for at, one in enumerate(values or numbers)]


def _number(value: Expression) -> Fraction:
    assert isinstance(value, Measured) and isinstance(value.amount, Number)
    unit = unit_named(value.unit)
    return value.amount.value * (unit.size if unit is not None else 1)


READERS = Readers(story=story("similar solids", _reckoning))
