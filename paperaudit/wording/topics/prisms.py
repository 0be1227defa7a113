"""Stories of prisms whose cross-section is a triangle, a right-angled triangle or a trapezium."""

import re

from parsimonious.nodes import Node

from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.expression import Measured, Number
from paperaudit.model.reckoning import Amount, Reckoning
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.amount_words import amount_of, story
from paperaudit.wording.topics.topic import Readers

_SIZES = (("volume", "volume"), ("capacity", "volume"), ("surface", "surface area"), ("cross", "base area"))


def _reckoning(node: Node) -> Reckoning:
    sections = every(node, "section")
    if len(sections) != 1:
        raise NotUnderstood("one cross-section", 0)
    kind, amounts = _section(sections[0])
    amounts += [Amount("length", amount_of(the(piece, "measure"))) for piece in every(node, "length")]
    for piece in every(node, "long_told"):
        if not has(piece, "length"):
            amounts.append(Amount("length", amount_of(the(piece, "measure"))))
    for piece in every(node, "size_told"):
        amounts.append(Amount(_named(the(piece, "size_name").text), amount_of(the(piece, "measure"))))
    asked = [one.text for piece in every(node, "size_ask") for one in every(piece, "size_name") or [piece]]
    wanted = tuple(dict.fromkeys(map(_named, asked)))
    names = [amount.name for amount in amounts]
    if not wanted or len(set(names)) != len(names) or set(names) & set(wanted):
        raise NotUnderstood("sizes of a prism of which too little or too much is said", 0)
    return Reckoning(kind, tuple(amounts), wanted)


def _named(words: str) -> str:
    return next((name for part, name in _SIZES if part in words), "length")


def _section(piece: Node) -> tuple[str, list[Amount]]:
    values = [amount_of(one) for one in every(piece, "measure")]
    if has(piece, "trapezium"):
        names: tuple[str, ...] = ("first parallel side", "second parallel side", "height")
        return "prism on a trapezium", [Amount(*pair) for pair in zip(names, values, strict=True)]
    if has(piece, "base_height"):
        return "triangular prism", [Amount("base", values[0]), Amount("height", values[1])]
    if len({value.unit for value in values if isinstance(value, Measured)}) != 1:
        raise NotUnderstood("sides in one unit", piece.start)
    ordered = sorted(values, key=_number)
    words = first(piece, "right_sides")
    if len(values) == 2 and words is not None and not re.search("shorter|perpendicular|right angle", words.text):
        raise NotUnderstood("which sides of the triangle they are", piece.start)
    names = ("first side", "second side", "hypotenuse")
    return "right-angled triangular prism", [Amount(*pair) for pair in zip(names, ordered, strict=False)]


def _number(value: object) -> float:
    amount = value.amount if isinstance(value, Measured) else value
    return float(amount.value) if isinstance(amount, Number) else 0.0


READERS = Readers(story=story("prisms", _reckoning))
