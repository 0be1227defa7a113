"""Orders, turns and directions of a figure as hinges: how far each is from holding, with exact derivatives."""

from __future__ import annotations

from itertools import combinations, pairwise
from typing import TYPE_CHECKING

import numpy as np

from paperaudit.geometry.coordinates.gauges import TINY, Gauges
from paperaudit.geometry.coordinates.margins import (
    APART_MARGIN,
    EXCESS_MARGIN,
    ORDER_MARGIN,
    SAME_WAY_MARGIN,
    TURN_MARGIN,
)
from paperaudit.geometry.figure.figure import (
    Convex,
    DrawnTurn,
    Figure,
    InsidePolygon,
    Ordered,
    ParallelPair,
    RayBetween,
    RoundOrder,
    SameWay,
    SideOfLine,
)
from paperaudit.model.expression import AngleOf

if TYPE_CHECKING:
    from collections.abc import Sequence

    from paperaudit.geometry.coordinates.gauges import Array, Flags, Readings
    from paperaudit.geometry.coordinates.graded import Gauge

CLEAR_SINE = 1e-4
"""Least sine of a turn that counts as a turn one way in the end."""
CLEAR_SHARE = 1e-3
"""Least share of a segment that a point between its ends keeps from them in the end."""

UNEVEN, GOLDEN = 0.5, (5**0.5 - 1) / 2
"""By what share margins differ; multiples of the golden section fill it evenly."""


