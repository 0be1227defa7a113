"""Relations that are not linear as residuals of a drawing, with exact derivatives, for many drawings at once.

A balance whose sides are products of lengths, areas and the like is taken by its logarithm, so that
a residual is a share of the sides whatever their size; any other one is divided by the size of its
terms.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, TypeAlias

import numpy as np

from paperaudit.geometry.coordinates.graded import DEGREE, Scales, constant_value
from paperaudit.geometry.coordinates.linear_rows import within_play
from paperaudit.model.expression import (
    AngleOf,
    ArcOf,
    AreaOf,
    Expression,
    Function,
    LengthOf,
    Measured,
    Negative,
    Number,
    Of,
    Power,
    Product,
    Quotient,
    Root,
    Sum,
)

if TYPE_CHECKING:
    from paperaudit.geometry.coordinates.gauges import Array, Readings
    from paperaudit.geometry.coordinates.graded import Gauge, Graded

Factors: TypeAlias = dict[tuple[str, int], float]
"""Quantities that are positive in every drawing, by kind and number, each with its exponent."""
DIMENSIONS = {"length": 1, "area": 2, "spread": 0, "sine": 0}
LEAST = 1e-12
"""What a size is kept from nought by."""


class BalanceRows:
    """The rows of every balance: first those of products, all at once, then the others one by one."""

    def __init__(self, scales: Scales, rounded: bool = False) -> None:
        self._scales = scales
        self._rounded = rounded
        self._products: list[tuple[Factors, float]] = []
        self._others: list[Gauge] = []
        self._plays: tuple[list[float], list[float]] = ([], [])
        self._labels: tuple[list[int], list[int]] = ([], [])

    def add(self, left: Expression, right: Expression, label: int = 0, play: float = 0.0) -> None:
        """One more balance, its sizes simple ones; raises NotLinear for an unknown exponent."""
        one, two = self._factors(left), self._factors(right)
        if one is not None and two is not None:
            both: Factors = dict(one[0])
            for factor, exponent in two[0].items():
                both[factor] = both.get(factor, 0.0) - exponent
            self.add_product(both, one[1] - two[1], label, play)
        else:
            self._others.append(self.difference(left, right))
            self._tell(1, label, play)

    def add_product(self, factors: Factors, logarithm: float = 0.0, label: int = 0, play: float = 0.0) -> None:
        """A product of quantities that is 1 once multiplied by the number of that logarithm."""
        self._products.append((factors, logarithm))
        self._tell(0, label, play)

    def _tell(self, group: int, label: int, play: float) -> None:
        self._plays[group].append(play if self._rounded else 0.0)
        self._labels[group].append(label)

    @property
    def labels(self) -> list[int]:
        """The labels of the rows, in their order."""
        return [*self._labels[0], *self._labels[1]]

    def difference(self, left: Expression, right: Expression) -> Gauge:
        """How far `left` is above `right`: by the logarithm of their ratio, else as a share of the terms' size."""
        if self._positive(left) and self._positive(right):
            return _log_ratio(self._scales.gauge(left), self._scales.gauge(right))
        terms = [*_terms(left), *(Negative(term) for term in _terms(right))]
        return _share_of_terms([self._scales.gauge(term) for term in terms if constant_value(term) != 0])

    def compile(self) -> None:
        """Settles the rows; nothing may be added afterwards."""
        self._numbers: dict[str, list[int]] = {kind: [] for kind in DIMENSIONS}
        columns: dict[tuple[str, int], int] = {}
        for kind in DIMENSIONS:
            for factors, _ in self._products:
                for factor in factors:
                    if factor[0] == kind and factor not in columns:
                        columns[factor] = len(columns)
                        self._numbers[kind].append(factor[1])
        self._exponents = np.zeros((len(self._products), len(columns)))
        for row, (factors, _) in enumerate(self._products):
            for factor, exponent in factors.items():
                self._exponents[row, columns[factor]] += exponent
        self._play = np.array([*self._plays[0], *self._plays[1]])
        self._has_play = any(self._plays[0]) or any(self._plays[1])
        self._logarithms = np.array([logarithm for _, logarithm in self._products])
        self.count = len(self._products) + len(self._others)

    def rows(self, readings: Readings, state: Array) -> Graded:
        """The residuals, 0 where a balance holds, with their slopes: (batch, rows), (batch, rows, unknowns).

        What decimals are rounded by at most counts as holding where the figure's decimals are rounded.
        """
        value, slope = self.exact_rows(readings, state)
        return within_play(value, slope, self._play) if self._has_play else (value, slope)

    def exact_rows(self, readings: Readings, state: Array) -> Graded:
        """The residuals with every decimal taken as exact."""
        product, incline = self._product_rows(readings)
        if not self._others:
            return product, incline
        others = [gauge(readings, state) for gauge in self._others]
        return (
            np.concatenate([product, *(value[:, None] for value, _ in others)], axis=1),
            np.concatenate([incline, *(slope[:, None, :] for _, slope in others)], axis=1),
        )

    def _product_rows(self, readings: Readings) -> Graded:
        values, slopes = [], []
        for kind, numbers in self._numbers.items():
            if numbers:
                value, rate, slope = _quantities(kind, numbers, readings)
                values.append(np.log(value))
                slopes.append((rate / value)[:, :, None] * slope)
        if not values:
            batch, _, unknowns = readings.dsize.shape
            return np.zeros((batch, 0)), np.zeros((batch, 0, unknowns))
        product = np.concatenate(values, axis=1) @ self._exponents.T + self._logarithms
        return product, self._exponents @ np.concatenate(slopes, axis=1)

    def asked_scales(self, read: Readings) -> Array:
        """The logarithms of the factors by which each product asks a drawing to be scaled, where it asks for one."""
        powers = np.array([sum(DIMENSIONS[kind] * power for (kind, _), power in f.items()) for f, _ in self._products])
        asking = np.abs(powers) > LEAST if self._products else np.zeros(0, dtype=bool)
        value = self._product_rows(read)[0]
        asked: Array = -value[:, asking] / powers[asking]
        return asked

    def _factors(self, expression: Expression) -> tuple[Factors, float] | None:
        """A product of positive quantities as its factors and the logarithm of its number; None for anything else."""
        constant = constant_value(expression)
        if constant is not None:
            return ({}, math.log(constant)) if constant > 0 else None
        gauges = self._scales.gauges
        match expression:
            case LengthOf(start, end):
                return {("length", gauges.length(start, end)): 1.0}, 0.0
            case AreaOf(points):
                return {("area", gauges.area(points)): 1.0}, 0.0
            case AngleOf() | ArcOf():
                return {("spread", gauges.spread(expression)): 1.0}, -math.log(DEGREE)
            case Function("sin", AngleOf(reflex=False) as angle):
                return {("sine", gauges.spread(angle)): 1.0}, 0.0
            case Measured(amount):
                return self._factors(amount)
            case Product(parts):
                return self._multiplied([(part, 1.0) for part in parts])
            case Of(share, whole):
                return self._multiplied([(share, 1.0), (whole, 1.0)])
            case Quotient(above, below):
                return self._multiplied([(above, 1.0), (below, -1.0)])
            case Power(base, Number(exponent)):
                return self._multiplied([(base, float(exponent))])
            case Root(radicand, degree):
                return self._multiplied([(radicand, 1 / degree)])
        return None

    def _multiplied(self, parts: list[tuple[Expression, float]]) -> tuple[Factors, float] | None:
        found: Factors = {}
        logarithm = 0.0
        for part, power in parts:
            inner = self._factors(part)
            if inner is None:
                return None
            for factor, exponent in inner[0].items():
                found[factor] = found.get(factor, 0.0) + exponent * power
            logarithm += inner[1] * power
        return found, logarithm

    def _positive(self, expression: Expression) -> bool:
        match expression:
            case Sum(terms):
                return all(self._positive(term) for term in terms)
            case Product(parts):
                return all(self._positive(part) for part in parts)
            case Quotient(above, below):
                return self._positive(above) and self._positive(below)
            case Power(base, Number()) | Root(base) | Measured(base):
                return self._positive(base)
        return self._factors(expression) is not None


