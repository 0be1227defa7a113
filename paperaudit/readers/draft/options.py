"""Finds the options of a multiple-choice question: A to D in one row, in columns, in a grid, one a row."""

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from paperaudit.readers.draft.row import Cell
from paperaudit.readers.draft.wording_rows import TextRow

_LETTERS: Final = "ABCDEF"
_FEWEST: Final = 3
_CIRCLED: Final = {chr(0x24B6 + at): letter for at, letter in enumerate(_LETTERS)}
_RINGS: Final = "○◯⭘☐□❍◦oO"
_DRESSED: Final = re.compile(rf"(?:^|(?<=\s))(?:\(([A-F])\)|([A-F])[.):](?=\s|$)|([{''.join(_CIRCLED)}]))\s*")
_BARE_AT_START: Final = re.compile(r"([A-F])(?=\s|$)\s*")
_BARE: Final = re.compile(r"(?:^|(?<=\s))([A-F])\s+")
_RING: Final = re.compile(rf"^[{_RINGS}]\s+(?=\(?[A-F]\b)")
_LONGEST: Final = 120
"""Letters of an option."""


@dataclass(frozen=True, slots=True)
class Option:
    """One option with the cell that it was read from."""

    letter: str
    cell: Cell
    page: int


def options_of(rows: Sequence[TextRow]) -> tuple[tuple[TextRow, ...], tuple[Option, ...]]:
    """The rows in front of the options, and the options in the order of their letters; none where there are none.

    >>> cell = lambda text: Cell(text, (0, 0, 1, 1))
    >>> texts = ["Which one?"], ["A 40°", "B 50°"], ["C 70°"]
    >>> rows = [TextRow(tuple(map(cell, row)), 1) for row in texts]
    >>> [(one.letter, one.cell.text) for one in options_of(rows)[1]]
    [('A', '40°'), ('B', '50°'), ('C', '70°')]
    """
    for start, row in enumerate(rows):
        if not _letters_of(row.cells[0]) or _letters_of(row.cells[0])[0][0] != "A":
            continue
        found = _from(rows[start:])
        if found is not None:
            return tuple(rows[:start]), found
    return tuple(rows), ()


def _from(rows: Sequence[TextRow]) -> tuple[Option, ...] | None:
    """The options if the rows from here on hold nothing else."""
    options: dict[str, Option] = {}
    last = ""
    for row in rows:
        for cell in row.cells:
            pieces = _letters_of(cell)
            if not pieces or (pieces[0][1] > 0 and not last):
                if not last:
                    return None
                options[last] = replace(options[last], cell=_longer(options[last].cell, cell))
                continue
            if pieces[0][1] > 0:
                head = Cell(cell.text[: pieces[0][1]].strip(), cell.box, cell.glyphs, cell.doubts)
                options[last] = replace(options[last], cell=_longer(options[last].cell, head))
            for at, (letter, _, begin) in enumerate(pieces):
                if letter in options:
                    return None
                end = pieces[at + 1][1] if at + 1 < len(pieces) else len(cell.text)
                options[letter] = Option(letter, replace(cell, text=cell.text[begin:end].strip(" ;,")), row.page)
                last = letter
    letters = sorted(options)
    whole = letters == list(_LETTERS[: len(letters)]) and len(letters) >= _FEWEST
    fits = all(0 < len(one.cell.text) <= _LONGEST for one in options.values())
    return tuple(options[letter] for letter in letters) if whole and fits else None


def _letters_of(cell: Cell) -> list[tuple[str, int, int]]:
    """The letters of options in a cell: letter, where it begins, where its text begins."""
    text = cell.text
    ring = _RING.match(text)
    begin = ring.end() if ring else 0
    dressed = [
        (match.group(1) or match.group(2) or _CIRCLED[match.group(3)], match.start(), match.end())
        for match in _DRESSED.finditer(text, begin)
    ]
    if dressed:
        return _rising(dressed)
    if not _BARE_AT_START.match(text, begin):
        return []
    bare = [(match.group(1), match.start(), match.end()) for match in _BARE.finditer(text + " ", begin)]
    return _rising(bare)


def _rising(found: list[tuple[str, int, int]]) -> list[tuple[str, int, int]]:
    """The letters that go on from the first by one or, in a grid, by two."""
    kept = found[:1]
    for one in found[1:]:
        if ord(one[0]) - ord(kept[-1][0]) in (1, 2) and one[1] > kept[-1][2]:
            kept.append(one)
    return kept


def _longer(cell: Cell, more: Cell) -> Cell:
    return replace(cell, text=f"{cell.text} {more.text}".strip(), doubts=cell.doubts + more.doubts)
