"""Measures quantities and whole expressions on coordinates, in floating point."""

import math
from collections.abc import Callable, Iterator, Mapping
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.geometry.figure.plane import Spot, side
from paperaudit.maths.units import unit_named
from paperaudit.model.expression import (
    AngleOf,
    ArcLengthOf,
    ArcOf,
    AreaOf,
    BearingOf,
    CircleSize,
    DistanceOf,
    Expression,
    Function,
    LengthOf,
    Letter,
    Measured,
    Negative,
    Number,
    Of,
    PerimeterOf,
    Power,
    Product,
    Quotient,
    Root,
    SectorOf,
    SegmentOf,
    Sum,
)
from paperaudit.model.quantity import centre_of_circle

Spots = Mapping[str, Spot]
Circles = Mapping[str, tuple[str, ...]]
"""Every circle's centre, and the points that the figure names on it."""

_POWERS = {"length": 1, "area": 2}
NORTH = 1e-7
"""Degrees by which a bearing of an exact drawing may differ from due north, 000°."""


_FUNCTIONS: dict[str, Callable[[float], float]] = {
    "sin": lambda degrees: math.sin(math.radians(degrees)),
    "cos": lambda degrees: math.cos(math.radians(degrees)),
    "tan": lambda degrees: math.tan(math.radians(degrees)),
    "sin⁻¹": lambda value: math.degrees(math.asin(value)),
    "cos⁻¹": lambda value: math.degrees(math.acos(value)),
    "tan⁻¹": lambda value: math.degrees(math.atan(value)),
}


def measured(
    expression: Expression,
    at: Spots,
    letters: Mapping[str, float] | None = None,
    circles: Circles | None = None,
    unit: str = "",
) -> float:
    """The value of an expression on a drawing: degrees, the drawing's unit of length, its square for areas.

    `unit` says what unit of length the drawing is in, for numbers that have another one. Raises
    NoValue for what has no measure there: a circle that the figure does not name, an angle named
    by its vertex alone, a root of a negative number.

    >>> measured(LengthOf("A", "B"), {"A": (0.0, 0.0), "B": (3.0, 4.0)})
    5.0
    """
    return _Ruler(at, letters or {}, circles or {}, unit).value(expression)


