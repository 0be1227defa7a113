"""The linear relations of a figure as residuals, all at once, for many drawings."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np

from paperaudit.geometry.figure.figure import SizeRelation
from paperaudit.model.expression import AngleOf, ArcOf, BearingOf, CircleSize, LengthOf, Letter
from paperaudit.model.quantity import centre_of_circle

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from paperaudit.geometry.coordinates.gauges import Array, Gauges, Indices, Readings
    from paperaudit.geometry.coordinates.measure import Circles

SMALLEST_PART = 0.1
"""Lengths below this share of the figure's typical one weigh no more than it."""
FULL_TURN = 2 * math.pi


class LinearRows:
    """Rows of linear relations: angles in radians, lengths as shares of what is stated, letters as they are carried."""

    def __init__(
        self,
        gauges: Gauges,
        columns: Mapping[str, tuple[int, float]],
        circles: Circles,
        unit: float,
        rounded: bool = False,
    ) -> None:
        self._rounded = rounded
        self._plays: list[float] = []
        self.labels: list[int] = []
        self._gauges = gauges
        self._columns = columns
        self._circles = circles
        self._unit = unit
        self._rows: list[tuple[dict[int, float], dict[int, float], dict[int, float], float]] = []
        self._bearing: list[bool] = []

    def add(self, relation: SizeRelation) -> None:
        """One more relation."""
        scale = math.pi / 180
        constant = float(relation.form.constant)
        if relation.kind == "length":
            scale = 1 / min(max(abs(constant), SMALLEST_PART * self._unit), self._unit)
        spreads: dict[int, float] = {}
        lengths: dict[int, float] = {}
        letters: dict[int, float] = {}
        for key, value in relation.form.terms.items():
            weight = float(value)
            match key:
                case AngleOf() | ArcOf() | BearingOf():
                    number = self._gauges.spread(key)
                    spreads[number] = spreads.get(number, 0.0) + weight
                case LengthOf(start, end):
                    number = self._gauges.length(start, end)
                    lengths[number] = lengths.get(number, 0.0) + weight * scale
                case CircleSize(_, centre):
                    number = self._gauges.length(centre_of_circle(centre), self._circles[centre][0])
                    lengths[number] = lengths.get(number, 0.0) + weight * scale
                case Letter(name):
                    column, carried = self._columns[name]
                    letters[column] = weight * scale * carried
        self._rows.append((spreads, lengths, letters, constant * scale))
        self._plays.append(float(relation.play) * scale if self._rounded else 0.0)
        self.labels.append(relation.label)
        self._bearing.append(any(isinstance(key, BearingOf) for key in relation.form.terms))

    def compile(self) -> None:
        """Settles the rows; nothing may be added afterwards."""
        self._play = np.array(self._plays)
        self._has_play = any(self._plays)
        self._wraps = np.array(self._bearing, dtype=bool)
        self._has_bearings = any(self._bearing)
        self._spreads, self._of_spreads = _matrix([row[0] for row in self._rows])
        self._lengths, self._of_lengths = _matrix([row[1] for row in self._rows])
        self._letters, self._of_letters = _matrix([row[2] for row in self._rows])
        self._constants = np.array([row[3] for row in self._rows])

    @property
    def count(self) -> int:
        """How many rows there are."""
        return len(self._rows)

    def rows(self, state: Array, read: Readings) -> tuple[Array, Array]:
        """The residuals, 0 where a relation holds, with their slopes: (batch, rows), (batch, rows, unknowns).

        What a decimal is rounded by at most counts as holding where the figure's decimals are rounded.
        """
        value, slope = self.exact_rows(state, read)
        return within_play(value, slope, self._play) if self._has_play else (value, slope)

    def exact_rows(self, state: Array, read: Readings) -> tuple[Array, Array]:
        """The residuals with every decimal taken as exact."""
        value = read.spread.take(self._spreads, axis=1) @ self._of_spreads.T + self._constants
        slope = self._of_spreads @ read.dspread.take(self._spreads, axis=1)
        if self._lengths.size:
            value += read.size.take(self._lengths, axis=1) @ self._of_lengths.T
            slope += self._of_lengths @ read.dsize.take(self._lengths, axis=1)
        if self._letters.size:
            value += state[:, self._letters] @ self._of_letters.T
            slope[:, :, self._letters] += self._of_letters
        if self._has_bearings:
            value = np.where(self._wraps, value - FULL_TURN * np.round(value / FULL_TURN), value)
        return value, slope

    def asked_scales(self, read: Readings) -> Array:
        """The logarithms of the factors by which each relation of lengths and a number asks a drawing to be scaled."""
        lengths = read.size.take(self._lengths, axis=1) @ self._of_lengths.T
        alone = np.array([bool(row[1] and not row[2] and row[3]) for row in self._rows], dtype=bool)
        asked = -self._constants[alone] / np.where(lengths[:, alone], lengths[:, alone], 1.0)
        usable = (asked > 0).all(axis=0) if asked.size else np.zeros(0, dtype=bool)
        logarithms: Array = np.log(asked[:, usable])
        return logarithms

    def letter_rows(self) -> tuple[Array, Indices]:
        """How the residuals change with the letters, and the unknowns that these are."""
        return self._of_letters, self._letters


def within_play(value: Array, slope: Array, play: Array) -> tuple[Array, Array]:
    """Residuals less what is allowed on either side of 0, with their slopes."""
    beyond = value - np.clip(value, -play, play)
    return beyond, (beyond != 0)[:, :, None] * slope


def _matrix(rows: Sequence[Mapping[int, float]]) -> tuple[Indices, Array]:
    """The numbers that occur in some rows, and the matrix of the rows over them."""
    numbers = list(dict.fromkeys(number for row in rows for number in row))
    matrix = np.zeros((len(rows), len(numbers)))
    for at, row in enumerate(rows):
        for number, weight in row.items():
            matrix[at, numbers.index(number)] = weight
    return np.array(numbers, dtype=int), matrix
