"""A figure as a file to print or to paste: SVG as it is, PDF, Word document or picture of the same drawing."""

import io
from xml.etree import ElementTree

from paperaudit.reports.reproducible_zip import reproducible
from paperaudit.reports.scheme_pages import page_of, picture

ENDINGS = (".svg", ".pdf", ".docx", ".png")
MARGIN = 1
"""Millimetres of white that `figure.typ` leaves round a drawing."""


def figure_file(drawing: str, ending: str) -> str | bytes:
    """The contents of a file with this ending, one of `ENDINGS`; the letters are as large in each of them."""
    match ending:
        case ".pdf":
            return page_of(drawing)
        case ".png":
            return picture(drawing)
        case ".docx":
            return _document(drawing)
    return drawing


def width_of(drawing: str) -> float:
    """The width of an SVG in its own units, which are points of print."""
    return float(ElementTree.fromstring(drawing).get("width", "0"))


def _document(drawing: str) -> bytes:
    from docx import Document
    from docx.shared import Mm, Pt

    document = Document()
    document.add_picture(io.BytesIO(picture(drawing)), width=Pt(width_of(drawing)) + Mm(2 * MARGIN))
    written = io.BytesIO()
    document.save(written)
    return reproducible(written.getvalue())
