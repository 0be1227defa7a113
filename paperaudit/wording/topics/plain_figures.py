"""Plane figures in everyday words, set down as a figure with letters of our own for the engine of geometry."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field

from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.peg import parsed
from paperaudit.maths.tree import every, first, the
from paperaudit.model.paper import Part, Question
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.topics.figure_letters import SHAPES, Lettered, Sizes, lettered
from paperaudit.wording.topics.registry import topic_named
from paperaudit.wording.topics.stories.plain import plain
from paperaudit.wording.topics.topic import Readers, Told
from paperaudit.wording.topics.whole_text import whole_of
from paperaudit.wording.topics.written_in_letters import in_letters

_SMALL = re.compile(r"^(?:the|its|an?|of|each|both|all|sizes?|value|2|3|4)$")
_NAMES = {name.split(" ")[-1] for name in SHAPES}
_ALIKE = {"breadth": "width", "long": "length", "wide": "width", "broad": "width", "high": "height",
          "altitude": "height", "leg": "shorter side", "perpendicular side": "shorter side",
          "perpendicular height": "height", "perpendicular distance between parallel side": "distance between",
          "distance between them": "distance between", "distance between parallel side": "distance between",
          "equal angle": "base angle", "remaining angle": "third angle", "remaining side": "third side",
          "biggest angle": "largest angle", "interior angle": "angle", "one side": "side", "other side": "third side",
          "one angle": "angle", "other angle": "third angle", "length side": "side", "one": "angle",
          "shortest side": "shorter side", "adjacent side": "side"}  # fmt: skip


@dataclass
class _Told:
    """The figure of a part: its shape, the sizes by name, and what is wanted."""

    shape: str = ""
    sizes: Sizes = field(default_factory=dict)
    wanted: list[str] = field(default_factory=list)

    def add(self, name: str, values: list[str]) -> None:
        """Sizes of one name; a name twice is one size more of this kind."""
        self.sizes.setdefault(name, []).extend(values)


def _name(text: str) -> str:
    """A name of a size in the singular, without small words: "the lengths of its diagonals" is "diagonal"."""
    words = [re.sub(r"^(diagonal|side|angle|leg|other|length)s$", r"\1", one) for one in text.split(" ")]
    words = [one for one in words if not _SMALL.match(one)]
    if len(words) > 1 and words[0] == "length":
        words = words[1:]
    if words[:2] == ["one", "other"]:
        words = words[1:]
    if len(words) > 1 and words[0] == "one":
        words = words[1:]
    found = " ".join(words)
    return _ALIKE.get(found, found)


def _shape(text: str) -> str:
    """The name of a shape: "rectangular garden" is "rectangle"."""
    plain_name = re.sub(r"^(?:an?|the|this|each|our) ", "", text).replace("right angled", "right-angled")
    plain_name = re.sub(r"\bright (?=triangle|isosceles)", "right-angled ", plain_name)
    for pattern, name in ((r"rectangular .*", "rectangle"), (r"square .+", "square"), ("trapezoid", "trapezium"),
                          (r"circular .*|wheel|coin|ring|disc", "circle")):  # fmt: skip
        plain_name = re.sub(f"^(?:{pattern})$", name, plain_name)
    return plain_name


def _read(tree: Node) -> _Told:
    told = _Told()
    shapes = [_shape(node.text) for node in every(tree, "shape")]
    full = dict.fromkeys(one for one in shapes if one.split(" ")[-1] in _NAMES and one != "triangle")
    if len(full) > 1:
        raise NotUnderstood("two figures", 0)
    told.shape = next(iter(full), shapes[0] if shapes else "")
    for node in _pieces(tree):
        _take(node, told)
    told.wanted = [_name(node.text if node.expr_name == "wanted" else the(node, "name").text)
                   for node in every(tree, "wanted", "how")]  # fmt: skip
    return told


def _pieces(tree: Node) -> Iterator[Node]:
    yield from every(tree, "extent", "by_both", "included", "naming", "trait")
    for node in every(tree, "told_of"):
        sizes = [
            one for one in every(node, "size", "extent", "naming", "trait", "statement") if one.expr_name == "size"
        ]
        if len(sizes) == len(("length", "width")):
            yield node


def _take(node: Node, told: _Told) -> None:
    sizes = [one.text for one in every(node, "size")]
    match node.expr_name:
        case "extent":
            told.add(_ALIKE[the(node, "way").text], sizes)
        case "by_both" | "told_of":
            told.add("length", sizes[:1])
            told.add("width", sizes[1:])
        case "included":
            told.add("included angle", sizes)
        case _:
            in_ratio = first(node, "sizes")
            name = _name(the(node, "name").text)
            if in_ratio is not None and ":" in in_ratio.text:
                told.add(f"{name} ratio", [" : ".join(sizes)])
            else:
                told.add(name, sizes)


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    whole = whole_of(question, part, scene)
    if whole is None or question.table:
        return None
    try:
        tree = parsed(topic_named("plain figures").rules(), "ask", ". ".join(map(plain, whole.pieces)))
        told = _read(tree)
        figure: Lettered = lettered(SHAPES[told.shape], told.sizes, told.wanted)
    except (ExpressionNotRead, NotUnderstood, KeyError):
        return None
    return in_letters(figure, whole, scene)


READERS = Readers(story=_story)
