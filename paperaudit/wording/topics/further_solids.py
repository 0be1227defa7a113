"""Stories of frustums of square pyramids, of solids with a hole through them, and of nets."""

import re

from parsimonious.nodes import Node

from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.expression import Expression, Number
from paperaudit.model.reckoning import Amount, Reckoning
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.amount_words import amount_of, story
from paperaudit.wording.topics.stories.amounts import number_in
from paperaudit.wording.topics.topic import Readers

_EDGES = {"bottom": "bottom edge", "top": "top edge", "slant": "slant height", "upright": "height"}
_WANTED = {
    "total surface area": "surface area", "surface area": "surface area", "volume": "volume",
    "slant height": "slant height", "lateral surface area": "lateral area",
}  # fmt: skip


def _reckoning(node: Node) -> Reckoning:
    told = [one.expr_name for one in every(node, "frustum_told", "holed", "drilled", "net_told")]
    wants = every(node, "want")
    if len(told) != 1 or len(wants) != 1:
        raise NotUnderstood("one solid and one ask", 0)
    sizes = [one.text for one in every(wants[0], "size")]
    match told[0]:
        case "frustum_told":
            return _frustum(node, sizes)
        case "net_told":
            return _net(the(node, "net_told"), sizes)
    if has(node, "edge_told") or len(sizes) != 1:
        raise NotUnderstood("a solid with a hole", 0)
    return _holed(the(node, "holed", "drilled"), sizes[0])


def _frustum(node: Node, sizes: list[str]) -> Reckoning:
    amounts: list[Amount] = []
    for piece in every(node, "two_edges", "one_edge"):
        measures = [amount_of(one) for one in every(piece, "measure")]
        if piece.expr_name == "two_edges":
            amounts += [Amount("bottom edge", measures[0]), Amount("top edge", measures[1])]
        else:
            amounts.append(Amount(_EDGES[the(piece, *_EDGES).expr_name], measures[0]))
    names = [amount.name for amount in amounts]
    wanted = tuple(_WANTED.get(size, "") for size in sizes)
    if len(set(names)) != len(names) or "" in wanted or not wanted or not {"bottom edge", "top edge"} <= set(names):
        raise NotUnderstood("both edges of a frustum", 0)
    return Reckoning("square frustum", tuple(amounts), wanted)


def _holed(node: Node, size: str) -> Reckoning:
    block, hole = the(node, "cube", "cuboid", "round"), the(node, "square_hole", "round_hole")
    amounts: list[Amount] = []
    measures = [amount_of(one) for one in every(block, "measure")]
    along = first(node, "along")
    depth = amount_of(the(along, "measure")) if along is not None else None
    match block.expr_name:
        case "cube":
            if depth not in (None, measures[0]):
                raise NotUnderstood("another edge than that of the cube", 0)
            amounts.append(Amount("edge", measures[0]))
        case "cuboid":
            if depth is None or measures.count(depth) != 1:
                raise NotUnderstood("along which edge the hole goes", 0)
            others = [one for one in measures if one != depth]
            amounts += [Amount("length", others[0]), Amount("width", others[1]), Amount("depth", depth)]
        case _:
            for piece in every(block, "round_size"):
                name = re.sub("length", "height", re.match("[a-z]+", piece.text)[0])  # type: ignore[index]
                amounts.append(Amount(name, amount_of(the(piece, "measure"))))
            if {one.name for one in amounts} not in ({"radius", "height"}, {"diameter", "height"}):
                raise NotUnderstood("a cylinder", 0)
            if along is not None or hole.expr_name == "square_hole":
                raise NotUnderstood("a hole along the axis", 0)
    square = hole.expr_name == "square_hole"
    named = "hole edge" if square else f"hole {the(hole, 'radius', 'diameter').expr_name}"
    amounts.append(Amount(named, amount_of(the(hole, "measure"))))
    wanted = _WANTED.get(size, "")
    if wanted not in ("surface area", "volume"):
        raise NotUnderstood("what is asked of the solid", 0)
    return Reckoning(f"{block.expr_name} with a hole", tuple(amounts), (wanted,))


def _net(node: Node, sizes: list[str]) -> Reckoning:
    if any(size not in ("total area", "area", "area of the net", "surface area", "total surface area")
           for size in sizes):  # fmt: skip
        raise NotUnderstood("the area of a net", 0)
    amounts: list[Amount] = []
    sides: list[Expression] = []
    for piece in every(node, "piece"):
        shape = the(piece, "net_square", "net_rectangle", "net_triangle", "net_circle")
        counted = first(piece, "number_of")
        count = re.search(r"\d", counted.text) if counted is not None else None
        measures = [amount_of(one) for one in every(shape, "measure")]
        kind = shape.expr_name.removeprefix("net_")
        if kind == "square":
            sides += measures
        if kind == "triangle" and len(measures) == 1:
            if len(sides) != 1 or "pyramid" not in the(node, "net_of").text:
                raise NotUnderstood("the base of the triangles", piece.start)
            measures = [sides[0], *measures]
        amounts.append(Amount(f"number of {kind}s", number_in(count.group()) if count else Number(1)))  # type: ignore[arg-type]
        amounts += [Amount(kind, one) for one in measures]
    return Reckoning("net", tuple(amounts), ("area",))


READERS = Readers(story=story("further solids", _reckoning))
