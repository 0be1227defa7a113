"""Asks and stories about solids: the volume of a cylinder with radius 3 cm and height 10 cm."""

import re

from parsimonious.nodes import Node

from paperaudit.maths.parse import read_expression
from paperaudit.maths.tree import every, first, has, the
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

_KINDS = (
    ("hemispher", "hemisphere"),
    ("spher", "sphere"),
    ("ball", "sphere"),
    ("cylind", "cylinder"),
    ("frustum", "frustum"),
    ("conical", "cone"),
    ("cone", "cone"),
    ("triangular prism", "triangular prism"),
    ("rectangular prism", "cuboid"),
    ("cuboid", "cuboid"),
    ("cub", "cube"),
    ("pyramid", "pyramid"),
    ("prism", "prism"),
    ("rectangular", "cuboid"),
    ("box", "cuboid"),
)
_SIZES = (
    (r"slant height", "slant height"),
    (r"base radius|(?:upper|lower|top|bottom|larger|smaller)? ?radi(?:us|i)", "radius"),
    (r"diameter", "diameter"),
    (r"(?:curved|lateral) surface(?: area)?|area of (?:the |its )?(?:curved|lateral) surface|curved area",
     "curved surface area"),
    (r"volume|capacity", "volume"),
    (r"(?:total |whole |external |outer |outside )*surface area|area of (?:the |its )?whole surface|total area"
     r"|total surface", "surface area"),
    (r"base area|area of (?:the |its )?base|cross[- ]sectional area|area of (?:the |its )?cross[- ]section"
     r"|area", "base area"),
    (r"space diagonal|long diagonal|diagonal", "diagonal"),
    (r"base (?:side|edge|length)|(?:side|edge)(?: length)?|lengths? of (?:an? |the |each |one |its )?(?:side|edge)",
     "side"),
    (r"perpendicular height|vertical height|height|depth|high|tall|deep|thick", "height"),
    (r"width|breadth|wide|broad", "width"),
    (r"length|long", "length"),
)  # fmt: skip
_BY = ("length", "width", "height")


def _task(node: Node, asides: Asides) -> Task:
    if asides.terms:
        raise NotUnderstood("letters", 0)
    return _reckoning(node)


def _reckoning(node: Node) -> Reckoning:
    kind = _kind(node)
    amounts: list[Amount] = []
    for piece in every(node, "by_by", "size"):
        amounts.extend(_amounts(piece, kind))
    amounts += [Amount("surface area", _measure(the(piece, "measure"))) for piece in every(node, "net_told")]
    wanted = [_size(piece.text) for piece in every(node, "wanted")]
    if has(node, "how_much"):
        wanted.append("volume")
    pi = first(node, "pi_value")
    details = _details(node, kind)
    if pi is not None:
        amounts.append(Amount("π", read_expression(pi.text)))
    unique = list(dict.fromkeys(amounts))
    names = [amount.name for amount in unique]
    radii = 2 if kind == "frustum" else 1
    if not wanted or any(names.count(name) > (radii if name == "radius" else 1) for name in names):
        raise NotUnderstood("sizes of a solid of which too little or too much is said", 0)
    return Reckoning(kind, tuple(unique), tuple(dict.fromkeys(wanted)), details)


def _kind(node: Node) -> str:
    """The one solid that the text is about."""
    found = set()
    for piece in every(node, "solid"):
        name = next(kind for word, kind in _KINDS if word in piece.text)
        square = re.search(r"square|cube", piece.text) is not None
        found.add("square pyramid" if name == "pyramid" and square else name)
    if len(found) == 1:
        return found.pop()
    if found == {"pyramid", "square pyramid"}:
        return "square pyramid"
    raise NotUnderstood("no solid, or several", 0, "one solid")


def _details(node: Node, kind: str) -> tuple[str, ...]:
    text = node.text
    if re.search(r"open at both ends", text):
        return ("open at both ends",)
    if re.search(r"\bopen\b|without a lid|has no (?:lid|top)", text):
        return ("open at the top",)
    litres = re.search(r"how many (litres|liters|millilitres|ml)", text)
    unit = (f"in {unit_named(litres[1]).symbol}",) if litres else ()  # type: ignore[union-attr]
    if re.search(r"\bhollow\b", text) and "surface" in text:
        return (*unit, "hollow")
    plain = re.search(r"\bsolid|total|whole|closed", text) is not None
    if kind == "hemisphere" and "surface" in text and "curved" not in text and not plain:
        return (*unit, "with or without its flat face")
    return unit


def _size(words: str) -> str:
    plain = re.sub(r"^(?:the |its |their |your )?(?:exact )?|(?<=[a-tv-z])s$", "", words.strip())
    plain = re.sub(r" of (?:the |its |each )base(?: of [a-z ]+)?$", "", plain)
    for pattern, name in _SIZES:
        if re.fullmatch(pattern, plain):
            return name
    raise NotUnderstood(words, 0, "a size of a solid")


def _amounts(piece: Node, kind: str) -> list[Amount]:
    values = [_measure(one) for one in every(piece, "measure")]
    if piece.expr_name == "by_by":
        if kind != "cuboid" or len(values) != 3:
            raise NotUnderstood("three sizes of something else than a box", 0)
        return [Amount(name, value) for name, value in zip(_BY, values, strict=True)]
    if has(piece, "two_radii"):
        return [Amount("radius", value) for value in values]
    measured = the(piece, "measure").text
    words = piece.text.replace(measured, "", 1)
    words = re.sub(r" ?(?:is equal to|equal to|are|is|of|=|:|measures|equals)? ?$", "", words).strip(" -")
    words = re.sub(r"^in ", "", words)
    owner = first(piece, "owner")
    words = words.replace(owner.text, "") if owner is not None else words
    words = re.sub(r" of (?:the |its |each )(?:edges?|sides?)(?: of [a-z]+)?$", "", words)
    return [Amount(_size(words), values[0])]


def _measure(node: Node) -> Expression:
    value = read_expression(the(node, "amount_of").text)
    unit = first(node, "unit_of")
    if unit is None or unit.text.startswith("unit"):
        return value
    known = unit_named(unit.text)
    if known is None:
        raise NotUnderstood(unit.text, 0, "a unit of length, area or volume")
    return Measured(value, known.symbol)


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    return story_of(lambda: topic_named("solids"), _reckoning, question, part, scene)


READERS = Readers(task=_task, story=_story)
