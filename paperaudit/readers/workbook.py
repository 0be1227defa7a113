"""Reads a paper from a workbook, one row a part, into the same tree that a question file makes."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import TypeAlias

from paperaudit.errors import Complaint, InputError
from paperaudit.model.place import Place
from paperaudit.readers.complaints import did_you_mean
from paperaudit.readers.question_file import PaperRead, paper_of_tree
from paperaudit.readers.tree import Entries, Items, Node, Scalar
from paperaudit.readers.workbook_cells import Sheet, open_sheets
from paperaudit.readers.workbook_columns import COLUMNS, COVER_LINES, COVER_SHEET, NOTES_SHEET, PARTS_SHEET, Column
from paperaudit.readers.workbook_values import joined, taken_apart, text

_Cells: TypeAlias = dict[tuple[str, str], tuple[Column, Scalar]]
"""The filled cells of a row, by whose key it is and the key."""


@dataclass(slots=True)
class _Open:
    """A section, question or part that rows are still added to."""

    place: Place
    values: dict[str, Node] = field(default_factory=dict)
    keys: dict[str, Place] = field(default_factory=dict)
    inner: "list[_Open]" = field(default_factory=list)

    def set(self, key: str, node: Node) -> None:
        self.values[key] = node
        self.keys[key] = node.place

    def closed(self, below: str) -> Entries:
        """The finished node, what it holds under the key `below`."""
        pairs = [(Scalar(key, self.keys[key]), node) for key, node in self.values.items()]
        if self.inner:
            next_below = "questions" if below == "sections" else "parts"
            held = Items(tuple(one.closed(next_below) for one in self.inner), self.inner[0].place)
            pairs.append((Scalar(next_below, held.place), held))
        return Entries(tuple(pairs), self.place)


def read_workbook(content: bytes, file: str) -> PaperRead:
    """The paper that a workbook holds, or every complaint about it, each naming its cell."""
    try:
        sheets, complaints = open_sheets(content, file)
    except InputError as error:
        return PaperRead(None, error.complaints)
    return paper_of_sheets(sheets, file, complaints)


def paper_of_sheets(sheets: tuple[Sheet, ...], file: str, complaints: tuple[Complaint, ...] = ()) -> PaperRead:
    """The paper in a workbook's sheets; `complaints` are those of opening it."""
    parts_sheet = _sheet_of_parts(sheets)
    if parts_sheet is None:
        message = f"no sheet with the headings Question, Part and Marks was read, expected one named {PARTS_SHEET}"
        return PaperRead(None, (*complaints, Complaint(message, Place(file=file))))
    found = list(complaints)
    pairs: list[tuple[Scalar, Node]] = []
    for sheet in sheets:
        if sheet.name.strip().lower() == COVER_SHEET.lower():
            pairs += _cover(sheet, found)
    pairs += _questions(parts_sheet, file, found)
    return paper_of_tree(Entries(tuple(pairs), Place(file=file)), tuple(found))


def _squeezed(heading: str) -> str:
    return " ".join(heading.lower().split())


_BY_HEADING = {_squeezed(column.heading): column for column in COLUMNS}


def _sheet_of_parts(sheets: tuple[Sheet, ...]) -> Sheet | None:
    """The sheet named for it, else the first one whose top row has the headings."""
    named = [sheet for sheet in sheets if _squeezed(sheet.name) == _squeezed(PARTS_SHEET)]
    others = [sheet for sheet in sheets if sheet.name not in (COVER_SHEET, NOTES_SHEET)]
    for sheet in (*named, *others):
        headings = {_squeezed(cell.text) for cell in sheet.rows[0].values()} if sheet.rows else set()
        if "question" in headings and ("marks" in headings or sheet in named):
            return sheet
    return None


def _cover(sheet: Sheet, complaints: list[Complaint]) -> Iterator[tuple[Scalar, Node]]:
    """What stands in the second column beside the known labels of the first."""
    known = {_squeezed(line.label): line.key for line in COVER_LINES}
    claims: list[tuple[Scalar, Node]] = []
    for row in sheet.rows:
        label, value = row.get(1), row.get(2)
        if label is None or value is None:
            continue
        key = known.get(_squeezed(label.text).rstrip(":"))
        if key is None:
            labels = [line.label for line in COVER_LINES]
            complaints.append(
                Complaint(
                    f"the unknown label '{label.text[:40]}' was read, expected one of {', '.join(labels)}"
                    + did_you_mean(label.text, labels),
                    label.place,
                )
            )
        elif key in ("questions", "pages"):
            claims.append((Scalar(key, value.place), value))
        else:
            yield Scalar(key, value.place), value
    if claims:
        yield Scalar("cover", claims[0][0].place), Entries(tuple(claims), claims[0][0].place)


