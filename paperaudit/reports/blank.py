"""The blank workbook that a setter fills in: one row a part, an example row, notes and lists to pick from."""

from typing import TYPE_CHECKING, Final

from paperaudit.readers.workbook_cells import MOST_ROWS
from paperaudit.readers.workbook_columns import COLUMNS, COVER_LINES, COVER_SHEET, NOTES_SHEET, PARTS_SHEET, Column
from paperaudit.reports.workbook_style import (
    lay_out,
    make_computed,
    make_total,
    new_workbook,
    place_in_cell,
    saved,
    write_cell,
    write_headings,
    write_row,
)
from paperaudit.resources import shipped

if TYPE_CHECKING:
    from openpyxl.worksheet.datavalidation import DataValidation
    from openpyxl.worksheet.worksheet import Worksheet

_LISTS: Final = {
    "Reasons": ("required", "not required"),
    "Level": ("knowledge", "routine", "complex", "problem solving"),
}
_WHOLE: Final = ("Marks", "Section total", "Question total")
_NUMBERS_ON_COVER: Final = ("minutes", "total", "questions", "pages")
_SCHEME_FOLDERS: Final = {"marking": "conventions", "reasons": "reasons", "blueprint": "blueprints"}
_FILLED_ROWS: Final = 150
"""Rows that are laid out for filling in; more may be added below."""
_LONGEST_PROMPT: Final = 250  # Excel shows 255 characters


def blank_workbook() -> bytes:
    """The workbook's bytes, the same at every call: the sheets Paper, Cover and Notes."""
    workbook = new_workbook("A paper, one row a part")
    _lay_out_parts(workbook.create_sheet(PARTS_SHEET))
    _lay_out_cover(workbook.create_sheet(COVER_SHEET))
    _lay_out_notes(workbook.create_sheet(NOTES_SHEET))
    return saved(workbook)


def _lay_out_parts(sheet: "Worksheet") -> None:
    """Headings, the example row, cells that keep 1/2 from becoming a date, and the lists."""
    from openpyxl.utils import get_column_letter

    write_headings(sheet, 1, (column.heading for column in COLUMNS))
    example = [_value(column.example, column.heading in _WHOLE) for column in COLUMNS]
    for row in range(2, _FILLED_ROWS + 2):
        cells = write_row(sheet, row, example if row == 2 else [None] * len(COLUMNS))
        place_in_cell(cells, "left")
        for cell, column in zip(cells, COLUMNS, strict=True):
            cell.number_format = "0" if column.heading in _WHOLE else "@"
        if row == 2:
            make_computed(cells)
    for at, column in enumerate(COLUMNS, start=1):
        sheet.add_data_validation(_entry_rule(column, get_column_letter(at)))
    lay_out(sheet, [column.width for column in COLUMNS], "1:1", name_columns=3)
    sheet.freeze_panes = "D2"


def _value(example: str, whole: bool) -> str | int | None:
    return int(example) if whole and example else example or None


def _entry_rule(column: Column, letter: str) -> "DataValidation":
    """The note that shows when a cell of the column is picked, with its list or its range of numbers."""
    from openpyxl.worksheet.datavalidation import DataValidation

    if column.heading in _LISTS:
        rule = DataValidation(type="list", formula1=_list(_LISTS[column.heading]), allow_blank=True)
    elif column.heading in _WHOLE:
        rule = DataValidation(type="whole", operator="between", formula1="0", formula2="1000", allow_blank=True)
    else:
        rule = DataValidation(allow_blank=True)
    rule.showErrorMessage = rule.showInputMessage = True
    rule.errorTitle = rule.promptTitle = column.heading
    rule.error = rule.prompt = column.note[:_LONGEST_PROMPT]
    rule.add(f"{letter}2:{letter}{MOST_ROWS}")
    return rule


def _list(words: tuple[str, ...]) -> str:
    return '"' + ",".join(words) + '"'


def _lay_out_cover(sheet: "Worksheet") -> None:
    """A label, a value and a note a line; the schemes that ship are lists to pick from."""
    from openpyxl.worksheet.datavalidation import DataValidation

    for row, line in enumerate(COVER_LINES, start=1):
        make_total([write_cell(sheet, row, 1, line.label)])
        value = write_cell(sheet, row, 2, _value(line.example, line.key in _NUMBERS_ON_COVER))
        place_in_cell([value], "left")
        write_cell(sheet, row, 3, line.note)
        if line.key in _SCHEME_FOLDERS:
            files = shipped("schemes", _SCHEME_FOLDERS[line.key]).glob("*.yaml")
            rule = DataValidation(type="list", formula1=_list(tuple(sorted(file.stem for file in files))))
            rule.add(value.coordinate)
            sheet.add_data_validation(rule)
    lay_out(sheet, (26, 34, 64), "1:1")


def _lay_out_notes(sheet: "Worksheet") -> None:
    """What goes into each column, with the example."""
    write_headings(sheet, 1, ("Column", "What goes in", "Example"))
    for row, column in enumerate(COLUMNS, start=2):
        write_row(sheet, row, (column.heading, column.note, column.example or None))
    closing = f"Overwrite the example in row 2 of the sheet {PARTS_SHEET} before you check your own paper."
    write_cell(sheet, len(COLUMNS) + 3, 2, closing)
    lay_out(sheet, (18, 70, 44), "1:1")
    sheet.freeze_panes = "A2"
