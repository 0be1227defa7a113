"""Values of expressions with their exact slopes, for many drawings at once."""

from __future__ import annotations

import math
from collections.abc import Callable
from functools import reduce
from typing import TYPE_CHECKING, TypeAlias

import numpy as np

from paperaudit.errors import NoValue
from paperaudit.geometry.coordinates.gauges import Gauges, Readings
from paperaudit.geometry.coordinates.measure import measured
from paperaudit.geometry.figure.sizes import NotLinear
from paperaudit.model.expression import (
    AngleOf,
    ArcOf,
    AreaOf,
    BearingOf,
    Expression,
    Function,
    LengthOf,
    Letter,
    Measured,
    Negative,
    Of,
    Power,
    Product,
    Quotient,
    Root,
    Sum,
)

if TYPE_CHECKING:
    from paperaudit.geometry.coordinates.gauges import Array

    Graded: TypeAlias = tuple[Array, Array]
    """A value for each drawing and its slopes: (batch,), (batch, unknowns); a constant has shapes (1,), (1, 1)."""
    Gauge: TypeAlias = Callable[[Readings, Array], Graded]

DEGREE = math.pi / 180
LEAST = 1e-12
"""What a divisor is kept from nought by."""


def constant_value(expression: Expression) -> float | None:
    """The value of an expression without letters and sizes; None for any other."""
    try:
        return measured(expression, {})
    except NoValue:
        return None


class Scales:
    """Compiles expressions to gauges. `columns` says which unknown a letter is, and in units of what it is carried."""

    def __init__(self, gauges: Gauges, columns: dict[str, tuple[int, float]]) -> None:
        self.gauges = gauges
        self.columns = columns

    def gauge(self, expression: Expression) -> Gauge:
        """What works the expression out on a batch; angles in degrees. Raises NotLinear for unknown exponents."""
        constant = constant_value(expression)
        if constant is not None:
            fixed = np.array([constant]), np.zeros((1, 1))
            return lambda readings, state: fixed
        match expression:
            case Measured(amount):
                return self.gauge(amount)
            case Negative(operand):
                return _scaled(self.gauge(operand), -1.0)
            case Sum(terms):
                return reduce(_sum, [self.gauge(term) for term in terms])
            case Product(factors):
                return reduce(_product, [self.gauge(factor) for factor in factors])
            case Of(share, whole):
                return _product(self.gauge(share), self.gauge(whole))
            case Quotient(above, below):
                return _product(self.gauge(above), _power(self.gauge(below), -1.0))
            case Power(base, exponent):
                value = constant_value(exponent)
                if value is None:
                    raise NotLinear("a letter in an exponent")
                return _power(self.gauge(base), value)
            case Root(radicand, degree):
                return _power(self.gauge(radicand), 1 / degree)
            case Function(name, argument):
                return _function(name, self.gauge(argument))
        return self._leaf(expression)

    def _leaf(self, size: Expression) -> Gauge:
        match size:
            case Letter(name):
                column, scale = self.columns[name]
                return lambda readings, state: _column(state, column, scale)
            case LengthOf(start, end):
                length = self.gauges.length(start, end)
                return lambda readings, state: (readings.size[:, length], readings.dsize[:, length])
            case AreaOf(points):
                area = self.gauges.area(points)
                return lambda readings, state: (readings.area[:, area], readings.darea[:, area])
            case AngleOf() | ArcOf() | BearingOf():
                number = self.gauges.spread(size)
                return lambda readings, state: (
                    readings.spread[:, number] / DEGREE,
                    readings.dspread[:, number] / DEGREE,
                )
        raise NotLinear("a size that a drawing is not measured for")


def _column(state: Array, column: int, scale: float) -> Graded:
    slope = np.zeros_like(state)
    slope[:, column] = scale
    return scale * state[:, column], slope


def _scaled(inner: Gauge, factor: float) -> Gauge:
    def gauge(readings: Readings, state: Array) -> Graded:
        value, slope = inner(readings, state)
        return factor * value, factor * slope

    return gauge


def _sum(one: Gauge, two: Gauge) -> Gauge:
    def gauge(readings: Readings, state: Array) -> Graded:
        (a, da), (b, db) = one(readings, state), two(readings, state)
        return a + b, da + db

    return gauge


def _product(one: Gauge, two: Gauge) -> Gauge:
    def gauge(readings: Readings, state: Array) -> Graded:
        (a, da), (b, db) = one(readings, state), two(readings, state)
        return a * b, a[:, None] * db + b[:, None] * da

    return gauge


def _power(base: Gauge, exponent: float) -> Gauge:
    """A power; below nought the opposite of that of the opposite, where the exponent is odd or no whole number."""
    even = exponent % 2 == 0

    def gauge(readings: Readings, state: Array) -> Graded:
        value, slope = base(readings, state)
        size = np.maximum(np.abs(value), LEAST)
        sign = np.where(value < 0, -1.0, 1.0)
        risen = size**exponent
        return risen if even else sign * risen, ((exponent * risen / size) * (sign if even else 1.0))[:, None] * slope

    return gauge


def _function(name: str, inner: Gauge) -> Gauge:
    def gauge(readings: Readings, state: Array) -> Graded:
        value, slope = inner(readings, state)
        if "⁻¹" in name:
            inverse, rate = _inverse(name, value)
            return inverse / DEGREE, (rate / DEGREE)[:, None] * slope
        sine, cosine = np.sin(value * DEGREE), np.cos(value * DEGREE)
        if name == "sin":
            return sine, (cosine * DEGREE)[:, None] * slope
        if name == "cos":
            return cosine, (-sine * DEGREE)[:, None] * slope
        safe = np.where(np.abs(cosine) < LEAST, LEAST, cosine)
        return sine / safe, (DEGREE / safe**2)[:, None] * slope

    return gauge


def _inverse(name: str, value: Array) -> tuple[Array, Array]:
    if name == "tan⁻¹":
        return np.arctan(value), 1 / (1 + value**2)
    inside = np.clip(value, -1 + LEAST, 1 - LEAST)
    rate = 1 / np.sqrt(1 - inside**2)
    return (np.arcsin(inside), rate) if name == "sin⁻¹" else (np.arccos(inside), -rate)
