"""Picks the reader of a paper or of a setter's answers by what the file holds."""

from dataclasses import replace
from enum import Enum
from pathlib import Path

from paperaudit.errors import InputError
from paperaudit.readers.answers import KeyRead, key_of_paper, key_of_sheets, key_of_tree
from paperaudit.readers.files import (
    LARGEST_DRAFT,
    LARGEST_TEXT,
    LARGEST_WORKBOOK,
    STANDARD_INPUT,
    Told,
    name_of,
    read_bytes,
    refused,
    text_of,
)
from paperaudit.readers.question_file import PaperRead, read_question_file
from paperaudit.readers.tree import Entries
from paperaudit.readers.yaml_tree import read_tree


class Kind(Enum):
    """The kinds of file that are told apart."""

    TEXT = "question file"
    WORKBOOK = "workbook"
    PDF = "draft PDF"


def read_paper(source: str, told: Told | None = None) -> PaperRead:
    """The paper that the file `source` holds, or standard input for "-", or every complaint about it.

    `told` is called with each page of a draft before it is read.
    """
    try:
        content, kind = _content(source)
        if kind is Kind.PDF:
            from paperaudit.readers.draft.read_draft import read_draft

            return read_draft(content, name_of(source), told)
        if kind is Kind.WORKBOOK:
            from paperaudit.readers.workbook import read_workbook

            return read_workbook(content, name_of(source))
        return read_question_file(text_of(content, source), name_of(source))
    except InputError as error:
        return PaperRead(None, error.complaints)


def draft_tree(source: str, answers: str | None = None, told: Told | None = None) -> Entries:
    """The tree of the question file that the draft PDF `source` amounts to, with the setter's answers.

    Raises InputError with every complaint about both files, and for a file that is no PDF.
    """
    content, kind = _content(source, "a draft PDF")
    if kind is not Kind.PDF:
        raise refused(source, f"a {kind.value} was read, expected a draft PDF")
    from paperaudit.readers.answered_tree import answered
    from paperaudit.readers.draft.read_draft import take_down

    draft = take_down(content, name_of(source), told)
    if draft.tree is None:
        raise InputError(*draft.complaints)
    tree, complaints = answered(draft.tree, KeyRead() if answers is None else read_answers(answers, told))
    if complaints:
        raise InputError(*complaints)
    return tree


def draft_pages(source: str) -> bytes:
    """The content of a draft PDF, to show its pages; empty for other kinds, and for standard input, read once."""
    if source == STANDARD_INPUT:
        return b""
    content, kind = _content(source)
    return content if kind is Kind.PDF else b""


def read_answers(source: str, told: Told | None = None) -> KeyRead:
    """The setter's own answers in the file `source`, or standard input for "-", or every complaint about it."""
    try:
        content, kind = _content(source, "answers by part, such as 1.a: 68°")
        if kind is Kind.PDF:
            from paperaudit.readers.draft.key_of_draft import read_draft_answers

            return read_draft_answers(content, name_of(source), told)
        if kind is Kind.WORKBOOK:
            return _answers_of_workbook(content, name_of(source))
        tree, complaints = read_tree(text_of(content, source), name_of(source))
        key = key_of_tree(tree) if tree is not None else KeyRead()
        return replace(key, complaints=complaints + key.complaints)
    except InputError as error:
        return KeyRead(complaints=error.complaints)


def _answers_of_workbook(content: bytes, file: str) -> KeyRead:
    from paperaudit.readers.workbook import paper_of_sheets
    from paperaudit.readers.workbook_cells import open_sheets

    sheets, complaints = open_sheets(content, file)
    key = key_of_sheets(sheets) or key_of_paper(paper_of_sheets(sheets, file))
    return replace(key, complaints=complaints + key.complaints)


def _content(source: str, expected: str = "a question file") -> tuple[bytes, Kind]:
    """The bytes of a source and their kind; what the bytes are counts, the ending only tells what was hoped for."""
    content = read_bytes(source, LARGEST_DRAFT, expected)
    ending = Path(source).suffix.lower()
    if content.startswith(b"%PDF-"):
        return content, Kind.PDF
    if content.startswith(b"PK\x03\x04"):
        if len(content) > LARGEST_WORKBOOK:
            raise refused(source, f"the file is larger than {LARGEST_WORKBOOK:,} bytes, expected a smaller one")
        return content, Kind.WORKBOOK
    if content.startswith(b"\xd0\xcf\x11\xe0"):
        raise refused(source, "an old or protected office file was read, expected an unprotected .xlsx")
    if ending in (".xlsx", ".pdf"):
        raise refused(source, f"the content is no {ending} file, whatever its name says")
    if len(content) > LARGEST_TEXT:
        raise refused(source, f"the file is larger than {LARGEST_TEXT:,} bytes, expected a smaller one")
    return content, Kind.TEXT
