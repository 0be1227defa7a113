"""The columns and cover lines of a paper's workbook: one list for its reader and for the blank one."""

from dataclasses import dataclass
from typing import Final, Literal

Kind = Literal["one", "statements", "names", "marks", "options", "sketch", "table"]
"""How the text of a cell is taken apart."""


@dataclass(frozen=True, slots=True)
class Column:
    """A column by its heading, the key of the question file that it stands for, and what goes into it.

    `owner` says whose key it is; a section's or question's cell is filled in its first row only.
    """

    heading: str
    key: str
    owner: Literal["section", "question", "part"]
    kind: Kind
    note: str
    example: str
    width: int


PARTS_SHEET: Final = "Paper"
COVER_SHEET: Final = "Cover"
NOTES_SHEET: Final = "Notes"

COLUMNS: Final = (
    Column("Section", "title", "section", "one", "Heading of the section, in its first row. May stay empty.", "", 14),
    Column("Section total", "total", "section", "one", "Marks printed at the section. May stay empty.", "", 9),
    Column("Question", "number", "question", "one", "Number of the question, in its first row.", "1", 10),
    Column("Question total", "total", "question", "one", "Marks printed at the question. May stay empty.", "3", 10),
    Column(
        "Question text",
        "text",
        "question",
        "one",
        "What is printed for the question as a whole.",
        "The sketch shows one panel of a sail.",
        36,
    ),
    Column(
        "Figure",
        "figure",
        "question",
        "statements",
        "What the figure shows, one statement a line.",
        "triangle ABC\nBC is produced to D",
        24,
    ),
    Column(
        "Given", "given", "question", "statements", "What is given, one statement a line.", "AB = AC\n∠ACD = 112°", 22
    ),
    Column(
        "Sketch", "sketch", "question", "sketch", "Rough positions of the points as drawn: A (0, 0); B (60, 4).", "", 18
    ),
    Column("Table", "table", "question", "table", "A data table, one column a line: mass: 12 | 15 | 9.", "", 18),
    Column(
        "Part",
        "number",
        "part",
        "one",
        "Number of the part: a, or b.ii for a part of a part. Empty for a question without parts.",
        "a",
        8,
    ),
    Column(
        "Part text",
        "text",
        "part",
        "one",
        "What is printed for the part.",
        "Calculate, giving reasons, the size of ∠ABC.",
        36,
    ),
    Column("Part figure", "figure", "part", "statements", "What this part adds to the figure.", "", 18),
    Column("Part given", "given", "part", "statements", "What this part adds to what is given.", "", 18),
    Column(
        "Ask",
        "ask",
        "part",
        "one",
        "What is asked: ∠ABC, or solve 3(x − 4) = 2x + 5. Read from the text when empty.",
        "∠ABC",
        22,
    ),
    Column("Options", "options", "part", "options", "Multiple choice, one option a line: A: 40°.", "", 14),
    Column("Answer", "answer", "part", "one", "Your own answer; for multiple choice its letter.", "68°", 14),
    Column("Marks", "marks", "part", "one", "Marks printed at the part.", "3", 8),
    Column("Split", "split", "part", "marks", "Your own split of the marks: M1 R1 A1. May stay empty.", "S1 R1 A1", 12),
    Column(
        "Reasons", "reasons", "part", "one", "required or not required. Read from the text when empty.", "required", 13
    ),
    Column("Skills", "skills", "part", "names", "Skills shown, parted by semicolons. Proposed when empty.", "", 24),
    Column(
        "Level",
        "level",
        "part",
        "one",
        "knowledge, routine, complex or problem solving. Proposed when empty.",
        "routine",
        16,
    ),
)


@dataclass(frozen=True, slots=True)
class CoverLine:
    """A line of the cover sheet: its label, the key it stands for, what goes into it."""

    label: str
    key: str
    note: str
    example: str


COVER_LINES: Final = (
    CoverLine("Title", "title", "Title of the paper.", "Sail loft test"),
    CoverLine("Level", "level", "Grade or year.", "Grade 9"),
    CoverLine("Minutes", "minutes", "Time allowed.", "4"),
    CoverLine("Total", "total", "Marks printed on the cover.", "3"),
    CoverLine("Marking", "marking", "The marking convention: statement-reason or method-accuracy.", "statement-reason"),
    CoverLine("Reasons", "reasons", "The wording of reasons. The usual one when empty.", ""),
    CoverLine("Blueprint", "blueprint", "The spread to compare with. May stay empty.", ""),
    CoverLine("Questions on the cover", "questions", "How many questions the cover says there are.", ""),
    CoverLine("Pages on the cover", "pages", "How many pages the cover says there are.", ""),
)
