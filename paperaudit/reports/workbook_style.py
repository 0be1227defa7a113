"""How every workbook looks and is written: text that stays text, headings, widths, pages, fixed bytes."""

import io
import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cache
from math import ceil
from typing import TYPE_CHECKING, Literal, TypeAlias

from paperaudit.reports.reproducible_zip import reproducible
from paperaudit.reports.workbook_pages import set_pages

if TYPE_CHECKING:
    from openpyxl import Workbook
    from openpyxl.cell.cell import Cell, MergedCell
    from openpyxl.styles import Alignment, Border, Font, PatternFill
    from openpyxl.worksheet.worksheet import Worksheet

INK = "FF1F2D3D"
GREY = "FF55636F"
PALE = "FFEEF2F6"
RULE = "FFB8C4D0"
TINT = "FFFFE8C7"

# Each leaves the width of a digit free on the right; an indent there is lost in some office programs.
WHOLE = "0_0"
PERCENT = "0.0%_0"
SHARED_MARKS = "0.00_0"
POINTS_OFF = "+0.0_0;-0.0_0;0.0_0"
MARKS_OFF = "+0_0;-0_0;0_0"

_SIZE = 10
_LINE = 16.0  # points, for one line of that size with air
_HIGHEST = 400.0  # a row can be 409 points high
_LONGEST_TEXT = 32_000  # a cell holds 32 767 characters
_NOT_IN_XML = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\ud800-\udfff\ufffe\uffff]")


@dataclass(frozen=True, slots=True)
class Formula:
    """A formula of our own, with its "=", and how its value is shown."""

    text: str
    shown: str = WHOLE


@dataclass(frozen=True, slots=True)
class Figure:
    """A number, and how it is shown."""

    value: float
    shown: str


CellValue: TypeAlias = str | int | Figure | Formula | None
"""What a cell may hold. A plain `str` is always a text, whatever it begins with."""


def new_workbook(title: str) -> "Workbook":
    """A workbook without sheets, which computes its formulas when it is opened."""
    from openpyxl import Workbook

    workbook = Workbook()
    workbook.remove(workbook.worksheets[0])
    workbook.properties.creator = "paperaudit"
    workbook.properties.title = as_cell_text(title)
    workbook.calculation.fullCalcOnLoad = True
    return workbook


def saved(workbook: "Workbook") -> bytes:
    """The workbook's file; the same workbook gives the same bytes."""
    written = io.BytesIO()
    workbook.save(written)
    return reproducible(written.getvalue())


def as_cell_text(text: str) -> str:
    """A text with line ends as XML reads them, with � for what no cell may hold, cut to a cell's length."""
    return _NOT_IN_XML.sub("\ufffd", text.replace("\r\n", "\n").replace("\r", "\n"))[:_LONGEST_TEXT]


def write_cell(sheet: "Worksheet", row: int, column: int, value: CellValue) -> "Cell":
    """Writes one cell in the plain look: texts to the left, numbers to the right."""
    from openpyxl.cell.cell import Cell

    cell = sheet.cell(row, column)
    assert isinstance(cell, Cell), "merged cells are written before they are merged"
    if isinstance(value, str):
        cell.value = as_cell_text(value)
        cell.data_type = "s"
        cell.quotePrefix = True  # or an office program makes a formula of "=1+1" at the next edit
    elif isinstance(value, Formula | Figure):
        cell.value = value.text if isinstance(value, Formula) else value.value
        cell.number_format = value.shown
    else:
        cell.value = value
        cell.number_format = WHOLE
    cell.font = _font()
    cell.border = _ruled()
    cell.alignment = _aligned("left" if isinstance(value, str) else "right")
    return cell


def write_row(sheet: "Worksheet", row: int, values: Iterable[CellValue], first_column: int = 1) -> "list[Cell]":
    """Writes cells side by side."""
    return [write_cell(sheet, row, column, value) for column, value in enumerate(values, start=first_column)]


def write_headings(sheet: "Worksheet", row: int, headings: Iterable[str], first_column: int = 1) -> None:
    """Writes a row of column headings, white on dark and bold."""
    for cell in write_row(sheet, row, headings, first_column):
        make_heading(cell)


def write_title(sheet: "Worksheet", title: str, lines: Sequence[str], columns: int) -> int:
    """Writes a sheet's title and the lines under it across `columns`; returns the row that comes after a gap."""
    for row, text in enumerate((title, *lines), start=1):
        write_note(sheet, row, text, columns)
    sheet.cell(1, 1).font = _font(size=15, bold=True)
    return len(lines) + 3


def write_note(sheet: "Worksheet", row: int, text: str, columns: int) -> None:
    """Writes a paragraph in grey, without a frame, across the first `columns`."""
    from openpyxl.styles import Border

    cell = write_cell(sheet, row, 1, text)
    cell.font = _font(colour=GREY)
    cell.border = Border()
    if columns > 1:
        sheet.merge_cells(start_row=row, start_column=1, end_row=row, end_column=columns)


def make_heading(cell: "Cell") -> None:
    """Gives a cell the look of a heading."""
    cell.font = _font(bold=True, colour="FFFFFFFF")
    cell.fill = _filled(INK)
    cell.alignment = _aligned("center")


