"""Brings the pages of a draft into the order in which they are read: columns, rows, tables."""

from bisect import bisect_right
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from typing import Final

from paperaudit.model.place import Box
from paperaudit.readers.draft.answer_lines import leaders_of, long_rules
from paperaudit.readers.draft.columns import areas_of
from paperaudit.readers.draft.drawing.drawn_figure import DrawnFigure
from paperaudit.readers.draft.grids import Grid, grids_of
from paperaudit.readers.draft.open_grids import open_grids
from paperaudit.readers.draft.page import DraftPage, Glyph, Path, box_around
from paperaudit.readers.draft.print_line import Column, Printed, PrintLine
from paperaudit.readers.draft.raised_numbers import with_raised_numbers
from paperaudit.readers.draft.row import Cell
from paperaudit.readers.draft.rows import rows_of
from paperaudit.readers.draft.running import RunningMatter
from paperaudit.readers.draft.runs import runs_of
from paperaudit.readers.draft.table_rows import Cells, is_list_of_parts, lines_of_table, named_table

_MOST_LEFTS: Final = 24
"""Letters of a cell whose places are kept; numbers stand in front."""
_HALO: Final = 2.0
"""Points that a glyph may stick out of its cell."""


def printed_on(page: DraftPage, figures: Sequence[DrawnFigure], running: RunningMatter) -> tuple[Printed, ...]:
    """The rows and tables of a page in reading order, without its figures, running heads and answer lines."""
    glyphs, paths = _text_of(page, figures, running)
    leaders = leaders_of(glyphs)
    glyphs = [one for one in glyphs if one.index not in leaders.glyphs]
    if not glyphs:
        return ()
    ruled = [grid for grid in grids_of(paths) if grid.cells > 1]
    tables = [*ruled, *open_grids(paths, glyphs, ruled)]
    inside = _in_tables(glyphs, tables)
    free = [one for one in glyphs if one.index not in inside]
    box = box_around([one.box for one in glyphs])
    runs = runs_of(free)
    areas = areas_of(runs, (box[0] - 1, box[1] - 1, box[2] + 1, box[3] + 1)) if runs else (box,)
    rules = (*leaders.boxes, *long_rules(paths))
    printed: list[Printed] = []
    for rank, area in enumerate(areas):
        own = [one for one in free if _holds(area, one)]
        column = _column(page, rank, area, [one for one in glyphs if _holds(area, one)], len(areas) > 1)
        here = [grid for grid in tables if area[0] <= (grid.box[0] + grid.box[2]) / 2 < area[2]]
        here = [grid for grid in here if area[1] <= (grid.box[1] + grid.box[3]) / 2 < area[3]]
        near = [path for path in paths if _overlap(path.box, area)]
        lines: list[Printed] = [PrintLine(column, row) for row in rows_of(own, near)]
        for grid in here:
            lines += _table(column, grid, [one for one in glyphs if one.index in inside], paths)
        printed += _with_space(with_raised_numbers(sorted(lines, key=_top)), rules)
    known = {one.index: one for one in glyphs}
    return tuple(_with_lefts(one, known, leaders.boxes) for one in printed)


def _text_of(page: DraftPage, figures: Sequence[DrawnFigure], running: RunningMatter) -> tuple[list[Glyph], list[Path]]:
    glyphs = set(running.glyphs).union(*(figure.glyphs for figure in figures))
    paths = set[int]().union(*(figure.paths for figure in figures))
    return (
        [one for one in page.glyphs if one.index not in glyphs and one.upright],
        [one for one in page.paths if one.index not in paths],
    )


def _in_tables(glyphs: Sequence[Glyph], tables: Sequence[Grid]) -> frozenset[int]:
    return frozenset(one.index for one in glyphs if any(_holds(grid.box, one) for grid in tables))


def _holds(box: Box, glyph: Glyph) -> bool:
    across, down = glyph.middle
    return box[0] <= across < box[2] and box[1] <= down < box[3]


def _overlap(one: Box, other: Box) -> bool:
    return one[0] <= other[2] and one[2] >= other[0] and one[1] <= other[3] and one[3] >= other[1]


