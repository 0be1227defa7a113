"""Reads what a figure has a size of: angles in every spelling, lengths, areas, perimeters, and what circles have."""

import re
from collections.abc import Callable

from parsimonious.nodes import Node

from paperaudit.maths.distances import bearing_of, distance_of, height_of
from paperaudit.maths.points import points_of
from paperaudit.maths.round_sizes import arc_length_of, arc_of, round_size_of
from paperaudit.maths.tree import has, the
from paperaudit.model.expression import AngleAt, AngleOf, AnswerTo, AreaOf, Expression, LengthOf, PerimeterOf

_LEVEL = re.compile(r"[0-9]+|[a-z]+")


def quantity_of(node: Node) -> Expression:
    """The value under `quantity`: a size of the figure, or the answer to another part."""
    inner = the(node, *_SIZES)
    return _SIZES[inner.expr_name](inner)


def _answer_to(node: Node) -> AnswerTo:
    return AnswerTo(".".join(_LEVEL.findall(the(node, "part_number").text)))


def _length(node: Node) -> LengthOf:
    start, end = points_of(node.text)
    return LengthOf(start, end)


def polygon_of(node: Node) -> tuple[str, ...]:
    """The corners of a polygon named with or without its kind: triangle ABC, ABCD."""
    return points_of(node.text)


def angle_of(node: Node) -> AngleOf | AngleAt:
    """The value under `angle`."""
    inner = the(node, "angle_of", "angle_at", "hat_of", "hat_at", "numbered")
    reflex = has(node, "reflex")
    points = points_of(inner.text)
    if len(points) == 3:
        return AngleOf(points[0], points[1], points[2], reflex)
    digits = [character for character in inner.text if character.isdigit()]
    return AngleAt(points[-1], int(digits[0]) if digits else 0, reflex)


_SIZES: dict[str, Callable[[Node], Expression]] = {
    "arc_length": arc_length_of,
    "angle": angle_of,
    "area": lambda node: AreaOf(polygon_of(the(node, "polygon_name"))),
    "perimeter": lambda node: PerimeterOf(polygon_of(the(node, "polygon_name"))),
    "round_size": round_size_of,
    "distance": distance_of,
    "height": height_of,
    "bearing": bearing_of,
    "arc": arc_of,
    "length": _length,
    "answer_to": _answer_to,
}
