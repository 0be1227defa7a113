"""Sizes of circles, distances and perimeters written by lengths, areas, angles and arcs alone."""

from fractions import Fraction

from paperaudit.geometry.coordinates.measure import Circles, centre_of
from paperaudit.model.expression import (
    ArcLengthOf,
    ArcOf,
    AreaOf,
    CircleSize,
    DistanceOf,
    Expression,
    Function,
    LengthOf,
    Letter,
    Negative,
    Number,
    PerimeterOf,
    Power,
    Product,
    Quotient,
    SectorOf,
    SegmentOf,
    Sum,
    with_leaves,
)
from paperaudit.model.quantity import centre_of_circle

PI = Letter("π")


def in_simple_sizes(expression: Expression, circles: Circles) -> Expression:
    """The same value by simple sizes; `circles` gives a point of each circle. Raises NoValue for an unknown one.

    >>> in_simple_sizes(CircleSize("radius", "O"), {"O": ("A",)})
    LengthOf(start='O', end='A')
    """
    return with_leaves(expression, lambda leaf: _simple(leaf, circles))


def _simple(size: Expression, circles: Circles) -> Expression:
    match size:
        case PerimeterOf(points):
            return Sum(tuple(LengthOf(p, q) for p, q in zip(points, points[1:] + points[:1], strict=True)))
        case DistanceOf(point, (start, end)):
            return Quotient(Product((_number(2), AreaOf((point, start, end)))), LengthOf(start, end))
        case ArcOf():
            return _named(size, circles)
        case ArcLengthOf(arc):
            return _along(_named(arc, circles))
        case CircleSize(kind, centre):
            middle = centre or next(iter(circles), "")
            radius = LengthOf(centre_of_circle(middle), circles[middle][0]) if circles.get(middle) else None
            return _of_circle(kind, radius) if radius else size
        case SectorOf(kind, part) | SegmentOf(kind, part):
            arc = _named(part, circles)
            return _sector(kind, arc) if isinstance(size, SectorOf) else _segment(kind, arc)
    return size


def _named(arc: ArcOf, circles: Circles) -> ArcOf:
    return ArcOf(arc.start, arc.end, arc.through, arc.major, centre_of(arc, circles))


def _of_circle(kind: str, radius: LengthOf) -> Expression:
    if kind == "area":
        return Product((PI, Power(radius, _number(2))))
    factor = {"radius": (), "diameter": (_number(2),), "circumference": (_number(2), PI)}[kind]
    return Product((*factor, radius)) if factor else radius


def _radius(arc: ArcOf) -> LengthOf:
    return LengthOf(centre_of_circle(arc.centre), arc.start)


def _radians(arc: ArcOf) -> Expression:
    return Product((Quotient(PI, _number(180)), arc))


def _along(arc: ArcOf) -> Expression:
    return Product((_radians(arc), _radius(arc)))


def _half_square(arc: ArcOf) -> Expression:
    return Quotient(Power(_radius(arc), _number(2)), _number(2))


def _sector(kind: str, arc: ArcOf) -> Expression:
    if kind == "area":
        return Product((_radians(arc), _half_square(arc)))
    return Sum((_along(arc), Product((_number(2), _radius(arc)))))


def _segment(kind: str, arc: ArcOf) -> Expression:
    if kind == "area":
        return Product((_half_square(arc), Sum((_radians(arc), Negative(Function("sin", arc))))))
    return Sum((_along(arc), LengthOf(arc.start, arc.end)))


def _number(value: int) -> Number:
    return Number(Fraction(value))
