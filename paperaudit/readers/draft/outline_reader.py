"""Reads rows as an outline: sections, questions, parts, with their text, marks and totals."""

import re
from collections.abc import Collection, Sequence
from dataclasses import replace
from typing import Final

from paperaudit.readers.draft.bare_letters import bare_letter_at
from paperaudit.readers.draft.broken_rows import mended
from paperaudit.readers.draft.first_question import first_question, lead_before
from paperaudit.readers.draft.habits import Habits, habits_of, parted
from paperaudit.readers.draft.leads import Leads, settle_leads
from paperaudit.readers.draft.marks import Marks, marks_in_front, total_of
from paperaudit.readers.draft.marks import Total as PrintedTotal
from paperaudit.readers.draft.notices import is_caption, is_closing, is_end, is_instruction, is_prompt
from paperaudit.readers.draft.number_stands import lists_begun, runs_on, stand_of
from paperaudit.readers.draft.numbering import (
    Number,
    Style,
    bracketed_alone,
    heading_at,
    numbers_at,
    question_again,
)
from paperaudit.readers.draft.outline import DraftSection, Entry, Outline, Placed
from paperaudit.readers.draft.print_line import Printed, PrintLine, PrintTable
from paperaudit.readers.draft.row import Cell
from paperaudit.readers.draft.sequence import Level, Stand, Step, opened, step_of
from paperaudit.readers.draft.small_options import settle_small_options
from paperaudit.readers.draft.wording_rows import TextRow

_OUTDENT: Final = 4.0
"""Points by which a row must stand left of a part's text to be none of it."""
_CONTINUED: Final = re.compile(r"\W*\(?\s*(?:continued|cont(?:inue)?d?\.?)\W*$", re.IGNORECASE)


def outline_of(printed: Sequence[Printed]) -> Outline:
    """The outline that rows and tables in reading order make."""
    printed = mended(printed)
    lines = [one for one in printed if isinstance(one, PrintLine)]
    start = first_question(printed)
    builder = _Builder(habits_of(lines), {id(lines[at]) for at in lists_begun(lines)})
    builder.outline.columns = list(dict.fromkeys(one.column for one in printed))
    lead = lead_before(printed, start)
    for at, one in enumerate(printed):
        if lead <= at < start and isinstance(one, PrintLine):
            builder.lead(one)
        elif at < start:
            builder.outline.cover += [one] if isinstance(one, PrintLine) else one.lines()
        else:
            builder.take(one)
    outline = builder.done()
    settle_small_options(outline)
    for question in outline.questions():
        settle_leads(question)
    return outline


