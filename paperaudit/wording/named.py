"""The names in a clause: points, paths, polygons and what is measured, from the parse tree."""

from collections.abc import Iterator

from parsimonious.nodes import Node

from paperaudit.maths.points import points_of
from paperaudit.maths.terms import expression_of
from paperaudit.maths.tree import every, first, the
from paperaudit.model.expression import AngleAt, AngleOf, ArcOf, AreaOf, Expression, LengthOf, PerimeterOf
from paperaudit.model.fact import Path
from paperaudit.wording.scene import NotUnderstood

_NAMING = ("measure", "cevians_named", "angle_name", "arcs_named", "areas_named")


def path_of(node: Node) -> Path:
    """The two points of a `path` or a `length`."""
    start, end = distinct(points_of((first(node, "length") or node).text), node)
    return start, end


def paths_of(node: Node) -> tuple[Path, ...]:
    """Every path under a node, in order."""
    return tuple(path_of(path) for path in every(node, "path"))


def point_of(node: Node) -> str:
    """The point of a `point`."""
    return str(the(node, "corner").text)


def points_under(node: Node) -> tuple[str, ...]:
    """Every `point` under a node that is not part of another name, in order."""
    return tuple(point_of(point) for point in every(node, "point", "path", "polygon") if point.expr_name == "point")


def spots_of(node: Node) -> tuple[str, ...]:
    """Every single letter under a node that is not part of another name, in order."""
    return tuple(corner.text for corner in every(node, "corner", "path", "polygon") if corner.expr_name == "corner")


def corners_of(node: Node) -> tuple[str, ...]:
    """The corners of a `polygon` or of `corners`; the same letter twice is no polygon."""
    run = node if node.expr_name == "corners" else the(node, "corners")
    return distinct(points_of(run.text), run)


def distinct(points: tuple[str, ...], node: Node) -> tuple[str, ...]:
    """The points, if each stands once."""
    if len(set(points)) < len(points):
        raise NotUnderstood(f"{node.text} names a point twice", node.start, "different letters")
    return points


def measures_of(node: Node) -> tuple[Expression, ...]:
    """What `measure`s, or angles named after "angles", stand under a node."""
    return tuple(size for piece in every(node, *_NAMING) for size in _sizes_of(piece))


def _sizes_of(piece: Node) -> Iterator[Expression]:
    match piece.expr_name:
        case "measure":
            yield measure_of(piece)
        case "angle_name":
            yield angle_named(piece.text)
        case "cevians_named":
            yield from (LengthOf(*path_of(line)) for line in every(piece, "length"))
        case "arcs_named":
            for run in every(piece, "arc_points"):
                points = distinct(points_of(run.text), run)
                yield ArcOf(points[0], points[-1], points[1] if len(points) == 3 else "")
        case _:
            size = AreaOf if "areas" in piece.text.split(" of ")[0] else PerimeterOf
            yield from (size(corners_of(polygon)) for polygon in every(piece, "polygon"))


def measure_of(node: Node) -> Expression:
    """The value of a `measure`: the size of ∠ABC, side AB, 2x + 10°."""
    inner = the(node, "expression", "length")
    return expression_of(inner) if inner.expr_name == "expression" else LengthOf(*path_of(inner))


def angle_named(text: str) -> AngleOf | AngleAt:
    """The angle named by three letters or by its vertex, after the word "angle"."""
    points = points_of(text)
    return AngleOf(points[0], points[1], points[2]) if len(points) == 3 else AngleAt(points[0])