class Hinges:
    """What a drawing has to keep a margin from; rows are 0 where it does."""

    def __init__(
        self,
        figure: Figure,
        gauges: Gauges,
        apart: float,
        chosen: tuple[AngleOf, ...] = (),
        excesses: Sequence[Gauge] = (),
    ) -> None:
        self._excesses = excesses
        self._gauges = gauges
        self._apart = apart
        self._groups = 0
        self._signed: list[tuple[int, float, int]] = []
        """Turns with the way round that each has in its group; a group is the same way or mirrored as a whole."""
        self._fixed: list[tuple[int, float]] = []
        self._same_way: list[tuple[int, float]] = []
        self._orders: list[tuple[int, int, int]] = []
        for condition in figure.conditions:
            self._take(condition)
        for size in chosen:
            self._group([(self._turn(size.vertex, size.arm, size.other), 1.0)])
        drawn = [gauges.length(*pair) for line in figure.lines for pair in combinations(line, 2)]
        self._drawn = np.array(drawn, dtype=int)

    def _turn(self, vertex: str, arm: str, other: str) -> int:
        return self._gauges.turn(vertex, arm, vertex, other)

    def _group(self, turns: list[tuple[int, float]]) -> None:
        self._signed += [(turn, way, self._groups) for turn, way in turns]
        self._groups += 1

    def _take(self, condition: object) -> None:
        match condition:
            case Ordered(first, middle, last):
                self._orders.append((self._gauges.index[first], self._gauges.index[middle], self._gauges.index[last]))
            case ParallelPair((a, b), (c, d), _, same_way) if same_way is not None:
                self._same_way.append((self._gauges.turn(a, b, c, d), 1.0 if same_way else -1.0))
            case SameWay((a, b), (c, d)):
                self._same_way.append((self._gauges.turn(a, b, c, d), 1.0))
            case Convex(points, _, reflex):
                round_it = zip(points[-1:] + points[:-1], points, points[1:] + points[:1], strict=True)
                self._group(
                    [
                        (self._gauges.turn(before, corner, corner, after), -1.0 if corner in reflex else 1.0)
                        for before, corner, after in round_it
                    ]
                )
            case RoundOrder(centre, points):
                self._group([(self._turn(centre, a, b), 1.0) for a, b in pairwise(points)])
            case RayBetween(vertex, arm, point, other):
                pairs = ((arm, point), (point, other), (arm, other))
                self._group([(self._turn(vertex, a, b), 1.0) for a, b in pairs])
            case InsidePolygon(point, polygon):
                sides = zip(polygon, polygon[1:] + polygon[:1], strict=True)
                self._group([(self._turn(a, b, point), 1.0) for a, b in sides])
            case DrawnTurn(vertex, arm, other, way):
                self._fixed.append((self._turn(vertex, arm, other), float(way)))
            case SideOfLine(first, second, (a, b), same):
                self._group([(self._turn(a, b, first), 1.0), (self._turn(a, b, second), 1.0 if same else -1.0)])

    def compile(self) -> None:
        """Settles the rows; nothing may be added afterwards."""
        turns = [turn for turn, _, _ in self._signed] + [turn for turn, _ in self._fixed]
        self._turns = np.array(turns, dtype=int)
        self._own_ways = np.array([way for _, way, _ in self._signed] + [way for _, way in self._fixed])
        self._group_of = np.array([group + 1 for _, _, group in self._signed] + [0] * len(self._fixed), dtype=int)
        self._parallel = np.array([turn for turn, _ in self._same_way], dtype=int)
        self._parallel_ways = np.array([way for _, way in self._same_way])
        orders, count = len(self._orders), len(self._gauges.index)
        ends = np.zeros((2 * orders, count))
        for row, (first, middle, last) in enumerate(self._orders):
            ends[row, [first, middle]] = ends[orders + row, [first, last]] = -1.0, 1.0
        unknowns = self._gauges.unknowns
        self._vectors = np.zeros((unknowns, 4 * orders))
        self._vectors[0 : 2 * count : 2, : 2 * orders] = self._vectors[1 : 2 * count : 2, 2 * orders :] = ends.T
        self._slopes = np.zeros((orders, 4, unknowns))
        """What moves x and y of the way to the middle point, and x and y of the way to the last one."""
        for end, rows in enumerate((ends[:orders], ends[orders:])):
            self._slopes[:, 2 * end, 0 : 2 * count : 2] = self._slopes[:, 2 * end + 1, 1 : 2 * count : 2] = rows
        counts = (len(self._drawn), len(turns), len(self._same_way), len(self._orders), len(self._orders))
        least = (APART_MARGIN, TURN_MARGIN, SAME_WAY_MARGIN, ORDER_MARGIN, ORDER_MARGIN)
        margins = np.repeat(least, counts)
        self._margins = margins * (1 + UNEVEN * (np.arange(len(margins)) * GOLDEN % 1))
        """No two alike, so that what is held at its margin is not equal by chance."""

    def signs(self, read: Readings) -> Array:
        """The way round that the batch's drawings already lean to: (batch, 1 + groups).

        The first is +1, of the turns that are fixed; then there is one for each group.
        """
        batch = read.phi.shape[0]
        lean = np.zeros((batch, 1 + self._groups))
        sines = read.sine
        for turn, way, group in self._signed:
            lean[:, group + 1] += way * sines[:, turn]
        return np.where(lean >= 0, 1.0, -1.0)

    def _ways(self, signs: Array) -> Array:
        ways: Array = self._own_ways * signs.take(self._group_of, axis=1)
        return ways

    def rows(self, state: Array, read: Readings, signs: Array) -> tuple[Array, Array]:
        """How far each order or turn is from holding with its margin; 0 where it holds."""
        held = [read.size.take(self._drawn, axis=1) / self._apart]
        slopes = [read.dsize.take(self._drawn, axis=1) / -self._apart]
        if self._turns.size:
            ways = self._ways(signs)
            held.append(ways * read.sine.take(self._turns, axis=1))
            slopes.append(
                (-ways * read.cosine.take(self._turns, axis=1))[:, :, None] * read.dphi.take(self._turns, axis=1)
            )
        if self._parallel.size:
            held.append(self._parallel_ways * read.cosine.take(self._parallel, axis=1))
            turning = self._parallel_ways * read.sine.take(self._parallel, axis=1)
            slopes.append(turning[:, :, None] * read.dphi.take(self._parallel, axis=1))
        if self._orders:
            share, dshare = self._shares(state)
            held += [share, 1 - share]
            slopes += [-dshare, dshare]
        value = self._margins - np.concatenate(held, axis=1)
        slope = np.concatenate(slopes, axis=1)
        if self._excesses:
            excesses = [gauge(read, state) for gauge in self._excesses]
            value = np.concatenate([value, *(EXCESS_MARGIN - excess[:, None] for excess, _ in excesses)], axis=1)
            slope = np.concatenate([slope, *(-incline[:, None, :] for _, incline in excesses)], axis=1)
        active = value > 0
        return value * active, active[:, :, None] * slope

    def _shares(self, state: Array) -> tuple[Array, Array]:
        """How far along its segment each point between two others stands, from 0 to 1."""
        rows = len(self._orders)
        vectors = state @ self._vectors
        ux, wx, uy, wy = (vectors[:, at * rows : (at + 1) * rows] for at in range(4))
        square = wx * wx + wy * wy + TINY
        share = (ux * wx + uy * wy) / square
        rates = np.empty((state.shape[0], rows, 4))
        rates[:, :, 0], rates[:, :, 1] = wx / square, wy / square
        rates[:, :, 2], rates[:, :, 3] = (ux - 2 * share * wx) / square, (uy - 2 * share * wy) / square
        return share, (rates[:, :, None, :] @ self._slopes)[:, :, 0]

    def hold_strictly(self, state: Array, read: Readings, signs: Array) -> Flags:
        """Whether every order, turn and direction of each drawing holds, with no margin."""
        share, _ = self._shares(state)
        turned = self._ways(signs) * read.sine.take(self._turns, axis=1) > CLEAR_SINE
        same_way = self._parallel_ways * read.cosine.take(self._parallel, axis=1) > 0
        between = (share > CLEAR_SHARE) & (share < 1 - CLEAR_SHARE)
        held: Flags = np.logical_and.reduce(np.concatenate([turned, same_way, between], axis=1), axis=1)
        return held