def _questions(sheet: Sheet, file: str, complaints: list[Complaint]) -> Iterator[tuple[Scalar, Node]]:
    """The rows of the sheet of parts as `sections` or `questions`."""
    columns = _columns(sheet.rows[0], complaints)
    gathering = _Gathering(complaints)
    for row in sheet.rows[1:]:
        if row:
            gathering.add({columns[at]: cell for at, cell in row.items() if at in columns})
    top = Place(file=file, line=1, cell=f"{sheet.name}!A1")
    if gathering.sections and (len(gathering.sections) > 1 or gathering.sections[0].values):
        held = tuple(section.closed("sections") for section in gathering.sections)
        yield Scalar("sections", top), Items(held, top)
    else:
        questions = [question.closed("questions") for section in gathering.sections for question in section.inner]
        yield Scalar("questions", top), Items(tuple(questions), top)


def _columns(headings: dict[int, Scalar], complaints: list[Complaint]) -> dict[int, Column]:
    """The known columns by position; unknown and repeated headings are complained of."""
    found: dict[int, Column] = {}
    for at, heading in headings.items():
        column = _BY_HEADING.get(_squeezed(heading.text))
        if column is None:
            names = [known.heading for known in COLUMNS]
            complaints.append(
                Complaint(
                    f"the unknown heading '{heading.text[:40]}' was read, expected one of {', '.join(names)}"
                    + did_you_mean(heading.text, names),
                    heading.place,
                )
            )
        elif column in found.values():
            complaints.append(
                Complaint(f"the heading '{heading.text}' was read twice, expected it once", heading.place)
            )
        else:
            found[at] = column
    return found


class _Gathering:
    """Puts rows into the question and section that they belong to."""

    def __init__(self, complaints: list[Complaint]) -> None:
        self.sections: list[_Open] = []
        self._complaints = complaints

    def add(self, row: dict[Column, Scalar]) -> None:
        cells: _Cells = {(column.owner, column.key): (column, cell) for column, cell in row.items()}
        if not cells:
            return
        place = next(iter(row.values())).place
        title = cells.get(("section", "title"))
        if title or not self.sections:
            self.sections.append(_Open(place))
        section = self.sections[-1]
        self._fill(section, cells, "section")
        number = cells.get(("question", "number"))
        same = (
            number
            and section.inner
            and section.inner[-1].values.get("number") is not None
            and (text(section.inner[-1].values["number"]) == number[1].text and ("part", "number") in cells)
        )
        if number and not same:
            section.inner.append(_Open(place))
        if not section.inner:
            section.inner.append(_Open(place))
        question = section.inner[-1]
        self._fill(question, cells, "question")
        part = cells.get(("part", "number"))
        self._fill(self._part(question, part[1]) if part else question, cells, "part")

    def _fill(self, holder: _Open, cells: _Cells, owner: str) -> None:
        for (whose, key), (column, cell) in cells.items():
            if whose != owner or (owner == "part" and key == "number"):
                continue
            before = holder.values.get(key)
            if before is not None and text(before) == cell.text:
                continue
            if before is not None:
                # A question without parts has its own text, figure and givens in either pair of columns.
                if key in ("text", "figure", "given") and owner == "part":
                    holder.set(key, joined(before, taken_apart(column, cell)))
                    continue
                self._complaints.append(
                    Complaint(
                        f"'{cell.text[:40]}' was read in a second row, expected {column.heading} in one row only "
                        f"(it stands in {before.place.cell} too)",
                        cell.place,
                    )
                )
                continue
            holder.set(key, taken_apart(column, cell))

    def _part(self, question: _Open, number: Scalar) -> _Open:
        """A new part; "b.ii" goes into a part "b", which is made where it is not there yet."""
        whole = ".".join(re.findall(r"[^\W_]+", number.text)) or number.text
        above = text(question.values["number"]) if "number" in question.values else ""
        levels = [whole] if above and whole.startswith(f"{above}.") else whole.split(".")
        holder = question
        for level in levels[:-1]:
            inside = [one for one in holder.inner if text(one.values["number"]) == level]
            if not inside:
                inside = [_Open(number.place)]
                inside[0].set("number", Scalar(level, number.place))
                holder.inner.append(inside[0])
            holder = inside[0]
        part = _Open(number.place)
        part.set("number", Scalar(levels[-1], number.place))
        holder.inner.append(part)
        return part
