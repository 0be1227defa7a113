"""The sizes that a figure is about, measured: another drawing has to keep them, a sketch has to move some."""

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.geometry.coordinates.measure import measured
from paperaudit.geometry.figure.build import FigureBuilder
from paperaudit.geometry.figure.figure import Figure
from paperaudit.geometry.figure.incidence import Unclear
from paperaudit.geometry.figure.plane import Spot
from paperaudit.model.expression import (
    AngleAt,
    AngleOf,
    ArcLengthOf,
    ArcOf,
    AreaOf,
    BearingOf,
    CircleSize,
    DistanceOf,
    Expression,
    LengthOf,
    Letter,
    Measured,
    Negative,
    Number,
    PerimeterOf,
    Power,
    Product,
    Quotient,
    Relation,
    Root,
    SectorOf,
    SegmentOf,
    Sum,
    leaves,
    letters_of,
)
from paperaudit.model.fact import Given, Holds

SAME = 1e-5
"""Degrees, or share of a size, by which one and the same size may differ from one drawing to another."""
OTHER_DEGREES, OTHER_SHARE = 8.0, 0.1
"""By how much a size of a sketch is off, at least, so that measuring it does not give the answer."""
_TURNS = (AngleOf, AngleAt, ArcOf, BearingOf)
_LENGTHS = (LengthOf, PerimeterOf, DistanceOf, ArcLengthOf)


@dataclass(frozen=True, slots=True)
class Measure:
    """A quantity with its dimension (0 for an angle, 1 for a length, 2 for an area) and its size on a drawing."""

    size: Expression
    dimension: int | Fraction
    value: float


class TrueSizes:
    """The given and the asked sizes of a figure at its true positions `at`."""

    def __init__(
        self,
        builder: FigureBuilder,
        figure: Figure,
        givens: Sequence[Given],
        wanted: Sequence[Expression],
        at: Mapping[str, Spot],
    ) -> None:
        self.builder, self.figure, self.at = builder, figure, at
        relations = [fact.relation for given in givens for fact in given.facts if isinstance(fact, Holds)]
        stated = [side for one in relations for side in (one.left, one.right) if not _is_equality(one.left, one.right)]
        self.given = list(self._measures(stated))
        letters = {letter for one in wanted for letter in letters_of(one)}
        meant: list[Expression] = [one for one in wanted if not isinstance(one, Letter)]
        meant += [
            side
            for one in relations
            if letters & {*letters_of(one.left), *letters_of(one.right)}
            for side in (one.left, one.right)
        ]
        self.ratios = [one for one in meant if isinstance(one, Quotient)]
        self.asked = list(self._measures(one for one in meant if not isinstance(one, Quotient)))
        self.bound = [measure for one in relations for measure in self._bound_by(one)] + self.asked

    def _bound_by(self, relation: Relation) -> Iterator[Measure]:
        """What a given keeps as it is: one size, the quotient of its sides, or with letters every size in it."""
        left, right = relation.left, relation.right
        quantities = [leaf for side in (left, right) for leaf in leaves(side) if dimension_of(leaf) is not None]
        if _is_equality(left, right):
            return
        if letters_of(left) or letters_of(right) or quantities in ([left], [right]):
            yield from self._measures((left, right))
            return
        quotient = Quotient(left, right)
        value = self.value(quotient, self.at)
        if value:
            yield Measure(quotient, _power_of(quotient), value)

    def _measures(self, sides: Iterable[Expression]) -> Iterator[Measure]:
        for size in dict.fromkeys(leaf for side in sides for leaf in leaves(side)):
            dimension = dimension_of(size)
            value = self.value(size, self.at) if dimension is not None else None
            if dimension is not None and value is not None:
                yield Measure(size, dimension, value)

    def value(self, size: Expression, at: Mapping[str, Spot]) -> float | None:
        """The size on a drawing, in its own unit; None for what it has no measure of."""
        try:
            return measured(self.builder.resolved(size), at, circles=self.figure.circles)
        except (NoValue, Unclear):
            return None

    def kept_by(self, at: Mapping[str, Spot]) -> bool:
        """Whether all sizes are as they should be on other positions, but for one scale of all lengths."""
        scale: float | None = None
        for one in self.bound:
            value = self.value(one.size, at)
            if value is None:
                return False
            if one.dimension == 0:
                if abs(value - one.value) > SAME:
                    return False
            elif value * one.value > 0:
                factor = (value / one.value) ** float(1 / one.dimension)
                scale = factor if scale is None else scale
                if abs(factor / scale - 1) > SAME:
                    return False
        return True

    def moved(self, at: Mapping[str, Spot]) -> float:
        """How far the asked sizes are off on other positions: 1 where the one that is least off is so by enough.

        A length is held against every given length, as no sketch says how long its unit is.
        """
        offs = [self._off(one, at) for one in self.asked] + [self._ratio_off(one, at) for one in self.ratios]
        return min((off for off in offs if off is not None), default=1.0)

    def blurred(self, at: Mapping[str, Spot]) -> float:
        """How far the given sizes are off, at most 1 each, on average."""
        offs = [min(1.0, off) for one in self.given for off in (self._off(one, at),) if off is not None]
        return sum(offs) / len(offs) if offs else 0.0

    def _off(self, one: Measure, at: Mapping[str, Spot]) -> float | None:
        value = self.value(one.size, at)
        if value is None:
            return None
        if one.dimension == 0:
            return abs(value - one.value) / OTHER_DEGREES
        known = [other for other in self.given if other.dimension == 1 and other.size != one.size]
        shares = [
            _change(value / yard**one.dimension, one.value / other.value**one.dimension)
            for other in known
            for yard in (self.value(other.size, at),)
            if yard
        ]
        return min(shares) if shares else None

    def _ratio_off(self, ratio: Quotient, at: Mapping[str, Spot]) -> float | None:
        before, after = self.value(ratio, self.at), self.value(ratio, at)
        return _change(after, before) if before and after else None


