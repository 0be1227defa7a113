"""Reads clauses on lines through the middle of a segment, and on points as far from two others."""

from itertools import pairwise

from parsimonious.nodes import Node

from paperaudit.maths.distances import distance_between
from paperaudit.maths.tree import every, first, the
from paperaudit.model.expression import LengthOf, Relation
from paperaudit.model.fact import BisectsSegment, Fact, Holds, Midpoint, Path, Perpendicular
from paperaudit.wording.lines import on_line
from paperaudit.wording.named import distinct, path_of, paths_of, point_of, points_under
from paperaudit.wording.scene import NotUnderstood, Scene

Facts = tuple[Fact, ...]


def halving(node: Node, scene: Scene) -> Facts:
    """AD is the perpendicular bisector of BC; EF bisects AB; AC and BD bisect each other."""
    one, other = paths_of(node)
    if set(one) == set(other):
        raise NotUnderstood("a segment does not bisect itself", node.start, "two different lines")
    square = "perpendicular" in node.text or "right angles" in node.text
    if "bisect each other" in node.text or "bisect one another" in node.text:
        return BisectsSegment(one, other, square), BisectsSegment(other, one, square)
    line, segment = (other, one) if "bisected by" in node.text else (one, other)
    middle = [end for end in line if any({end, *segment} <= set(known.points) for known in scene.lines)]
    if len(middle) != 1 or middle[0] in segment:
        return (BisectsSegment(line, segment, square),)
    half: Facts = (Midpoint(middle[0], segment),)
    return (*half, Perpendicular(line, segment)) if square else half


def perp_meets(node: Node, scene: Scene) -> Facts:
    """The perpendicular bisector of BC meets AC at D, so that D is as far from B as from C."""
    segment, *lines = paths_of(node)
    points = points_under(node)
    pieces = [piece.expr_name for piece in every(node, "path", "on_tail")]
    produced = [following == "on_tail" for piece, following in pairwise((*pieces, "")) if piece == "path"][1:]
    facts: list[Fact] = []
    for line, point, beyond in zip(lines, points, produced, strict=True):
        if set(line) == set(segment):
            facts.append(Midpoint(point, segment))
            continue
        facts += [] if point in line else [on_line(point, line, node, beyond)]
        facts.append(_as_far(point, segment))
    return tuple(facts)


def perps_meet(node: Node, scene: Scene) -> Facts:
    """The perpendicular bisectors of AB and AC meet at O."""
    point = point_of(the(node, "point"))
    return tuple(_as_far(point, segment) for segment in paths_of(node))


def on_perp(node: Node, scene: Scene) -> Facts:
    """P lies on the perpendicular bisector of AB."""
    return (_as_far(point_of(the(node, "point")), path_of(the(node, "path"))),)


def _as_far(point: str, segment: Path) -> Fact:
    return Holds(Relation(LengthOf(point, segment[0]), "=", LengthOf(point, segment[1])))


def equidistant(node: Node, scene: Scene) -> Facts:
    """P is equidistant from A and B, or from the lines AB and AC."""
    listed = first(node, "to_line_listed")
    if listed is not None:
        point = the(node, "point")
        ends = [distance_between([point, line], node) for line in every(listed, "to_line")]
        return tuple(Holds(Relation(one, "=", other)) for one, other in pairwise(ends))
    start, *others = distinct(points_under(node), node)
    if len(others) < 2:
        raise NotUnderstood("as far from one point as from itself", node.start, "two points or more")
    return tuple(Holds(Relation(LengthOf(start, one), "=", LengthOf(start, other))) for one, other in pairwise(others))
