"""Two-way tables: counts by two properties, with totals, one or two numbers perhaps missing."""

import re
from dataclasses import dataclass
from fractions import Fraction

from paperaudit.model.chance_task import AreCounted, FromTable
from paperaudit.model.statistics_task import Clashing
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.named_events import stem
from paperaudit.wording.topics.value_tables import Column, spelled

_TOTAL = re.compile(r"\s*(?:totals?|sum|all)\s*", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Crossed:
    """A two-way table. `letters` say which missing number a letter stands for."""

    row_names: tuple[str, ...]
    column_names: tuple[str, ...]
    rows: tuple[tuple[Fraction | None, ...], ...]
    row_total: bool
    column_total: bool
    letters: dict[str, tuple[int, int]]
    missing: tuple[tuple[int, int], ...]

    def inner(self) -> tuple[int, int]:
        """How many rows and columns are no totals."""
        return len(self.rows) - self.column_total, len(self.column_names) - self.row_total

    def clash(self) -> Clashing | None:
        """A row or column of a full table whose numbers do not add up to its total."""
        _height, _width = self.inner()
        lines = []
        if self.row_total:
            lines += [(name, [value or Fraction(0) for value in row]) for name, row in
                      zip(self.row_names, self.rows, strict=True)]  # fmt: skip
        if self.column_total:
            lines += [
                (name, [row[at] or Fraction(0) for row in self.rows]) for at, name in enumerate(self.column_names)
            ]
        for name, values in lines:
            if sum(values[:-1]) != values[-1]:
                said = " + ".join(map(str, values[:-1]))
                clash = (f"{name}: {', '.join(map(str, values[:-1]))}", f"total of {name}: {values[-1]}")
                return Clashing(clash, (f"{said} = {sum(values[:-1])}", f"{sum(values[:-1])} = {values[-1]}: false"))
        return None

    def named(self, words: list[str]) -> tuple[list[int], list[int]]:
        """The rows and columns that words name; raises NotUnderstood for a word that names none."""
        height, width = self.inner()
        rows = [at for at in range(height) if _names(self.row_names[at], words)]
        columns = [at for at in range(width) if _names(self.column_names[at], words)]
        used = {word for at in rows for word in _words(self.row_names[at])}
        used |= {word for at in columns for word in _words(self.column_names[at])}
        if set(words) - used or len(rows) > 1 or len(columns) > 1 or not (rows or columns):
            raise NotUnderstood("what the table does not name", 0)
        return rows, columns

    def share(
        self, options: list[tuple[list[int], list[int]]], within_rows: list[int], within_columns: list[int]
    ) -> FromTable:
        """The probability of being in one of some rows and columns, among all that are counted or those within."""
        names, cells, of = self.cells(options, within_rows, within_columns)
        return FromTable(names, tuple(self.rows[row][column] for row, column in cells), "of", of, 0, True)

    def cells(
        self, options: list[tuple[list[int], list[int]]], within_rows: list[int], within_columns: list[int]
    ) -> tuple[tuple[str, ...], tuple[tuple[int, int], ...], tuple[int, ...]]:
        """The cells that are counted, by name and by place, and which of them are in one of the options."""
        height, width = self.inner()
        cells = [(row, column) for row in within_rows or range(height) for column in within_columns or range(width)]
        names = tuple(f"{self.row_names[row]}, {self.column_names[column]}" for row, column in cells)
        of = tuple(at for at, (row, column) in enumerate(cells)
                   if any((not rows or row in rows) and (not columns or column in columns)
                          for rows, columns in options))  # fmt: skip
        if not of:
            raise NotUnderstood("nothing of the condition", 0)
        return names, tuple(cells), of

    def independence(self, one: tuple[list[int], list[int]], other: tuple[list[int], list[int]]) -> AreCounted:
        """Whether a row and a column are independent; raises NotUnderstood for two rows or two columns."""
        rows, columns = one[0] or other[0], one[1] or other[1]
        if len(rows) != 1 or len(columns) != 1 or bool(one[0]) == bool(one[1]) or bool(other[0]) == bool(other[1]):
            raise NotUnderstood("not a row and a column", 0)
        height, width = self.inner()
        counts = [[int(self.rows[row][column] or 0) for column in range(width)] for row in range(height)]
        row, column = rows[0], columns[0]
        return AreCounted((self.row_names[row], self.column_names[column]), sum(map(sum, counts)), sum(counts[row]),
                          sum(one[column] for one in counts), counts[row][column])  # fmt: skip


def _words(name: str) -> list[str]:
    return [stem(word) for word in re.findall(r"[a-z]+", name.lower())]


def _names(name: str, words: list[str]) -> bool:
    own = _words(name)
    return bool(own) and set(own) <= set(words)


def crossed_in(table: tuple[Column, ...]) -> Crossed | None:
    """A table whose first column names its rows and whose other columns are counts; None for any other."""
    if len(table) < 3 or len({len(cells) for _, cells in table}) != 1:
        return None
    labels, columns = table[0][1], table[1:]
    rows: list[list[Fraction | None]] = [[] for _ in labels]
    letters: dict[str, tuple[int, int]] = {}
    missing = []
    for at, (_, cells) in enumerate(columns):
        for row, cell in enumerate(cells):
            plain = spelled(cell)
            if re.fullmatch(r"\d{1,7}(?:\.\d+)?", plain):
                rows[row].append(Fraction(plain))
                continue
            if not re.fullmatch(r"[a-z]|\??|_+|-|\.+", plain):
                return None
            rows[row].append(None)
            missing.append((row, at))
            if plain.isalpha() and letters.setdefault(plain, (row, at)) != (row, at):
                return None
    row_total, column_total = bool(_TOTAL.fullmatch(columns[-1][0])), bool(_TOTAL.fullmatch(labels[-1]))
    if any(re.fullmatch(r"\d+", label.strip()) for label in labels) or not (row_total or column_total or not missing):
        return None
    names = tuple(label.strip() for label in labels), tuple(name.strip() for name, _ in columns)
    return Crossed(*names, tuple(map(tuple, rows)), row_total, column_total, letters, tuple(missing))
