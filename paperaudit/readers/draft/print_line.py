"""What the layout of a page gives to whoever reads the outline: rows and tables in reading order, with their place."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final, TypeAlias

from paperaudit.model.place import Box
from paperaudit.readers.draft.row import Cell, Row

_PLAIN: Final = 11.0
"""Points that a table's print is taken to have."""

_DIGIT: Final = 0.56
"""Sizes of the print that a digit is wide; none of the usual fonts has wider ones."""
_SET_OFF: Final = 0.65
"""Sizes that a gap is wide behind a number that stands off; a stretched space is narrower."""


@dataclass(frozen=True, slots=True)
class Column:
    """A stretch of a page that is read from top to bottom; `rank` is its turn on the page.

    `left` and `right` are where its text begins and ends, `top` and `bottom` what of the page it takes up.
    """

    page: int
    rank: int
    left: float
    right: float
    top: float = 0.0
    bottom: float = 0.0


@dataclass(frozen=True, slots=True)
class PrintLine:
    """A row in its column; `answer_lines` counts the lines to write on that follow it.

    `in_table` where it was put together from the cells of a table's row, its number and its marks in cells of
    their own. `lefts` says for each cell where its first letters begin, blanks left out. `led` where a leader
    stands on the row, `strong` where its first letters alone are bold.
    """

    column: Column
    row: Row
    answer_lines: int = 0
    in_table: bool = False
    lefts: tuple[tuple[float, ...], ...] = ()
    led: bool = False
    strong: bool = False

    @property
    def page(self) -> int:
        """The page that it stands on."""
        return self.column.page

    @property
    def box(self) -> Box:
        """Where it stands on its page."""
        return self.row.box

    def stands_off(self, cell: int, start: int, end: int) -> bool:
        """Whether the letters of a cell from `start` to `end` have a wider gap behind them than a space."""
        text = self.row.cells[cell].text
        following = len(text) - len(text[end:].lstrip())
        wide = self.left_of(cell, following) - self.left_of(cell, start)
        return wide - _DIGIT * self.row.size * len(text[start:end].strip()) > _SET_OFF * self.row.size

    def left_of(self, cell: int, offset: int) -> float:
        """Where the letter at `offset` of a cell's text begins; told by its share of the letters where not known."""
        text, (left, _, right, _) = self.row.cells[cell].text, self.row.cells[cell].box
        at = len("".join(text[:offset].split()))
        known = self.lefts[cell] if cell < len(self.lefts) else ()
        if at < len(known):
            return known[at]
        return left + (right - left) * offset / max(1, len(text))


@dataclass(frozen=True, slots=True)
class PrintTable:
    """A table of data: the texts of its cells, row by row; an empty cell has no text."""

    column: Column
    box: Box
    rows: tuple[tuple[str, ...], ...]
    doubts: tuple[str, ...] = ()

    @property
    def page(self) -> int:
        """The page that it stands on."""
        return self.column.page

    def lines(self) -> Iterator[PrintLine]:
        """Its rows as rows of print, for what is no data: the fields of a cover."""
        for texts in self.rows:
            cells = tuple(Cell(text, self.box) for text in texts if text)
            if cells:
                yield PrintLine(self.column, Row(cells, self.box, self.box[3], _PLAIN), in_table=True)


Printed: TypeAlias = PrintLine | PrintTable
