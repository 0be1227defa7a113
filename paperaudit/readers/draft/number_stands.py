"""Says how a number at the start of a text stands: where, alone or not, and whether a sentence runs into it."""

import re
from collections.abc import Sequence
from typing import Final

from paperaudit.readers.draft.habits import Habits, parted
from paperaudit.readers.draft.print_line import PrintLine
from paperaudit.readers.draft.row import Cell
from paperaudit.readers.draft.sequence import Stand

_STOP: Final = re.compile(r"[.?!:;)\]]\s*$")
_RUNS_ON: Final = re.compile(
    r"\b(?:part|parts|question|questions|of|in|and|or|to|from|see|than|by|is|are|equals|with|the|for|at)\s*$"
)
_NEAR_EDGE: Final = 0.85
"""Share of its column that a row fills when its sentence may run on."""
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


def runs_on(before: PrintLine | None, line: PrintLine, habits: Habits, edge: float | None = None) -> bool:
    """Whether the row before this one ends within a sentence: it is full, or its last word needs another.

    `edge` is where the text of the open part begins; a row that begins right of it is a new item.
    """
    if before is None or before.column != line.column or line.in_table:
        return False
    if parted(before, habits)[1] is not None or line.box[0] < before.box[0] - _OUTDENT:
        return False
    if edge is not None and line.box[0] > edge + _OUTDENT:
        return False
    if _RUNS_ON.search(before.row.text):
        return True
    if _STOP.search(before.row.text) or line.row.baseline - before.row.baseline > 2.2 * line.row.size:
        return False
    wide = before.column.right - before.column.left
    return before.box[2] >= before.column.left + _NEAR_EDGE * wide
