"""Opens a draft PDF and gives its pages, or says why it cannot be read."""

import io
import logging
from collections import Counter
from collections.abc import Iterator
from itertools import islice
from typing import Final

from pdfminer.pdfdocument import PDFDocument, PDFEncryptionError
from pdfminer.pdfpage import PDFPage
from pdfminer.pdfparser import PDFParser

from paperaudit.errors import Complaint, InputError
from paperaudit.model.place import Place
from paperaudit.readers.draft.bounded import TooMuch, within_bounds
from paperaudit.readers.draft.interpreter import CarefulInterpreter, CarefulResources
from paperaudit.readers.draft.page import DraftPage
from paperaudit.readers.draft.pen import Pen
from paperaudit.readers.files import Told

MOST_PAGES: Final = 100
"""Pages of a draft; a long examination paper has some forty."""
MOST_GLYPHS: Final = 400_000
"""Glyphs of all pages together."""
_SCANNED: Final = 0.4
"""Share of a page that a picture covers which is all that the page has."""
_UNKNOWN: Final = 0.3
"""Share of a page's glyphs that no font gives a letter for when the page cannot be read."""
_FEWEST: Final = 20

_log = logging.getLogger(__name__)
# pdfminer tells of every oddity that it can live with.
logging.getLogger("pdfminer").setLevel(logging.ERROR)


def pages_of(content: bytes, file: str, told: Told | None = None) -> tuple[DraftPage, ...]:
    """The pages of the PDF `content`; `file` names it in complaints.

    Raises InputError for what is no PDF, is encrypted or damaged, has no pages or too many, has more on a page
    than paper holds, and with a complaint a page where pages are pictures or have fonts without letters.
    """
    try:
        with within_bounds():
            pages = tuple(_read(content, file, told))
    except InputError:
        raise
    except TooMuch as error:
        raise refused(file, f"{error}, expected the PDF of a paper") from None
    except MemoryError:
        raise refused(file, "reading needs more memory than a paper can, expected the PDF of a paper") from None
    except PDFEncryptionError:
        raise refused(file, "the PDF is protected by a password, expected one that opens without") from None
    except (Exception, RecursionError) as error:
        # pdfminer meets damage with whatever exception comes of it.
        _log.debug("a PDF could not be read", exc_info=True)
        raise refused(file, f"the PDF is damaged or cut short ({type(error).__name__}); export it again") from None
    complaints = [complaint for page in pages for complaint in _unreadable(page, file)]
    if complaints:
        raise InputError(*complaints)
    return pages


def _read(content: bytes, file: str, told: Told | None) -> Iterator[DraftPage]:
    document = PDFDocument(PDFParser(io.BytesIO(content)))
    found = list(islice(PDFPage.create_pages(document), MOST_PAGES + 1))
    if not found:
        raise refused(file, "the PDF has no pages, expected those of a paper")
    if len(found) > MOST_PAGES:
        raise refused(file, f"more than {MOST_PAGES} pages were read, expected those of one paper")
    resources = CarefulResources()
    glyphs = 0
    for number, page in enumerate(found, 1):
        if told is not None:
            told(number, len(found))
        try:
            drawn = _upright(resources, page, number)
        except TooMuch as error:
            place = Place(file=file, page=number)
            raise InputError(Complaint(f"{error}, expected the page of a paper", place)) from None
        glyphs += len(drawn.glyphs)
        if glyphs > MOST_GLYPHS:
            raise TooMuch(f"more than {MOST_GLYPHS:,} letters were read")
        yield drawn


def _upright(resources: CarefulResources, page: PDFPage, number: int) -> DraftPage:
    """The page the way its text runs: one that is printed sideways is turned."""
    drawn = _drawn(resources, page, number)
    upright = sum(glyph.upright for glyph in drawn.glyphs)
    if len(drawn.glyphs) < _FEWEST or upright * 2 >= len(drawn.glyphs):
        return drawn
    rotation = page.rotate
    for turn in (90, 270, 180):
        page.rotate = (rotation + turn) % 360
        turned = _drawn(resources, page, number)
        if sum(glyph.upright for glyph in turned.glyphs) * 2 > len(turned.glyphs):
            return turned
    page.rotate = rotation
    return drawn


def _drawn(resources: CarefulResources, page: PDFPage, number: int) -> DraftPage:
    pen = Pen(resources)
    CarefulInterpreter(resources, pen).process_page(page)
    return pen.page(number)


def _unreadable(page: DraftPage, file: str) -> Iterator[Complaint]:
    """What keeps a page from being read as text."""
    place = Place(file=file, page=page.number)
    shown = [glyph for glyph in page.glyphs if glyph.text.strip() or not glyph.text]
    if not shown and _covered(page) >= _SCANNED:
        yield Complaint("this page is a picture without text, a scan or a photograph; expected a PDF with text", place)
    unknown = [glyph for glyph in shown if not glyph.text]
    if len(unknown) >= _FEWEST and len(unknown) >= _UNKNOWN * len(shown):
        name = Counter(glyph.font for glyph in unknown).most_common(1)[0][0]
        message = f"the font {_bare(name)} does not say which letters its signs are; export the PDF with another font"
        yield Complaint(message, place)


def _covered(page: DraftPage) -> float:
    """The share of the page under its pictures, laid side by side."""
    area = sum((one.box[2] - one.box[0]) * (one.box[3] - one.box[1]) for one in page.rasters)
    return area / (page.width * page.height) if page.width and page.height else 0.0


def _bare(font: str) -> str:
    """A font's name without the six letters that tell an embedded part of it."""
    name = font.rsplit("+", 1)[-1]
    return "".join(sign for sign in name if sign.isprintable())[:40]


def refused(file: str, message: str) -> InputError:
    """The error of a PDF that is no use as a whole."""
    return InputError(Complaint(message, Place(file=file)))
