"""A workbook's sheets on paper: A4 landscape, readable, with headings, names and title on every page."""

from collections.abc import Sequence
from math import ceil
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from openpyxl.worksheet.worksheet import Worksheet

READABLE = 185.0
"""Widths in characters that go side by side on A4 landscape in type of about 8 points."""

_A4 = 9
_LONGEST_HEADER = 120


def pages_across(widths: Sequence[float], repeated: float) -> int:
    """How many pages a sheet is printed over from side to side, so that it stays readable.

    `widths` are in characters; columns as wide as `repeated` together come again on every page.

    >>> pages_across([100], 0), pages_across([31] + [14] * 13, 31)
    (1, 2)
    """
    return max(1, ceil((sum(widths) - repeated) / (READABLE - repeated)))


def set_pages(sheet: "Worksheet", widths: Sequence[float], heading_rows: str, name_columns: int = 0) -> None:
    """Sets how a sheet is printed: as many pages as it takes downwards, `heading_rows` ("1:4") on each.

    Where there are `name_columns`, they come again on every page too, and a wide sheet is printed over
    several pages side by side. Its title then stands in the header, or its cell would be cut in two.
    """
    from openpyxl.utils import get_column_letter
    from openpyxl.worksheet.header_footer import HeaderFooterItem
    from openpyxl.worksheet.properties import PageSetupProperties

    pages = pages_across(widths, sum(widths[:name_columns])) if name_columns else 1
    sheet.page_setup.orientation = "landscape"
    sheet.page_setup.paperSize = _A4
    sheet.page_setup.fitToWidth = pages
    sheet.page_setup.fitToHeight = 0
    sheet.sheet_properties.pageSetUpPr = PageSetupProperties(fitToPage=True)
    sheet.print_title_rows = heading_rows
    if name_columns:
        sheet.print_title_cols = f"A:{get_column_letter(name_columns)}"
    if pages > 1 and not heading_rows.startswith("1:"):
        _print_title_in_header(sheet, heading_rows.partition(":")[0], get_column_letter(len(widths)))
    sheet.page_margins.left = sheet.page_margins.right = 0.4
    sheet.page_margins.top = 0.5
    sheet.page_margins.bottom = 0.7
    footer = sheet.oddFooter or HeaderFooterItem()
    footer.left.text = "&A"
    footer.right.text = "page &P of &N"
    sheet.oddFooter = footer


def _print_title_in_header(sheet: "Worksheet", first_row: str, last_column: str) -> None:
    """Prints from the headings on, with the sheet's title at the head of every page."""
    from openpyxl.worksheet.header_footer import HeaderFooterItem

    sheet.print_area = f"A{first_row}:{last_column}{sheet.max_row}"
    header = sheet.oddHeader or HeaderFooterItem()
    header.left.text = str(sheet.cell(1, 1).value)[:_LONGEST_HEADER].replace("&", "&&")
    sheet.oddHeader = header
