"""Reads a class list: the learners' names from a CSV file."""

import csv
import io

from paperaudit.errors import Complaint, InputError
from paperaudit.model.place import Place
from paperaudit.readers.files import name_of, read_bytes, refused, text_of
from paperaudit.readers.tree import holds_control

MOST_NAMES = 1000
_LARGEST = 1_000_000
_LONGEST_NAME = 100
_FIRST = ("name", "names", "first name", "first names", "forename", "learner", "pupil", "student", "full name")
_LAST = ("surname", "last name", "family name")


def read_names(source: str) -> tuple[str, ...]:
    """The names in a CSV file in the order of the file, "Surname, Name" where there are two columns of them.

    Commas, semicolons or tabs part the columns. Without a heading (Name, Surname) there may be one column
    only. Raises InputError for anything else, for other encodings than UTF-8, and for an empty list.
    """
    text = text_of(read_bytes(source, _LARGEST, "one name a line"), source)
    first_line = text.lstrip("\n").split("\n", 1)[0]
    separator = next((sign for sign in (";", "\t") if sign in first_line), ",")
    try:
        lines = csv.reader(io.StringIO(text, newline=""), delimiter=separator, strict=True)
        rows = [(lines.line_num, [cell.strip() for cell in row]) for row in lines]
    except csv.Error as error:
        raise refused(source, f"this is no CSV file: {error}; expected one name a line") from None
    filled = [(line, row) for line, row in rows if any(row)]
    if not filled:
        raise refused(source, "no names were read, expected one name a line")
    headings = [" ".join(cell.lower().split()) for cell in filled[0][1]]
    first = next((headings.index(word) for word in _FIRST if word in headings), None)
    last = next((headings.index(word) for word in _LAST if word in headings), None)
    if first is None and last is None:
        if any(len([cell for cell in row if cell]) > 1 for _, row in filled):
            read = ", ".join(f"'{cell[:20]}'" for cell in filled[0][1][:6])
            message = f"the first line {read} was read, expected the heading Name, or Name and Surname, above several"
            raise refused(source, f"{message} columns")
        first = next(at for at, cell in enumerate(filled[0][1]) if cell)
    else:
        filled = filled[1:]
    return _checked(tuple((line, _name(row, first, last)) for line, row in filled), source)


def _name(row: list[str], first: int | None, last: int | None) -> str:
    parts = [row[at] for at in (last, first) if at is not None and at < len(row) and row[at]]
    return ", ".join(" ".join(part.split()) for part in parts)


def _checked(names: tuple[tuple[int, str], ...], source: str) -> tuple[str, ...]:
    """The names, if every line has one of a name's length and they are not too many for a class list."""
    complaints = []
    for line, name in names:
        place = Place(file=name_of(source), line=line)
        if not name:
            complaints.append(Complaint("no name was read in this line, expected one", place))
        elif len(name) > _LONGEST_NAME or holds_control(name):
            complaints.append(
                Complaint(
                    f"'{name[:20]!a}…' was read, expected a name of at most {_LONGEST_NAME} plain characters", place
                )
            )
    if complaints:
        raise InputError(*complaints)
    if not names or len(names) > MOST_NAMES:
        raise refused(source, f"{len(names)} names were read, expected 1 to {MOST_NAMES}")
    return tuple(name for _, name in names)
