"""Opens a draft PDF and gives its pages, or says why it cannot be read."""

import io
from collections.abc import Iterator

import pdfplumber
from pdfminer.pdfinterp import PDFPageInterpreter

from paperaudit.readers.draft.page import DraftPage
from paperaudit.readers.draft.pen import Pen


def pages_of(content: bytes, file: str) -> Iterator[DraftPage]:
    """The pages of the PDF `content`, one after the other; `file` names it in complaints."""
    with pdfplumber.open(io.BytesIO(content)) as pdf:
        for number, page in enumerate(pdf.pages, 1):
            pen = Pen(pdf.rsrcmgr)
            PDFPageInterpreter(pdf.rsrcmgr, pen).process_page(page.page_obj)
            yield pen.page(number)
