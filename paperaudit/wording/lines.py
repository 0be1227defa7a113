"""Reads clauses on lines and points: collinear, produced, on, midpoint, parallel, perpendicular, inside."""

from parsimonious.nodes import Node

from paperaudit.maths.quantities import points_of
from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.fact import (
    Between,
    Collinear,
    Drawn,
    Fact,
    Inside,
    Midpoint,
    Parallel,
    Path,
    Perpendicular,
    RoundPoint,
    Sides,
)
from paperaudit.wording.named import corners_of, distinct, path_of, paths_of, point_of, spots_of
from paperaudit.wording.scene import NotUnderstood, Scene

Facts = tuple[Fact, ...]


def collinear(node: Node, scene: Scene) -> Facts:
    """Points in order on one line: A, B, C are collinear; ABC is a straight line; A-B-C."""
    run = first(node, "corners")
    points = points_of(run.text) if run is not None else tuple(corner.text for corner in every(node, "corner"))
    if len(points) < 3:
        raise NotUnderstood("two points always lie on a line", node.start, "three points or more")
    return (Collinear(distinct(points, node)),)


def produced(node: Node, scene: Scene) -> Facts:
    """BC is produced to D: D lies beyond the second letter."""
    inner = the(node, "produced_one", "produced_each", "produced_both")
    paths = paths_of(inner)
    points = tuple(point_of(point) for point in every(inner, "point"))
    if inner.expr_name == "produced_both":
        start, end = paths[0]
        if len(points) != 2:
            raise NotUnderstood("both ends need a point each", inner.start, "two points")
        return (Collinear(distinct((points[0], start, end, points[1]), inner)),)
    if len(paths) != len(points):
        raise NotUnderstood("there are not as many points as lines", inner.start, "a point for each line")
    past = first(inner, "corner") if inner.expr_name == "produced_one" else None
    return tuple(
        Collinear(distinct((*_towards(path, past), point), inner)) for path, point in zip(paths, points, strict=True)
    )


def _towards(path: Path, past: Node | None) -> Path:
    """The path turned so that it leads to the point that it is produced beyond, where one is named."""
    return (path[1], path[0]) if past is not None and past.text == path[0] else path


def on_path(node: Node, scene: Scene) -> Facts:
    """D lies on AC: between its ends, or beyond the second on "AC produced"."""
    paths = paths_of(node)
    beyond = has(node, "on_tail") or "extension of" in node.text
    if not paths:
        middle, *ends = spots_of(node)
        return (Collinear(distinct((ends[0], middle, ends[1]), node)),)
    points = tuple(point_of(point) for point in every(node, "point"))
    if len(paths) == 1:
        paths = paths * len(points)
    if len(paths) != len(points):
        raise NotUnderstood("there are not as many points as lines", node.start, "a point for each line")
    return tuple(
        on_line(point, path, node, beyond) for point, path in zip(points, paths, strict=True)
    )


def on_line(point: str, path: Path, node: Node, beyond: bool = False) -> Fact:
    """A point between the ends of a path, or beyond its second end."""
    order = (*path, point) if beyond else (path[0], point, path[1])
    return Collinear(distinct(order, node))


def midpoint(node: Node, scene: Scene) -> Facts:
    """D is the midpoint of BC."""
    points = tuple(point_of(point) for point in every(node, "point"))
    paths = paths_of(node)
    if len(paths) != len(points):
        raise NotUnderstood("there are not as many midpoints as segments", node.start, "a midpoint for each segment")
    return tuple(Midpoint(point, path) for point, path in zip(points, paths, strict=True))


def bisected(node: Node, scene: Scene) -> Facts:
    """One segment halved by another, at a point."""
    paths = paths_of(node)
    point = first(node, "point")
    if "perpendicular bisector" in node.text:
        facts: Facts = (Perpendicular(paths[0], paths[1]),)
        middle = point_of(point) if point is not None else next((end for end in paths[0]), "")
        if point is None:
            raise NotUnderstood("the point where it crosses is not named", node.end, "at and the point")
        return (*facts, Midpoint(middle, paths[1]), *_also_on(middle, paths[0], node))
    assert point is not None
    name = point_of(point)
    if "bisect " in node.text:
        return Midpoint(name, paths[0]), Midpoint(name, paths[1])
    cut, cutter = (paths[0], paths[1]) if "bisected by" in node.text else (paths[1], paths[0])
    return (Midpoint(name, cut), *_also_on(name, cutter, node))


