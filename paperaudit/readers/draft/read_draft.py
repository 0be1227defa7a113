"""Reads a draft PDF as a paper: pages, layout, outline, and the tree that a question file would have."""

from collections.abc import Sequence
from dataclasses import dataclass

from paperaudit.errors import Complaint, InputError
from paperaudit.model.place import Place
from paperaudit.readers.draft.bounded import TooMuch, time_limit
from paperaudit.readers.draft.drawing.drawn_figure import DrawnFigure
from paperaudit.readers.draft.drawing.figures import figures_of
from paperaudit.readers.draft.layout import printed_on
from paperaudit.readers.draft.open_pdf import pages_of, refused
from paperaudit.readers.draft.outline import Outline
from paperaudit.readers.draft.outline_reader import outline_of
from paperaudit.readers.draft.page import DraftPage
from paperaudit.readers.draft.print_line import Printed
from paperaudit.readers.draft.printed_page import Measured, measured
from paperaudit.readers.draft.running import RunningMatter, running_matter
from paperaudit.readers.files import Told
from paperaudit.readers.question_file import PaperRead
from paperaudit.readers.tree import Entries


@dataclass(frozen=True, slots=True)
class DraftRead:
    """A draft as it was taken down: its pages, what they print, the figures, and the tree of the question file."""

    tree: Entries | None
    complaints: tuple[Complaint, ...] = ()
    pages: tuple[DraftPage, ...] = ()
    running: tuple[RunningMatter, ...] = ()
    figures: tuple[DrawnFigure, ...] = ()


def read_draft(content: bytes, file: str, told: Told | None = None) -> PaperRead:
    """The paper that the PDF `content` prints, each value with its page and box, or why it cannot be read.

    `told` is called with each page's number and how many there are, before it is read.
    """
    from paperaudit.readers.question_file import paper_of_tree

    read = take_down(content, file, told)
    return PaperRead(None, read.complaints) if read.tree is None else paper_of_tree(read.tree, read.complaints)


def take_down(content: bytes, file: str, told: Told | None = None) -> DraftRead:
    """The draft with its pages and its tree; nothing of it is judged yet."""
    try:
        with time_limit():
            return _taken_down(content, file, told)
    except InputError as error:
        return DraftRead(None, error.complaints)
    except TooMuch as error:
        return DraftRead(None, (Complaint(f"{error}, expected the PDF of a paper", Place(file=file)),))


def _taken_down(content: bytes, file: str, told: Told | None) -> DraftRead:
    pages = pages_of(content, file, told)
    running = running_matter(pages)
    figures = tuple(figure for page in pages for figure in figures_of(page))
    outline = outline_of(_printed(pages, figures, running))
    if not outline.questions():
        message = "no numbered question was read, expected numbers such as 1., Question 1 or 1.1"
        return DraftRead(None, (Complaint(message, Place(file=file)),), pages, running, figures)
    sizes = [measured(page, _on(page, figures), edge) for page, edge in zip(pages, running, strict=True)]
    return DraftRead(_tree(outline, file, figures, sizes), (), pages, running, figures)


def printed_in(content: bytes, file: str, told: Told | None = None) -> tuple[Printed, ...]:
    """The rows and tables of a PDF in reading order. Raises InputError for what cannot be read."""
    try:
        with time_limit():
            pages = pages_of(content, file, told)
            figures = tuple(figure for page in pages for figure in figures_of(page))
            return _printed(pages, figures, running_matter(pages))
    except TooMuch as error:
        raise refused(file, f"{error}, expected the PDF of a key") from None


def _printed(
    pages: Sequence[DraftPage], figures: Sequence[DrawnFigure], running: Sequence[RunningMatter]
) -> tuple[Printed, ...]:
    return tuple(
        one for page, edge in zip(pages, running, strict=True) for one in printed_on(page, _on(page, figures), edge)
    )


def _tree(outline: Outline, file: str, figures: Sequence[DrawnFigure], pages: Sequence[Measured]) -> Entries:
    from paperaudit.readers.draft.draft_tree import TreeWriter

    return TreeWriter(file, figures, pages).tree(outline)


def _on(page: DraftPage, figures: Sequence[DrawnFigure]) -> tuple[DrawnFigure, ...]:
    return tuple(figure for figure in figures if figure.page == page.number)
