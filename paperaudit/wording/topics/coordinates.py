"""Asks and statements about points, lines and curves: "Find the gradient of the line joining A(2, 3) and B(8, 11)"."""

import re
from collections.abc import Callable

from parsimonious.nodes import Node

from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.ask import Find, Task
from paperaudit.model.coordinates_task import (
    CircleWith,
    ConditionName,
    Curve,
    Direction,
    Inclination,
    LineThrough,
    Meeting,
    NamedCurve,
    OfCurve,
    OfCurveName,
    OfPoints,
    OfPointsName,
    PlaneCondition,
    PlanePoint,
    PlaneUnknown,
    PointWanted,
)
from paperaudit.model.expression import Letter
from paperaudit.model.fact import Fact, Shape, ShapeKind
from paperaudit.wording.asides import Asides
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.topics.plane_words import curve_of, equation_of, points_in, value_in
from paperaudit.wording.topics.topic import Readers

_OF_POINTS: dict[str, OfPointsName] = {
    "gradient": "gradient",
    "midpoint": "mid-point",
    "how_far_apart": "distance",
    "collinear": "collinear",
    "bisector": "perpendicular bisector",
    "line_two": "equation",
}
_COMMAND = re.compile(r"calculate|find|determine|work out|write down|state|give|what")
_ALSO_OF_FIGURES = ("size_of", "how_far_apart", "collinear")
"""Read by the grammar of figures where points are named and not given by coordinates."""
_TURNS: tuple[tuple[str, OfCurveName], ...] = (
    ("turn_word", "turning point"),
    ("symmetry", "axis of symmetry"),
    ("least", "least value"),
    ("greatest", "greatest value"),
)


def _task(node: Node, asides: Asides) -> Task:
    chosen = the(node, *_READERS)
    if asides.terms:
        raise NotUnderstood("an answer in terms of a letter", 0)
    return _READERS[chosen.expr_name](chosen)


def _of_points(node: Node) -> Task:
    points = points_in(node)
    asked = node.expr_name != "midpoint" or _COMMAND.match(node.text)
    if (node.expr_name in _ALSO_OF_FIGURES or not asked) and any(point.x is None for point in points):
        raise NotUnderstood("a size of a figure", node.start)
    if node.expr_name == "size_of":
        return OfPoints("perimeter" if has(node, "round_word") else "area", points)
    return OfPoints(_OF_POINTS[node.expr_name], points, _is_claimed(node))


def _is_claimed(node: Node) -> bool:
    """Whether the ask has it so, and does not ask whether."""
    return re.match(r"show|prove|verify", node.text) is not None


def _gradient(node: Node) -> Task:
    return OfCurve("gradient", curve_of(node)) if has(node, "the_curve") else _of_points(node)


def _beside(node: Node) -> Task:
    (point,) = points_in(the(node, "through"))
    beside = the(node, "beside")
    right = not the(beside, "way").text.startswith("parallel")
    pair = points_in(beside)
    if not pair and curve_of(beside) is None:
        raise NotUnderstood("which line", node.start, "the equation of the other line")
    return LineThrough(point, beside=None if pair else curve_of(beside), pair=pair, at_right_angles=right)


def _with_gradient(node: Node) -> Task:
    (point,) = points_in(the(node, "through"))
    return LineThrough(point, gradient=value_in(the(node, "item_alone")))


def _circle(node: Node) -> Task:
    centre, *others = points_in(node)
    radius = first(node, "item_alone")
    return CircleWith(centre, value_in(radius) if radius is not None else None, others[0] if others else None)


def _on_it(node: Node) -> Task:
    (point,) = points_in(node)
    return OfCurve("on it", curve_of(the(node, "the_curve")), point, _is_claimed(node))


def _tangent(node: Node) -> Task:
    (point,) = points_in(node)
    curve = curve_of(the(node, "the_curve"))
    return OfCurve("tangent", curve, point)


def _meeting(node: Node) -> Task:
    curves = [curve_of(one) for one in every(node, "the_curve")]
    return Meeting(curves[0], curves[1])


def _intercept(node: Node) -> Task:
    axis = first(node, "which_axis")
    name: OfCurveName = "intercepts" if axis is None else "x-intercept" if axis.text == "x" else "y-intercept"
    return OfCurve(name, curve_of(node))


