"""Finds tables that have level rules alone, as books set them: columns are told by the gaps between their cells."""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import Final

from paperaudit.model.place import Box
from paperaudit.readers.draft.grids import Grid, rules_of
from paperaudit.readers.draft.page import Glyph, Path
from paperaudit.readers.draft.runs import Run, runs_of

_SAME_EDGE: Final = 2.5
"""Points within which rules of one table begin and end."""
_NARROWEST: Final = 50.0
"""Points of a rule of a table; fractions are narrower."""
_TALLEST: Final = 400.0
_GAP: Final = 0.75
"""Sizes of the print between the cells of a row, at least."""
_MOST_RULES: Final = 400


def open_grids(paths: Sequence[Path], glyphs: Sequence[Glyph], known: Sequence[Grid]) -> tuple[Grid, ...]:
    """The tables of a page between rules of one length that no upright ones cross; `known` are those found already."""
    level, _ = rules_of(paths)
    long = [
        rule for rule in level if rule[2] - rule[0] >= _NARROWEST and not any(_within(rule, grid) for grid in known)
    ]
    if not 2 <= len(long) <= _MOST_RULES:
        return ()
    found: list[Grid] = []
    for rules in _alike(long):
        for first, last in _stretches(rules):
            inside = [glyph for glyph in glyphs if first[0] - 4 <= glyph.middle[0] <= first[2] + 4]
            inside = [glyph for glyph in inside if first[1] < glyph.middle[1] < last[3]]
            grid = _grid((first[0] - 4, first[1], first[2] + 4, last[3]), runs_of(inside, gap=_GAP))
            if grid is not None:
                found.append(grid)
    return tuple(sorted(found, key=lambda grid: grid.box[1]))


def _within(rule: Box, grid: Grid) -> bool:
    return grid.box[1] - 2 <= rule[1] <= grid.box[3] + 2 and grid.box[0] - 2 <= rule[0] <= grid.box[2] + 2


def _alike(rules: Sequence[Box]) -> Iterator[list[Box]]:
    """Rules that begin and end under one another, from the top."""
    groups: dict[tuple[int, int], list[Box]] = defaultdict(list)
    for rule in sorted(rules, key=lambda one: one[1]):
        key = round(rule[0] / _SAME_EDGE), round(rule[2] / _SAME_EDGE)
        groups[key].append(rule)
    yield from (group for group in groups.values() if len(group) > 1)


def _stretches(rules: Sequence[Box]) -> Iterator[tuple[Box, Box]]:
    """First and last rule of each run of rules that may be one table."""
    first = last = rules[0]
    for rule in rules[1:]:
        if rule[1] - first[1] > _TALLEST:
            if last is not first:
                yield first, last
            first = rule
        last = rule
    if last is not first:
        yield first, last


def _grid(box: Box, runs: Sequence[Run]) -> Grid | None:
    """The cells between two rules, where each row of text has as many as the others."""
    rows = _rows(runs)
    count = max((len(row) for row in rows), default=0)
    if len(rows) < 2 or count < 2 or any(len(row) != count for row in rows):
        return None
    rights = [max(row[at].box[2] for row in rows) for at in range(count)]
    lefts = [min(row[at].box[0] for row in rows) for at in range(count)]
    if any(right > left for right, left in zip(rights, lefts[1:], strict=False)):
        return None
    across = [box[0], *((right + left) / 2 for right, left in zip(rights, lefts[1:], strict=False)), box[2]]
    between = [(above[0].box[3] + below[0].box[1]) / 2 for above, below in pairwise(rows)]
    down = [box[1], *between, box[3]]
    bands = tuple(
        tuple((left, top, right, bottom) for left, right in pairwise(across)) for top, bottom in pairwise(down)
    )
    return Grid(box, bands)


def _rows(runs: Sequence[Run]) -> list[list[Run]]:
    rows: list[list[Run]] = []
    for run in runs:
        if rows and abs(rows[-1][0].baseline - run.baseline) < 0.5 * max(run.glyphs[0].size, 1.0):
            rows[-1].append(run)
        else:
            rows.append([run])
    return [sorted(row, key=lambda run: run.box[0]) for row in rows]
