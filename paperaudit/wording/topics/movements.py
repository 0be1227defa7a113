"""Asks about images of points and about vectors: "Find the image of (2, 3) under a reflection in the x-axis"."""

import re
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.ask import Task
from paperaudit.model.coordinates_task import PlanePoint
from paperaudit.model.expression import Expression, Letter, Negative, Relation
from paperaudit.model.fact import Fact
from paperaudit.model.movement_task import (
    Enlarged,
    Image,
    Movement,
    OfVectors,
    Reflected,
    Shifted,
    Turned,
    Vector,
    VectorsParallel,
    WhichMovement,
)
from paperaudit.model.paper import Part, Question
from paperaudit.wording.asides import Asides
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.topics.numbers_named import number_in
from paperaudit.wording.topics.one_text import told_in_one
from paperaudit.wording.topics.plane_words import equation_of
from paperaudit.wording.topics.topic import Readers, Told

_NOUGHT = whole_or_fraction(0)


def _column(node: Node) -> tuple[Expression, Expression]:
    if has(node, "ij_term"):
        shares = [_share(the(node, name).text) for name in ("ij_term", "ij_next")]
        return whole_or_fraction(shares[0]), whole_or_fraction(shares[1])
    x, y = (number_in(item) for item in every(node, "item"))
    return x, y


def _share(text: str) -> Fraction:
    """The number before a letter, 1 where none is written."""
    plain = text.replace(" ", "").lstrip("+")
    return Fraction(f"{plain}1" if plain in ("", "-") else plain)


def _point(node: Node) -> PlanePoint:
    x, y = (number_in(item) for item in every(node, "item"))
    return PlanePoint(node.text[0] if node.text[0].isupper() else "", x, y)


def _centre(node: Node) -> PlanePoint:
    point = first(node, "point")
    return _point(point) if point is not None else PlanePoint("", _NOUGHT, _NOUGHT)


def _movement(node: Node) -> Movement:
    mirror, turn, scale = first(node, "mirror"), first(node, "turn"), first(node, "scale_rest")
    if mirror is not None:
        axis = first(mirror, "axis")
        if axis is None:
            return Reflected(equation_of(the(mirror, "relation")))
        return Reflected(Relation(Letter("y" if axis.text[0] == "x" else "x"), "=", _NOUGHT))
    if turn is not None:
        degrees = int(re.sub(r"\D", "", turn.text) or 180)
        clockwise = "clockwise" in turn.text and "anti" not in turn.text and "counter" not in turn.text
        if degrees != 180 and "clockwise" not in turn.text:
            raise NotUnderstood("which way the turn goes", turn.start, "clockwise or anticlockwise")
        return Turned(360 - degrees if clockwise else degrees, _centre(the(node, "turn_rest")))
    if scale is not None:
        return Enlarged(number_in(first_item(scale)), _centre(scale))
    column = first(node, "column")
    if column is not None:
        return Shifted(*_column(column))
    across, up = Fraction(0), Fraction(0)
    for shift in every(node, "shift"):
        size, way = int(the(shift, "count").text), the(shift, "way").text
        across += size if way == "right" else -size if way == "left" else 0
        up += size if way.startswith("up") else -size if way.startswith("down") else 0
    return Shifted(whole_or_fraction(across), whole_or_fraction(up))


def first_item(node: Node) -> Node:
    """The first number under a node."""
    return every(node, "item")[0]


def _task(node: Node, asides: Asides) -> Task:
    chosen = the(node, "which_movement", "image", "magnitude", "parallel", "combination")
    match chosen.expr_name:
        case "which_movement":
            return _which_movement(chosen)
        case "image":
            points = tuple(map(_point, every(the(chosen, "points"), "point")))
            if len(points) > 1 and not all(point.name for point in points):
                raise NotUnderstood("several points without names", chosen.start)
            named = first(chosen, "image_named")
            if named is not None and [named.text.strip(" ′")[-1]] != [point.name for point in points]:
                raise NotUnderstood(f"the image of {named.text.strip()}", named.start, "the point that is moved")
            return Image(points, tuple(map(_movement, every(chosen, "movement", "movement_rest"))))
        case "parallel":
            one, other = (_column(column) for column in every(chosen, "column"))
            return VectorsParallel(one, other, not the(chosen, "which_way").text.startswith("parallel"))
    what = chosen.expr_name
    column = first(chosen, "column")
    if column is not None:
        return OfVectors("magnitude", own=_column(column))
    terms = tuple(map(_term, every(the(chosen, "combined"), "term_first", "term_next")))
    if what == "combination" and "vector" not in chosen.text:
        raise NotUnderstood("no vector", chosen.start)
    if what == "magnitude" and "|" not in chosen.text and "vector" not in chosen.text and "length" in chosen.text:
        raise NotUnderstood("a length of a figure", chosen.start)
    return OfVectors("magnitude" if what == "magnitude" else "vector", terms)


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    return None if question.figure or question.table else told_in_one("movements", _task, question, part, scene)


def _which_movement(node: Node) -> Task:
    before, after = (re.findall(r"[A-Z]′*", names.text) for names in every(node, "corner_names"))
    if len(before) != len(after) or len(before) < 3:
        raise NotUnderstood("figures with unlike numbers of corners", node.start)
    return WhichMovement(tuple(map(PlanePoint, before)), tuple(map(PlanePoint, after)))


def _term(node: Node) -> tuple[Expression, str]:
    name = the(node, "vector_name").text
    share = _share(node.text.removesuffix(name).strip())
    size = whole_or_fraction(abs(share))
    return (Negative(size) if share < 0 else size), name


def _facts(node: Node, scene: Scene) -> tuple[Fact, ...]:
    return tuple(
        Vector(the(said, "vector_name").text, *_column(the(said, "column"))) for said in every(node, "vector_is")
    )


READERS = Readers(task=_task, facts=_facts, story=_story)
