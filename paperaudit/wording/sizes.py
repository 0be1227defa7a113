"""Reads clauses that give a size in words: ABCD has area 24, A is 5 cm from BC, B is on a bearing of 065° from A."""

from parsimonious.nodes import Node

from paperaudit.maths.distances import distance_between
from paperaudit.maths.terms import expression_of
from paperaudit.maths.tree import every, the
from paperaudit.model.expression import AreaOf, BearingOf, LengthOf, PerimeterOf, Relation
from paperaudit.model.fact import Fact, Holds
from paperaudit.wording.named import corners_of, distinct, measure_of, points_under
from paperaudit.wording.scene import Scene

Facts = tuple[Fact, ...]


def has_size(node: Node, scene: Scene) -> Facts:
    """ABCD has an area of 24 cm²; triangle ABC with perimeter 30 cm."""
    corners = corners_of(the(node, "polygon"))
    size = AreaOf(corners) if the(node, "figure_size").text == "area" else PerimeterOf(corners)
    return (Holds(Relation(size, "=", measure_of(the(node, "measure")))),)


def far_from(node: Node, scene: Scene) -> Facts:
    """A is 5 cm from BC; A and B are 5 cm apart."""
    points = points_under(node)
    size = expression_of(the(node, "expression"))
    if points:
        one, other = distinct(points, node)
        return (Holds(Relation(LengthOf(one, other), "=", size)),)
    ends = [end for end in every(node, "distant", "to_line", "expression") if end.expr_name != "expression"]
    return (Holds(Relation(distance_between(ends, node), "=", size)),)


def on_bearing(node: Node, scene: Scene) -> Facts:
    """B is on a bearing of 065° from A."""
    end, start = distinct(tuple(the(place, "corner").text for place in every(node, "place")), node)
    return (Holds(Relation(BearingOf(start, end), "=", expression_of(the(node, "expression")))),)


def far_bearing(node: Node, scene: Scene) -> Facts:
    """B is 8 km from A on a bearing of 060°."""
    end, start = distinct(tuple(the(place, "corner").text for place in every(node, "place")), node)
    far, bearing = (expression_of(size) for size in every(node, "place", "expression") if size.expr_name != "place")
    return (
        Holds(Relation(LengthOf(start, end), "=", far)),
        Holds(Relation(BearingOf(start, end), "=", bearing)),
    )
