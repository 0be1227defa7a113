"""Expressions with every size under the one name that the theorems use for it."""

from paperaudit.geometry.arrangement import Arrangement
from paperaudit.geometry.figure import length
from paperaudit.model.expression import (
    AngleOf,
    ArcOf,
    AreaOf,
    DistanceOf,
    Expression,
    LengthOf,
    PerimeterOf,
    Sum,
    with_leaves,
)


def canonical(expression: Expression, arrangement: Arrangement) -> Expression:
    """The expression with every size under the name that the theorems use, perimeters as sums of sides."""

    def named(leaf: Expression) -> Expression:
        match leaf:
            case AngleOf() | ArcOf():
                return arrangement.known_as(leaf)
            case LengthOf(start, end):
                return length(start, end)
            case PerimeterOf(points):
                sides = zip(points, points[1:] + points[:1], strict=True)
                return Sum(tuple(length(start, end) for start, end in sides))
            case AreaOf(points):
                return area_named(arrangement, points)
            case DistanceOf(point, path):
                return distance(arrangement, point, path)
        return leaf

    return with_leaves(expression, named)


def area(points: tuple[str, ...]) -> AreaOf:
    """The area of a polygon with its corners in a fixed order: the first letter of the alphabet, then its neighbour.

    >>> area(("C", "D", "A", "B"))
    AreaOf(points=('A', 'B', 'C', 'D'))
    """
    turned = [points[index:] + points[:index] for index in range(len(points))]
    return AreaOf(min(turned + [(corners[0], *reversed(corners[1:])) for corners in turned]))


def area_named(arrangement: Arrangement, points: tuple[str, ...]) -> AreaOf:
    """The area of a polygon without the corners that lie straight between their neighbours."""
    count = len(points)
    corners = tuple(
        point
        for index, point in enumerate(points)
        if not _straight(arrangement, points[index - 1], point, points[(index + 1) % count])
    )
    return area(corners)


def _straight(arrangement: Arrangement, before: str, point: str, after: str) -> bool:
    return (
        arrangement.joined(before, point)
        and arrangement.joined(point, after)
        and before != after
        and arrangement.ray(point, before).line == arrangement.ray(point, after).line
    )


def distance(arrangement: Arrangement, point: str, path: tuple[str, str]) -> DistanceOf:
    """The distance of a point from a line, the line by the first and the last of its points."""
    if arrangement.joined(*path):
        line = arrangement.lines[arrangement.ray(*path).line]
        first, last = sorted((line[0], line[-1]))
        return DistanceOf(point, (first, last))
    first, last = sorted(path)
    return DistanceOf(point, (first, last))


def as_printed(size: Expression, arrangement: Arrangement) -> Expression:
    """An area or a distance under the name that the paper uses for it, where it has one."""
    for named in arrangement.figure.named_sizes:
        if isinstance(named, AreaOf | DistanceOf) and canonical(named, arrangement) == size:
            return named
    return size
