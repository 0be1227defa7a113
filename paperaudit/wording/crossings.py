"""Reads clauses on lines that cross each other or are cut by a third."""

from parsimonious.nodes import Node

from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.fact import Collinear, Crossing, Drawn, Fact, Midpoint, Parallel, Path, Perpendicular
from paperaudit.wording.lines import on_line
from paperaudit.wording.named import corners_of, distinct, path_of, paths_of, point_of, points_under
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.shapes import shape_before

Facts = tuple[Fact, ...]


def meeting(one: Path, other: Path, point: str, node: Node) -> Facts:
    """Where two lines meet: at an end of one of them, or inside both."""
    if point in one and point in other:
        return Drawn("segment", one), Drawn("segment", other)
    if point in one:
        return (on_line(point, other, node),)
    if point in other:
        return (on_line(point, one, node),)
    return (Crossing(one, other, point),)


def crossing(node: Node, scene: Scene) -> Facts:
    """AB and CD intersect at E, each within its ends or, when produced, beyond them."""
    one, other = paths_of(node)
    point = point_of(the(node, "point"))
    words = "extended" if has(node, "extensions") else the(node, "crossing_words").text
    if "produced" in words or "extended" in words:
        return Collinear(distinct((*one, point), node)), Collinear(distinct((*other, point), node))
    facts = meeting(one, other, point, node)
    return (*facts, Perpendicular(one, other)) if "right angles" in words else facts


def produced_meets(node: Node, scene: Scene) -> Facts:
    """AB produced meets DC produced at E."""
    point = point_of(the(node, "point"))
    pieces = list(every(node, "path", "on_tail"))
    beyond = [following.expr_name == "on_tail" for following in (*pieces[1:], pieces[0])]
    return tuple(
        on_line(point, path_of(piece), node, tail)
        for piece, tail in zip(pieces, beyond, strict=True)
        if piece.expr_name == "path" and (tail or point not in path_of(piece))
    )


def diagonals(node: Node, scene: Scene) -> Facts:
    """The diagonals of a quadrilateral, named here or before, intersect at E or bisect each other there."""
    shape = first(node, "the_shape")
    named = first(node, "polygon")
    corners = shape_before(shape, scene) if shape is not None else scene.latest(4)
    corners = corners_of(named) if named is not None else corners
    if corners is None or len(corners) != 4:
        raise NotUnderstood("no quadrilateral was named before", node.start, "the quadrilateral's name")
    a, b, c, d = corners
    square: Facts = (Perpendicular((a, c), (b, d)),) if "right angles" in node.text else ()
    named = first(node, "point")
    if named is None:
        return square
    if "bisect" in node.text:
        return Midpoint(point_of(named), (a, c)), Midpoint(point_of(named), (b, d)), *square
    return Crossing((a, c), (b, d), point_of(named)), *square


def meeting_of(node: Node, scene: Scene) -> Facts:
    """E is the point of intersection of AB and CD."""
    one, other = paths_of(node)
    return meeting(one, other, point_of(the(node, "point")), node)


def cuts_one(node: Node, scene: Scene) -> Facts:
    """AB meets CD at E; from a corner through a point inside a triangle, AG meets BC beyond G."""
    one, other = paths_of(node)
    point = point_of(the(node, "point"))
    if point not in (*one, *other) and scene.is_inside(one[1], (one[0], *other)):
        facts: Facts = (Collinear((*one, point)), on_line(point, other, node))
    else:
        facts = meeting(one, other, point, node)
    return (*facts, Perpendicular(one, other)) if "right angles" in node.text else facts


def cuts_two(node: Node, scene: Scene) -> Facts:
    """A straight line EF cuts AB at G and CD at H."""
    named = first(the(node, "cutter"), "path")
    paths = [path_of(path) for path in every(node, "cutter", "path") if path.expr_name == "path"]
    parallel: Facts = (Parallel(tuple(paths)),) if has(node, "parallel_noun") else ()
    return (*parallel, *_cut(path_of(named) if named is not None else None, paths, points_under(node), node))


def cut_by(node: Node, scene: Scene) -> Facts:
    """Two lines AB and CD, cut by EF at G and H."""
    pair = the(node, "paths")
    lines = _two(paths_of(pair), node)
    parallel: Facts = (Parallel(lines),) if has(node, "parallel_noun") else ()
    cutter = next(path_of(path) for path in every(node, "paths", "path") if path.expr_name == "path")
    return (*parallel, *_cut(cutter, list(lines), points_under(node), node))


def cut_them(node: Node, scene: Scene) -> Facts:
    """EF cuts them at G and H: the parallel lines named before."""
    if not scene.parallels or len(scene.parallels[-1].paths) != 2:
        raise NotUnderstood("no two parallel lines were named before", node.start, "the names of the two lines")
    named = first(node, "path")
    cutter = path_of(named) if named is not None else None
    return _cut(cutter, list(scene.parallels[-1].paths), points_under(node), node)


def concurrent(node: Node, scene: Scene) -> Facts:
    """AB, CD and EF meet at O."""
    lead, *others = paths_of(node)
    point = point_of(the(node, "point"))
    return tuple(fact for other in others for fact in meeting(lead, other, point, node))


def _two(paths: tuple[Path, ...], node: Node) -> tuple[Path, Path]:
    if len(paths) != 2:
        raise NotUnderstood("lines cut each other in pairs", node.start, "two lines")
    return paths[0], paths[1]


def _cut(cutter: Path | None, lines: list[Path], points: tuple[str, ...], node: Node) -> Facts:
    """A line cuts others; its own letters lie outside the points where it does, unless they are these."""
    on = tuple(on_line(point, path, node) for point, path in zip(points, lines, strict=True) if point not in path)
    start, end = cutter or (points[0], points[-1])
    if points[-1] == start or points[0] == end:
        start, end = end, start
    order = tuple(dict.fromkeys((start, *points, end)))
    return (*on, Collinear(order) if len(order) > 2 else Drawn("line", (start, end)))
