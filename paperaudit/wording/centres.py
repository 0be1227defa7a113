"""Reads clauses on the centres of a figure, on lines of a triangle that meet, and on midlines."""

from collections.abc import Iterator
from typing import Literal

from parsimonious.nodes import Node

from paperaudit.maths.tree import every, first, the
from paperaudit.model.fact import Centre, Collinear, Crossing, Fact, Midline, Midpoint, Path
from paperaudit.wording.bisectors import cevians
from paperaudit.wording.named import corners_of, path_of, point_of
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.shapes import shape_before

Facts = tuple[Fact, ...]
Kind = Literal["circumcentre", "incentre", "centroid", "orthocentre", "centre"]

_LINES: tuple[tuple[str, Kind], ...] = (
    ("perpendicular", "circumcentre"),
    ("bisector", "incentre"),
    ("median", "centroid"),
    ("altitude", "orthocentre"),
    ("height", "orthocentre"),
)


def centre_of(node: Node, scene: Scene) -> Facts:
    """I is the incentre of △ABC; the triangle may be the one named before."""
    noun = the(node, "centre_noun").text.replace("-", "").replace("center", "centre")
    if " of the " in noun:
        noun = "incentre" if "incircle" in noun or "inscribed" in noun else "circumcentre"
    kind: Kind = "centroid" if "gravity" in noun else next(kind for kind in _KINDS if noun.startswith(kind))
    points = [piece for piece in every(node, "point", "figure_meant", "corner") if piece.expr_name != "figure_meant"]
    point = point_of(points[0]) if points[0].expr_name == "point" else points[0].text
    polygon = _figure(node, None if kind == "centre" else 3, scene)
    if kind != "centre" and len(polygon) != 3:
        raise NotUnderstood(f"the {kind} is one of a triangle", node.start, "a triangle")
    return (Centre(kind, point, polygon),)


_KINDS: tuple[Kind, ...] = ("circumcentre", "incentre", "centroid", "orthocentre", "centre")


def _figure(node: Node, sides: int | None, scene: Scene) -> tuple[str, ...]:
    """The figure that is named, else the one named before."""
    named = first(node, "the_shape", "polygon")
    if named is not None:
        return shape_before(named, scene) if named.expr_name == "the_shape" else corners_of(named)
    known = scene.latest(sides)
    if known is None:
        raise NotUnderstood("the figure is not named", node.start, "the triangle, as in “of △ABC”")
    return known


def centre_lines(node: Node, scene: Scene) -> Facts:
    """The medians of triangle ABC meet at G."""
    words = the(node, "lines_noun").text
    polygon = _figure(node, 3, scene)
    if len(polygon) != 3:
        raise NotUnderstood("only in a triangle do these lines always meet", node.start, "a triangle")
    return (Centre(next(kind for word, kind in _LINES if word in words), point_of(the(node, "point")), polygon),)


def named_lines(node: Node, scene: Scene) -> Facts:
    """The medians AD and BE of triangle ABC meet at G; three of them meet in the triangle's centre."""
    words = the(node, "cevian_noun").text
    lines = tuple(path_of(path) for path in every(node, "path", "the_shape", "polygon") if path.expr_name == "path")
    point = point_of(the(node, "point"))
    named = first(node, "the_shape", "polygon")
    triangle = _figure(node, 3, scene) if named is not None else _triangle_of(lines, scene, node)
    facts = [fact for line in lines for fact in cevians(line, triangle, words, node)]
    if len(lines) > 2:
        kind = next(kind for word, kind in _LINES if word in words)
        through = (Collinear((start, point, end), kind != "orthocentre") for start, end in lines)
        return (*facts, Centre(kind, point, triangle), *through)
    return (*facts, Crossing(lines[0], lines[1], point))


def _triangle_of(lines: tuple[Path, ...], scene: Scene, node: Node) -> tuple[str, ...]:
    """The triangle named last that has a corner on each of these lines."""
    for shape in reversed(scene.shapes):
        if len(shape.points) == 3 and all(set(line) & set(shape.points) for line in lines):
            return shape.points
    raise NotUnderstood("the triangle is not named", node.start, "the triangle, as in “of △ABC”")


def midline(node: Node, scene: Scene) -> Facts:
    """DE is a midline of triangle ABC; where its ends are known to lie on sides, they are their midpoints."""
    line = path_of(the(node, "path", "length", "figure_meant"))
    beside = first(node, "midline_side")
    polygon = _figure(node, None, scene) if first(node, "figure_meant") else _with_midline(line, beside, scene, node)
    if len(polygon) > 4 or not set(line).isdisjoint(polygon):
        raise NotUnderstood("no midline of this figure", node.start, "a triangle or a trapezium, and other letters")
    if beside is not None:
        return _beside(line, path_of(the(beside, "path")), polygon, node)
    sides = [_side_of(end, polygon, scene) for end in line]
    one, other = sides
    if one is None or other is None or set(one) == set(other):
        return (Midline(line, polygon),)
    return Midpoint(line[0], one), Midpoint(line[1], other)


def _with_midline(line: Path, beside: Node | None, scene: Scene, node: Node) -> tuple[str, ...]:
    """The only triangle or quadrilateral named before that the line could be a midline of."""
    side = set(path_of(the(beside, "path"))) if beside is not None else set()
    found = {
        frozenset(shape.points): shape.points
        for shape in scene.shapes
        if len(shape.points) in (3, 4) and set(line).isdisjoint(shape.points) and side <= set(shape.points)
    }
    if len(found) != 1:
        raise NotUnderstood("the figure is not named", node.start, "the triangle or trapezium, as in “of △ABC”")
    return next(iter(found.values()))


def _beside(line: Path, side: Path, polygon: tuple[str, ...], node: Node) -> Facts:
    """The midpoints of the other two sides: parallel lines are named in the same direction."""
    apex = [corner for corner in polygon if corner not in side]
    if len(polygon) == 4:
        return (Midline(line, polygon),)
    if len(apex) != 1:
        raise NotUnderstood(f"{''.join(side)} is no side of this triangle", node.start, "one of its sides")
    return Midpoint(line[0], (apex[0], side[0])), Midpoint(line[1], (apex[0], side[1]))


def _side_of(point: str, polygon: tuple[str, ...], scene: Scene) -> Path | None:
    """The side of the polygon that a point is known to lie on, in the order of the statement that said so."""
    for line in scene.lines:
        for start, end in _sides(polygon):
            if {point, start, end} <= set(line.points):
                return (start, end) if line.points.index(start) < line.points.index(end) else (end, start)
    return None


def _sides(polygon: tuple[str, ...]) -> Iterator[Path]:
    yield from zip(polygon, polygon[1:] + polygon[:1], strict=True)
