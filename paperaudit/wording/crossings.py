"""Reads clauses on lines that cross, and on bisectors of angles with the lines that they meet."""

from parsimonious.nodes import Node

from paperaudit.maths.quantities import angle_of
from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.expression import AngleAt, AngleOf
from paperaudit.model.fact import BisectsAngle, Collinear, Crossing, Drawn, Fact, Parallel, Path, Perpendicular
from paperaudit.wording.lines import on_line
from paperaudit.wording.named import corners_of, distinct, measures_of, paths_of, point_of
from paperaudit.wording.scene import NotUnderstood, Scene

Facts = tuple[Fact, ...]


def crossing(node: Node, scene: Scene) -> Facts:
    """AB and CD intersect at E."""
    one, other = paths_of(node)
    point = the(node, "corner_last", "corner") if False else [c for c in every(node, "corner", "path") if c.expr_name == "corner"][-1].text
    if "when produced" in node.text:
        return Collinear(distinct((*one, point), node)), Collinear(distinct((*other, point), node))
    facts = meeting(one, other, point, node)
    return (*facts, Perpendicular(one, other)) if "right angles" in node.text else facts


def meeting(one: Path, other: Path, point: str, node: Node) -> Facts:
    """Two lines through a point that is an end of one of them, or of none."""
    if point in one and point in other:
        return ()
    if point in one:
        return (on_line(point, other, node),)
    if point in other:
        return (on_line(point, one, node),)
    return (Crossing(one, other, point),)


def diagonals(node: Node, scene: Scene) -> Facts:
    """The diagonals, of the quadrilateral named here or before, intersect at E."""
    named = first(node, "polygon")
    corners = corners_of(named) if named is not None else scene.latest(4)
    if corners is None or len(corners) != 4:
        raise NotUnderstood("no quadrilateral was named before", node.start, "the quadrilateral's name")
    a, b, c, d = corners
    point = [c for c in every(node, "corner", "polygon") if c.expr_name == "corner"][-1].text
    return (Crossing((a, c), (b, d), point),)


def meeting_of(node: Node, scene: Scene) -> Facts:
    """E is the point of intersection of AB and CD."""
    one, other = paths_of(node)
    return meeting(one, other, point_of(the(node, "point")), node)


def cuts_one(node: Node, scene: Scene) -> Facts:
    """AB meets CD at E."""
    one, other = paths_of(node)
    return meeting(one, other, point_of(the(node, "point")), node)


def cuts_two(node: Node, scene: Scene) -> Facts:
    """A straight line EF cuts AB at G and CD at H."""
    cutter, one, other = paths_of(node)
    at_one, at_other = (point_of(point) for point in every(node, "point"))
    return _cut(cutter, ((one, at_one), (other, at_other)), node)


def cut_by(node: Node, scene: Scene) -> Facts:
    """Two lines AB and CD, cut by EF at G and H."""
    pair = paths_of(the(node, "paths"))
    cutter = paths_of(node)[-1]
    points = tuple(point_of(point) for point in every(node, "point"))
    if len(pair) != 2:
        raise NotUnderstood("two lines are cut at two points", node.start, "two lines")
    parallel: Facts = (Parallel(pair),) if "parallel" in the(node, "paths").text else ()
    return (*parallel, *_cut(cutter, tuple(zip(pair, points, strict=True)), node))


def _cut(cutter: Path, cuts: tuple[tuple[Path, str], ...], node: Node) -> Facts:
    """Where a line cuts two others; its own letters lie outside the two points, unless they are these."""
    inner = [point for _, point in cuts]
    order = tuple(dict.fromkeys((cutter[0], *inner, cutter[1])))
    on = tuple(on_line(point, path, node) for path, point in cuts if point not in path)
    along: Facts = (Collinear(order),) if len(order) > 2 else (Drawn("line", cutter),)
    if cutter[0] == inner[1] or cutter[1] == inner[0]:
        along = (Drawn("line", cutter),) if len(order) == 2 else (Collinear(tuple(dict.fromkeys((cutter[1], *inner, cutter[0])))),)
    return (*on, *along)


def bisects(node: Node, scene: Scene) -> Facts:
    """AD bisects ∠BAC, and may then meet a line."""
    meets = first(node, "bisector_meets")
    lines = [path for path in every(node, "path", "bisector_meets") if path.expr_name == "path"]
    paths = tuple(path for line in lines for path in [paths_of_one(line)])
    found = first(node, "angle")
    angles = measures_of(the(node, "quantities")) if found is None else (angle_of(found),)
    if len(paths) != len(angles):
        raise NotUnderstood("there are not as many bisectors as angles", node.start, "a bisector for each angle")
    facts: list[Fact] = [bisector(path, angle, node) for path, angle in zip(paths, angles, strict=True)]
    if meets is not None:
        point = point_of(the(meets, "point"))
        facts.extend(meeting(paths[0], paths_of(meets)[0], point, node))
    return tuple(facts)


def paths_of_one(node: Node) -> Path:
    """The path of one `path` node."""
    from paperaudit.wording.named import path_of

    return path_of(node)


def bisector(path: Path, angle: object, node: Node) -> BisectsAngle:
    """A path from the vertex of an angle that halves it; named from either end."""
    if not isinstance(angle, AngleOf | AngleAt):
        raise NotUnderstood("what is bisected is not an angle", node.start, "an angle such as ∠ABC")
    if angle.vertex not in path:
        raise NotUnderstood(f"the bisector starts at {angle.vertex}", node.start, f"a line from {angle.vertex}")
    return BisectsAngle(path if path[0] == angle.vertex else (path[1], path[0]), angle)


def bisectors(node: Node, scene: Scene) -> Facts:
    """The bisector of ∠BAC meets BC at D; the bisectors of ∠B and ∠C meet at I."""
    point = point_of(the(node, "point"))
    found = first(node, "angle")
    if found is not None and has(node, "path"):
        angle = angle_of(found)
        return bisector((angle.vertex, point), angle, node), on_line(point, paths_of(node)[0], node)
    return tuple(
        bisector((angle.vertex, point), angle, node)
        for angle in measures_of(the(node, "quantities"))
        if isinstance(angle, AngleOf | AngleAt)
    )
