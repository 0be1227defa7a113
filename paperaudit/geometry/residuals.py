"""The conditions of a figure as residuals with exact derivatives, for many drawings at once."""

from __future__ import annotations

import math
from fractions import Fraction
from itertools import combinations, pairwise
from typing import TYPE_CHECKING, TypeAlias

import numpy as np

from paperaudit.geometry.figure import (
    Convex,
    DrawnTurn,
    EqualLengths,
    Figure,
    InLine,
    InsidePolygon,
    Ordered,
    ParallelPair,
    RayBetween,
    RightAngle,
    RoundOrder,
    SameWay,
    SideOfLine,
    Size,
    SizeRelation,
    TangentAt,
    length,
)
from paperaudit.geometry.margins import APART_MARGIN, LETTER_SCALE, ORDER_MARGIN, TURN_MARGIN, Turn
from paperaudit.model.expression import AngleOf, LengthOf, Letter

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Array: TypeAlias = NDArray[np.float64]
    Flags: TypeAlias = NDArray[np.bool_]


class Residuals:
    """Compiled conditions: `equalities` and `hinges` of a batch of drawings, each with its Jacobian.

    A state holds x and y of every point, then the letters divided by LETTER_SCALE. Shapes are
    (batch, rows) for values and (batch, rows, unknowns) for Jacobians.
    """

    def __init__(self, figure: Figure, chosen: tuple[AngleOf, ...] = ()) -> None:
        self.figure = figure
        self.index = {point: number for number, point in enumerate(figure.points)}
        self.letters = {letter: number for number, letter in enumerate(figure.letters)}
        self.unknowns = 2 * len(figure.points) + len(figure.letters)
        self._turns: dict[Turn, int] = {}
        self._lengths: dict[tuple[int, int], int] = {}
        self._sines: list[int] = []
        self._cosines: list[int] = []
        self._equal: list[tuple[int, int]] = []
        self._relations: list[
            tuple[list[tuple[int, float, bool]], list[tuple[int, float]], list[tuple[int, float]], float]
        ] = []
        self._orders: list[tuple[int, int, int]] = []
        self._same_way: list[tuple[int, float]] = []
        self._signed: list[tuple[tuple[int, ...], tuple[int, ...]]] = []
        self._fixed: list[tuple[int, float]] = []
        self.weight = 1.0
        self.unit = self._typical_length()
        for condition in figure.conditions:
            self._take(condition)
        for line in figure.lines:
            for point in line[2:]:
                self._sines.append(self._turn(line[0], line[1], line[0], point))
        for size in chosen:
            self._signed.append(((self._turn(size.vertex, size.arm, size.vertex, size.other),), (1,)))
        self._drawn = [self._length(length(*pair)) for line in figure.lines for pair in combinations(line, 2)]
        self._compile()

    def _typical_length(self) -> float:
        sizes = [
            abs(float(condition.form.constant)) / max(abs(float(v)) for v in condition.form.terms.values())
            for condition in self.figure.conditions
            if isinstance(condition, SizeRelation)
            and condition.kind == "length"
            and condition.form.constant
            and condition.form.terms
        ]
        return max(sizes, default=1.0) or 1.0

    def _turn(self, a: str, b: str, c: str, d: str) -> int:
        turn = Turn(self.index[a], self.index[b], self.index[c], self.index[d])
        return self._turns.setdefault(turn, len(self._turns))

    def _length(self, size: LengthOf) -> int:
        return self._lengths.setdefault((self.index[size.start], self.index[size.end]), len(self._lengths))

    def _take(self, condition: object) -> None:
        match condition:
            case Ordered(first, middle, last):
                self._orders.append((self.index[first], self.index[middle], self.index[last]))
            case InLine((first, second, third)):
                self._sines.append(self._turn(first, second, first, third))
            case ParallelPair((a, b), (c, d), _, same_way):
                turn = self._turn(a, b, c, d)
                self._sines.append(turn)
                if same_way is not None:
                    self._same_way.append((turn, 1.0 if same_way else -1.0))
            case TangentAt((a, b), at, centre):
                self._cosines.append(self._turn(centre, at, a, b))
            case SameWay((a, b), (c, d)):
                self._same_way.append((self._turn(a, b, c, d), 1.0))
            case RightAngle((a, b), (c, d)):
                self._cosines.append(self._turn(a, b, c, d))
            case EqualLengths(first, second):
                self._equal.append((self._length(first), self._length(second)))
            case SizeRelation(form, kind):
                self._relation(form.terms, float(form.constant), kind)
            case Convex(points, _, reflex):
                count = len(points)
                turns = tuple(
                    self._turn(points[i], points[(i + 1) % count], points[(i + 1) % count], points[(i + 2) % count])
                    for i in range(count)
                )
                ways = tuple(-1 if points[(i + 1) % count] in reflex else 1 for i in range(count))
                self._signed.append((turns, ways))
            case RoundOrder(centre, points):
                turns = tuple(self._turn(centre, a, centre, b) for a, b in pairwise(points))
                self._signed.append((turns, (1,) * len(turns)))
            case RayBetween(vertex, arm, point, other):
                turns = (
                    self._turn(vertex, arm, vertex, point),
                    self._turn(vertex, point, vertex, other),
                    self._turn(vertex, arm, vertex, other),
                )
                self._signed.append((turns, (1, 1, 1)))
            case InsidePolygon(point, polygon):
                sides = zip(polygon, polygon[1:] + polygon[:1], strict=True)
                turns = tuple(self._turn(a, b, a, point) for a, b in sides)
                self._signed.append((turns, (1,) * len(turns)))
            case DrawnTurn(vertex, arm, other, way):
                self._fixed.append((self._turn(vertex, arm, vertex, other), float(way)))
            case SideOfLine(first, second, (a, b), same):
                turns = (self._turn(a, b, a, first), self._turn(a, b, a, second))
                self._signed.append((turns, (1, 1 if same else -1)))

    def _relation(self, terms: dict[Size, Fraction], constant: float, kind: str) -> None:
        scale = math.pi / 180 if kind in ("angle", "letters") else 1.0 / self.unit
        angles: list[tuple[int, float, bool]] = []
        lengths: list[tuple[int, float]] = []
        letters: list[tuple[int, float]] = []
        for key, value in terms.items():
            weight = float(value)
            if isinstance(key, AngleOf):
                angles.append((self._turn(key.vertex, key.arm, key.vertex, key.other), weight, key.reflex))
            elif isinstance(key, LengthOf):
                lengths.append((self._length(key), weight * scale))
            elif isinstance(key, Letter):
                letters.append((self.letters[key.name], weight * scale * LETTER_SCALE))
        self._relations.append((angles, lengths, letters, constant * scale))

    def _compile(self) -> None:
        turns = list(self._turns)
        count = len(self.figure.points)
        self._from_u = np.zeros((len(turns), count))
        self._from_v = np.zeros((len(turns), count))
        for row, turn in enumerate(turns):
            self._from_u[row, turn.a] -= 1
            self._from_u[row, turn.b] += 1
            self._from_v[row, turn.c] -= 1
            self._from_v[row, turn.d] += 1
        self._from_length = np.zeros((len(self._lengths), count))
        for (start, end), row in self._lengths.items():
            self._from_length[row, start] -= 1
            self._from_length[row, end] += 1

    def measure(self, state: Array) -> tuple[Array, Array, Array, Array]:
        """Turns and lengths of every drawing in the batch, each with its Jacobian."""
        batch, count = state.shape[0], len(self.figure.points)
        at = state[:, : 2 * count].reshape(batch, count, 2)
        x, y = at[:, :, 0], at[:, :, 1]
        ux, uy = x @ self._from_u.T, y @ self._from_u.T
        vx, vy = x @ self._from_v.T, y @ self._from_v.T
        phi = np.arctan2(ux * vy - uy * vx, ux * vx + uy * vy)
        uu, vv = ux * ux + uy * uy + 1e-18, vx * vx + vy * vy + 1e-18
        dphi = np.zeros((batch, len(self._turns), self.unknowns))
        dphi[:, :, 0 : 2 * count : 2] = (uy / uu)[:, :, None] * self._from_u - (vy / vv)[:, :, None] * self._from_v
        dphi[:, :, 1 : 2 * count : 2] = (vx / vv)[:, :, None] * self._from_v - (ux / uu)[:, :, None] * self._from_u
        lx, ly = x @ self._from_length.T, y @ self._from_length.T
        size = np.sqrt(lx * lx + ly * ly + 1e-18)
        dsize = np.zeros((batch, len(self._lengths), self.unknowns))
        dsize[:, :, 0 : 2 * count : 2] = (lx / size)[:, :, None] * self._from_length
        dsize[:, :, 1 : 2 * count : 2] = (ly / size)[:, :, None] * self._from_length
        return phi, dphi, size, dsize

    def equalities(self, state: Array, measured: tuple[Array, Array, Array, Array]) -> tuple[Array, Array]:
        """Residuals that are zero on a figure that meets the givens."""
        phi, dphi, size, dsize = measured
        rows = [np.sin(phi[:, self._sines]), np.cos(phi[:, self._cosines])]
        slopes = [
            np.cos(phi[:, self._sines])[:, :, None] * dphi[:, self._sines],
            -np.sin(phi[:, self._cosines])[:, :, None] * dphi[:, self._cosines],
        ]
        if self._equal:
            one, two = [pair[0] for pair in self._equal], [pair[1] for pair in self._equal]
            rows.append(np.log(size[:, one] / size[:, two]))
            slopes.append(dsize[:, one] / size[:, one, None] - dsize[:, two] / size[:, two, None])
        for angles, lengths, letters, constant in self._relations:
            value = np.full(state.shape[0], constant)
            slope = np.zeros((state.shape[0], self.unknowns))
            for turn, weight, reflex in angles:
                way = np.sign(phi[:, turn]) * (-1.0 if reflex else 1.0)
                value += weight * (way * phi[:, turn] + (2 * math.pi if reflex else 0.0))
                slope += weight * way[:, None] * dphi[:, turn]
            for number, weight in lengths:
                value += weight * size[:, number]
                slope += weight * dsize[:, number]
            for letter, weight in letters:
                column = 2 * len(self.figure.points) + letter
                value += weight * state[:, column]
                slope[:, column] += weight
            rows.append(self.weight * value[:, None])
            slopes.append(self.weight * slope[:, None, :])
        return np.concatenate(rows, axis=1), np.concatenate(slopes, axis=1)

    def hinges(self, state: Array, measured: tuple[Array, Array, Array, Array], signs: Array) -> tuple[Array, Array]:
        """How far each order or turn is from holding with its margin; 0 where it holds."""
        phi, dphi, size, dsize = measured
        rows: list[Array] = [APART_MARGIN - size[:, self._drawn] / self.unit]
        slopes: list[Array] = [-dsize[:, self._drawn] / self.unit]
        for turn, sign in self._same_way:
            rows.append(0.3 - sign * np.cos(phi[:, turn])[:, None])
            slopes.append((sign * np.sin(phi[:, turn])[:, None] * dphi[:, turn])[:, None, :])
        for turn, sign in self._fixed:
            rows.append(TURN_MARGIN - sign * np.sin(phi[:, turn])[:, None])
            slopes.append((-sign * np.cos(phi[:, turn])[:, None] * dphi[:, turn])[:, None, :])
        for number, (turns, ways) in enumerate(self._signed):
            for turn, way in zip(turns, ways, strict=True):
                lean = way * signs[:, number]
                rows.append(TURN_MARGIN - (lean * np.sin(phi[:, turn]))[:, None])
                slopes.append((-(lean * np.cos(phi[:, turn]))[:, None] * dphi[:, turn])[:, None, :])
        for order in self._orders:
            share, slope = self._share(state, order)
            rows += [(ORDER_MARGIN - share)[:, None], (share - 1 + ORDER_MARGIN)[:, None]]
            slopes += [-slope[:, None, :], slope[:, None, :]]
        value, jacobian = np.concatenate(rows, axis=1), np.concatenate(slopes, axis=1)
        active = value > 0
        return np.where(active, value, 0.0), np.where(active[:, :, None], jacobian, 0.0)

    def _share(self, state: Array, order: tuple[int, int, int]) -> tuple[Array, Array]:
        first, middle, last = order
        a, m, b = (state[:, 2 * point : 2 * point + 2] for point in (first, middle, last))
        u, w = m - a, b - a
        square = (w * w).sum(axis=1) + 1e-18
        dot = (u * w).sum(axis=1)
        du = w / square[:, None]
        dw = u / square[:, None] - (2 * dot / square**2)[:, None] * w
        slope = np.zeros((state.shape[0], self.unknowns))
        slope[:, 2 * middle : 2 * middle + 2] += du
        slope[:, 2 * last : 2 * last + 2] += dw
        slope[:, 2 * first : 2 * first + 2] -= du + dw
        return dot / square, slope

    def chosen_signs(self, phi: Array) -> Array:
        """For each bound set of turns the way round that the batch's drawings already lean to."""
        signs = np.ones((phi.shape[0], len(self._signed)))
        for number, (turns, ways) in enumerate(self._signed):
            lean = np.sin(phi[:, list(turns)]) @ np.array(ways, dtype=np.float64)
            signs[:, number] = np.where(lean >= 0, 1.0, -1.0)
        return signs

    def holds_strictly(self, state: Array, phi: Array, signs: Array) -> Flags:
        """Whether every order, turn and direction of each drawing holds, with no margin."""
        good = np.ones(state.shape[0], dtype=bool)
        for turn, sign in self._same_way:
            good &= sign * np.cos(phi[:, turn]) > 0
        for turn, sign in self._fixed:
            good &= sign * np.sin(phi[:, turn]) > 1e-4
        for number, (turns, ways) in enumerate(self._signed):
            for turn, way in zip(turns, ways, strict=True):
                good &= way * signs[:, number] * np.sin(phi[:, turn]) > 1e-4
        for order in self._orders:
            share, _ = self._share(state, order)
            good &= (share > 1e-3) & (share < 1 - 1e-3)
        return good