def _column(page: DraftPage, rank: int, area: Box, glyphs: Sequence[Glyph], several: bool) -> Column:
    if several or not glyphs:
        return Column(page.number, rank, area[0], area[2], area[1], area[3])
    left, right = min(one.box[0] for one in glyphs), max(one.box[2] for one in glyphs)
    return Column(page.number, rank, left, right, area[1], area[3])


def _table(column: Column, grid: Grid, glyphs: Sequence[Glyph], paths: Sequence[Path]) -> Iterator[Printed]:
    """The rows of a ruled table: parts with their numbers and marks, or a table of data."""
    near = [path for path in paths if _overlap(path.box, grid.box)]
    held = _by_cell(grid, [one for one in glyphs if _holds(grid.box, one)])
    cells: Cells = tuple(
        tuple(
            (box, rows_of(held[down, at], _inside(near, box)) if held[down, at] else ()) for at, box in enumerate(band)
        )
        for down, band in enumerate(grid.bands)
    )
    if not any(rows for band in cells for _, rows in band):
        return
    if is_list_of_parts(cells):
        yield from lines_of_table(column, cells)
        return
    yield named_table(column, grid.box, cells)


def _by_cell(grid: Grid, glyphs: Sequence[Glyph]) -> defaultdict[tuple[int, int], list[Glyph]]:
    """The glyphs of each cell, by band and place within it."""
    tops = [band[0][1] for band in grid.bands]
    lefts = [[cell[0] for cell in band] for band in grid.bands]
    held: defaultdict[tuple[int, int], list[Glyph]] = defaultdict(list)
    for glyph in glyphs:
        across, down = glyph.middle
        band = max(0, bisect_right(tops, down) - 1)
        held[band, max(0, bisect_right(lefts[band], across) - 1)].append(glyph)
    return held


def _inside(paths: Sequence[Path], box: Box) -> list[Path]:
    """Paths within a cell; its own rules are no fractions."""
    left, top, right, bottom = box
    return [
        path
        for path in paths
        if path.box[0] > left - _HALO
        and path.box[2] < right + _HALO
        and path.box[1] > top + _HALO
        and path.box[3] < bottom - _HALO
    ]


def _top(one: Printed) -> tuple[float, float]:
    return (one.row.baseline, one.box[0]) if isinstance(one, PrintLine) else (one.box[1], one.box[0])


def _with_lefts(one: Printed, glyphs: Mapping[int, Glyph], leaders: Sequence[Box]) -> Printed:
    """The row with the places of its first letters, which numbers are told by, and whether a leader stands on it."""
    if not isinstance(one, PrintLine):
        return one
    lefts = tuple(_first_lefts(cell, glyphs) for cell in one.row.cells)
    led = any(box[1] - 1 <= one.row.baseline <= box[3] + one.row.size for box in leaders)
    first = sorted((glyphs[at] for at in one.row.cells[0].glyphs if at in glyphs), key=lambda glyph: glyph.box[0])
    strong = bool(first) and "bold" in first[0].font.lower() and not one.row.bold
    return replace(one, lefts=lefts, led=led, strong=strong)


def _first_lefts(cell: Cell, glyphs: Mapping[int, Glyph]) -> tuple[float, ...]:
    own = sorted((glyphs[at].box[0], glyphs[at].text) for at in cell.glyphs if at in glyphs)
    return tuple(left for left, text in own[:_MOST_LEFTS] for _ in text.strip())


def _with_space(lines: Sequence[Printed], rules: Sequence[Box]) -> Iterator[Printed]:
    """The rows with the number of lines to write on that stand under each of them."""
    for at, one in enumerate(lines):
        if not isinstance(one, PrintLine):
            yield one
            continue
        end = _top(lines[at + 1])[0] if at + 1 < len(lines) else float("inf")
        count = sum(
            one.row.baseline - 1 <= rule[3] < end and rule[0] < one.column.right and rule[2] > one.column.left
            for rule in rules
        )
        yield replace(one, answer_lines=count)
