"""Puts marks together again that the end of a row broke: "(2" above "points)"."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final

from paperaudit.readers.draft.print_line import Printed, PrintLine

_BEGUN: Final = re.compile(r"[(\[]\s*\d{1,2}\s*$")
_ENDED: Final = re.compile(r"(?:marks?|points?|pts?\.?)\s*[)\]]")


def with_whole_marks(printed: Sequence[Printed]) -> Iterator[Printed]:
    """The rows with each broken bracket of marks at the end of the row that it began on.

    What else stands on the second row stays there.
    """
    waiting: PrintLine | None = None
    for one in printed:
        if waiting is not None:
            if isinstance(one, PrintLine) and (match := _ENDED.match(one.row.cells[0].text)):
                yield _with_ending(waiting, match.group())
                waiting = None
                if (rest := _without(one, match.end())) is not None:
                    yield rest
                continue
            yield waiting
            waiting = None
        if isinstance(one, PrintLine) and _BEGUN.search(one.row.cells[-1].text):
            waiting = one
        else:
            yield one
    if waiting is not None:
        yield waiting


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
