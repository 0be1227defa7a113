"""Orders, turns and directions of a figure as hinges: how far each is from holding, with exact derivatives."""

from __future__ import annotations

from itertools import combinations, pairwise
from typing import TYPE_CHECKING

import numpy as np

from paperaudit.geometry.figure import (
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
from paperaudit.geometry.gauges import TINY, Gauges
from paperaudit.geometry.margins import APART_MARGIN, EXCESS_MARGIN, ORDER_MARGIN, SAME_WAY_MARGIN, TURN_MARGIN
from paperaudit.model.expression import AngleOf

if TYPE_CHECKING:
    from collections.abc import Sequence

    from paperaudit.geometry.gauges import Array, Flags, Readings
    from paperaudit.geometry.graded import Gauge

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
        self._drawn = [gauges.length(*pair) for line in figure.lines for pair in combinations(line, 2)]

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
        self._group_of = np.array([group for _, _, group in self._signed], dtype=int)
        self._parallel = np.array([turn for turn, _ in self._same_way], dtype=int)
        self._parallel_ways = np.array([way for _, way in self._same_way])
        count = len(self._gauges.index)
        self._to_middle, self._to_last = np.zeros((2, len(self._orders), count))
        for row, (first, middle, last) in enumerate(self._orders):
            self._to_middle[row, [first, middle]] = -1.0, 1.0
            self._to_last[row, [first, last]] = -1.0, 1.0

        rows = (len(self._drawn), len(turns), len(self._same_way), len(self._orders), len(self._orders))
        least = (APART_MARGIN, TURN_MARGIN, SAME_WAY_MARGIN, ORDER_MARGIN, ORDER_MARGIN)
        margins = np.repeat(least, rows)
        self._margins = margins * (1 + UNEVEN * (np.arange(len(margins)) * GOLDEN % 1))
        """No two alike, so that what is held at its margin is not equal by chance."""

    def signs(self, read: Readings) -> Array:
        """For each group of turns the way round that the batch's drawings already lean to: (batch, groups)."""
        batch = read.phi.shape[0]
        lean = np.zeros((batch, self._groups))
        sines = np.sin(read.phi)
        for turn, way, group in self._signed:
            lean[:, group] += way * sines[:, turn]
        return np.where(lean >= 0, 1.0, -1.0)

    def _ways(self, signs: Array) -> Array:
        fixed = np.ones((signs.shape[0], len(self._fixed)))
        ways: Array = self._own_ways * np.concatenate([signs[:, self._group_of], fixed], axis=1)
        return ways

    def rows(self, state: Array, read: Readings, signs: Array) -> tuple[Array, Array]:
        """How far each order or turn is from holding with its margin; 0 where it holds."""
        ways, phi = self._ways(signs), read.phi[:, self._turns]
        parallel = read.phi[:, self._parallel]
        share, dshare = self._shares(state)
        value = self._margins - np.concatenate(
            [
                read.size[:, self._drawn] / self._apart,
                ways * np.sin(phi),
                self._parallel_ways * np.cos(parallel),
                share,
                1 - share,
            ],
            axis=1,
        )
        slope = np.concatenate(
            [
                -read.dsize[:, self._drawn] / self._apart,
                -(ways * np.cos(phi))[:, :, None] * read.dphi[:, self._turns],
                (self._parallel_ways * np.sin(parallel))[:, :, None] * read.dphi[:, self._parallel],
                -dshare,
                dshare,
            ],
            axis=1,
        )
        if self._excesses:
            excesses = [gauge(read, state) for gauge in self._excesses]
            value = np.concatenate([value, *(EXCESS_MARGIN - excess[:, None] for excess, _ in excesses)], axis=1)
            slope = np.concatenate([slope, *(-incline[:, None, :] for _, incline in excesses)], axis=1)
        active = value > 0
        return np.where(active, value, 0.0), active[:, :, None] * slope

    def _shares(self, state: Array) -> tuple[Array, Array]:
        """How far along its segment each point between two others stands, from 0 to 1."""
        count = len(self._gauges.index)
        x, y = state[:, 0 : 2 * count : 2], state[:, 1 : 2 * count : 2]
        ux, uy = x @ self._to_middle.T, y @ self._to_middle.T
        wx, wy = x @ self._to_last.T, y @ self._to_last.T
        square = wx * wx + wy * wy + TINY
        share = (ux * wx + uy * wy) / square
        slope = np.zeros((state.shape[0], len(self._orders), state.shape[1]))
        for part, (u, w) in enumerate(((ux, wx), (uy, wy))):
            slope[:, :, part : 2 * count : 2] = (w / square)[:, :, None] * self._to_middle + (
                (u - 2 * share * w) / square
            )[:, :, None] * self._to_last
        return share, slope

    def hold_strictly(self, state: Array, read: Readings, signs: Array) -> Flags:
        """Whether every order, turn and direction of each drawing holds, with no margin."""
        share, _ = self._shares(state)
        turned = self._ways(signs) * np.sin(read.phi[:, self._turns]) > CLEAR_SINE
        same_way = self._parallel_ways * np.cos(read.phi[:, self._parallel]) > 0
        between = (share > CLEAR_SHARE) & (share < 1 - CLEAR_SHARE)
        held: Flags = np.logical_and.reduce(np.concatenate([turned, same_way, between], axis=1), axis=1)
        return held
