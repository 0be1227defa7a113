"""Where everything stands in the marks template, and the formulas that read a row or a column of it."""

from collections.abc import Iterator
from dataclasses import dataclass

from paperaudit.reports.spread_rows import PartRow, PortionRow, TotalRow

MARKS_SHEET = "Marks"
NUMBER, LEARNER, ABSENT, COMPLETE, FIRST_PART = 1, 2, 3, 4, 5
"""The columns in front of the marks, and the first column of marks."""

QUESTION_ROW, PART_ROW, MAXIMUM_ROW, FIRST_LEARNER = 4, 5, 6, 7
"""The rows of headings, and the first learner's row."""

FINISHED = "finished"
PARTLY = "marked"  # what "3 of 5 marked" and "not marked" end in
NO_NUMBER = "not a number"
OUT_OF_RANGE = "mark out of range"
ABSENT_WITH_MARKS = "absent, yet has marks"


@dataclass(frozen=True, slots=True)
class MarksLayout:
    """The template of one paper for so many learners. Columns and rows count from 1, as in a workbook."""

    parts: tuple[PartRow, ...]
    portions: tuple[PortionRow, ...]
    questions: tuple[TotalRow, ...]
    learners: int

    @property
    def last_part(self) -> int:
        """The column of the last part's marks."""
        return FIRST_PART + len(self.parts) - 1

    @property
    def first_question(self) -> int:
        """The column of the first question's total."""
        return self.last_part + 1

    @property
    def total(self) -> int:
        """The column of the total of what is marked so far."""
        return self.first_question + len(self.questions)

    @property
    def final(self) -> int:
        """The column of the total of a learner whose marking is finished."""
        return self.total + 1

    @property
    def percent(self) -> int:
        """The column of the final total as a percentage."""
        return self.total + 2

    @property
    def state(self) -> int:
        """The column that says how far the marking of a learner is, the last one."""
        return self.total + 3

    @property
    def last_learner(self) -> int:
        """The row of the last learner."""
        return FIRST_LEARNER + self.learners - 1

    def rows(self) -> range:
        """The learners' rows."""
        return range(FIRST_LEARNER, self.last_learner + 1)

    def across(self, row: int, sheet: bool = False) -> str:
        """All parts of a row."""
        return self._area(row, FIRST_PART, row, self.last_part, sheet)

    def of_question(self, question: TotalRow, row: int) -> str:
        """The parts of one question in a row."""
        return self._area(row, FIRST_PART + question.first, row, FIRST_PART + question.behind - 1, False)

    def column(self, column: int) -> str:
        """A column of all learners, on the sheet itself."""
        return self._area(FIRST_LEARNER, column, self.last_learner, column, False)

    def down(self, column: int) -> str:
        """A column of all learners' marks or results, as other sheets name it."""
        return self._area(FIRST_LEARNER, column, self.last_learner, column, True)

    def letter(self, column: int) -> str:
        """A column's letter."""
        from openpyxl.utils import get_column_letter

        return get_column_letter(column)

    def cell(self, row: int, column: int, sheet: bool = False) -> str:
        """One cell."""
        return self._area(row, column, row, column, sheet).partition(":")[0]

    def skills(self) -> Iterator[tuple[str, str, dict[int, int]]]:
        """Each skill with its strand and, by the column of each part that has it, how many skills share that part."""
        sharing: dict[tuple[str, str], dict[int, int]] = {}
        for portion in self.portions:
            sharing.setdefault((portion.skill, portion.strand), {})[FIRST_PART + portion.row] = portion.sharing
        return ((skill, strand, columns) for (skill, strand), columns in sharing.items())

    def _area(self, top: int, left: int, bottom: int, right: int, sheet: bool) -> str:
        area = f"${self.letter(left)}${top}:${self.letter(right)}${bottom}"
        return f"{MARKS_SHEET}!{area}" if sheet else area
