"""The outline of a draft: sections, questions and parts with the rows, marks and totals that belong to them."""

from dataclasses import dataclass, field

from paperaudit.model.place import Box
from paperaudit.readers.draft.options import Option
from paperaudit.readers.draft.print_line import Column, PrintLine, PrintTable
from paperaudit.readers.draft.sequence import Stand
from paperaudit.readers.draft.wording_rows import TextRow


@dataclass(slots=True)
class Placed:
    """A number printed about marks, with its place."""

    number: int
    page: int
    box: Box
    dress: str = ""
    label: bool = False


@dataclass(slots=True)
class Entry:
    """A question or a part while it is read; `lead` are rows before it that it shares with its neighbours.

    `closed` where its marks stand behind its text.
    """

    number: str
    column: Column
    box: Box
    stand: Stand
    lead: tuple[TextRow, ...] = ()
    rows: list[TextRow] = field(default_factory=list)
    marks: list[Placed] = field(default_factory=list)
    total: Placed | None = None
    parts: "list[Entry]" = field(default_factory=list)
    tables: list[PrintTable] = field(default_factory=list)
    doubts: list[str] = field(default_factory=list)
    answer_lines: int = 0
    options: tuple[Option, ...] = ()
    closed: bool = False

    def leaves(self) -> "list[Entry]":
        """The parts that have no parts below, or itself."""
        return [leaf for part in self.parts for leaf in part.leaves()] if self.parts else [self]


@dataclass(slots=True)
class DraftSection:
    """Questions under a heading, or all questions under none."""

    title: str = ""
    total: Placed | None = None
    page: int = 0
    box: Box | None = None
    questions: list[Entry] = field(default_factory=list)
    rows: list[TextRow] = field(default_factory=list)


@dataclass(slots=True)
class Outline:
    """What the rows amount to: the cover's rows, the sections, the paper's own total where one stands at its end."""

    cover: list[PrintLine] = field(default_factory=list)
    sections: list[DraftSection] = field(default_factory=list)
    total: Placed | None = None
    above: list[tuple[Entry, Placed]] = field(default_factory=list)
    columns: list[Column] = field(default_factory=list)
    captions: list[tuple[str, int, Box]] = field(default_factory=list)

    def questions(self) -> list[Entry]:
        """All questions in order of print."""
        return [question for section in self.sections for question in section.questions]
