"""Mends marks that rows broke, ran together or changed: "(2" above "points)", "3 + 4 (1) 1.2 5 − 2" in one stretch."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise
from typing import Final

from paperaudit.readers.draft.marks import marks_alone, marks_at_end
from paperaudit.readers.draft.numbering import numbers_at
from paperaudit.readers.draft.print_line import Printed, PrintLine
from paperaudit.readers.draft.row import Cell

_BEGUN: Final = re.compile(r"[(\[]\s*\d{1,2}\s*$")
_RUN_TOGETHER: Final = re.compile(
    r"[(\[]\d{1,2}(?:\s*(?:marks?|points?))?[)\]]\s+(?=\d{1,2}\.\d{1,2}\s|\([a-z]{1,4}\)\s|[a-z]{1,4}\)\s)"
)
_SPACE: Final = 3.0
"""Points that two stretches of a row are apart at least."""
_RAISED: Final = 0.3
"""Sizes of the print that marks stand above the row that they came to and belong to the one before it."""
_BARE_BEGUN: Final = re.compile(r"(?<=[\s.?!])\d{1,2}\s*$")
_BARE_ENDED: Final = re.compile(r"(?:marks?|points?|pts?)\.?", re.IGNORECASE)
_ENDED: Final = re.compile(r"(?:marks?|points?|pts?\.?)\s*[)\]]")


def with_whole_marks(printed: Sequence[Printed]) -> Iterator[Printed]:
    """The rows with each broken bracket of marks at the end of the row that it began on.

    What else stands on the second row stays there.
    """
    waiting: PrintLine | None = None
    for one in printed:
        if waiting is not None:
            if isinstance(one, PrintLine) and (match := _ending(waiting, one)):
                yield _with_ending(waiting, match.group())
                waiting = None
                if (rest := _without(one, match.end())) is not None:
                    yield rest
                continue
            yield waiting
            waiting = None
        if isinstance(one, PrintLine) and _is_begun(one.row.cells[-1].text):
            waiting = one
        else:
            yield one
    if waiting is not None:
        yield waiting


def _is_begun(text: str) -> bool:
    return bool(_BEGUN.search(text) or _BARE_BEGUN.search(text))


def _ending(begun: PrintLine, line: PrintLine) -> re.Match[str] | None:
    """What ends the bracket that a row began, or the word that a row with nothing else gives a bare number."""
    if _BEGUN.search(begun.row.cells[-1].text):
        return _ENDED.match(line.row.cells[0].text)
    return _BARE_ENDED.fullmatch(line.row.text.strip())


def with_marks_on_their_row(printed: Sequence[Printed]) -> Iterator[Printed]:
    """The rows with each mark that had no room on its own row, and came to stand half a row lower, back there.

    The row that it came to then has marks of its own, on itself or on a row that follows.
    """
    rows = list(printed)
    for at, (one, following) in enumerate(pairwise(rows)):
        if not isinstance(one, PrintLine) or not isinstance(following, PrintLine) or one.column != following.column:
            continue
        cells, moved = following.row.cells, following.row.cells[-1]
        if len(cells) < 2 or not marks_alone(moved.text) or marks_at_end(one.row.cells[-1].text):
            continue
        lift = (cells[0].box[1] + cells[0].box[3] - moved.box[1] - moved.box[3]) / 2
        if lift > _RAISED * following.row.size and _has_other_marks(rows[at + 1 :]):
            rows[at] = replace(one, row=replace(one.row, cells=(*one.row.cells, moved)))
            rows[at + 1] = replace(following, row=replace(following.row, cells=cells[:-1]))
    yield from rows


def _has_other_marks(rows: Sequence[Printed]) -> bool:
    """Whether the part that begins on the first of the rows has marks besides those at the end of that row."""
    first = rows[0]
    if isinstance(first, PrintLine) and marks_at_end(first.row.cells[-2].text):
        return True
    for one in rows[1:]:
        if not isinstance(one, PrintLine) or numbers_at(one.row.cells[0].text):
            return False
        if marks_at_end(one.row.cells[-1].text):
            return True
    return False


def _with_ending(line: PrintLine, ending: str) -> PrintLine:
    last = line.row.cells[-1]
    cells = (*line.row.cells[:-1], replace(last, text=f"{last.text} {ending}"))
    return replace(line, row=replace(line.row, cells=cells))


def _without(line: PrintLine, end: int) -> PrintLine | None:
    """The row without the letters up to `end` of its first cell; None where nothing else is there."""
    first, *others = line.row.cells
    rest = first.text[end:].strip()
    cells = (*([replace(first, text=rest)] if rest else []), *others)
    return replace(line, row=replace(line.row, cells=cells)) if cells else None


def with_cells_apart(printed: Sequence[Printed]) -> Iterator[Printed]:
    """The rows with a new cell behind marks that a part's number follows."""
    for one in printed:
        yield _with_cells_apart(one) if isinstance(one, PrintLine) else one


def _with_cells_apart(line: PrintLine) -> PrintLine:
    if not any(_RUN_TOGETHER.search(cell.text) for cell in line.row.cells):
        return line
    cells: list[Cell] = []
    lefts: list[tuple[float, ...]] = []
    for at, cell in enumerate(line.row.cells):
        begin = 0
        known = line.lefts[at] if at < len(line.lefts) else ()
        for match in _RUN_TOGETHER.finditer(cell.text):
            cells.append(_piece(line, at, begin, match.end()))
            lefts.append(known)
            begin = match.end()
            known = known[len("".join(cell.text[:begin].split())) :]
        cells.append(_piece(line, at, begin, len(cell.text)))
        lefts.append(known)
    return replace(line, row=replace(line.row, cells=tuple(cells)), lefts=tuple(lefts))


def _piece(line: PrintLine, at: int, begin: int, end: int) -> Cell:
    cell = line.row.cells[at]
    left = line.left_of(at, begin) if begin else cell.box[0]
    right = line.left_of(at, end) - _SPACE if end < len(cell.text) else cell.box[2]
    box = (left, cell.box[1], max(left, right), cell.box[3])
    return replace(cell, text=cell.text[begin:end].strip(), box=box)