def _also_on(point: str, path: Path, node: Node) -> Facts:
    return () if point in path else (on_line(point, path, node),)


def foot(node: Node, scene: Scene) -> Facts:
    """D is the foot of the perpendicular from A to BC; AD is the perpendicular from A to BC."""
    points = tuple(point_of(point) for point in every(node, "point"))
    paths = paths_of(node)
    if len(points) == 2:
        name, start = points
        line = paths[0]
    else:
        drop, line = paths
        start = points[0]
        name = drop[1] if drop[0] == start else drop[0]
        if start not in drop:
            raise NotUnderstood(f"the perpendicular from {start} begins at {start}", node.start, f"{start} as one end")
    facts: Facts = (Perpendicular((start, name), line),)
    return facts if name in line else (on_line(name, line, node, has(node, "on_tail")), *facts)


def cevian(node: Node, scene: Scene) -> Facts:
    """BD is an altitude or a median of △ABC: it meets the side opposite its corner."""
    first_path, *rest = paths_of(node)
    named = first(node, "polygon")
    triangle = corners_of(named) if named is not None else None
    if triangle is None:
        triangle = next((scene.latest(3, end) for end in first_path if scene.latest(3, end)), None)
    if rest and triangle is None:
        triangle = (next(end for end in first_path if end not in rest[0]), *rest[0])
    if triangle is None or len(triangle) != 3:
        raise NotUnderstood("the triangle is not named", node.start, "of and the triangle, as in of △ABC")
    corner = next((end for end in first_path if end in triangle), None)
    end = next((end for end in first_path if end not in triangle), None)
    if corner is None or end is None:
        raise NotUnderstood(f"{''.join(first_path)} does not join a corner to the opposite side", node.start,
                            "a corner of the triangle and a point on the opposite side")
    other, another = (point for point in triangle if point != corner)
    if the(node, "cevian_noun").text == "median":
        return (Midpoint(end, (other, another)),)
    return Collinear((other, end, another)), Perpendicular((corner, end), (other, another))


def parallel(node: Node, scene: Scene) -> Facts:
    """AB ∥ CD, in any wording; the lines are named in the same direction."""
    return (Parallel(paths_of(node)),)


def perpendicular(node: Node, scene: Scene) -> Facts:
    """AB ⊥ CD, and where, if that is said."""
    paths = paths_of(node)
    if len(paths) != 2:
        raise NotUnderstood("two lines are perpendicular, not more", node.start, "two lines")
    facts: Facts = (Perpendicular(paths[0], paths[1]),)
    meets = first(node, "meets_at")
    if meets is None:
        return facts
    name = point_of(the(meets, "point"))
    return (*(fact for path in paths for fact in _also_on(name, path, node)), *facts)


def inside(node: Node, scene: Scene) -> Facts:
    """E lies inside ABCD."""
    return (Inside(point_of(the(node, "point")), corners_of(the(node, "polygon"))),)


def between(node: Node, scene: Scene) -> Facts:
    """E lies between the lines AB and CD."""
    one, other = paths_of(node)
    return (Between(point_of(the(node, "point")), one, other),)


def sides(node: Node, scene: Scene) -> Facts:
    """C and D lie on the same side of AB, or on opposite sides."""
    one, other = (point_of(point) for point in every(node, "point"))
    return (Sides((one, other), paths_of(node)[0], "same side" in node.text),)


def round_point(node: Node, scene: Scene) -> Facts:
    """OA, OB, OC and OD in order round O."""
    paths = paths_of(node)
    centre = next((corner.text for corner in every(node, "corner", "path") if corner.expr_name == "corner"), "")
    if any(centre not in path for path in paths):
        raise NotUnderstood(f"not every line starts at {centre}", node.start, f"lines from {centre}")
    ends = tuple(path[1] if path[0] == centre else path[0] for path in paths)
    return (RoundPoint(centre, distinct(ends, node)),)


def drawn(node: Node, scene: Scene) -> Facts:
    """Segments, lines and rays that the figure shows."""
    noun = first(node, "drawn_noun")
    words = noun.text if noun is not None else "segment"
    paths = tuple(path_of(found) for found in every(node, "path", "length"))
    if not paths:
        start, end = spots_of(node)
        paths = ((start, end),)
    if "ray" in words:
        return tuple(Drawn("ray", path) for path in paths)
    line = "line" in words and "segment" not in words
    return tuple(Drawn("line" if line else "segment", path) for path in paths)
