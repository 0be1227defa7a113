"""Where in the teacher's own file something was read."""

from dataclasses import dataclass

Box = tuple[float, float, float, float]
"""Left, top, right, bottom in points on a page."""


@dataclass(frozen=True, slots=True)
class Place:
    """A spot in a question file, a workbook or a page; what is not known stays at its default.

    `line` and `column` count from 1. `cell` is a workbook address such as `Paper!C7`.

    >>> Place(file="test.yaml", line=12).describe()
    'test.yaml, line 12'
    """

    file: str = ""
    line: int = 0
    column: int = 0
    cell: str = ""
    page: int = 0
    box: Box | None = None

    def describe(self) -> str:
        """The place as a teacher would look it up, outermost first."""
        words = [self.file] if self.file else []
        if self.cell:
            words.append(f"cell {self.cell}")
        elif self.page:
            words.append(f"page {self.page}")
        elif self.line:
            words.append(f"line {self.line}")
        return ", ".join(words)


NOWHERE = Place()
