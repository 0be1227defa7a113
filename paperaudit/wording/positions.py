"""Reads clauses on how lines and points lie: parallel, perpendicular, inside, between, round a point."""

from itertools import pairwise

from parsimonious.nodes import Node

from paperaudit.maths.tree import every, first, the
from paperaudit.model.expression import LengthOf, Relation
from paperaudit.model.fact import (
    Between,
    Drawn,
    Fact,
    Holds,
    Parallel,
    Path,
    Perpendicular,
    RoundPoint,
    Sides,
)
from paperaudit.wording.circles import on_circle_with
from paperaudit.wording.lines import on_line
from paperaudit.wording.named import corners_of, distinct, paths_of, point_of, points_under, spots_of
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.the_circle import THE_CIRCLE

Facts = tuple[Fact, ...]


def parallel(node: Node, scene: Scene) -> Facts:
    """AB ∥ CD, in any wording; the lines are named in the same direction."""
    paths = paths_of(node)
    if len({frozenset(path) for path in paths}) < 2:
        raise NotUnderstood("one line alone is not parallel", node.start, "two lines or more")
    return (Parallel(paths),)


def perpendicular(node: Node, scene: Scene) -> Facts:
    """AB ⊥ CD, and where they meet if that is said."""
    paths = paths_of(node)
    if "⊥" in node.text and len(paths) > 2:
        return tuple(Perpendicular(one, other) for one, other in pairwise(paths))
    if len(paths) != 2:
        raise NotUnderstood("lines are perpendicular in pairs", node.start, "two lines")
    facts: Facts = (Perpendicular(paths[0], paths[1]),)
    meets = first(node, "meets_at")
    if meets is None:
        return facts
    point = point_of(the(meets, "point"))
    return (*(on_line(point, path, node) for path in paths if point not in path), *facts)


def between(node: Node, scene: Scene) -> Facts:
    """E lies between the lines AB and CD."""
    one, other = paths_of(node)
    return (Between(point_of(the(node, "point")), one, other),)


def sides(node: Node, scene: Scene) -> Facts:
    """C and D, or the triangles ABC and ABD, lie on the same side of AB, or on opposite sides."""
    line = paths_of(node)[-1]
    polygons = [corners_of(polygon) for polygon in every(node, "polygon", "path") if polygon.expr_name == "polygon"]
    one, other = [_free_corner(polygon, line, node) for polygon in polygons] or points_under(node)
    return (Sides((one, other), line, "same side" in node.text),)


def _free_corner(polygon: tuple[str, ...], side: Path, node: Node) -> str:
    """A corner that does not lie on this side of the polygon."""
    if not set(side) <= set(polygon):
        raise NotUnderstood(f"{''.join(side)} is no side of {''.join(polygon)}", node.start, "a side of both figures")
    return next(corner for corner in polygon if corner not in side)


def rays_side(node: Node, scene: Scene) -> Facts:
    """OC and OD lie on the same side of AB."""
    *rays, line = paths_of(node)
    ends = [ray[1] for ray in rays]
    if len({ray[0] for ray in rays}) != 1 or len(ends) < 2:
        raise NotUnderstood("the lines do not start at one point", node.start, "lines from one point")
    same = the(node, "side_words").text.startswith("same")
    chords = (
        on_circle_with(THE_CIRCLE, tuple(point for ray in rays for point in ray)) if " chords " in node.text else ()
    )
    return (*chords, *(Drawn("ray", ray) for ray in rays), *(Sides(pair, line, same) for pair in pairwise(ends)))


def equal_parallel(node: Node, scene: Scene) -> Facts:
    """AB is equal and parallel to CD."""
    one, other, *again = paths_of(node)
    if again and set(again[0]) != set(other):
        raise NotUnderstood("two different lines are named", node.start, "and a clause of its own")
    return Holds(Relation(LengthOf(*one), "=", LengthOf(*other))), Parallel((one, other))


def declared(node: Node, scene: Scene) -> Facts:
    """A, B and C are points: nothing is said of them yet."""
    return ()


def round_point(node: Node, scene: Scene) -> Facts:
    """OA, OB, OC and OD in order round O."""
    paths = paths_of(node)
    centre = spots_of(node)[-1]
    if any(centre not in path for path in paths):
        raise NotUnderstood(f"not every line starts at {centre}", node.start, f"lines from {centre}")
    ends = tuple(path[1] if path[0] == centre else path[0] for path in paths)
    return (RoundPoint(centre, distinct(ends, node)),)
