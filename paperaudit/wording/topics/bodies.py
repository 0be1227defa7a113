"""Stories of solids that are put together, cut out of each other, melted down, poured, dropped in water or weighed."""

import re
from dataclasses import dataclass, field
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.expression import Expression, Measured, Number
from paperaudit.model.reckoning import Amount, Reckoning
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.amount_words import amount_of, story
from paperaudit.wording.topics.stories.amounts import number_in, unit_symbol
from paperaudit.wording.topics.topic import Readers

_SHAPES = (
    ("hemispher", "hemisphere"), ("spher", "sphere"), ("ball", "sphere"), ("cone", "cone"),
    ("pyramid", "square pyramid"),
    ("cuboid", "cuboid"), ("rectangular", "cuboid"), ("cube", "cube"), ("cylind", "cylinder"),
)  # fmt: skip
_SIZES = (
    "slant height",
    "radius",
    "radii",
    "diameter",
    "height",
    "depth",
    "width",
    "breadth",
    "length",
    "side",
    "edge",
)
_SAME = {"radii": "radius", "breadth": "width", "edge": "side", "depth": "height"}
_TALL = {"high": "height", "tall": "height", "deep": "height", "long": "length", "wide": "width"}
_BY = ("length", "width", "height")
_WAYS = {"recast": "recast", "poured": "poured", "dropped": "dropped", "removed": "removed", "joined": "joined"}


@dataclass(slots=True)
class _Body:
    """A solid of the story: its shape, the word for it, its sizes, how many there are of it."""

    shape: str
    words: str
    sizes: dict[str, Expression] = field(default_factory=dict)
    number: int = 1


def _reckoning(node: Node) -> Reckoning:
    ways = [(piece.expr_name, piece) for piece in every(node, *_WAYS)]
    if len(ways) > 1:
        raise NotUnderstood("two things that are done", 0)
    way, told = ways[0] if ways else ("alone", node)
    bodies = [_body(piece) for piece in every(told, "solid")] if ways else []
    for piece in every(node, "alone"):
        _described(_body(the(piece, "solid")), piece, bodies)
    if not bodies or (way != "joined" and len(bodies) != (2 if ways else 1)):
        raise NotUnderstood("the solids", 0)
    for piece in every(node, "owner_told"):
        _own(bodies, piece).sizes.update(_sizes(piece))
    _common(node, bodies)
    amounts = [
        Amount(f"{label} {name}", value)
        for label, body in zip(_labels(bodies), bodies, strict=True)
        for name, value in body.sizes.items()
    ]
    amounts += [Amount("total height", _long(piece)) for piece in every(node, "total_told")]
    amounts += [Amount("density", amount_of(piece)) for piece in every(node, "density_told")]
    wanted = _wanted(node, way, bodies)
    if any(body.number != 1 for body in bodies):
        if way != "recast" or bodies[0].number != 1 or not wanted.startswith(_labels(bodies)[1]):
            raise NotUnderstood("several of one solid", 0)
        amounts.append(Amount("number of them", Number(Fraction(bodies[1].number))))
    if len({amount.name for amount in amounts}) != len(amounts):
        raise NotUnderstood("two values of one size", 0)
    if way == "alone" and wanted != "mass":
        raise NotUnderstood("one solid alone", 0)
    return Reckoning(f"solids {way}", tuple(amounts), (wanted,), tuple(_labels(bodies)))


def _body(piece: Node) -> _Body:
    words = the(piece, "shape").text
    shape = next((name for part, name in _SHAPES if part in words), "")
    if shape == "square pyramid" and "square" not in words:
        raise NotUnderstood("what its base is", piece.start)
    if not shape:
        raise NotUnderstood(words, piece.start, "a solid whose shape is said")
    sizes = the(piece, "sizes") if has(piece, "sizes") else None
    found = re.match(r"(?:(?:an?|the|one|this|its) )?(\d+) ", piece.text)
    body = _Body(shape, words, _sizes(sizes) if sizes is not None else {}, int(found[1]) if found else 1)
    return body


