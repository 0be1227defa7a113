"""Reads clauses on what lies inside or outside a figure or an angle, and on orders along a line."""

from parsimonious.nodes import Node

from paperaudit.maths.points import points_of
from paperaudit.maths.quantities import angle_of
from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.expression import AngleOf
from paperaudit.model.fact import Collinear, Drawn, Fact, Inside, Outside, Parallel, Path, RayInside
from paperaudit.wording.lines import on_line
from paperaudit.wording.named import corners_of, distinct, paths_of, point_of, points_under, spots_of
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.shapes import shape_before

Facts = tuple[Fact, ...]


def inside(node: Node, scene: Scene) -> Facts:
    """E lies inside ABCD or outside it; E, or the ray BE, lies inside ∠ABC."""
    named, *_, where = every(node, "angle", "the_shape", "polygon", "paths", "points")
    outside = "outside" in node.text[named.end - node.start :]
    if where.expr_name == "angle":
        angle = angle_of(where)
        if outside or not isinstance(angle, AngleOf) or angle.reflex:
            raise NotUnderstood("the two arms of the angle are not named", where.start, "an angle such as ∠ABC")
        return tuple(_inside_angle(point, angle, node) for point in _ends(named, angle.vertex, node))
    if named.expr_name == "paths":
        raise NotUnderstood("a line is not inside a polygon by its ends", node.start, "points or an angle")
    polygon = shape_before(where, scene) if where.expr_name == "the_shape" else corners_of(where)
    fact = Outside if outside else Inside
    return tuple(fact(point, polygon) for point in points_under(named))


def ray_between(node: Node, scene: Scene) -> Facts:
    """OE lies between OA and OD."""
    *rays, one, other = paths_of(node)
    vertex = next((point for point in one if all(point in path for path in (other, *rays))), "")
    if not vertex:
        raise NotUnderstood("the lines do not start at one point", node.start, "lines from one point")
    angle = AngleOf(_far(one, vertex), vertex, _far(other, vertex))
    return tuple(_inside_angle(_far(ray, vertex), angle, node) for ray in rays)


def _inside_angle(point: str, angle: AngleOf, node: Node) -> RayInside:
    arm, inner, other = distinct((angle.arm, point, angle.other), node)
    return RayInside(angle.vertex, arm, inner, other)


def _ends(named: Node, vertex: str, node: Node) -> tuple[str, ...]:
    """The points that are said to lie inside an angle, or the far ends of rays from its vertex."""
    if named.expr_name == "points":
        return points_under(named)
    rays = paths_of(named)
    for ray in rays:
        if vertex not in ray:
            raise NotUnderstood(f"{''.join(ray)} does not start at {vertex}", node.start, f"a line from {vertex}")
    return tuple(_far(ray, vertex) for ray in rays)


def _far(path: Path, start: str) -> str:
    return path[1] if path[0] == start else path[0]


def in_order(node: Node, scene: Scene) -> Facts:
    """D and E lie on BC in the order B, D, E, C, or in that order."""
    start, end = paths_of(node)[0]
    points = points_under(node)
    run = first(node, "corners")
    order = points_of(run.text) if run is not None else spots_of(node)[len(points) :] or (start, *points, end)
    if not {*points, start, end} <= set(order):
        raise NotUnderstood("the order leaves out a point of the line", node.start, "every point named before")
    return (Collinear(distinct(order, node)),)


def line_parallel(node: Node, scene: Scene) -> Facts:
    """DAE is a straight line parallel to BC; DE is drawn through A parallel to BC."""
    if has(node, "corners"):
        points = corners_of(the(node, "corners"))
        return Collinear(points), Parallel(((points[0], points[-1]), paths_of(node)[0]))
    line, other = paths_of(node)
    point = point_of(the(node, "point"))
    through: Fact = Drawn("line", line) if point in line else on_line(point, line, node)
    return through, Parallel((line, other))
