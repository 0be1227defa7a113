"""Reads a setter's own answers from a PDF: by part number, in a table, in columns or row by row, with their marks."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Final

from paperaudit.errors import Complaint, InputError
from paperaudit.model.paper import Line
from paperaudit.model.place import Place
from paperaudit.readers.answers import KeyEntry, KeyRead
from paperaudit.readers.draft.key_marks import codes_at_end, is_codes, marks_of_cell
from paperaudit.readers.draft.numbering import Number, Style, heading_at, numbers_at
from paperaudit.readers.draft.print_line import Printed, PrintLine
from paperaudit.readers.draft.read_draft import printed_in
from paperaudit.readers.files import Told

_NEAR: Final = 8.0
"""Points from the left edge of all rows within which a bare number is a question's."""
_HEADINGS: Final = {
    "number": re.compile(r"(?:question|no|nr|number|part|item|q)s?\W*", re.IGNORECASE),
    "answer": re.compile(
        r"(?:answers?|solutions?|final answers?|correct answers?|key|memo(?:randum)?)\W*", re.IGNORECASE
    ),
    "marks": re.compile(r"(?:marks?|max|total|points?)\W*", re.IGNORECASE),
    "split": re.compile(
        r"(?:splits?|mark split|allocation|marking|codes?|breakdown|(?:mark(?:ing)? )?scheme)\W*", re.IGNORECASE
    ),
    "other": re.compile(r"(?:notes?|comments?|guidance|reasons?|working|explanations?|method)\W*", re.IGNORECASE),
}
_ANSWER: Final = re.compile(r"(?:final\s+)?ans(?:wer)?\s*[:.=]\s*", re.IGNORECASE)
_THEREFORE: Final = re.compile(r"^\s*(?:∴|⇒|therefore|so|hence)\s*", re.IGNORECASE)
_TICKS: Final = re.compile(r"[✓✔√☑]+\s*$")


@dataclass(frozen=True, slots=True)
class _Row:
    """A row of the key: its cells with their left edges, and its place."""

    cells: tuple[tuple[str, float], ...]
    place: Place


@dataclass(slots=True)
class _Open:
    """A part while its rows are read."""

    name: str
    place: Place
    rows: list[tuple[str, tuple[str, ...], Place]] = field(default_factory=list)
    answer: tuple[str, Place] | None = None
    marks: int | None = None
    split: list[str] = field(default_factory=list)


def read_draft_answers(content: bytes, file: str, told: Told | None = None) -> KeyRead:
    """The key that the PDF `content` prints, or why it cannot be read; `file` names it in places."""
    try:
        return key_of_rows(printed_in(content, file, told), file)
    except InputError as error:
        return KeyRead(complaints=error.complaints)


def key_of_rows(printed: Sequence[Printed], file: str) -> KeyRead:
    """The key that rows and tables make.

    Of several rows under one number the answer is what is called so, else the last row, that with the last
    mark where rows carry marks.
    """
    rows = [row for one in printed for row in _rows(one, file)]
    entries = tuple(_closed(one) for one in _parts(rows) if one.rows or one.answer or one.split)
    if not entries:
        message = "no answer with its part's number was read, expected rows such as 1 (a) 68°"
        return KeyRead(complaints=(Complaint(message, Place(file=file)),))
    return KeyRead(entries)


def _rows(one: Printed, file: str) -> Iterator[_Row]:
    if isinstance(one, PrintLine):
        cells = tuple((cell.text, cell.box[0]) for cell in one.row.cells)
        yield _Row(cells, Place(file=file, page=one.page, box=one.box))
        return
    wide = one.box[2] - one.box[0]
    for row in one.rows:
        # Cells of a ruled table stand in columns whatever their text begins with.
        edges = tuple((text, one.box[0] + wide * at / len(row)) for at, text in enumerate(row) if text.strip())
        if edges:
            yield _Row(edges, Place(file=file, page=one.page, box=one.box))


def _parts(rows: Sequence[_Row]) -> Iterator[_Open]:
    """The parts with their rows; what stands before the first number is the key's head."""
    margin = min((row.cells[0][1] for row in rows), default=0.0)
    columns: dict[str, float] = {}
    path: tuple[Number, ...] = ()
    current: _Open | None = None
    for row in rows:
        if found := _columns(row):
            columns = found
            continue
        if heading_at(row.cells[0][0]):
            continue
        for at, piece in enumerate([row] if columns else _pieces(row)):
            edge = piece.cells[0][1] if at else margin
            path, cells, named = _numbered(piece, path, edge, bool(columns))
            if named:
                if current is not None:
                    yield current
                current = _Open(_name(path), piece.place)
            if current is not None and cells:
                _take(current, cells, columns, piece.place)
    if current is not None:
        yield current


def _pieces(row: _Row) -> list[_Row]:
    """A row with several numbered answers beside one another, one by one."""
    starts = [0, *(at for at, (text, _) in enumerate(row.cells) if at and _begins(text))]
    if not _begins(row.cells[0][0]):
        starts = [0]
    return [
        _Row(row.cells[start:end], row.place) for start, end in zip(starts, [*starts[1:], len(row.cells)], strict=True)
    ]


def _begins(text: str) -> bool:
    """Whether a cell begins with a number that cannot be an answer: "1(b) 5", "(c) 7", "3. x = 2"."""
    return any(
        (one.dress or text[one.end :][:1] == "(" or one.style is Style.WORD) and one.end < len(text.strip())
        for one in numbers_at(text)
    )


