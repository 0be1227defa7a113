"""Reads clauses on points and lines: collinear, produced, on, midpoint, foot, and what is drawn."""

from parsimonious.nodes import Node

from paperaudit.maths.points import points_of
from paperaudit.maths.quantities import angle_of
from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.expression import AngleOf
from paperaudit.model.fact import Collinear, Drawn, Fact, Midpoint, Path, Perpendicular
from paperaudit.wording.named import corners_of, distinct, path_of, paths_of, point_of, points_under, spots_of
from paperaudit.wording.scene import NotUnderstood, Scene

Facts = tuple[Fact, ...]


def on_line(point: str, path: Path, node: Node, beyond: bool = False) -> Fact:
    """A point between the ends of a path, or beyond its second end."""
    order = (*path, point) if beyond else (path[0], point, path[1])
    return Collinear(distinct(order, node))


def collinear(node: Node, scene: Scene) -> Facts:
    """Points in order on one line: A, B, C are collinear; ABC is a straight line; A-B-C."""
    runs = [points_of(corners.text) for corners in every(node, "corners")] or [spots_of(node)]
    if any(len(run) < 3 for run in runs):
        raise NotUnderstood("two points always lie on a line", node.start, "three points or more")
    meets = first(node, "meet_there")
    if meets is not None and not all(point_of(meets) in run for run in runs):
        raise NotUnderstood(f"{point_of(meets)} is not on each line by its name", node.start, "lines named with it")
    return tuple(Collinear(distinct(run, node)) for run in runs)


def produced(node: Node, scene: Scene) -> Facts:
    """BC is produced to D: D lies beyond the second letter."""
    inner = the(node, "produced_one", "produced_each", "produced_both", "exterior")
    match inner.expr_name:
        case "produced_one":
            return _produced_one(inner)
        case "produced_each":
            pairs = _paired(points_under(inner), paths_of(inner), inner)
            return tuple(on_line(point, path, inner, beyond=True) for point, path in pairs)
        case "produced_both":
            start, end = path_of(the(inner, "path"))
            one, other = points_under(inner)
            return (Collinear(distinct((one, start, end, other), inner)),)
        case _:
            return _exterior(inner, scene)


def _produced_one(node: Node) -> Facts:
    path, *met = paths_of(node)
    past = next((corner.text for corner in every(node, "corner", "path", "point") if corner.expr_name == "corner"), "")
    if past == path[0]:
        path = (path[1], path[0])
    point = points_under(node)[-1]
    facts: Facts = (on_line(point, path, node, beyond=True),)
    return (*facts, *(on_line(point, line, node, has(node, "on_tail")) for line in met))


def _exterior(node: Node, scene: Scene) -> Facts:
    """∠ACD is an exterior angle of △ABC: BC is produced to D."""
    angle = angle_of(the(node, "angle"))
    named = first(node, "polygon")
    triangle = corners_of(named) if named is not None else scene.latest(3, angle.vertex)
    if not isinstance(angle, AngleOf) or triangle is None or len(triangle) != 3 or angle.vertex not in triangle:
        raise NotUnderstood("the triangle of this exterior angle is not clear", node.start, "as in “of △ABC”")
    inside = [arm for arm in (angle.arm, angle.other) if arm in triangle]
    outside = [arm for arm in (angle.arm, angle.other) if arm not in triangle]
    if len(inside) != 1:
        raise NotUnderstood("an exterior angle has one arm along a side", node.start, "a point beyond a corner")
    third = next(point for point in triangle if point not in (angle.vertex, inside[0]))
    return (Collinear((third, angle.vertex, outside[0])),)


def on_path(node: Node, scene: Scene) -> Facts:
    """D lies on AC: between its ends, beyond the second on "AC produced", somewhere on "the line AC"."""
    paths = paths_of(node)
    if not paths:
        middle, start, end = (*points_under(node), *spots_of(node)[-2:])
        return (Collinear(distinct((start, middle, end), node)),)
    beyond = has(node, "on_tail") or "extension of" in node.text
    points = points_under(node)
    if len(paths) == 1:
        paths = paths * len(points)
    if has(node, "on_each") and len(points) == 1:
        raise NotUnderstood("one point on two lines", node.start, "“the intersection of”, or a point for each line")
    pairs = _paired(points, paths, node)
    if not beyond and not has(node, "corner_between") and _is_endless(the(node, "path")):
        return tuple(Collinear(distinct((start, point, end), node), ordered=False) for point, (start, end) in pairs)
    return tuple(on_line(point, path, node, beyond) for point, path in pairs)


def _is_endless(path: Node) -> bool:
    """Whether a path is called a line, not a segment or a side."""
    noun = first(path, "path_noun")
    return noun is not None and "line" in noun.text and "segment" not in noun.text


def _paired(points: tuple[str, ...], paths: tuple[Path, ...], node: Node) -> tuple[tuple[str, Path], ...]:
    if len(paths) != len(points):
        raise NotUnderstood("there are not as many points as lines", node.start, "a point for each line")
    return tuple(zip(points, paths, strict=True))


def midpoint(node: Node, scene: Scene) -> Facts:
    """D is the midpoint of BC."""
    points, paths = points_under(node), paths_of(node)
    if len(points) == 1:
        points = points * len(paths)
    return tuple(Midpoint(point, path) for point, path in _paired(points, paths, node))


def foot(node: Node, scene: Scene) -> Facts:
    """D is the foot of the perpendicular from A to BC; AD is the perpendicular from A to BC."""
    points = points_under(node)
    *drops, line = paths_of(node)
    start = points[-1]
    if drops and start not in drops[0]:
        raise NotUnderstood(f"the perpendicular from {start} begins at {start}", node.start, f"{start} as one end")
    name = next(end for end in drops[0] if end != start) if drops else points[0]
    drop: Facts = (Perpendicular((start, name), line),)
    if name in line:
        return drop
    if has(node, "on_tail"):
        return (on_line(name, line, node, beyond=True), *drop)
    return (Collinear(distinct((line[0], name, line[1]), node), ordered=False), *drop)


def foot_elided(node: Node, scene: Scene) -> Facts:
    """With foot D: on the line to which another was said to be perpendicular, and on that other."""
    foot = point_of(the(node, "point"))
    last = scene.perpendiculars[-1] if scene.perpendiculars else None
    if last is None or foot not in (*last.first, *last.second):
        raise NotUnderstood("of which perpendicular is not said", node.start, "as in “from A to BC”")
    line = last.second if foot in last.first else last.first
    return () if foot in line else (Collinear(distinct((line[0], foot, line[1]), node), ordered=False),)


def drawn(node: Node, scene: Scene) -> Facts:
    """Segments, lines and rays that the figure shows."""
    noun = first(node, "drawn_noun")
    words = noun.text if noun is not None else "segment"
    paths = tuple(path_of(found) for found in every(node, "path", "length"))
    if not paths:
        start, end = points_under(node)
        paths = ((start, end),)
    if "ray" in words:
        return tuple(Drawn("ray", path) for path in paths)
    line = "segment" not in words and ("line" in words or "transversal" in words)
    return tuple(Drawn("line" if line else "segment", path) for path in paths)
