"""Turns, lengths and areas of many drawings at once, each with its exact derivatives."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING, TypeAlias

import numpy as np

from paperaudit.model.expression import AngleOf, ArcOf, BearingOf, LengthOf
from paperaudit.model.quantity import centre_of_circle

if TYPE_CHECKING:
    from collections.abc import Sequence

    from numpy.typing import NDArray

    Array: TypeAlias = NDArray[np.float64]
    Flags: TypeAlias = NDArray[np.bool_]
    Indices: TypeAlias = NDArray[np.int_]

NORTH = -1
"""Stands for both ends of the vector that points north, up the page."""
TINY = 1e-18


@dataclass(frozen=True, slots=True)
class Turn:
    """The angle from the vector `a`→`b` to `c`→`d`, by point indices; `a` and `b` may be NORTH."""

    a: int
    b: int
    c: int
    d: int


@dataclass(frozen=True, slots=True)
class Spread:
    """An angle, arc or bearing: a turn, and how its size from 0 to 360° is read off it.

    `by` is "least" (below 180°), "reflex", "clockwise", or "through": the side on which the turn
    numbered `through` lies.
    """

    turn: int
    by: str
    through: int = 0


@dataclass(frozen=True, slots=True)
class Readings:
    """What a batch of drawings measures; values (batch, rows), slopes (batch, rows, unknowns). Angles in radians.

    `sine` and `cosine` are those of the turns `phi`.
    """

    phi: Array
    sine: Array
    cosine: Array
    dphi: Array
    size: Array
    dsize: Array
    area: Array
    darea: Array
    spread: Array
    dspread: Array


class Gauges:
    """Registers what has to be measured, then reads it off a batch of states: coordinates first, letters behind."""

    def __init__(self, points: Sequence[str], unknowns: int) -> None:
        self.index = {point: number for number, point in enumerate(points)}
        self.unknowns = unknowns
        self._turns: dict[Turn, int] = {}
        self._lengths: dict[tuple[int, int], int] = {}
        self._areas: dict[tuple[int, ...], int] = {}
        self._spreads: dict[Spread, int] = {}

    def turn(self, a: str, b: str, c: str, d: str) -> int:
        """The number of the turn from `a`→`b` to `c`→`d`."""
        return self._turns.setdefault(Turn(*(self.index[point] for point in (a, b, c, d))), len(self._turns))

    def length(self, start: str, end: str) -> int:
        """The number of a length."""
        first, second = sorted((self.index[start], self.index[end]))
        return self._lengths.setdefault((first, second), len(self._lengths))

    def area(self, points: tuple[str, ...]) -> int:
        """The number of the area of a polygon."""
        return self._areas.setdefault(tuple(self.index[point] for point in points), len(self._areas))

    def spread(self, size: AngleOf | ArcOf | BearingOf) -> int:
        """The number of an angle, arc or bearing."""
        match size:
            case AngleOf(arm, vertex, other, reflex):
                spread = Spread(self.turn(vertex, arm, vertex, other), "reflex" if reflex else "least")
            case ArcOf(start, end, "", major, circle):
                centre = centre_of_circle(circle)
                spread = Spread(self.turn(centre, start, centre, end), "reflex" if major else "least")
            case ArcOf(start, end, through, _, circle):
                centre = centre_of_circle(circle)
                whole, part = self.turn(centre, start, centre, end), self.turn(centre, start, centre, through)
                spread = Spread(whole, "through", part)
            case BearingOf(start, end):
                turn = Turn(NORTH, NORTH, self.index[start], self.index[end])
                spread = Spread(self._turns.setdefault(turn, len(self._turns)), "clockwise")
        return self._spreads.setdefault(spread, len(self._spreads))

    def length_of(self, size: LengthOf) -> int:
        """The number of a length by its name."""
        return self.length(size.start, size.end)

    def compile(self) -> None:
        """Settles what is read; nothing may be registered afterwards."""
        count, turns = len(self.index), len(self._turns)
        rows = turns + len(self._lengths)
        vectors = np.zeros((turns + rows, count))
        from_u, from_length, from_v = vectors[:turns], vectors[turns:rows], vectors[rows:]
        self._north = np.zeros(turns)
        for turn, row in self._turns.items():
            if turn.a == NORTH:
                self._north[row] = 1.0
            else:
                from_u[row, turn.a] -= 1
                from_u[row, turn.b] += 1
            from_v[row, turn.c] -= 1
            from_v[row, turn.d] += 1
        for (start, end), row in self._lengths.items():
            from_length[row, start] -= 1
            from_length[row, end] += 1
        self._vectors = np.zeros((self.unknowns, 2 * (turns + rows)))
        self._vectors[0 : 2 * count : 2, : turns + rows] = vectors.T
        self._vectors[1 : 2 * count : 2, turns + rows :] = vectors.T
        self._slopes = np.zeros((rows, 4, self.unknowns))
        """What moves x and y of a turn's first vector or of a length, and x and y of a turn's second vector."""
        self._slopes[:, 0, 0 : 2 * count : 2] = self._slopes[:, 1, 1 : 2 * count : 2] = vectors[:rows]
        self._slopes[:turns, 2, 0 : 2 * count : 2] = self._slopes[:turns, 3, 1 : 2 * count : 2] = from_v
        self._crossed = np.zeros((len(self._areas), count, count))
        for polygon, row in self._areas.items():
            for one, two in zip(polygon, polygon[1:] + polygon[:1], strict=True):
                self._crossed[row, one, two] += 0.5
                self._crossed[row, two, one] -= 0.5
        spreads = list(self._spreads)
        self._spread_turn = np.array([spread.turn for spread in spreads], dtype=int)
        self._spread_through = np.array([spread.through for spread in spreads], dtype=int)
        ways = {by: np.array([spread.by == by for spread in spreads]) for by in ("reflex", "clockwise", "through")}
        self._by = {by: chosen for by, chosen in ways.items() if any(spread.by == by for spread in spreads)}

    def read(self, state: Array) -> Readings:
        """Everything registered, for every drawing of the batch."""
        batch, turns = state.shape[0], len(self._turns)
        rows = turns + len(self._lengths)
        vectors = state @ self._vectors
        x, y = vectors[:, : turns + rows], vectors[:, turns + rows :]
        ux, uy, vx, vy = x[:, :turns], y[:, :turns] + self._north, x[:, rows:], y[:, rows:]
        lx, ly = x[:, turns:rows], y[:, turns:rows]
        phi = np.arctan2(ux * vy - uy * vx, ux * vx + uy * vy)
        uu, vv = ux * ux + uy * uy + TINY, vx * vx + vy * vy + TINY
        size = np.sqrt(lx * lx + ly * ly + TINY)
        rates = np.zeros((batch, rows, 4))
        rates[:, :turns, 0], rates[:, :turns, 1] = uy / uu, -ux / uu
        rates[:, :turns, 2], rates[:, :turns, 3] = -vy / vv, vx / vv
        rates[:, turns:, 0], rates[:, turns:, 1] = lx / size, ly / size
        slopes = (rates[:, :, None, :] @ self._slopes)[:, :, 0]
        dphi, dsize = slopes[:, :turns], slopes[:, turns:]
        area, darea = self._read_areas(state)
        spread, way = self._read_spreads(phi)
        dspread = way[:, :, None] * dphi.take(self._spread_turn, axis=1)
        return Readings(phi, np.sin(phi), np.cos(phi), dphi, size, dsize, area, darea, spread, dspread)

    def _read_areas(self, state: Array) -> tuple[Array, Array]:
        """Areas without sign; the sign is that of the way in which each polygon goes round."""
        batch, count = state.shape[0], len(self.index)
        if not self._areas:
            return np.empty((batch, 0)), np.empty((batch, 0, self.unknowns))
        x, y = state[:, 0 : 2 * count : 2], state[:, 1 : 2 * count : 2]
        darea = np.zeros((batch, len(self._areas), self.unknowns))
        by_x = np.einsum("apq,bq->bap", self._crossed, y)
        signed = np.einsum("bap,bp->ba", by_x, x)
        way = np.where(signed < 0, -1.0, 1.0)
        darea[:, :, 0 : 2 * count : 2] = way[:, :, None] * by_x
        darea[:, :, 1 : 2 * count : 2] = -way[:, :, None] * np.einsum("apq,bq->bap", self._crossed, x)
        return np.abs(signed), darea

    def _read_spreads(self, phi: Array) -> tuple[Array, Array]:
        turn = phi.take(self._spread_turn, axis=1)
        way = np.copysign(1.0, turn)
        if not self._by:
            return np.abs(turn), way
        offset = np.zeros_like(turn)
        full = 2 * math.pi
        reflex, clockwise, through = (self._by.get(by) for by in ("reflex", "clockwise", "through"))
        if reflex is not None:
            way = np.where(reflex, -way, way)
            offset = np.where(reflex, full, offset)
        if clockwise is not None:
            way = np.where(clockwise, -1.0, way)
            offset = np.where(clockwise, np.where(turn > 0, full, 0.0), offset)
        if through is not None:
            on = phi[:, self._spread_through] % full <= turn % full
            ahead = np.where(turn < 0, full, 0.0)
            way = np.where(through, np.where(on, 1.0, -1.0), way)
            offset = np.where(through, np.where(on, ahead, full - ahead), offset)
        return way * turn + offset, way
