"""How this draft prints its marks: at which edge, in which brackets, and which brackets are for totals."""

import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from paperaudit.readers.draft.bare_letters import places_of_letters
from paperaudit.readers.draft.marks import Marks, bare_number, marks_alone, marks_at_end
from paperaudit.readers.draft.numbering import Number, Style, heading_at, numbers_at
from paperaudit.readers.draft.print_line import PrintLine
from paperaudit.readers.draft.row import Cell

_NEAR: Final = 6.0
"""Points within which marks end at the same edge."""
_SENTENCE_ENDS: Final = re.compile(r"[.?!:;…]\s*$")
_HABIT: Final = 3
"""Marks in cells of their own that make their dress a habit."""
_MOST_BEHIND: Final = 12
"""The most marks that a bracket behind mathematics is read as."""
_BEYOND: Final = 0.2
"""Share of the rows that may reach farther than a column of bare numbers."""
_BARE_AT_END: Final = re.compile(r"(?<=[.?!:;])\s*(\d{1,2})$")
_RIGHT: Final = 0.55
"""Share of the column's width beyond which marks stand."""


@dataclass(frozen=True, slots=True)
class Habits:
    """The right edges of marks, how often each dress stands in a cell of its own or `behind` a text, that of totals.

    `letters` are the places at which letters alone number parts.
    """

    edges: tuple[float, ...] = ()
    dresses: tuple[tuple[str, int], ...] = ()
    totals: frozenset[str] = frozenset()
    behind: tuple[tuple[str, int], ...] = ()
    letters: tuple[float, ...] = ()

    def at_edge(self, right: float) -> bool:
        """Whether marks of this draft end there."""
        return any(abs(edge - right) <= _NEAR for edge in self.edges)

    def usual(self, dress: str) -> bool:
        """Whether marks are often dressed like that."""
        return dict(self.dresses).get(dress, 0) >= _HABIT

    def usual_behind(self, dress: str) -> bool:
        """Whether marks dressed like that often stand right behind the text, and seldom apart from it."""
        count = dict(self.behind).get(dress, 0)
        return count >= _HABIT and count > dict(self.dresses).get(dress, 0)


def habits_of(lines: Sequence[PrintLine]) -> Habits:
    """The habits that the marks in cells of their own show."""
    edges: Counter[float] = Counter()
    dresses: Counter[str] = Counter()
    first: Counter[str] = Counter()
    later: Counter[str] = Counter()
    behind: Counter[str] = Counter()
    since = 0
    for line in lines:
        cells = line.row.cells
        if any(_sets_off(number, cells[0].text) for number in numbers_at(cells[0].text)):
            since = 0
        marks = marks_alone(cells[-1].text)
        ending = marks or marks_at_end(cells[-1].text)
        if ending is None:
            continue
        (later if since else first)[ending.dress] += 1
        since += 1
        behind[ending.dress] += not marks
        if marks and cells[-1].box[0] > line.column.left + _RIGHT * (line.column.right - line.column.left):
            edges[round(cells[-1].box[2])] += 1
            dresses[marks.dress] += 1
    bare = _bare_edges(lines)
    if sum(bare.values()) > sum(first.values()):
        edges.update(bare)
        dresses[""] += sum(bare.values())
    of_parts = {dress for dress, count in first.items() if count > later[dress]}
    totals = {dress for dress, count in later.items() if count > first[dress] and of_parts - {dress}}
    return Habits(
        tuple(sorted(edges)),
        tuple(sorted(dresses.items())),
        frozenset(totals if of_parts else ()),
        tuple(sorted(behind.items())),
        places_of_letters(lines),
    )


def _bare_edges(lines: Sequence[PrintLine]) -> Counter[float]:
    """Right edges at which several rows end with a small number alone and beyond which hardly a row reaches."""
    edges: Counter[float] = Counter()
    for line in lines:
        last = line.row.cells[-1]
        if len(line.row.cells) > 1 and not line.in_table and bare_number(last.text) is not None:
            edges[round(last.box[2])] += 1
    rights = [line.box[2] for line in lines]
    outermost = (
        edge
        for edge, count in edges.items()
        if count >= _HABIT and sum(right > edge + _NEAR for right in rights) <= _BEYOND * len(rights)
    )
    return Counter({edge: edges[edge] for edge in outermost})


def _sets_off(number: Number, text: str) -> bool:
    return bool(number.dress) or number.style in (Style.DECIMAL, Style.WORD) or number.end == len(text)


def parted(line: PrintLine, habits: Habits) -> tuple[tuple[Cell, ...], Marks | None, Cell | None]:
    """The cells of a row without its marks, the marks, and the cell that they stood in."""
    cells = line.row.cells
    last = cells[-1]
    marks = marks_alone(last.text)
    if marks is not None and _is_marks(line, marks, last, len(cells), habits):
        return cells[:-1], marks, last
    number = bare_number(last.text)
    if number is not None and len(cells) > 1 and habits.usual("") and habits.at_edge(last.box[2]):
        return cells[:-1], Marks(number, ""), last
    bare = _BARE_AT_END.search(last.text)
    if bare and habits.usual("") and habits.at_edge(last.box[2]):
        before = replace(last, text=last.text[: bare.start()])
        return (*cells[:-1], before), Marks(int(bare.group(1)), ""), last
    found = marks_at_end(last.text)
    if marks is None and found is not None and _counts_at_end(last, found, habits):
        rest = last.text[: found.start].rstrip()
        kept = (*cells[:-1], Cell(rest, last.box, last.glyphs, last.doubts)) if rest else cells[:-1]
        return kept, found, last
    return cells, None, None


def _is_marks(line: PrintLine, marks: Marks, cell: Cell, cells: int, habits: Habits) -> bool:
    """Whether a cell that looks like marks is none of the numbers of a list."""
    if "marks" in marks.dress or marks.dress in ("[]", "/") or habits.at_edge(cell.box[2]):
        return True
    if cells == 1:
        return habits.usual(marks.dress)
    return cells > 1 and cell.box[0] > line.column.left + _RIGHT * (line.column.right - line.column.left)


def _counts_at_end(cell: Cell, marks: Marks, habits: Habits) -> bool:
    """Whether a bracket at the end of a text is marks: it says so, or stands where marks stand, or behind a stop."""
    if "marks" in marks.dress or habits.at_edge(cell.box[2]):
        return True
    before = cell.text[: marks.start]
    if heading_at(before) or any(one.end == len(before.rstrip()) for one in numbers_at(before)):
        return True
    if marks.dress == "/":
        return habits.usual("/") and bool(_SENTENCE_ENDS.search(before))
    if _SENTENCE_ENDS.search(before) or (habits.usual(marks.dress) and marks.dress == "[]"):
        return True
    # "12 (2)" is no product in a draft that prints its marks there.
    return habits.usual_behind(marks.dress) and marks.number <= _MOST_BEHIND
