"""Expressions with every size under the one name that the theorems use for it."""

from dataclasses import replace

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import HIDDEN, length
from paperaudit.model.expression import (
    AngleOf,
    ArcLengthOf,
    ArcOf,
    AreaOf,
    CircleSize,
    DistanceOf,
    Expression,
    LengthOf,
    PerimeterOf,
    SectorOf,
    SegmentOf,
    Sum,
    with_leaves,
)
from paperaudit.model.quantity import AMONG


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
            case ArcLengthOf(arc):
                return ArcLengthOf(_arc(arrangement, arc))
            case SectorOf(kind, arc):
                return SectorOf(kind, _arc(arrangement, arc))
            case SegmentOf(kind, arc):
                return SegmentOf(kind, _arc(arrangement, arc))
        return leaf

    return with_leaves(expression, named)


def _arc(arrangement: Arrangement, size: ArcOf) -> ArcOf:
    known = arrangement.known_as(size)
    assert isinstance(known, ArcOf)
    return known


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
    """A size under the name that the paper uses for it, where it has one; a centre without a letter is left out."""
    if isinstance(size, AreaOf | DistanceOf | ArcLengthOf | SectorOf | SegmentOf):
        names = (named for named in arrangement.figure.named_sizes if type(named) is type(size))
        size = next((named for named in names if canonical(named, arrangement) == size), size)
    match size:
        case CircleSize(kind, centre) if centre.startswith(HIDDEN) and AMONG not in centre:
            return CircleSize(kind, "")
        case ArcLengthOf(arc):
            return ArcLengthOf(_lettered(arc))
        case SectorOf(part, arc):
            return SectorOf(part, _lettered(arc))
        case SegmentOf(part, arc):
            return SegmentOf(part, _lettered(arc))
    return size


def _lettered(size: ArcOf) -> ArcOf:
    return replace(size, centre="") if size.centre.startswith(HIDDEN) else size
