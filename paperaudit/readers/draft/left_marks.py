"""Brings marks that a draft prints in its left margin, before the numbers, behind the text that they are for."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise
from typing import Final

from paperaudit.readers.draft.marks import bare_number, marks_alone
from paperaudit.readers.draft.numbering import bracketed_alone, numbers_at
from paperaudit.readers.draft.print_line import Printed, PrintLine
from paperaudit.readers.draft.row import Cell

_HABIT: Final = 3
"""Rows with marks before their number that make it a habit."""
_LEFT_OF: Final = 6.0
"""Points that a column of bare marks stands left of all other rows."""
_MOST: Final = 12
"""The most marks that a bare number is read as."""
_LEADING: Final = 1.9
"""Sizes of the print from a row to the next of the same part."""
_TOGETHER: Final = re.compile(r"([(\[]\s?\d{1,2}(?:\s*(?:marks?|points?|pts?))?\s?[)\]])\s+(?=\S)")


def with_marks_behind(printed: Sequence[Printed]) -> Iterator[Printed]:
    """The rows with marks of the left margin at the end of their text, where the draft has them there.

    Three rows at least must have marks before their number, and more than have marks at their end.
    """
    split = [_apart(one) if isinstance(one, PrintLine) else one for one in printed]
    lines = [one for one in split if isinstance(one, PrintLine)]
    worded = sum(_marks_in_front(line, bare=False) is not None for line in lines)
    bare = worded < _HABIT and _has_bare_column(lines)
    behind = sum(marks_alone(line.row.cells[-1].text) is not None for line in lines if len(line.row.cells) > 1)
    if not bare and (worded < _HABIT or worded <= behind):
        yield from printed
        return
    yield from _moved(split, bare)


def _moved(printed: Sequence[Printed], bare: bool) -> Iterator[Printed]:
    held: list[PrintLine] = []
    number: int | None = None
    mark: Cell | None = None
    for one in printed:
        found = _marks_in_front(one, bare) if isinstance(one, PrintLine) else None
        if held and (found is not None or not _goes_on(held[-1], one)):
            yield from _with_mark(held, mark, number)
            held, mark = [], None
        if isinstance(one, PrintLine) and found is not None:
            first, *others = one.row.cells
            mark, number = first, found
            rest = replace(one, row=replace(one.row, cells=tuple(others)), lefts=one.lefts[1:])
            held.append(rest)
        elif held and isinstance(one, PrintLine):
            held.append(one)
        else:
            yield one
    yield from _with_mark(held, mark, number)


def _with_mark(held: Sequence[PrintLine], mark: Cell | None, number: int | None) -> Iterator[PrintLine]:
    """The rows of a part, its marks behind the last of them."""
    yield from held[:-1]
    if held and mark is not None:
        last = held[-1]
        cells = (*last.row.cells, replace(mark, text=f"[{number} marks]"))
        yield replace(last, row=replace(last.row, cells=cells))


def _goes_on(before: PrintLine, one: Printed) -> bool:
    """Whether a row is the next of the same part."""
    if not isinstance(one, PrintLine) or one.column != before.column or _begins(one.row.cells):
        return False
    near = 0 < one.row.baseline - before.row.baseline < _LEADING * max(one.row.size, before.row.size)
    return near and before.box[0] <= one.box[0] + 1


def _begins(cells: Sequence[Cell]) -> bool:
    """Whether cells begin with the number of a question or a part."""
    return bool(numbers_at(cells[0].text)) or (len(cells) > 1 and bool(bracketed_alone(cells[0].text)))


def _marks_in_front(line: PrintLine, bare: bool) -> int | None:
    """The marks in the first cell of a row whose next one begins with a number."""
    cells = line.row.cells
    if len(cells) < 2 or line.in_table or not _begins(cells[1:]):
        return None
    if bare:
        number = bare_number(cells[0].text)
        return number if number and number <= _MOST else None
    marks = marks_alone(cells[0].text)
    return marks.number if marks else None


def _has_bare_column(lines: Sequence[PrintLine]) -> bool:
    """Whether small numbers stand alone left of everything else, and do not count the questions."""
    found = [(line, number) for line in lines if (number := _marks_in_front(line, bare=True)) is not None]
    numbers = [number for _, number in found]
    if len(found) < _HABIT or all(here < there for here, there in pairwise(numbers)):
        return False
    own = {id(line) for line, _ in found}
    edge = max(line.row.cells[0].box[2] for line, _ in found)
    return all(line.box[0] > edge + _LEFT_OF for line in lines if id(line) not in own)


def _apart(line: PrintLine) -> PrintLine:
    """The row with marks that a number follows in one stretch as cells of their own."""
    first, *others = line.row.cells
    match = None if line.in_table else _TOGETHER.match(first.text)
    if match is None or not numbers_at(first.text[match.end() :]):
        return line
    left = line.left_of(0, match.end())
    front = replace(first, text=match.group(1), box=(first.box[0], first.box[1], left - 1, first.box[3]))
    rest = replace(first, text=first.text[match.end() :], box=(left, *first.box[1:]))
    known = line.lefts[0] if line.lefts else ()
    lefts = (known, known[len("".join(match.group(1).split())) :], *line.lefts[1:]) if line.lefts else ()
    return replace(line, row=replace(line.row, cells=(front, rest, *others)), lefts=lefts)