def _described(body: _Body, piece: Node, bodies: list[_Body]) -> None:
    """A solid that has a sentence of its own: one of those of the story, or the only one."""
    body.sizes.update(_sizes(piece))
    same = [one for one in bodies if one.shape == body.shape]
    if len(same) == 1:
        same[0].sizes |= body.sizes
    elif not bodies:
        bodies.append(body)
    else:
        raise NotUnderstood(piece.text, piece.start)


def _own(bodies: list[_Body], piece: Node) -> _Body:
    """The solid that a sentence about one of them means."""
    owner = the(piece, "owner").text
    word = the(piece, "kind").text.rstrip("s")
    named = [body for body in bodies if word in body.words or body.shape == word]
    if len(named) == 2 and re.search(r"\b(?:small|smaller|new|second|other|empty)\b", owner):
        return named[1]
    if len(named) == 2 and re.search(r"\b(?:first|full|large|larger)\b", owner):
        return named[0]
    if len(named) != 1:
        raise NotUnderstood(owner, piece.start, "one of the solids")
    return named[0]


def _sizes(piece: Node) -> dict[str, Expression]:
    found: dict[str, Expression] = {}
    for by in every(piece, "by_by"):
        return dict(zip(_BY, (amount_of(one) for one in every(by, "measure")), strict=True))
    if piece.expr_name == "owner_told" and not has(piece, "size"):
        return {_named(piece.text): _long(piece)}
    for one in [piece] if piece.expr_name == "size" else every(piece, "size"):
        found[_named(one.text)] = _long(one)
    return found


def _named(words: str) -> str:
    """The name of a size in its words: "slant height of 5 cm", "4 cm high"."""
    for name in _SIZES:
        if re.search(rf"\b{name}s?\b", words):
            return _SAME.get(name, name)
    found = re.search(r"\b(?:high|tall|deep|long|wide)\b", words)
    if found is None:
        raise NotUnderstood(words, 0, "a size of a solid")
    return _TALL[found[0]]


def _long(piece: Node) -> Expression:
    long = piece if piece.expr_name == "long" else the(piece, "long")
    return Measured(number_in(the(long, "figure").text), unit_symbol(the(long, "unit").text))


def _common(node: Node, bodies: list[_Body]) -> None:
    """Sizes that all of them have, told with a number or only as the same."""
    told = every(node, "both_told")
    same = re.search(r"same (?:radius|base)", node.text) is not None
    for piece in told:
        name = _named(piece.text)
        if first(piece, "long") is not None:
            for body in bodies:
                body.sizes.setdefault(name, _long(piece))
    radii = [body.sizes["radius"] for body in bodies if "radius" in body.sizes]
    if same and len(radii) == 1:
        for body in bodies:
            if "diameter" not in body.sizes:
                body.sizes.setdefault("radius", radii[0])


def _labels(bodies: list[_Body]) -> list[str]:
    shapes = [body.shape for body in bodies]
    return [
        shape if shapes.count(shape) == 1 else f"{['first', 'second', 'third', 'fourth'][at]} {shape}"
        for at, shape in enumerate(shapes[:4])
    ]


def _wanted(node: Node, way: str, bodies: list[_Body]) -> str:
    asks = every(node, "number_ask", "rise_ask", "depth_ask", "size_ask", "whole_ask")
    if len(asks) != 1:
        raise NotUnderstood("one thing to be found", 0)
    ask, labels = asks[0], _labels(bodies)
    match ask.expr_name, way:
        case "number_ask", "recast" | "poured":
            return "number"
        case "rise_ask", "dropped":
            return "rise"
        case "depth_ask", "poured":
            return f"{labels[1]} height"
        case "size_ask", "recast" | "poured":
            owner = every(ask, "owner")
            body = _own(bodies, ask) if owner else bodies[1]
            index = next(at for at, one in enumerate(bodies) if one is body)
            return f"{labels[index]} {_named(ask.text)}"
        case "whole_ask", "joined" | "removed" | "alone":
            words = ask.text
            return "mass" if re.search("mass|weight of", words) else "volume" if "volume" in words else "surface area"
    raise NotUnderstood("what is to be found of the solids", 0)


READERS = Readers(story=story("solids together", _reckoning))