def make_total(cells: Iterable["Cell"]) -> None:
    """Gives cells the look of a total: bold on a pale ground."""
    for cell in cells:
        cell.font = _font(bold=True)
        cell.fill = _filled(PALE)


def make_computed(cells: Iterable["Cell"]) -> None:
    """Gives cells the pale ground of what the workbook computes."""
    for cell in cells:
        cell.fill = _filled(PALE)


def make_entry(cells: Iterable["Cell"]) -> None:
    """Makes cells the white ones that a teacher fills in, also on a protected sheet."""
    from openpyxl.styles import Protection

    for cell in cells:
        cell.fill = _filled("FFFFFFFF")
        cell.protection = Protection(locked=False)


def allow_only(sheet: "Worksheet", cells: str, most: str = "", choices: Sequence[str] = ()) -> None:
    """Lets cells be empty or hold a whole number from 0 to `most` (a number or a cell), or one of `choices`."""
    from openpyxl.worksheet.datavalidation import DataValidation

    if choices:
        rule = DataValidation(type="list", formula1='"' + ",".join(choices) + '"')
        rule.error = f"Choose {' or '.join(choices)}, or leave the cell empty."
    else:
        rule = DataValidation(type="whole", operator="between", formula1="0", formula2=most)
        limit = f" to {most}" if most.isdigit() else " to the maximum above"
        rule.error = f"A whole number from 0{limit}, or leave the cell empty."
    rule.allow_blank = True
    rule.showErrorMessage = True
    rule.errorTitle = "Not one of the entries"
    rule.add(cells)
    sheet.add_data_validation(rule)


def protect(sheet: "Worksheet") -> None:
    """Protects a sheet without a password; columns and rows may still be sized."""
    sheet.protection.sheet = True
    sheet.protection.formatColumns = False
    sheet.protection.formatRows = False


def place_in_cell(cells: Iterable["Cell"], horizontal: Literal["left", "center", "right"]) -> None:
    """Moves the contents of cells to a side or to the middle."""
    for cell in cells:
        cell.alignment = _aligned(horizontal)


def stress(sheet: "Worksheet", cells: str, test: str) -> None:
    """Shows cells in bold, underlined, on a tint, where a formula on the first of them holds.

    The cells' own words have to say the same: printed in grey the tint is lost.
    """
    from openpyxl.formatting.rule import Rule
    from openpyxl.styles import Font
    from openpyxl.styles.differential import DifferentialStyle

    look = DifferentialStyle(font=Font(bold=True, underline="single"), fill=_filled(TINT))
    rule = Rule(type="expression", dxf=look, formula=[test])
    sheet.conditional_formatting.add(cells, rule)


def lay_out(sheet: "Worksheet", widths: Sequence[float], heading_rows: str, name_columns: int = 0) -> None:
    """Sets a written sheet's column widths in characters, its row heights, and its printed pages."""
    from openpyxl.utils import get_column_letter

    for column, width in enumerate(widths, start=1):
        sheet.column_dimensions[get_column_letter(column)].width = width
    _fit_heights(sheet, widths)
    set_pages(sheet, widths, heading_rows, name_columns)
    sheet.sheet_view.showGridLines = False


def _fit_heights(sheet: "Worksheet", widths: Sequence[float]) -> None:
    """Makes each row high enough for its wrapped texts; not every office program does so by itself."""
    last = {(area.min_row, area.min_col): area.max_col for area in sheet.merged_cells.ranges}
    for row, cells in enumerate(sheet.iter_rows(), start=1):
        heights = [
            _height(cell, sum(widths[column - 1 : last.get((row, column), column)]))
            for column, cell in enumerate(cells, start=1)
            if cell.data_type == "s" and not cell.alignment.textRotation
        ]
        sheet.row_dimensions[row].height = min(max(heights, default=_LINE), _HIGHEST)


def _height(cell: "Cell | MergedCell", width: float) -> float:
    """The height in points of a text that is wrapped to a width in digits of the usual size; letters are narrower."""
    scale = float(cell.font.size) / _SIZE
    room = max(1.1 * width - 2, 4) / (scale * (1.1 if cell.font.bold else 1))
    lines = sum(max(ceil(len(line) / room), 1) for line in str(cell.value).split("\n"))
    return lines * (_LINE - 3) * scale + 3


@cache
def _font(size: int = _SIZE, bold: bool = False, colour: str = INK) -> "Font":
    from openpyxl.styles import Font

    return Font(name="Arial", size=size, bold=bold, color=colour)


@cache
def _aligned(horizontal: Literal["left", "center", "right"]) -> "Alignment":
    from openpyxl.styles import Alignment

    return Alignment(horizontal=horizontal, vertical="center", wrap_text=True, indent=int(horizontal == "left"))


@cache
def _filled(colour: str) -> "PatternFill":
    from openpyxl.styles import PatternFill

    return PatternFill("solid", start_color=colour, end_color=colour)


@cache
def _ruled() -> "Border":
    from openpyxl.styles import Border, Side

    side = Side(style="thin", color=RULE)
    return Border(left=side, right=side, top=side, bottom=side)
