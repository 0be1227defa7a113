"""Says how a number at the start of a text stands: where, alone or not, and whether a sentence runs into it."""

import re
from collections.abc import Sequence
from typing import Final

from paperaudit.readers.draft.habits import Habits, parted
from paperaudit.readers.draft.numbering import numbers_at
from paperaudit.readers.draft.print_line import PrintLine
from paperaudit.readers.draft.row import Cell
from paperaudit.readers.draft.sequence import Stand

_STOP: Final = re.compile(r"[.?!:;)\]]\s*$")
_NAMES_A_PART: Final = re.compile(r"\b(?:part|parts|question|questions|in|and|or|to|from|see|by)\s*$")
_RUNS_ON: Final = re.compile(r"\b(?:of|than|is|are|equals|with|the|for|at)\s*$")
_NEAR_EDGE: Final = 0.85
"""Share of its column that a row fills when its sentence may run on."""
_BLANK: Final = 0.35
"""Sizes of the print that a space between words may be wide."""
_LONGEST_ITEM: Final = 8
"""Rows among which the second of a list stands behind the first."""
_OUTDENT: Final = 4.0
"""Points by which a row must begin left of the one before to be a new item."""


def stand_of(line: PrintLine, cells: Sequence[Cell], at: int, offset: int, behind: int, flows: bool) -> Stand:
    """Where the number at `offset` of a cell stands, `behind` letters of which follow it."""
    cell = cells[at]
    start = line.left_of(at, offset)
    end = line.left_of(at, len(cell.text) - behind) if behind else cell.box[2]
    text = cells[at + 1].box[0] if not behind and at + 1 < len(cells) else end
    following = cell.text[len(cell.text) - behind :].strip() if behind else ""
    if behind:
        alone = line.stands_off(at, offset, len(cell.text) - behind) or (line.strong and offset == 0)
    else:
        alone = len(cells) > 1 or line.row.bold
    return Stand(
        left=start - line.column.left,
        right=end - line.column.left,
        text=text - line.column.left,
        across=start,
        alone=alone or line.in_table,
        inner=offset > 0,
        flows=flows,
        capital=following[:1].isupper() or following[:1] in "([∠△",
    )


def _had_room(before: PrintLine, line: PrintLine) -> bool:
    """Whether a row was ended on purpose: the first words of the next would have had room on it."""
    words = re.match(r"\S+(?:\s+\S+)?", line.row.cells[0].text)
    end = words.end() if words else 0
    right = line.left_of(0, end) if 0 < end < len(line.row.cells[0].text) else line.row.cells[0].box[2]
    needed = right - line.box[0] + _BLANK * line.row.size
    return before.column.right - before.box[2] > needed


def lists_begun(lines: Sequence[PrintLine]) -> frozenset[int]:
    """The rows, by their place, that begin with (a), (1) or (i) and that one with (b), (2) or (ii) follows below."""
    found: set[int] = set()
    for at, line in enumerate(lines):
        for first in numbers_at(line.row.cells[0].text):
            if first.value != (1,) or not first.dress:
                continue
            below = (
                (other, number)
                for other in lines[at + 1 : at + _LONGEST_ITEM]
                for number in numbers_at(other.row.cells[0].text)
                if (number.style, number.dress) == (first.style, first.dress)
            )
            other, second = next(below, (line, first))
            if second.value == (2,) and abs(other.box[0] - line.box[0]) < _OUTDENT:
                found.add(at)
    return frozenset(found)


def runs_on(
    before: PrintLine | None, line: PrintLine, habits: Habits, edge: float | None = None, listed: bool = False
) -> bool:
    """Whether the row before this one ends within a sentence: it is full, or its last word needs another.

    `edge` is where the text of the open part begins; a row that begins right of it is a new item. A row that is
    `listed` is the first of several alike, as which a sentence may end.
    """
    if before is None or before.column != line.column or line.in_table:
        return False
    if parted(before, habits)[1] is not None or line.box[0] < before.box[0] - _OUTDENT:
        return False
    if edge is not None and line.box[0] > edge + _OUTDENT:
        return False
    if _NAMES_A_PART.search(before.row.text):
        return True
    if listed:
        return False
    if _RUNS_ON.search(before.row.text) and not _had_room(before, line):
        return True
    if _STOP.search(before.row.text) or line.row.baseline - before.row.baseline > 2.2 * line.row.size:
        return False
    wide = before.column.right - before.column.left
    return before.box[2] >= before.column.left + _NEAR_EDGE * wide