def _columns(row: _Row) -> dict[str, float]:
    """Where the columns stand that a heading row names; none where the row is no heading."""
    found: dict[str, float] = {}
    for text, left in row.cells:
        kind = next((kind for kind, pattern in _HEADINGS.items() if pattern.fullmatch(text.strip())), None)
        if kind is None:
            return {}
        found.setdefault(kind, left)
    return found if "answer" in found and len(found) > 1 else {}


def _numbered(
    row: _Row, path: tuple[Number, ...], margin: float, in_columns: bool
) -> tuple[tuple[Number, ...], tuple[tuple[str, float], ...], bool]:
    """The open numbers after a row, its cells without them, and whether it has one."""
    cells = list(row.cells)
    named = False
    while cells:
        text, left = cells[0]
        number = _next_number(text, path, named, left - margin <= _NEAR, in_columns or len(row.cells) > 1)
        if number is None:
            break
        path = _extended(path, number, named)
        named = True
        rest = text[number.end :].lstrip(" .:)" if number.style is not Style.LETTER else " .:")
        cells = [(rest, left), *cells[1:]] if rest else cells[1:]
    return path, tuple(cells), named


def _next_number(text: str, path: tuple[Number, ...], inner: bool, at_margin: bool, in_columns: bool) -> Number | None:
    """The number that a cell begins with, if it is one of a part and no answer."""
    readings = numbers_at(text)
    for number in readings:
        whole = number.end == len(text.strip())
        if number.style in (Style.WORD, Style.DECIMAL):
            if number.style is Style.DECIMAL and not (at_margin and not inner):
                continue
            return number
        if number.style is Style.ARABIC:
            if (
                not inner
                and at_margin
                and (number.dress or (whole and in_columns) or text[number.end :][:1] in "(abcdefgh")
            ):
                return number
            continue
        if not path and not inner:
            continue
        if not number.dress and not (whole and in_columns):
            continue
        if number.style is Style.ROMAN and _is_letter(number, path, readings):
            continue
        return number
    return None


def _is_letter(number: Number, path: tuple[Number, ...], readings: Sequence[Number]) -> bool:
    """Whether (i) goes on with letters, behind (h), rather than with Roman numbers."""
    letters = [one for one in path if one.style is Style.LETTER]
    letter = next((one for one in readings if one.style is Style.LETTER), None)
    if letter is None:
        return False
    if any(one.style is Style.ROMAN and one.value[0] + 1 == number.value[0] for one in path):
        return False
    return bool(letters) and letters[-1].value[0] + 1 == letter.value[0] and number.value[0] != 1


def _extended(path: tuple[Number, ...], number: Number, inner: bool) -> tuple[Number, ...]:
    if number.style in (Style.WORD, Style.ARABIC):
        return (number,)
    if number.style is Style.DECIMAL:
        return (number,)
    for at, one in enumerate(path):
        if one.style is number.style:
            return (*path[:at], number)
    if number.style is Style.LETTER and path and path[-1].style is Style.ROMAN and not inner:
        return (*path[:-1], number)
    return (*path, number)


def _name(path: Sequence[Number]) -> str:
    return ".".join(one.printed for one in path)


def _take(part: _Open, cells: Sequence[tuple[str, float]], columns: dict[str, float], place: Place) -> None:
    """Adds a row's cells to a part: by the columns of the heading, else by what they look like."""
    texts: list[str] = []
    split: list[str] = []
    for at, (text, left) in enumerate(cells):
        kind = _kind(text, left, columns, at, len(cells))
        if kind == "split":
            split += codes_at_end(text)[1]
        elif kind == "marks":
            part.marks = marks_of_cell(text)
        elif kind == "answer":
            rest, codes = codes_at_end(text)
            split += codes
            if rest := _TICKS.sub("", rest).strip():
                texts.append(rest)
    part.split += split
    whole = " ".join(texts)
    if not whole and not split:
        return
    if match := _ANSWER.match(whole):
        part.answer = (whole[match.end() :].strip(), place)
    part.rows.append((whole, tuple(split), place))


def _kind(text: str, left: float, columns: dict[str, float], at: int, count: int) -> str:
    if is_codes(text):
        return "split"
    if columns:
        before = [(edge, kind) for kind, edge in columns.items() if edge <= left + _NEAR]
        kind = max(before)[1] if before else "answer"
        if kind == "marks":
            return "marks" if marks_of_cell(text) is not None else "answer"
        return {"number": "answer", "split": "answer", "other": "other"}.get(kind, kind)
    return "marks" if at and at == count - 1 and marks_of_cell(text, bare=False) is not None else "answer"


def _closed(part: _Open) -> KeyEntry:
    """The entry of a part: the answer called so, else its last row with a mark for an answer, else its last row."""
    answer = part.answer
    if answer is None and part.rows:
        filled = [row for row in part.rows if row[0]]
        marked = [row for row in filled if any(code[0] in "AB" for code in row[1])]
        if chosen := (marked or filled)[-1:]:
            answer = (_THEREFORE.sub("", chosen[0][0]), chosen[0][2])
    line = Line(*answer) if answer and answer[0] else None
    return KeyEntry(part.name, line, part.marks, tuple(part.split), part.place)
