"""Chooses the lengths that the givens leave open, so that no part of a drawing is cramped.

Every line keeps its direction, and so every angle its size. Under fixed directions the conditions on
lengths are linear in the coordinates; what they leave free is used to bring the segments near the
lengths wanted, in the mean of squared logarithms.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from itertools import combinations, pairwise

import numpy as np
import numpy.typing as npt

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.draw.elements import distance
from paperaudit.geometry.figure.figure import EqualLengths, InsidePolygon, OnCircle, SideOfLine, SizeRelation
from paperaudit.geometry.figure.plane import Spot, side
from paperaudit.model.expression import LengthOf

Array = npt.NDArray[np.float64]

STUB, LOOSE = 0.55, 0.75
"""The lengths of a produced part that ends in no other line, and of a side line that does, in terms of a segment."""
SHORTEST_WANTED = 0.25
"""A sketch's own proportions count, but no segment is wanted shorter than this share of the typical one."""
SHARES = (1.0, 0.75, 0.5, 0.25)
"""How far the drawing goes towards the proportions wanted: the first share that keeps the figure's form."""
STEPS = 12
FREE = 1e-6
"""Singular values below this count as nought (as a share of the largest, or of 1); drawings are exact to 1e-9."""
CLEAR = 0.06
"""Least distance of a point from a line that misses it, as a share of that line's length."""


@dataclass(frozen=True, slots=True)
class _Segment:
    """Two neighbours on a line, and its direction."""

    start: str
    end: str
    way: Spot


def well_proportioned(arrangement: Arrangement, keep_lengths: bool = False) -> dict[str, Spot]:
    """The drawing's points with the free lengths settled; `keep_lengths` leaves a drawing as it is.

    A drawing with a circle is left too: its points must keep their distance from the centre.

    The order along lines, the sides of lines and the crossings stay; so do all angles and the ratios
    that are given.
    """
    at = dict(arrangement.at)
    segments = [_segment(at, *pair) for line in arrangement.lines for pair in pairwise(line)]
    on_lines = {point for line in arrangement.lines for point in line}
    has_circle = any(isinstance(condition, OnCircle) for condition in arrangement.figure.conditions)
    if keep_lengths or has_circle or not segments or on_lines != set(at):
        return at
    names = list(at)
    free = _null_space(_rows(arrangement, segments, names))
    lengths = _length_rows(segments, names)
    state = np.array([part for name in names for part in at[name]])
    wanted = np.array([_wanted(arrangement, segment) for segment in segments])
    moved = _moved(state, free, lengths, np.log(wanted))
    for share in SHARES:
        tried = state + share * (moved - state)
        spots = {name: (float(tried[2 * i]), float(tried[2 * i + 1])) for i, name in enumerate(names)}
        if _same_form(arrangement, spots):
            return spots
    return at


def _segment(at: Mapping[str, Spot], start: str, end: str) -> _Segment:
    (x, y), (p, q) = at[start], at[end]
    reach = math.dist(at[start], at[end]) or 1.0
    return _Segment(start, end, ((p - x) / reach, (q - y) / reach))


def _wanted(arrangement: Arrangement, segment: _Segment) -> float:
    """The length that a segment is to have, in terms of an ordinary one: as sketched, else 1, or less for a stub."""
    sketched = {name: (x, y) for name, x, y in arrangement.figure.sketch}
    if segment.start in sketched and segment.end in sketched:
        size = max(math.dist(p, q) for p, q in combinations(sketched.values(), 2)) or 1.0
        return max(SHORTEST_WANTED, 2 * math.dist(sketched[segment.start], sketched[segment.end]) / size)
    rays = sorted(len(arrangement.rays[point]) for point in (segment.start, segment.end))
    if rays[0] > 1:
        return 1.0
    is_produced = len(arrangement.lines[arrangement.figure.line_of(segment.start, segment.end)]) > 2
    return STUB if is_produced else LOOSE if rays[1] > 2 else 1.0


def _row(names: list[str], pieces: list[tuple[str, float, float]]) -> Array:
    row = np.zeros(2 * len(names))
    for name, x, y in pieces:
        index = names.index(name)
        row[2 * index] += x
        row[2 * index + 1] += y
    return row


def _length_row(names: list[str], segment: _Segment) -> Array:
    (u, v), start, end = segment.way, segment.start, segment.end
    return _row(names, [(end, u, v), (start, -u, -v)])


def _length_rows(segments: list[_Segment], names: list[str]) -> Array:
    return np.array([_length_row(names, segment) for segment in segments])


