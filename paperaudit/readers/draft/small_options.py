"""Tells options with small letters, a) to d), from parts: they follow a question and carry no marks of their own."""

import re
from collections.abc import Iterator
from typing import Final

from paperaudit.readers.draft.options import Option
from paperaudit.readers.draft.outline import Entry, Outline
from paperaudit.readers.draft.row import Cell
from paperaudit.readers.draft.wording_rows import running_text

_FEWEST: Final = 3
_LONGEST: Final = 60
"""Letters of an option's text."""
_CHOICE: Final = re.compile(r"\?\s*$|\b(?:which|choose|select|correct\s+(?:answer|option))\b", re.IGNORECASE)
_COMMAND: Final = re.compile(
    r"\b(?:find|calculate|work|solve|show|prove|write|determine|simplify|factorise|expand|explain|give|state|draw|complete)\b",
    re.IGNORECASE,
)
_LETTERS: Final = "abcdef"


def settle_small_options(outline: Outline) -> None:
    """Turns parts into options of their question where they are these; marks behind the last are the question's."""
    leaves = [leaf for question in outline.questions() for leaf in question.leaves()]
    marked = sum(bool(leaf.marks) for leaf in leaves)
    if not marked:
        return
    for question in outline.questions():
        for entry in _all(question):
            if _are_options(entry):
                entry.options = tuple(_option(part) for part in entry.parts)
                entry.marks += entry.parts[-1].marks
                entry.parts = []


def _are_options(entry: Entry) -> bool:
    parts = entry.parts
    letters = "".join(part.number for part in parts)
    if len(parts) < _FEWEST or not _LETTERS.startswith(letters) or any(part.parts or part.lead for part in parts):
        return False
    texts = [running_text(part.rows) for part in parts]
    short = all(0 < len(text) <= _LONGEST and not _COMMAND.search(text) for text in texts)
    unmarked = not any(part.marks for part in parts[:-1]) and not (entry.marks and parts[-1].marks)
    return short and unmarked and bool(_CHOICE.search(running_text(entry.rows)))


def _option(part: Entry) -> Option:
    first = part.rows[0]
    doubts = tuple(doubt for row in part.rows for cell in row.cells for doubt in cell.doubts)
    return Option(part.number, Cell(running_text(part.rows), first.box, (), doubts), first.page)


def _all(entry: Entry) -> Iterator[Entry]:
    yield entry
    for part in entry.parts:
        yield from _all(part)