class _Builder:
    """Takes rows one after the other and keeps what is open."""

    def __init__(self, habits: Habits, lists: Collection[int]) -> None:
        self.outline = Outline()
        self._habits = habits
        self._lists = lists
        self._levels: tuple[Level, ...] = ()
        self._open: list[Entry] = []
        self._leads = Leads()
        self._before: PrintLine | None = None
        self._closed = False

    def take(self, one: Printed) -> None:
        """The next row or table; behind the heading of a formula sheet nothing more is taken."""
        if isinstance(one, PrintTable):
            if self._open and not self._closed:
                self._open[-1].tables.append(one)
            return
        if self._open and is_closing(one.row.text):
            self._closed = True
        if self._closed:
            return
        if is_caption(one.row.text):
            self.outline.captions.append((one.row.text[:100], one.page, one.box))
            return
        if not is_end(one.row.text) and not self._heading(one) and not self._total(one):
            self._row(one)
        self._before = one

    def lead(self, line: PrintLine) -> None:
        """A row before the first question that belongs to it."""
        self._leads.add(0, _text_row(line, line.row.cells))

    def done(self) -> Outline:
        """The outline with what was still open closed."""
        self._leave_leads(last=True)
        return self.outline

    def _heading(self, line: PrintLine) -> bool:
        cells, marks, cell = parted(line, self._habits)
        heading = heading_at(" ".join(one.text for one in cells)) if cells else None
        if heading is None:
            return False
        self._leave_leads(last=True)
        total = _placed(marks, line, cell) if marks and cell else None
        self.outline.sections.append(DraftSection(heading.name, total, line.page, line.box))
        self._open, self._levels = [], self._levels[:1]
        return True

    def _total(self, line: PrintLine) -> bool:
        """Whether the row is a total; it goes to what it is for."""
        cells = line.row.cells
        total = total_of(line.row.text) or (total_of(cells[-1].text) if len(cells) > 1 else None)
        if total is None:
            return False
        if not total_of(line.row.text):
            self._row(PrintLine(line.column, replace(line.row, cells=cells[:-1]), line.answer_lines, line.in_table))
        self._give(total, Placed(total.number, line.page, line.box))
        return True

    def _give(self, total: PrintedTotal, placed: Placed) -> None:
        if total.whose == "paper":
            self.outline.total = placed
        elif total.whose == "section" and self.outline.sections:
            self.outline.sections[-1].total = placed
        elif total.whose == "question" and total.name:
            for question in self.outline.questions()[::-1]:
                if question.number == total.name:
                    question.total = placed
                    return
            if self._open:
                self._open[0].doubts.append(f"a total for question {total.name} stands here")
        elif self._open:
            self.outline.above.append((self._open[0], placed))

    def _row(self, line: PrintLine) -> None:
        cells, marks, cell = parted(line, self._habits)
        if is_prompt(" ".join(one.text for one in cells), line.led):
            cells = ()
        text: list[Cell] = []
        at = 0
        while at < len(cells):
            at = self._numbers(line, cells, at, text)
        if text:
            self._text(line, tuple(text))
        elif self._open and line.answer_lines:
            self._open[-1].answer_lines += line.answer_lines
        if marks is not None and cell is not None:
            self._mark(marks, _placed(marks, line, cell), not cells, text)

    def _numbers(self, line: PrintLine, cells: Sequence[Cell], at: int, text: list[Cell]) -> int:
        """Takes the numbers that a cell begins with, then its text; returns which cell comes next."""
        cell = cells[at]
        rest, offset, inner = cell.text, 0, at > 0 and bool(text)
        first_in_row = not text
        while rest:
            if offset == 0 and self._open and (again := question_again(rest, self._levels[0].value[0])):
                offset += again
                rest = rest[again:]
            readings = numbers_at(rest) or (bracketed_alone(rest) if at + 1 < len(cells) else ())
            bare = not (readings or at) and bool(self._open)
            lettered = bare_letter_at(rest, line, offset, self._habits.letters) if bare else ()
            readings = readings or lettered
            edge = line.column.left + self._open[-1].stand.text if self._open else None
            flows = at == offset == 0 and runs_on(self._before, line, self._habits, edge, id(line) in self._lists)
            stand = stand_of(line, cells, at, offset, len(rest) - max((n.end for n in readings), default=0), flows)
            if inner or (not first_in_row):
                stand = replace(stand, inner=True)
                readings = tuple(one for one in readings if one.dress or lettered)
            stand = replace(stand, alone=True, flows=False) if lettered else stand
            step = self._step(readings, stand) if readings else None
            if step is None or (not first_in_row and (step.irregular or step.depth == 0)):
                break
            if _CONTINUED.match(rest[step.number.end :]):
                return len(cells)
            if text:
                self._text(line, tuple(text))
                text.clear()
            self._open_entry(line, step, stand, cell)
            offset += step.number.end
            trimmed = rest[step.number.end :].lstrip(" .:—–-" if step.number.style is Style.WORD else " ")
            offset += len(rest) - step.number.end - len(trimmed)
            if found := marks_in_front(trimmed):
                self._open[-1].marks.append(_placed(found[0], line, cell))
                offset += len(trimmed) - len(found[1])
                trimmed = found[1]
            rest, inner, first_in_row = trimmed, True, True
        if rest:
            text.append(replace(cell, text=rest))
        return at + 1

    def _step(self, readings: Sequence[Number], stand: Stand) -> Step | None:
        """Where a number goes on; behind the heading of a section questions go on or start again."""
        if self._open:
            return step_of(self._levels, readings, stand)
        step = step_of((), readings, stand)
        for number in readings if step is None else ():
            # The dress and the place of numbers may change from section to section.
            levels = [replace(level, dress=number.dress, stand=stand) for level in self._levels]
            step = step or step_of(levels, [number], stand)
        return step if step is not None and step.depth == 0 else None

    def _open_entry(self, line: PrintLine, step: Step, stand: Stand, cell: Cell) -> None:
        number, depth = step.number, step.depth
        if number.style is Style.DECIMAL and depth == 0:
            # The questions have no headings of their own.
            self._leave_leads()
            self._start(0, str(number.value[0]), line, stand, cell)
            self._levels = (Level(Style.DECIMAL, "", number.value[:1], stand),)
            depth = 1
        elif depth == 0:
            self._leave_leads()
        self._start(depth, number.printed, line, stand, cell)
        self._levels = opened(self._levels, replace(step, depth=depth), stand)

    def _start(self, depth: int, number: str, line: PrintLine, stand: Stand, cell: Cell) -> None:
        self._leave(self._leads.left_below(depth))
        lead = self._leads.before(depth, number)
        entry = Entry(number, line.column, cell.box, stand, lead)
        del self._open[depth:]
        if self._open:
            self._open[-1].parts.append(entry)
        else:
            if not self.outline.sections:
                self.outline.sections.append(DraftSection())
            self.outline.sections[-1].questions.append(entry)
        self._open.append(entry)

    def _text(self, line: PrintLine, cells: tuple[Cell, ...]) -> None:
        row = _text_row(line, cells)
        if not self._open:
            if self.outline.sections and not is_instruction(row.text):
                self.outline.sections[-1].rows.append(row)
            return
        depth = self._depth_of(row, line)
        if depth == len(self._open):
            current = self._open[-1]
            if not current.rows and line.row.baseline > current.box[3]:
                # The number stands alone above its text.
                current.stand = replace(current.stand, text=min(current.stand.text, row.across))
            self._open[-1].rows.append(row)
            self._open[-1].answer_lines += line.answer_lines
            return
        self._leads.add(depth, replace(row, lead=True))

    def _depth_of(self, row: TextRow, line: PrintLine) -> int:
        """How many open entries a row of text is below; fewer than are open where it leads on to further parts."""
        current = self._open[-1]
        same = line.column.rank == current.column.rank or line.column.page != current.column.page
        if not current.closed or line.in_table or not same or len(self._open) < 1:
            return len(self._open)
        depth = len(self._open)
        while depth and row.across < self._open[depth - 1].stand.text - _OUTDENT:
            if row.across > self._open[depth - 1].stand.left + _OUTDENT:
                break
            depth -= 1
        return depth

    def _leave_leads(self, last: bool = False) -> None:
        """Rows that no further part came behind go before the next questions, or stay with the last part."""
        self._leave(self._leads.left_below(0))
        if last:
            self._leave(self._leads.close())
        else:
            self._leads.next_question()

    def _leave(self, rows: Sequence[TextRow]) -> None:
        if self._open:
            self._open[-1].rows += rows

    def _mark(self, marks: Marks, placed: Placed, alone: bool, text: Sequence[Cell]) -> None:
        if not self._open:
            if self.outline.sections and self.outline.sections[-1].total is None:
                self.outline.sections[-1].total = placed
            return
        question, leaf = self._open[0], self._open[-1]
        beside = self._open[-2].parts[:-1] if len(self._open) > 1 else []
        if alone and len(beside) > 1 and not leaf.marks and not any(part.marks or part.parts for part in beside):
            # Marks for several parts together stand under the last of them.
            self._open[-2].marks.append(placed)
            return
        if alone and marks.dress in self._habits.totals and (question.parts or leaf.marks):
            question.total = placed
            return
        if leaf.marks and alone and len(question.leaves()) > 1:
            inside = sum(one.number for part in question.leaves() for one in part.marks)
            if inside == placed.number:
                question.total = placed
                return
        row = TextRow(tuple(text), placed.page) if text else None
        placed.label = bool(row and row.equations) and placed.number <= 4 and marks.dress == "()"
        leaf.marks.append(placed)
        leaf.closed = bool(leaf.rows)


def _text_row(line: PrintLine, cells: tuple[Cell, ...]) -> TextRow:
    return TextRow(cells, line.page, cells[0].box[0] - line.column.left, line.answer_lines)


def _placed(marks: Marks, line: PrintLine, cell: Cell) -> Placed:
    return Placed(marks.number, line.page, cell.box, marks.dress)