class _Ruler:
    def __init__(self, at: Spots, letters: Mapping[str, float], circles: Circles, unit: str) -> None:
        self.at = at
        self.letters = {"π": math.pi, **letters}
        self.circles = circles
        self.unit = unit

    def value(self, expression: Expression) -> float:
        try:
            result = self._value(expression)
        except KeyError as missing:
            raise NoValue(f"{missing} is not in the drawing") from None
        except (ZeroDivisionError, OverflowError, ValueError):
            raise NoValue("no number") from None
        if not math.isfinite(result):
            raise NoValue("no number")
        return result

    def _value(self, expression: Expression) -> float:
        match expression:
            case Number(value):
                return float(value)
            case Letter(name):
                return self.letters[name]
            case Negative(operand):
                return -self._value(operand)
            case Sum(terms):
                return math.fsum(self._value(term) for term in terms)
            case Product(factors):
                return math.prod(self._value(factor) for factor in factors)
            case Quotient(numerator, denominator):
                return self._value(numerator) / self._value(denominator)
            case Power(base, exponent):
                return _real(self._value(base) ** self._value(exponent))
            case Root(radicand, degree):
                return _root(self._value(radicand), degree)
            case Of(share, whole):
                return self._value(share) * self._value(whole)
            case Measured(amount, symbol):
                return self._value(amount) * float(in_unit(symbol, self.unit))
            case Function(name, argument):
                return _FUNCTIONS[name](self._value(argument))
        return self._size(expression)

    def _size(self, size: Expression) -> float:
        match size:
            case AngleOf(arm, vertex, other, reflex):
                turn = self._turn(vertex, arm, other)
                least = min(turn, 360 - turn)
                return 360 - least if reflex else least
            case LengthOf(start, end):
                return self._distance(start, end)
            case AreaOf(points):
                return abs(sum(_cross(self.at[p], self.at[q]) for p, q in _sides(points))) / 2
            case PerimeterOf(points):
                return sum(self._distance(p, q) for p, q in _sides(points))
            case DistanceOf(point, (start, end)):
                spots = self.at[point], self.at[start], self.at[end]
                return abs(side(*spots)) / self._distance(start, end)
            case BearingOf(start, end):
                (x, y), (p, q) = self.at[start], self.at[end]
                degrees = math.degrees(math.atan2(p - x, q - y)) % 360
                return 0.0 if min(degrees, 360 - degrees) < NORTH else degrees
        return self._round_size(size)

    def _round_size(self, size: Expression) -> float:
        match size:
            case ArcOf():
                return self._arc(size)
            case ArcLengthOf(arc):
                return math.radians(self._arc(arc)) * self._radius(arc)
            case CircleSize(kind, centre):
                radius = self._radius_of(centre)
                return {
                    "radius": radius,
                    "diameter": 2 * radius,
                    "circumference": 2 * math.pi * radius,
                    "area": math.pi * radius**2,
                }[kind]
            case SectorOf(kind, arc):
                radius, width = self._radius(arc), math.radians(self._arc(arc))
                return width * radius**2 / 2 if kind == "area" else width * radius + 2 * radius
            case SegmentOf(kind, arc):
                radius, width = self._radius(arc), math.radians(self._arc(arc))
                if kind == "area":
                    return radius**2 * (width - math.sin(width)) / 2
                return width * radius + self._distance(arc.start, arc.end)
        raise NoValue(f"{type(size).__name__} has no measure in a drawing")

    def _distance(self, start: str, end: str) -> float:
        return math.dist(self.at[start], self.at[end])

    def _turn(self, vertex: str, arm: str, other: str) -> float:
        """The turn anticlockwise from one arm to the other, from 0 up to 360."""
        (x, y), (p, q), (r, s) = self.at[vertex], self.at[arm], self.at[other]
        return math.degrees(math.atan2(s - y, r - x) - math.atan2(q - y, p - x)) % 360

    def _arc(self, arc: ArcOf) -> float:
        centre = centre_of_circle(centre_of(arc, self.circles))
        turn = self._turn(centre, arc.start, arc.end)
        if arc.through:
            return turn if self._turn(centre, arc.start, arc.through) <= turn else 360 - turn
        return max(turn, 360 - turn) if arc.major else min(turn, 360 - turn)

    def _radius(self, arc: ArcOf) -> float:
        return self._distance(centre_of_circle(centre_of(arc, self.circles)), arc.start)

    def _radius_of(self, centre: str) -> float:
        if not centre and len(self.circles) != 1:
            raise NoValue("the circle is not named, and there is not just one")
        middle = centre or next(iter(self.circles))
        if not self.circles.get(middle):
            raise NoValue(f"no point on the circle about {middle}")
        return self._distance(centre_of_circle(middle), self.circles[middle][0])


def centre_of(arc: ArcOf, circles: Circles) -> str:
    """The centre of the circle that an arc is part of; raises NoValue where the figure has none, or two.

    >>> centre_of(ArcOf("A", "B"), {"O": ("A", "B", "C"), "P": ("C", "D")})
    'O'
    """
    if arc.centre:
        return arc.centre
    known = {point for point in (arc.start, arc.end, arc.through) if point}
    found = [centre for centre, points in circles.items() if known <= set(points)]
    if len(found) != 1:
        raise NoValue(f"{'two circles' if found else 'no circle'} through {' and '.join(sorted(known))}")
    return found[0]


def in_unit(symbol: str, unit: str) -> Fraction:
    """What a number with a unit is multiplied by on a drawing whose lengths are in `unit`; 1 for degrees.

    A drawing without a unit takes numbers as they stand. Raises NoValue for a unit that is none of
    angle, length or area.

    >>> in_unit("m²", "cm")
    Fraction(10000, 1)
    """
    known, target = unit_named(symbol), unit_named(unit)
    if symbol in ("", "°"):
        return Fraction(1)
    if known is None or known.dimension not in _POWERS:
        raise NoValue(f"the unit {symbol}")
    return (known.size / target.size ** _POWERS[known.dimension]) if target else Fraction(1)


def _sides(points: tuple[str, ...]) -> Iterator[tuple[str, str]]:
    return zip(points, points[1:] + points[:1], strict=True)


def _cross(one: Spot, two: Spot) -> float:
    return one[0] * two[1] - two[0] * one[1]


def _real(value: float | complex) -> float:
    if isinstance(value, complex):
        raise NoValue("a root of a negative number")
    return value


def _root(radicand: float, degree: int) -> float:
    if radicand < 0 and degree % 2 == 0:
        raise NoValue("a root of a negative number")
    return math.copysign(abs(radicand) ** (1 / degree), radicand)