def _turning(node: Node) -> Task:
    name = next(name for rule, name in _TURNS if has(node, rule))
    return OfCurve(name, curve_of(node))


def _centre(node: Node) -> Task:
    both, centre = has(node, "both_word"), has(node, "centre_word")
    if curve_of(node) is None and "coordinates" not in node.text:
        raise NotUnderstood("a circle of a figure", node.start)
    return OfCurve("centre and radius" if both else "centre" if centre else "radius", curve_of(node))


def _direction(node: Node) -> Task:
    one, other = (Curve(equation_of(piece)) for piece in every(node, "relation"))
    return Direction(one, other, not the(node, "which_way").text.startswith("parallel"), _is_claimed(node))


_READERS: dict[str, Callable[[Node], Task]] = {
    "inclination": lambda node: (
        Inclination(curve=curve_of(node)) if has(node, "the_curve") else Inclination(points_in(node))
    ),
    "gradient": _gradient,
    "midpoint": _of_points,
    "how_far_apart": _of_points,
    "collinear": _of_points,
    "size_of": _of_points,
    "bisector": _of_points,
    "line_two": _of_points,
    "on_it": _on_it,
    "position": lambda node: OfCurve("position", curve_of(the(node, "the_curve")), points_in(node)[0]),
    "direction": _direction,
    "line_beside": _beside,
    "line_with": _with_gradient,
    "circle_with": _circle,
    "tangent": _tangent,
    "meeting": _meeting,
    "crossing": _meeting,
    "intercept": _intercept,
    "turning": _turning,
    "asymptote": lambda node: OfCurve("asymptotes", curve_of(node)),
    "centre": _centre,
}


def _condition(node: Node) -> tuple[PlaneCondition, tuple[PlanePoint, ...]]:
    """What a clause says of points, and the points to which it gives coordinates."""
    said = the(node, *_CONDITIONS)
    points = points_in(said)
    value = first(said, "item_alone")
    curve = curve_of(said)
    if isinstance(curve, NamedCurve):
        raise NotUnderstood("a curve by its name", node.start)
    if all(point.x is None for point in points) and said.expr_name != "gradient_is":
        raise NotUnderstood("a statement about a figure", node.start)
    if said.expr_name == "on_said" and curve is None:
        raise NotUnderstood("which curve", node.start)
    named = tuple(point for point in points if point.name and point.x is not None)
    return PlaneCondition(
        _CONDITIONS[said.expr_name],
        tuple(PlanePoint(point.name) if point.name else point for point in points),
        value_in(value) if value is not None else None,
        curve.relation if curve is not None else None,
    ), named


_CONDITIONS: dict[str, ConditionName] = {
    "gradient_is": "gradient",
    "distance_is": "distance",
    "collinear_said": "collinear",
    "middle_said": "mid-point",
    "on_said": "on",
}


def _unknown_if(node: Node) -> Task:
    condition, points = _condition(the(node, "condition_said"))
    letter = the(node, "unknown_letter").text
    return PlaneUnknown(letter, condition, points)


def _point_wanted(node: Node) -> Task:
    return PointWanted(the(node, "capital").text)


_READERS["unknown_if"] = _unknown_if
_READERS["letter_wanted"] = lambda node: Find((Letter(the(node, "unknown_letter").text),))
_READERS["point_wanted"] = _point_wanted


def _shape(node: Node) -> Shape:
    """The polygon whose corners a statement names."""
    names = tuple(the(node, "capitals").text)
    kind: ShapeKind = the(node, "shape_word").text
    if len(names) != (3 if kind == "triangle" else 4) or "′" in names:
        raise NotUnderstood("a polygon with other corners", node.start)
    return Shape(kind, names)


def _facts(node: Node, scene: Scene) -> tuple[Fact, ...]:
    said = the(node, "points_said", "curve_said", "condition_said", "shape_with")
    if said.expr_name == "shape_with":
        return (*points_in(said), _shape(said))
    if said.expr_name == "condition_said":
        condition, points = _condition(said)
        return (*points, condition)
    if said.expr_name == "points_said":
        return points_in(said)
    return tuple(_curve(one) for one in every(said, "one_curve"))


def _curve(node: Node) -> Curve:
    curve = curve_of(node)
    assert isinstance(curve, Curve)
    return curve


READERS = Readers(task=_task, facts=_facts)
