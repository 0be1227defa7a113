"""Reads what a figure has a size of: angles in every spelling, lengths, areas, perimeters."""

import re

from parsimonious.nodes import Node

from paperaudit.maths.tree import has, the
from paperaudit.model.expression import AngleAt, AngleOf, AnswerTo, AreaOf, LengthOf, PerimeterOf, Quantity

_POINT = re.compile(r"[A-Z]′*")
_LEVEL = re.compile(r"[0-9]+|[a-z]+")


def points_of(text: str) -> tuple[str, ...]:
    """The points of a run of capitals: "AB′C" is A, B′, C."""
    return tuple(_POINT.findall(text))


def quantity_of(node: Node) -> Quantity | AnswerTo:
    """The value under `quantity`."""
    inner = the(node, "angle", "area", "perimeter", "length", "answer_to")
    match inner.expr_name:
        case "angle":
            return angle_of(inner)
        case "length":
            start, end = points_of(inner.text)
            return LengthOf(start, end)
        case "area":
            return AreaOf(polygon_of(the(inner, "polygon_name")))
        case "perimeter":
            return PerimeterOf(polygon_of(the(inner, "polygon_name")))
        case _:
            return AnswerTo(".".join(_LEVEL.findall(the(inner, "part_number").text)))


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
