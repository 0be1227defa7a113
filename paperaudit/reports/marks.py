"""The marks template: a workbook with a row a learner and a column a part, which works out the class's results."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from paperaudit.errors import Complaint, InputError
from paperaudit.model.audited import AuditedPaper
from paperaudit.reports import marks_layout as at
from paperaudit.reports import workbook_style as style
from paperaudit.reports.marks_layout import MarksLayout
from paperaudit.reports.marks_summaries import write_summaries
from paperaudit.reports.spread_rows import TotalRow, part_rows, portion_rows, total_rows
from paperaudit.reports.workbook_style import CellValue, Figure, Formula

if TYPE_CHECKING:
    from openpyxl.worksheet.worksheet import Worksheet

UNNAMED = 30
"""How many rows a template has for which no names are given."""

MOST_LEARNERS = 1000


def render(audited: AuditedPaper, names: Sequence[str]) -> bytes:
    """The template as an .xlsx file; without names it has rows for Learner 1 to Learner 30.

    Names stay as they are, in their order, repeats kept; none becomes a formula. How empty cells and
    absent learners count stands on the sheet "How to use".

    Raises InputError for more names than one class can have.
    """
    if len(names) > MOST_LEARNERS:
        raise InputError(Complaint(f"{len(names)} names, expected at most {MOST_LEARNERS}"))
    learners = names or [f"Learner {number}" for number in range(1, UNNAMED + 1)]
    questions = tuple(row for row in total_rows(audited) if row.kind == "question" and row.behind > row.first)
    layout = MarksLayout(part_rows(audited), portion_rows(audited), questions, len(learners))
    workbook = style.new_workbook(audited.paper.title)
    sheet = workbook.create_sheet(at.MARKS_SHEET)
    _write_headings(sheet, audited.paper.title, layout)
    for row, name in zip(layout.rows(), learners, strict=True):
        _write_learner(sheet, layout, row, name)
    _restrict_entries(sheet, layout)
    _lay_out(sheet, layout)
    write_summaries(workbook, layout)
    for each in workbook.worksheets:
        style.protect(each)
    return style.saved(workbook)


def _write_headings(sheet: "Worksheet", title: str, layout: MarksLayout) -> None:
    unmarked = [part.part for part in layout.parts if part.marks is None]
    hint = "Fill in the white cells. The sheet “How to use” says how empty cells and absent learners count."
    if unmarked:
        hint += f" First enter the maximum, in row {at.MAXIMUM_ROW}, of {', '.join(unmarked)}: the paper prints none."
    style.write_title(sheet, title, [hint], columns=layout.state)
    blank = [""] * 4
    above = [_question_heading(held) for held in layout.questions for _ in range(held.first, held.behind)]
    totals = ["Totals"] * len(layout.questions)
    style.write_headings(sheet, at.QUESTION_ROW, (*blank, *above, *totals, *blank))
    numbers = (f"Q{question.name}" for question in layout.questions)
    before, after = ("No.", "Learner", "Absent", "All marked"), ("Total", "Final total", "Per cent", "State")
    style.write_headings(sheet, at.PART_ROW, (*before, *(part.part for part in layout.parts), *numbers, *after))
    row = at.MAXIMUM_ROW
    added = [Formula(f"=SUM({layout.of_question(question, row)})") for question in layout.questions]
    whole = Formula(f"=SUM({layout.across(row)})" if layout.parts else "=0")
    marks: list[CellValue] = [part.marks for part in layout.parts]
    cells = style.write_row(sheet, row, ("", "Maximum", "", "", *marks, *added, whole, whole, Figure(1, "0%_0"), ""))
    style.make_total(cells)
    style.place_in_cell(cells[at.FIRST_PART - 1 : layout.last_part], "center")
    for cell, part in zip(cells[at.FIRST_PART - 1 :], layout.parts, strict=False):
        if part.marks is None:
            style.make_entry([cell])
    _merge_question_headings(sheet, layout)


def _question_heading(question: TotalRow) -> str:
    """The heading over a question's parts, short where it stands over a single one."""
    return f"Q{question.name}" if question.behind - question.first == 1 else f"Question {question.name}"


def _merge_question_headings(sheet: "Worksheet", layout: MarksLayout) -> None:
    spans = [(at.FIRST_PART + held.first, at.FIRST_PART + held.behind - 1) for held in layout.questions]
    if layout.questions:
        spans.append((layout.first_question, layout.total - 1))
    for first, last in spans:
        if last > first:
            sheet.merge_cells(start_row=at.QUESTION_ROW, end_row=at.QUESTION_ROW, start_column=first, end_column=last)


