"""Finds ruled tables: level and upright rules that meet, the cells between them."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from paperaudit.model.place import Box
from paperaudit.readers.draft.page import Path, box_around

_THIN: Final = 2.0
"""Points; what is no thicker is a rule, also where it is a filled rectangle."""
_SHORTEST: Final = 8.0
"""Points of a rule of a table."""
_MEET: Final = 3.0
"""Points within which rules meet and edges are one."""
_ACROSS: Final = 0.6
"""Share of the table's width that a level rule covers to part its rows."""
_MOST_RULES: Final = 4_000
"""Rules of a page; more are graph paper."""
_MOST_CELLS: Final = 1_500


@dataclass(frozen=True, slots=True)
class Grid:
    """A ruled table; `bands` are its rows from the top, each the boxes of its cells from the left."""

    box: Box
    bands: tuple[tuple[Box, ...], ...]

    @property
    def cells(self) -> int:
        """How many cells it has."""
        return sum(len(band) for band in self.bands)


def grids_of(paths: Sequence[Path]) -> tuple[Grid, ...]:
    """The ruled tables of a page from the top; a frame is a table of a single cell."""
    level, upright = rules_of(paths)
    if not level or not upright or len(level) + len(upright) > _MOST_RULES:
        return ()
    found = (grid for group in _meeting(level, upright) if (grid := _grid(*group)) is not None)
    return tuple(sorted(found, key=lambda grid: (grid.box[1], grid.box[0])))


def rules_of(paths: Sequence[Path]) -> tuple[list[Box], list[Box]]:
    """The level and the upright rules; a rectangle gives four."""
    level: list[Box] = []
    upright: list[Box] = []
    for path in paths:
        if path.stroke is None and path.fill is not None and path.fill > 0.95:
            continue
        left, top, right, bottom = path.box
        wide, high = right - left, bottom - top
        if min(wide, high) <= _THIN:
            if max(wide, high) >= _SHORTEST:
                (level if wide > high else upright).append(path.box)
        elif path.stroke is not None and all(piece.straight for piece in path.pieces):
            for piece in path.pieces:
                edge = box_around([(x, y, x, y) for x, y in piece.points])
                if edge[3] - edge[1] <= 0.5 and edge[2] - edge[0] >= _SHORTEST:
                    level.append(edge)
                elif edge[2] - edge[0] <= 0.5 and edge[3] - edge[1] >= _SHORTEST:
                    upright.append(edge)
    return level, upright


def _meeting(level: list[Box], upright: list[Box]) -> Iterator[tuple[list[Box], list[Box]]]:
    """The rules in groups that hang together."""
    rules = [*level, *upright]
    holder = list(range(len(rules)))

    def root(at: int) -> int:
        while holder[at] != at:
            holder[at] = holder[holder[at]]
            at = holder[at]
        return at

    order = sorted(range(len(rules)), key=lambda at: rules[at][0])
    open_rules: list[int] = []
    for at in order:
        box = rules[at]
        open_rules = [one for one in open_rules if rules[one][2] >= box[0] - _MEET]
        for one in open_rules:
            other = rules[one]
            if other[1] <= box[3] + _MEET and other[3] >= box[1] - _MEET:
                holder[root(one)] = root(at)
        open_rules.append(at)
    groups: dict[int, tuple[list[Box], list[Box]]] = {}
    for at, box in enumerate(rules):
        groups.setdefault(root(at), ([], []))[at >= len(level)].append(box)
    yield from groups.values()


def _grid(level: list[Box], upright: list[Box]) -> Grid | None:
    if not level or not upright:
        return None
    box = box_around([*level, *upright])
    wide = box[2] - box[0]
    downs = _merged(((rule[1] + rule[3]) / 2, rule[0], rule[2]) for rule in level)
    edges = [at for at, covered in downs if covered >= _ACROSS * wide]
    if len(edges) < 2:
        return None
    bands: list[tuple[Box, ...]] = []
    for top, bottom in pairwise(edges):
        middle = (top + bottom) / 2
        sides = [((rule[0] + rule[2]) / 2, 0.0, 1.0) for rule in upright if rule[1] <= middle <= rule[3]]
        across = [at for at, _ in _merged(iter(sides))]
        # The outermost rules are left out in some tables.
        if not across or across[0] > box[0] + _MEET:
            across.insert(0, box[0])
        if across[-1] < box[2] - _MEET:
            across.append(box[2])
        bands.append(tuple((left, top, right, bottom) for left, right in pairwise(across)))
    grid = Grid(box, tuple(bands))
    return grid if 0 < grid.cells <= _MOST_CELLS else None


def _merged(rules: Iterator[tuple[float, float, float]]) -> list[tuple[float, float]]:
    """Where rules lie, those close together as one, with how much they cover."""
    found: list[tuple[float, float, float]] = []
    for at, start, end in sorted(rules):
        if found and at - found[-1][0] <= _MEET:
            place, covered, reached = found[-1]
            found[-1] = (place, covered + max(0.0, end - max(start, reached)), max(end, reached))
        else:
            found.append((at, end - start, end))
    return [(at, covered) for at, covered, _ in found]
