"""The points that a question's statements speak of, and those that its prose names."""

import re
from collections.abc import Iterable, Iterator

from paperaudit.model.ask import Ask, Establish, Find, Rounded, Solve, Subject, Transform, WriteAs
from paperaudit.model.expression import (
    AngleAt,
    AngleOf,
    ArcLengthOf,
    ArcOf,
    AreaOf,
    BearingOf,
    DistanceOf,
    Expression,
    LengthOf,
    PerimeterOf,
    Relation,
    SectorOf,
    SegmentOf,
    leaves,
)
from paperaudit.model.fact import (
    AngleName,
    Between,
    BisectsAngle,
    BisectsSegment,
    Centre,
    Circle,
    CirclesTouch,
    Collinear,
    Congruent,
    Crossing,
    Diameter,
    Drawn,
    Fact,
    Holds,
    Incircle,
    Inside,
    Midline,
    Midpoint,
    OnArc,
    Outside,
    Parallel,
    Perpendicular,
    RayInside,
    RoundPoint,
    Shape,
    Sides,
    Similar,
    Tangent,
)

_POINT = r"[A-Z]′?"
_NAMED = re.compile(
    rf"(?:∠|△|\b(?:angles?|triangles?|lines?|sides?|segments?|points?|vertex|vertices|diagonals?)\s+)({_POINT}(?:{_POINT}){{0,3}})(?![A-Za-z])"
)
_HATTED = re.compile(r"\b([A-Z]{1,3}\u0302[A-Z]?)")


def points_of_fact(fact: Fact) -> Iterator[str]:
    """Every point that a fact speaks of, repeats kept."""
    match fact:
        case Shape(points=points) | Collinear(points=points):
            yield from points
        case Drawn(path=path):
            yield from path
        case Crossing(first=first, second=second, point=point):
            yield from (*first, *second, point)
        case Parallel(paths=paths):
            for path in paths:
                yield from path
        case Perpendicular(first=first, second=second) | Congruent(first=first, second=second):
            yield from (*first, *second)
        case Similar(first=first, second=second):
            yield from (*first, *second)
        case BisectsAngle(path=path, angle=angle):
            yield from (*path, *points_of(angle))
        case Midpoint(point=point, path=path):
            yield from (point, *path)
        case RoundPoint(centre=centre, points=points):
            yield from (centre, *points)
        case Inside(point=point, polygon=polygon) | Outside(point=point, polygon=polygon):
            yield from (point, *polygon)
        case RayInside(vertex, arm, inner, other):
            yield from (vertex, arm, inner, other)
        case Between(point=point, first=first, second=second):
            yield from (point, *first, *second)
        case Sides(points=points, line=line):
            yield from (*points, *line)
        case BisectsSegment(path, segment):
            yield from (*path, *segment)
        case Midline(path, polygon):
            yield from (*path, *polygon)
        case Centre(point=point, polygon=polygon):
            yield from (point, *polygon)
        case Holds(relation=relation):
            yield from points_of_relation(relation)
        case AngleName(name=name, angle=angle):
            yield from (*points_of(name), *points_of(angle))
        case _:
            yield from (point for point in _points_of_round(fact) if point.isalpha() or point.endswith("′"))


def _points_of_round(fact: Fact) -> Iterator[str]:
    """The points that a fact about circles speaks of, and the names of centres, which may be no letters."""
    match fact:
        case Circle(centre, points):
            yield from (centre, *points)
        case Tangent(path, at, centre):
            yield from (*path, at, centre)
        case Diameter(path, centre):
            yield from (*path, centre)
        case Incircle(centre, polygon):
            yield from (centre, *polygon)
        case CirclesTouch(first, second, at):
            yield from (first, second, at)
        case OnArc(points, arc):
            yield from (*points, *points_of(arc))


def points_of(expression: Expression) -> Iterator[str]:
    """Every point in the quantities of an expression, from left to right."""
    for leaf in leaves(expression):
        match leaf:
            case AngleOf(arm, vertex, other):
                yield from (arm, vertex, other)
            case AngleAt(vertex=vertex):
                yield vertex
            case LengthOf(start, end):
                yield from (start, end)
            case AreaOf(points) | PerimeterOf(points):
                yield from points
            case ArcOf() | ArcLengthOf() | SectorOf() | SegmentOf():
                arc = leaf if isinstance(leaf, ArcOf) else leaf.arc
                yield from (point for point in (arc.start, arc.through, arc.end) if point)
            case DistanceOf(point, path):
                yield from (point, *path)
            case BearingOf(start, end):
                yield from (start, end)
            case _:
                pass


def points_of_relation(relation: Relation) -> Iterator[str]:
    """Every point on the sides of a relation."""
    yield from points_of(relation.left)
    yield from points_of(relation.right)


def points_of_ask(ask: Ask) -> Iterator[str]:
    """Every point that a task speaks of."""
    match ask.task:
        case Find(wanted):
            yield from _in_all(wanted)
        case Establish(claims=claims):
            for claim in claims:
                yield from points_of_fact(claim)
        case Solve(relations=relations):
            for relation in relations:
                yield from points_of_relation(relation)
        case Transform(expression=expression) | Rounded(expression) | WriteAs(expression=expression):
            yield from points_of(expression)
        case Subject(relation=relation):
            yield from points_of_relation(relation)


def points_named_in(prose: str) -> Iterator[str]:
    """The points that prose names as such: behind ∠ or △, or behind a word such as angle, side or point.

    >>> list(points_named_in("In triangle ABC, the point D is NOT drawn."))
    ['A', 'B', 'C', 'D']
    """
    for match in _NAMED.finditer(prose):
        yield from re.findall(_POINT, match[1])
    for match in _HATTED.finditer(prose):
        yield from re.findall("[A-Z]", match[1])


def _in_all(expressions: Iterable[Expression]) -> Iterator[str]:
    for expression in expressions:
        yield from points_of(expression)