def _write_learner(sheet: "Worksheet", layout: MarksLayout, row: int, name: str) -> None:
    entries: list[CellValue] = [None] * (2 + len(layout.parts))
    number = style.write_row(sheet, row, (row - at.FIRST_LEARNER + 1,))
    cells = style.write_row(sheet, row, (name, *entries), at.LEARNER)
    style.make_entry(cells)
    style.place_in_cell([*number, *cells[1:]], "center")
    marks, state = layout.across(row), layout.cell(row, layout.state)
    totals = [_so_far(layout, layout.of_question(question, row), row) for question in layout.questions]
    final, most = layout.cell(row, layout.final), layout.cell(at.MAXIMUM_ROW, layout.total)
    computed = (
        *totals,
        _so_far(layout, marks, row) if layout.parts else "",
        Formula(f'=IF({state}="{at.FINISHED}",SUM({marks}),"")' if layout.parts else '=""'),
        Formula(f'=IF(OR({final}="",{most}=0),"",{final}/{most})', style.PERCENT),
        Formula(_state(layout, row) if layout.parts else '=""'),
    )
    worked_out = style.write_row(sheet, row, computed, layout.first_question)
    style.make_computed([*number, *worked_out])
    style.place_in_cell(worked_out[-1:], "left")


def _so_far(layout: MarksLayout, marks: str, row: int) -> Formula:
    """The sum of what is marked; empty for a learner who is absent or has no mark there yet."""
    absent, state = layout.cell(row, at.ABSENT), layout.cell(row, layout.state)
    none_yet = f'AND(COUNT({marks})=0,{state}<>"{at.FINISHED}")'
    return Formula(f'=IF(OR({absent}="yes",{none_yet}),"",SUM({marks}))')


def _state(layout: MarksLayout, row: int) -> str:
    """How far a learner's marking is, or what is wrong with the row; texts go first, or MOD would fail on them."""
    marks, most = layout.across(row), layout.across(at.MAXIMUM_ROW)
    name, absent, complete = (layout.cell(row, column) for column in (at.LEARNER, at.ABSENT, at.COMPLETE))
    count = len(layout.parts)
    unused = f'AND(LEN({name})=0,COUNTA({marks})=0,{absent}="",{complete}="")'
    wrong = f"SUMPRODUCT(({marks}>{most})+({marks}<0)+(MOD({marks},1)>0))>0"
    progress = (
        f'IF(OR(COUNT({marks})={count},{complete}="yes"),"{at.FINISHED}",'
        f'IF(COUNT({marks})=0,"not {at.PARTLY}",COUNT({marks})&" of {count} {at.PARTLY}"))'
    )
    present = f'IF(COUNTA({marks})>COUNT({marks}),"{at.NO_NUMBER}",IF({wrong},"{at.OUT_OF_RANGE}",{progress}))'
    away = f'IF(COUNTA({marks})>0,"{at.ABSENT_WITH_MARKS}","absent")'
    return f'=IF({unused},"",IF({absent}="yes",{away},{present}))'


def _restrict_entries(sheet: "Worksheet", layout: MarksLayout) -> None:
    for column in (at.ABSENT, at.COMPLETE):
        style.allow_only(sheet, layout.column(column), choices=("yes",))
    for column, part in enumerate(layout.parts, start=at.FIRST_PART):
        most = layout.cell(at.MAXIMUM_ROW, column) if part.marks is None else str(part.marks)
        style.allow_only(sheet, layout.column(column), most=most)
        if part.marks is None:
            style.allow_only(sheet, layout.cell(at.MAXIMUM_ROW, column), most="1000")


def _lay_out(sheet: "Worksheet", layout: MarksLayout) -> None:
    wrong = ",".join(
        f'${layout.letter(layout.state)}{at.FIRST_LEARNER}="{state}"'
        for state in (at.NO_NUMBER, at.OUT_OF_RANGE, at.ABSENT_WITH_MARKS)
    )
    style.stress(sheet, layout.column(layout.state), f"OR({wrong})")
    widths = [5, 26, 9, 9, *[7.5] * (len(layout.parts) + len(layout.questions)), 8, 8, 9, 22]
    sheet.freeze_panes = sheet.cell(at.FIRST_LEARNER, at.ABSENT).coordinate
    style.lay_out(sheet, widths, f"{at.QUESTION_ROW}:{at.MAXIMUM_ROW}", name_columns=2)