def _change(after: float, before: float) -> float:
    """How far two sizes differ, in terms of what makes a size another one."""
    return abs(math.log(after / before)) / math.log(1 + OTHER_SHARE) if after > 0 and before > 0 else 0.0


def _is_equality(left: Expression, right: Expression) -> bool:
    """Whether a relation says no more than that two sizes are equal, which their marks show."""
    return dimension_of(left) is not None and dimension_of(right) is not None


def dimension_of(size: Expression) -> int | None:
    """0 for angles, arcs and bearings, 1 for lengths, 2 for areas, None for what is no quantity of a figure.

    >>> dimension_of(LengthOf("A", "B")), dimension_of(Letter("x"))
    (1, None)
    """
    if isinstance(size, _TURNS):
        return 0
    if isinstance(size, _LENGTHS):
        return 1
    if isinstance(size, AreaOf):
        return 2
    if isinstance(size, CircleSize | SectorOf | SegmentOf):
        return 2 if size.kind == "area" else 1
    return None


def _power_of(expression: Expression) -> Fraction:
    """The power of the unit of length in an expression's value; numbers count as bare, whatever their unit.

    >>> _power_of(Quotient(AreaOf(("A", "B", "C")), LengthOf("A", "B")))
    Fraction(1, 1)
    """
    match expression:
        case Sum(terms):
            return max((_power_of(term) for term in terms), key=abs)
        case Negative(operand) | Measured(operand):
            return _power_of(operand)
        case Product(factors):
            return sum((_power_of(factor) for factor in factors), Fraction(0))
        case Quotient(numerator, denominator):
            return _power_of(numerator) - _power_of(denominator)
        case Power(base, Number(exponent)):
            return _power_of(base) * exponent
        case Root(radicand, degree):
            return _power_of(radicand) / degree
    return Fraction(dimension_of(expression) or 0)
