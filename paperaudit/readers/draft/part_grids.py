"""Takes parts that stand beside one another apart: (a) and (b) in a row, or in columns of a band of rows."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise
from typing import Final

from paperaudit.readers.draft.numbering import Number, Style, numbers_at
from paperaudit.readers.draft.page import box_around
from paperaudit.readers.draft.print_line import Column, Printed, PrintLine

_NEAR: Final = 6.0
"""Points that cells of a column may begin left of it."""
_LEADING: Final = 1.9
"""Sizes of the print from a row to the next of the same part."""


def with_parts_apart(printed: Sequence[Printed]) -> Iterator[Printed]:
    """The rows with each band of parts side by side as rows of single parts, in the order of their numbers.

    The numbers have to go on from one another, along the rows or down the columns; else the rows stay.
    """
    at = 0
    while at < len(printed):
        end = _band(printed, at)
        if end is None:
            yield printed[at]
            at += 1
            continue
        band = [one for one in printed[at:end] if isinstance(one, PrintLine)]
        yield from _apart(band)
        at = end


def _band(printed: Sequence[Printed], at: int) -> int | None:
    """Where a band that begins here ends: rows of parts side by side and what goes on below them."""
    first = printed[at]
    if not isinstance(first, PrintLine) or first.in_table or len(_starts(first)) < 2:
        return None
    second = _edges([first])[1]
    end = last = at + 1
    while end < len(printed):
        one = printed[end]
        if not isinstance(one, PrintLine) or one.column != first.column or one.in_table:
            break
        starts = _starts(one)
        goes_on = any(cell.box[0] >= second - _NEAR for cell in one.row.cells)
        if len(starts) < 2 and starts[:1] == [0] and not _follows(printed[at:end], one):
            break
        if not starts and not goes_on and not _goes_on_below(first, printed[end - 1], one):
            break
        end += 1
        if starts:
            last = end
    last = max(last, at + 1)
    while last < end and _goes_on_below(first, printed[last - 1], printed[last]):
        last += 1
    return last


def _goes_on_below(first: PrintLine, before: Printed, line: Printed) -> bool:
    """Whether a row behind the last numbers of a band is the second row of one of its parts."""
    if not (isinstance(before, PrintLine) and isinstance(line, PrintLine)):
        return False
    close = line.row.baseline - before.row.baseline < _LEADING * line.row.size
    return close and line.box[0] > first.row.cells[0].box[0] + _NEAR


def _follows(band: Sequence[Printed], line: PrintLine) -> bool:
    """Whether a row with a single part is the last of a band: its number goes on in the band's style."""
    numbers = [number for one in band if isinstance(one, PrintLine) for number in _numbers(one)]
    mine = _numbers(line)
    return bool(mine and numbers) and mine[0].style is numbers[0].style and mine[0].dress == numbers[0].dress


def _apart(band: Sequence[PrintLine]) -> Iterator[PrintLine]:
    edges = _edges(band)
    rows = list(_grid_rows(band))
    along = [number for row in rows for line in row for number in _numbers(line)]
    columns = [[_of_column(line, edges, at) for line in band] for at in range(len(edges))]
    down = [number for column in columns for line in column if line for number in _numbers(line)]
    if _go_on(along):
        for row in rows:
            for at in range(len(edges)):
                yield from (part for line in row if (part := _of_column(line, edges, at)))
    elif _go_on(down):
        for column in columns:
            yield from (line for line in column if line)
    else:
        yield from band


def _grid_rows(band: Sequence[PrintLine]) -> Iterator[list[PrintLine]]:
    row: list[PrintLine] = []
    for line in band:
        if _starts(line) and row:
            yield row
            row = []
        row.append(line)
    if row:
        yield row


def _go_on(numbers: Sequence[Number]) -> bool:
    """Whether each number is the one behind the last."""
    values = [number.value for number in numbers]
    same = len({(number.style, number.dress, number.value[:-1]) for number in numbers}) == 1
    return same and all(there[-1] == here[-1] + 1 for here, there in pairwise(values))


def _edges(band: Sequence[PrintLine]) -> list[float]:
    """Where the columns of a band begin, by the row with the most parts."""
    fullest = max(band, key=lambda line: len(_starts(line)))
    return [fullest.row.cells[at].box[0] for at in _starts(fullest)]


def _starts(line: PrintLine) -> list[int]:
    """Which cells of a row begin with a part's number."""
    return [at for at in range(len(line.row.cells)) if _innermost(line, at) is not None]


def _numbers(line: PrintLine) -> list[Number]:
    return [number for at in range(len(line.row.cells)) if (number := _innermost(line, at)) is not None]


def _innermost(line: PrintLine, at: int) -> Number | None:
    """The last of the numbers that a cell begins with: the (a) of "3 (a) Find x."."""
    rest, found = line.row.cells[at].text, None
    while readings := numbers_at(rest):
        # (i) alone is Roman; behind (h) the letters' own order would say so, in bands of that size never.
        number = next((one for one in readings if one.style is Style.ROMAN), readings[0])
        if not number.dress and number.style is not Style.DECIMAL and (at or found):
            break
        found = number if number.dress or number.style is Style.DECIMAL else found
        rest = rest[number.end :].strip()
    return found


def _of_column(line: PrintLine, edges: Sequence[float], at: int) -> PrintLine | None:
    """What of a row stands in one column of a band, as a row of its own column."""
    left = edges[at] - _NEAR if at else float("-inf")
    right = edges[at + 1] - _NEAR if at + 1 < len(edges) else float("inf")
    own = [place for place, cell in enumerate(line.row.cells) if left <= cell.box[0] < right]
    if not own:
        return None
    cells = tuple(line.row.cells[place] for place in own)
    column = line.column
    inner = Column(
        column.page,
        column.rank,
        # Numbers of one level stand equally far from the left of their columns.
        edges[at] - (edges[0] - column.left),
        column.right if right == float("inf") else right,
        column.top,
        column.bottom,
    )
    lefts = tuple(line.lefts[place] for place in own) if line.lefts else ()
    row = replace(line.row, cells=cells, box=box_around([cell.box for cell in cells]))
    return replace(line, column=inner, row=row, lefts=lefts)
