"""Opens a workbook that may be hostile and gives its cells as texts, the way its author sees them."""

import io
import warnings
import zipfile
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from paperaudit.errors import Complaint, InputError
from paperaudit.model.place import Place
from paperaudit.readers.tree import Scalar, holds_control

LARGEST_UNPACKED = 30_000_000
"""Bytes of all members of the workbook, unpacked."""
MOST_MEMBERS = 300
MOST_ROWS = 2000
MOST_COLUMNS = 60

_FORMULA = b"<f"


@dataclass(frozen=True, slots=True)
class Sheet:
    """A sheet's name and its rows; a row holds the filled cells by their column, counted from 1."""

    name: str
    rows: tuple[dict[int, Scalar], ...]


def open_sheets(content: bytes, file: str) -> tuple[tuple[Sheet, ...], tuple[Complaint, ...]]:
    """Every sheet of the workbook, and complaints about cells that hold no plain value.

    Raises InputError for what is no workbook and for one beyond the limits.
    """
    has_formulas = _guard(content, file)
    complaints: list[Complaint] = []
    shown = _load(content, file, values=True)
    written = _load(content, file, values=False) if has_formulas else None
    sheets = []
    for sheet in shown.worksheets:
        formulas = _formula_cells(written[sheet.title]) if written else {}
        rows = tuple(_rows(sheet, file, formulas, complaints))
        sheets.append(Sheet(sheet.title, rows))
    return tuple(sheets), tuple(complaints)


def _guard(content: bytes, file: str) -> bool:
    """Refuses zip bombs and XML with entities before any of it is parsed; says whether there are formulas."""
    has_formulas = False
    try:
        with zipfile.ZipFile(io.BytesIO(content)) as archive:
            members = archive.infolist()
            if len(members) > MOST_MEMBERS or sum(member.file_size for member in members) > LARGEST_UNPACKED:
                raise _not_a_workbook(file, "it unpacks to far more than a paper needs")
            if "xl/workbook.xml" not in archive.namelist():
                raise _not_a_workbook(file, "it is a zip file of another kind")
            for member in members:
                if not member.filename.lower().endswith((".xml", ".rels")):
                    continue
                xml = archive.read(member)
                if b"<!DOCTYPE" in xml or b"<!ENTITY" in xml or b"\x00" in xml:
                    raise _not_a_workbook(file, f"{member.filename[:60]} declares entities or another encoding")
                has_formulas = has_formulas or (member.filename.startswith("xl/worksheets/") and _FORMULA in xml)
    except (zipfile.BadZipFile, NotImplementedError, RuntimeError, EOFError, OSError, ValueError) as error:
        raise _not_a_workbook(file, str(error)[:80] or "it cannot be unpacked") from None
    return has_formulas


def _load(content: bytes, file: str, values: bool) -> Any:
    """openpyxl's workbook; a broken one raises nearly anything, all of which means the same here."""
    import openpyxl

    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            return openpyxl.load_workbook(io.BytesIO(content), read_only=True, data_only=values)
    except Exception as error:
        raise _not_a_workbook(file, f"it is broken inside ({type(error).__name__})") from error


def _not_a_workbook(file: str, why: str) -> InputError:
    return InputError(
        Complaint(f"this is not a workbook that can be read: {why}; expected an .xlsx file", Place(file=file))
    )


def _formula_cells(sheet: Any) -> dict[tuple[int, int], str]:
    return {
        (cell.row, cell.column): str(cell.value)
        for row in sheet.iter_rows(max_row=MOST_ROWS + 1, max_col=MOST_COLUMNS)
        for cell in row
        if cell.value is not None and cell.data_type == "f"
    }


def _rows(
    sheet: Any, file: str, formulas: dict[tuple[int, int], str], complaints: list[Complaint]
) -> Iterator[dict[int, Scalar]]:
    from openpyxl.utils import get_column_letter

    sheet.reset_dimensions()
    try:
        for row_number, row in enumerate(sheet.iter_rows(max_row=MOST_ROWS + 1, max_col=MOST_COLUMNS), start=1):
            filled: dict[int, Scalar] = {}
            for column, cell in enumerate(row, start=1):
                address = f"{sheet.title}!{get_column_letter(column)}{row_number}"
                place = Place(file=file, line=row_number, column=column, cell=address)
                formula = formulas.get((row_number, column))
                text = _text(cell, formula, place, complaints)
                if text.strip():
                    filled[column] = Scalar(text, place)
            if filled and row_number > MOST_ROWS:
                complaints.append(
                    Complaint(
                        f"more than {MOST_ROWS} rows were read, expected at most that many",
                        Place(file=file, line=row_number, cell=f"{sheet.title}!A{row_number}"),
                    )
                )
            yield filled
    except InputError:
        raise
    except Exception as error:
        raise _not_a_workbook(file, f"sheet {sheet.title[:40]} is broken ({type(error).__name__})") from error


def _text(cell: Any, formula: str | None, place: Place, complaints: list[Complaint]) -> str:
    """What the author sees in a cell; dates, errors and formulas that were never worked out are complaints."""
    value = cell.value
    if formula is not None and value is None:
        complaints.append(
            Complaint(
                f"the formula {formula[:40]} was read without a result, expected a value; "
                "open the file in a spreadsheet program and save it",
                place,
            )
        )
        return ""
    if value is None:
        return ""
    if cell.data_type == "e":
        complaints.append(Complaint(f"the error {value} was read, expected a value", place))
        return ""
    if isinstance(value, bool):
        return "TRUE" if value else "FALSE"
    if isinstance(value, int | float):
        if "%" in (cell.number_format or ""):
            return f"{round(value * 100, 10):.12g}%"
        return f"{value:.15g}"
    if isinstance(value, str):
        if holds_control(value.replace("_x000D_", "")):
            complaints.append(Complaint("a control character was read, expected plain text", place))
            return ""
        return value.replace("\r\n", "\n").replace("_x000D_", "")
    complaints.append(
        Complaint(
            f"the date or time {value} was read, expected text; if a fraction was meant, "
            "format the cell as text and type it again",
            place,
        )
    )
    return ""
