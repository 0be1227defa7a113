"""Reads distances, heights and bearings."""

from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.points import points_of
from paperaudit.maths.tree import every, the
from paperaudit.model.expression import BearingOf, DistanceOf, LengthOf

THE_CENTRE = "the centre"
"""Stands for the centre in "the distance from the centre to AB"; the whole question says which letter it has."""


def distance_of(node: Node) -> DistanceOf | LengthOf:
    """The distance between two points, from a point to a line, or between two parallel lines."""
    return distance_between(list(every(node, "distant", "to_line")), node)


def distance_between(named: list[Node], node: Node) -> DistanceOf | LengthOf:
    """The distance between two things that are named as a point or as a line."""
    ends = [points_of(end.text) or (THE_CENTRE,) for end in named]
    one, other = sorted(ends, key=len)
    if len({*one, *other}) < len(one) + len(other):
        raise ExpressionNotRead("a distance from a point to itself", node.start, "a point that is not on the line")
    if len(other) == 1:
        if THE_CENTRE in (*one, *other):
            raise ExpressionNotRead("the centre has no letter", node.start, "the centre's letter")
        return LengthOf(ends[0][0], ends[1][0])
    return DistanceOf(one[0], (other[0], other[1]))


def height_of(node: Node) -> DistanceOf:
    """The height of a triangle from a corner or on a side, of another figure on a side."""
    corners = points_of(the(node, "polygon_name").text)
    start = next((end.text for end in every(node, "polygon_name", "corner") if end.expr_name == "corner"), "")
    line = next((points_of(end.text) for end in every(node, "polygon_name", "length") if end.expr_name == "length"), ())
    if not line and len(corners) == 3 and start in corners:
        line = tuple(corner for corner in corners if corner != start)
    facing = [corner for corner in corners if corner not in line]
    if not start and line:
        start = _across(corners, line) if len(corners) > 3 else facing[0]
    sides = [{one, other} for one, other in zip(corners, corners[1:] + corners[:1], strict=True)]
    if len(line) != 2 or set(line) not in sides or start not in facing:
        raise ExpressionNotRead("not a side and a corner of this figure", node.start, "a height such as that from A")
    return DistanceOf(start, (line[0], line[1]))


def _across(corners: tuple[str, ...], side: tuple[str, ...]) -> str:
    """The corner of a four-sided figure that is next to the second end of a side."""
    at = corners.index(side[1]) if side[1] in corners else 0
    return next(point for point in (corners[at - 1], corners[(at + 1) % len(corners)]) if point != side[0])


def bearing_of(node: Node) -> BearingOf:
    """The bearing of B from A."""
    end, start = (corner.text for corner in every(node, "corner"))
    if start == end:
        raise ExpressionNotRead("the bearing of a point from itself", node.start, "two points")
    return BearingOf(start, end)