def _rows(arrangement: Arrangement, segments: list[_Segment], names: list[str]) -> Array:
    """The linear conditions under fixed directions: no segment turns, and given ratios of lengths stay."""
    rows = []
    for segment in segments:
        (u, v), start, end = segment.way, segment.start, segment.end
        rows.append(_row(names, [(end, -v, u), (start, v, -u)]))

    def length_row(size: LengthOf) -> Array:
        return _length_row(names, _segment(arrangement.at, size.start, size.end))

    def is_drawn(size: LengthOf) -> bool:
        return any(size.start in line and size.end in line for line in arrangement.lines)

    for condition in arrangement.figure.conditions:
        if isinstance(condition, EqualLengths):
            # Only a drawn segment keeps its direction; diagonals of a shape are equal because of its sides.
            if is_drawn(condition.first) and is_drawn(condition.second):
                rows.append(length_row(condition.first) - length_row(condition.second))
        elif isinstance(condition, SizeRelation) and condition.kind == "length":
            sizes = [(size, float(share)) for size, share in condition.form.terms.items() if isinstance(size, LengthOf)]
            rows.append(np.sum([share * length_row(size) for size, share in sizes], axis=0))
    return np.array(rows)


def _null_space(rows: Array) -> Array:
    """Columns that span the ways in which the points may move."""
    _, values, turned = np.linalg.svd(rows)
    rank = int((values > FREE * values[0]).sum())
    return turned[rank:].T


def _moved(state: Array, free: Array, lengths: Array, wanted: Array) -> Array:
    """Gauss and Newton's steps on the logarithms of the segments, their common scale left out."""
    slope = lengths @ free
    for _ in range(STEPS):
        now = lengths @ state
        off = np.log(now) - wanted
        jacobian = slope / now[:, None]
        off, jacobian = off - off.mean(), jacobian - jacobian.mean(axis=0)
        left, values, right = np.linalg.svd(jacobian, full_matrices=False)
        # Moves and enlargements of the whole change no proportion: their singular values are nought.
        inverse = np.divide(1.0, values, out=np.zeros_like(values), where=values > FREE)
        step = -right.T @ (inverse * (left.T @ off))
        change = slope @ step
        # No segment shrinks to less than a third in one step, so that none turns round.
        shrinking = -change / now
        step *= min(1.0, 0.66 / max(float(shrinking.max()), 1e-9))
        state = state + free @ step
        if float(np.abs(change / now).max()) < 1e-9:
            break
    return state


def _same_form(arrangement: Arrangement, spots: Mapping[str, Spot]) -> bool:
    """Whether sides, insides and crossings are those of the drawing, and no point comes too near a line."""
    at = arrangement.at
    for condition in arrangement.figure.conditions:
        match condition:
            case SideOfLine(first, second, (a, b)):
                turns = [(first, a, b), (second, a, b)]
            case InsidePolygon(point, polygon):
                turns = [(point, a, b) for a, b in zip(polygon, polygon[1:] + polygon[:1], strict=True)]
            case _:
                continue
        for p, a, b in turns:
            if side(at[p], at[a], at[b]) * side(spots[p], spots[a], spots[b]) <= 0:
                return False
    return crossings(arrangement, spots) <= crossings(arrangement, at) and _clear(arrangement, spots)


def crossings(arrangement: Arrangement, at: Mapping[str, Spot]) -> set[tuple[int, int]]:
    """The pairs of drawn lines that cross in a point without a letter."""
    found = set()
    for (i, one), (j, two) in combinations(enumerate(arrangement.lines), 2):
        a, b, c, d = at[one[0]], at[one[-1]], at[two[0]], at[two[-1]]
        apart = arrangement.meet(i, j) is None
        if apart and side(a, c, d) * side(b, c, d) < 0 and side(c, a, b) * side(d, a, b) < 0:
            found.add((i, j))
    return found


def _clear(arrangement: Arrangement, spots: Mapping[str, Spot]) -> bool:
    """Whether every point keeps clear of the lines that miss it, as far as it does in the drawing itself."""
    for line in arrangement.lines:
        for point in spots.keys() - set(line):
            gap, before = (_gap(at, point, line) for at in (spots, arrangement.at))
            if gap < min(CLEAR, before):
                return False
    return True


def _gap(at: Mapping[str, Spot], point: str, line: tuple[str, ...]) -> float:
    """The distance of a point from a line's drawn part, as a share of the line's length."""
    start, end = at[line[0]], at[line[-1]]
    return distance(at[point], start, end) / (math.dist(start, end) or 1.0)