def _quantities(kind: str, numbers: list[int], readings: Readings) -> tuple[Array, Array, Array]:
    """Positive quantities, the rates at which they change with what is measured, and the slopes of that."""
    if kind == "length":
        value, slope = readings.size[:, numbers], readings.dsize[:, numbers]
    elif kind == "area":
        value, slope = np.maximum(readings.area[:, numbers], LEAST), readings.darea[:, numbers]
    else:
        value, slope = np.maximum(readings.spread[:, numbers], LEAST), readings.dspread[:, numbers]
        if kind == "sine":
            return np.maximum(np.sin(value), LEAST), np.cos(value), slope
    return value, np.ones_like(value), slope


def _terms(expression: Expression) -> list[Expression]:
    match expression:
        case Sum(terms):
            return [inner for term in terms for inner in _terms(term)]
        case Negative(operand):
            return [Negative(inner) for inner in _terms(operand)]
        case Measured(amount):
            return _terms(amount)
    return [expression]


def _log_ratio(left: Gauge, right: Gauge) -> Gauge:
    def gauge(readings: Readings, state: Array) -> Graded:
        (a, da), (b, db) = left(readings, state), right(readings, state)
        a, b = np.maximum(a, LEAST), np.maximum(b, LEAST)
        return _whole(np.log(a / b), da / a[:, None] - db / b[:, None], state)

    return gauge


def _share_of_terms(terms: list[Gauge]) -> Gauge:
    def gauge(readings: Readings, state: Array) -> Graded:
        parts = [term(readings, state) for term in terms]
        value, slope = sum(part for part, _ in parts), sum(part for _, part in parts)
        size = np.sqrt(sum(part**2 for part, _ in parts) + LEAST**2)
        share = value / size
        growth = sum(part[:, None] * incline for part, incline in parts) / size[:, None]
        return _whole(share, (slope - share[:, None] * growth) / size[:, None], state)

    return gauge


def _whole(value: Array, slope: Array, state: Array) -> Graded:
    """A row for every drawing, also where nothing in it depends on the drawing."""
    return np.broadcast_to(value, state.shape[:1]), np.broadcast_to(slope, state.shape)
