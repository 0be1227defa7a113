"""The equalities of a figure as residuals with exact derivatives, for many drawings at once."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from paperaudit.geometry.coordinates.balances import BalanceRows
from paperaudit.geometry.coordinates.gauges import Gauges
from paperaudit.geometry.coordinates.graded import Scales
from paperaudit.geometry.coordinates.hinges import Hinges
from paperaudit.geometry.coordinates.linear_rows import LinearRows
from paperaudit.geometry.figure.figure import (
    Balance,
    Compared,
    EqualLengths,
    Figure,
    InLine,
    Ordered,
    ParallelPair,
    RightAngle,
    SizeRelation,
    TangentAt,
)
from paperaudit.geometry.figure.simple_sizes import in_simple_sizes
from paperaudit.geometry.figure.typical import letter_scales, stated_lengths
from paperaudit.model.expression import AngleOf

if TYPE_CHECKING:
    from paperaudit.geometry.coordinates.gauges import Array, Readings
    from paperaudit.geometry.coordinates.graded import Gauge


class Residuals:
    """Compiled conditions of a figure; rows that are 0 on a drawing that meets the givens, and `hinges`.

    A state holds x and y of every point, then the letters, each divided by its entry of
    `letter_scales`. Shapes are (batch, rows) for values and (batch, rows, unknowns) for slopes.
    """

    def __init__(self, figure: Figure, chosen: tuple[AngleOf, ...] = ()) -> None:
        self.figure = figure
        self.circles = figure.circles
        self.unknowns = 2 * len(figure.points) + len(figure.letters)
        lengths = stated_lengths(figure)
        self.unit = lengths[-1]
        self.letter_scales = letter_scales(figure, self.unit)
        self.gauges = Gauges(figure.points, self.unknowns)
        self.weight = 1.0
        first = 2 * len(figure.points)
        columns = {letter: (first + number, self.letter_scales[number]) for number, letter in enumerate(figure.letters)}
        self._sines: list[int] = []
        self._cosines: list[int] = []
        self.relations = LinearRows(self.gauges, columns, self.circles, self.unit, figure.rounded)
        self.equal = BalanceRows(Scales(self.gauges, columns))
        self.balances = BalanceRows(Scales(self.gauges, columns), figure.rounded)
        for condition in figure.conditions:
            self._take(condition)
        self._take_equal_lengths()
        for line in figure.lines:
            for point in line[2:]:
                self._sines.append(self.gauges.turn(line[0], line[1], line[0], point))
        excesses = [self._excess(condition) for condition in figure.conditions if isinstance(condition, Compared)]
        self.hinges = Hinges(figure, self.gauges, lengths[0], chosen, [gauge for gauge in excesses if gauge])
        self._compile()

    def _take(self, condition: object) -> None:
        match condition:
            case InLine((first, second, third)) | Ordered(first, second, third):
                if not any({first, second, third} <= set(line) for line in self.figure.lines):
                    self._sines.append(self.gauges.turn(first, second, first, third))
            case ParallelPair((a, b), (c, d)):
                self._sines.append(self.gauges.turn(a, b, c, d))
            case TangentAt((a, b), at, centre):
                self._cosines.append(self.gauges.turn(centre, at, a, b))
            case RightAngle((a, b), (c, d)):
                self._cosines.append(self.gauges.turn(a, b, c, d))
            case SizeRelation():
                self.relations.add(condition)
            case Balance(left, right, label, _, play):
                sides = [in_simple_sizes(side, self.circles) for side in (left, right)]
                self.balances.add(sides[0], sides[1], label, play)

    def _take_equal_lengths(self) -> None:
        """As few equalities as say that all are equal: three radii are two equalities, not three."""
        heads: dict[int, int] = {}

        def head(length: int) -> int:
            while heads.get(length, length) != length:
                length = heads[length]
            return length

        for condition in self.figure.conditions:
            if isinstance(condition, EqualLengths):
                one, two = (head(self.gauges.length_of(size)) for size in (condition.first, condition.second))
                if one != two:
                    heads[two] = one
                    self.equal.add_product({("length", one): 1.0, ("length", two): -1.0})

    def _excess(self, condition: Compared) -> Gauge | None:
        """By how much the side that has to be larger is."""
        sides = [in_simple_sizes(side, self.circles) for side in (condition.left, condition.right)]
        if condition.sign == "≠":
            return None
        smaller, larger = sides if condition.sign in "<≤" else reversed(sides)
        return self.balances.difference(larger, smaller)

    def _compile(self) -> None:
        self.gauges.compile()
        self.relations.compile()
        self.equal.compile()
        self.balances.compile()
        self.hinges.compile()
        self._lines = np.array(list(dict.fromkeys(self._sines)), dtype=int)
        self._rights = np.array(list(dict.fromkeys(self._cosines)), dtype=int)

    def moved(self, state: Array, read: Readings, exact: float) -> list[frozenset[int]]:
        """For each drawing the labels of the relations whose decimals it takes as rounded."""
        if not self.figure.rounded:
            return [frozenset()] * state.shape[0]
        values = [self.relations.exact_rows(state, read)[0], self.balances.exact_rows(read, state)[0]]
        off = np.abs(np.concatenate(values, axis=1)) > exact
        labels = [*self.relations.labels, *self.balances.labels]
        return [frozenset(label for label, far in zip(labels, row, strict=True) if far) for row in off]

    def measure(self, state: Array) -> Readings:
        """Turns, lengths and areas of every drawing in the batch."""
        return self.gauges.read(state)

    def equalities(self, state: Array, read: Readings) -> tuple[Array, Array]:
        """Residuals that are zero on a figure that meets the givens."""
        values: list[Array] = []
        slopes: list[Array] = []
        if self._lines.size:
            values.append(read.sine.take(self._lines, axis=1))
            slopes.append(read.cosine.take(self._lines, axis=1)[:, :, None] * read.dphi.take(self._lines, axis=1))
        if self._rights.size:
            values.append(read.cosine.take(self._rights, axis=1))
            slopes.append(-read.sine.take(self._rights, axis=1)[:, :, None] * read.dphi.take(self._rights, axis=1))
        if self.equal.count:
            value, slope = self.equal.rows(read, state)
            values.append(value)
            slopes.append(slope)
        if self.relations.count:
            value, slope = self.relations.rows(state, read)
            values.append(self.weight * value)
            slopes.append(self.weight * slope)
        if self.balances.count:
            value, slope = self.balances.rows(read, state)
            values.append(self.weight * value)
            slopes.append(self.weight * slope)
        if not values:
            return np.empty((state.shape[0], 0)), np.empty((state.shape[0], 0, self.unknowns))
        return np.concatenate(values, axis=1), np.concatenate(slopes, axis=1)
