"""Pages as typed text: columns of letters are places, two spaces part cells, three hyphens on a row end a page."""

import re
from collections.abc import Iterator

from paperaudit.readers.draft.outline import Entry, Outline
from paperaudit.readers.draft.outline_reader import outline_of
from paperaudit.readers.draft.print_line import Column, PrintLine
from paperaudit.readers.draft.row import Cell, Row
from paperaudit.readers.draft.wording_rows import running_text

WIDE, HIGH = 5.0, 14.0
CELL = re.compile(r"\S+(?: \S+)*")
COLUMNS = 90


def lines_of(page: str) -> Iterator[PrintLine]:
    """The rows of typed pages, 90 letters wide; a row that begins with an asterisk is bold."""
    for number, text in enumerate(page.split("\n---\n"), 1):
        column = Column(number, 0, 0.0, COLUMNS * WIDE)
        for down, typed in enumerate(text.strip("\n").split("\n")):
            bold = typed.startswith("*")
            row = typed.replace("*", " ", 1) if bold else typed
            top = down * HIGH
            cells = tuple(
                Cell(found.group(), (found.start() * WIDE, top, found.end() * WIDE, top + 10))
                for found in CELL.finditer(row)
            )
            if cells:
                box = (cells[0].box[0], top, cells[-1].box[2], top + 10)
                yield PrintLine(column, Row(cells, box, top + 10, 10.0, bold))


def outlined(page: str) -> Outline:
    """The outline of typed pages."""
    return outline_of(tuple(lines_of(page)))


def told(page: str) -> list[str]:
    """Every entry as a line: number, marks or total in brackets, text."""
    return [line for question in outlined(page).questions() for line in _told(question, "")]


def _told(entry: Entry, above: str) -> Iterator[str]:
    name = entry.number if entry.number.startswith(f"{above}.") else f"{above}.{entry.number}".strip(".")
    marks = "+".join(str(one.number) for one in entry.marks)
    total = f"={entry.total.number}" if entry.total else ""
    text = running_text((*entry.lead, *entry.rows))
    yield " ".join(f"{name} [{marks}{total}] {text}".split())
    for part in entry.parts:
        yield from _told(part, name)
