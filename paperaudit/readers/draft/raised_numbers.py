"""Numbers that stand at the middle of their cell, below the first rows of its text, go up to the first of them."""

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from paperaudit.readers.draft.page import box_around
from paperaudit.readers.draft.print_line import Printed, PrintLine

_NUMBER: Final = re.compile(r"\(?(?:[Qq]\s?)?(?:\d{1,2}(?:\.\d{1,2}){0,3}|[a-z]|[ivx]{1,5})[.)]?")
_NEAR: Final = 1.2
"""Sizes of the font between rows of one cell, from box to box."""


def with_raised_numbers(lines: Sequence[Printed]) -> list[Printed]:
    """The rows of a column, from the top, each number in the row that it was printed before.

    A cell's content is printed in one go: text that stands above a number and was printed after it is the beginning
    of what has the number. Where rows are printed from the top, nothing changes.
    """
    raised = list(lines)
    for at, line in enumerate(raised):
        if not isinstance(line, PrintLine) or line.in_table or not line.row.cells:
            continue
        number = line.row.cells[0]
        if not number.glyphs or not _NUMBER.fullmatch(number.text):
            continue
        first = at
        while first and _is_begun(raised[first - 1], raised[first], number.glyphs[-1], number.box[2]):
            first -= 1
        top = raised[first]
        if first == at or not isinstance(top, PrintLine):
            continue
        cells = (number, *top.row.cells)
        raised[first] = replace(top, row=replace(top.row, cells=cells, box=box_around([one.box for one in cells])))
        raised[at] = replace(line, row=replace(line.row, cells=line.row.cells[1:]))
    return [line for line in raised if not isinstance(line, PrintLine) or line.row.cells]


def _is_begun(above: Printed, below: Printed, printed: int, right: float) -> bool:
    """Whether the row above belongs to a cell whose number was `printed` before it and ends at `right`."""
    if not isinstance(above, PrintLine) or above.in_table or not above.row.cells:
        return False
    glyphs = [index for cell in above.row.cells for index in cell.glyphs]
    near = below.box[1] - above.box[3] < _NEAR * above.row.size
    return near and bool(glyphs) and min(glyphs) > printed and above.box[0] >= right
