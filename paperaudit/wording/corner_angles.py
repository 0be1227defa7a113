"""Reads clauses on the angles at the corners of a polygon: their sizes, their ratio, an exterior angle."""

from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.maths.terms import expression_of
from paperaudit.maths.tree import every, first, the
from paperaudit.model.expression import AngleAt, AngleOf, Expression, Measured, Negative, Number, Relation, Sum
from paperaudit.model.fact import Collinear, Fact, Holds
from paperaudit.wording.named import corners_of, measures_of, point_of
from paperaudit.wording.relations import chain, in_ratio, worded
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.shapes import shape_before

Facts = tuple[Fact, ...]


def angles_listed(node: Node, scene: Scene) -> Facts:
    """The angles of triangle ABC are ∠A = 40°, …"""
    return chain(the(node, "chain"), scene)


def angles_are(node: Node, scene: Scene) -> Facts:
    """The angles of triangle ABC are x, 2x and 3x, in the order of its letters."""
    sizes = [piece for piece in every(node, "angles_of", "expression") if piece.expr_name == "expression"]
    whole = first(node, "angles_of")
    corners = scene.latest(len(sizes))
    if whole is None and corners is None:
        raise NotUnderstood("no figure with so many corners was named before", node.start, "the figure's name")
    angles = _angles_of(whole, scene) if whole is not None else _corners(corners or ())
    if len(sizes) != len(angles):
        raise NotUnderstood("there are not as many sizes as angles", node.start, "a size for each angle")
    return tuple(Holds(Relation(angle, "=", expression_of(size))) for angle, size in zip(angles, sizes, strict=True))


def ratio_words(node: Node, scene: Scene) -> Facts:
    """∠A and ∠B are in the ratio 2 : 3; the angles of triangle ABC are in the ratio 2 : 3 : 5."""
    shares = [expression_of(side) for side in every(node, "expression_side")]
    whole = first(node, "angles_of")
    if whole is not None:
        return in_ratio(_angles_of(whole, scene), shares, node)
    listed = first(node, "quantities")
    angles = measures_of(listed if listed is not None else node)
    named = next((piece for piece in every(node, "quantities", "polygon") if piece.expr_name == "polygon"), None)
    if named is not None:
        angles = tuple(_at_corner(angle, corners_of(named)) for angle in angles)
    return in_ratio(angles, shares, node)


def _angles_of(node: Node, scene: Scene) -> tuple[Expression, ...]:
    """The angles of a polygon in the order of its letters."""
    where = the(node, "the_shape", "polygon")
    return _corners(shape_before(where, scene) if where.expr_name == "the_shape" else corners_of(where))


def _corners(corners: tuple[str, ...]) -> tuple[Expression, ...]:
    return tuple(_at_corner(AngleAt(corner), corners) for corner in corners)


def _at_corner(angle: Expression, corners: tuple[str, ...]) -> Expression:
    """∠B of the polygon ABCD is ∠ABC, whatever else is drawn at B."""
    if not isinstance(angle, AngleAt) or angle.number or angle.vertex not in corners:
        return angle
    at = corners.index(angle.vertex)
    return AngleOf(corners[at - 1], angle.vertex, corners[(at + 1) % len(corners)], angle.reflex)


def exterior_size(node: Node, scene: Scene) -> Facts:
    """The exterior angle at C is 110°: that of the side produced at C, else what the angle at C lacks to 180°."""
    corner = point_of(the(node, "point"))
    named = next((piece for piece in every(node, "point", "worded", "polygon") if piece.expr_name == "polygon"), None)
    polygon = corners_of(named) if named is not None else scene.latest(None, corner)
    if polygon is None or corner not in polygon:
        raise NotUnderstood(f"no polygon with a corner {corner} was named before", node.start, "the polygon's name")
    found = [angle for line in scene.lines if (angle := _exterior(line, corner, polygon)) is not None]
    if len(set(found)) > 1:
        raise NotUnderstood(f"not one side is produced at {corner}", node.start, f"a side that is produced at {corner}")
    inner = Sum((Measured(Number(Fraction(180)), "°"), Negative(_at_corner(AngleAt(corner), polygon))))
    exterior = found[0] if found else inner
    return (Holds(Relation(exterior, "=", worded(the(node, "worded")))),)


def _exterior(line: Collinear, corner: str, polygon: tuple[str, ...]) -> AngleOf | None:
    """The angle between a side and the other side at this corner, produced along the line."""
    at = polygon.index(corner)
    before, after = polygon[at - 1], polygon[(at + 1) % len(polygon)]
    if not line.ordered or corner not in line.points:
        return None
    spot = line.points.index(corner)
    runs = (line.points[:spot][::-1], line.points[spot + 1 :])
    for along, beyond in (runs, runs[::-1]):
        for side, other in ((before, after), (after, before)):
            if side in along and beyond and other not in line.points:
                return AngleOf(other, corner, beyond[0])
    return None
