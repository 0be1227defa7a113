"""A row of print as it is read: its mathematics in linear form, in cells where wide gaps part it."""

from dataclasses import dataclass

from paperaudit.model.place import Box


@dataclass(frozen=True, slots=True)
class Cell:
    """A stretch of a row without a wide gap.

    `text` is linear ("(x + 1)/2 = x²"), `doubts` says in words what of it is not certain. `glyphs` are the
    indexes of the glyphs it was read from.
    """

    text: str
    box: Box
    glyphs: tuple[int, ...] = ()
    doubts: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Row:
    """One row; a stacked fraction, a power, a root and a hat are within the row that they stand in.

    `baseline` is that of its plain text, `size` the commonest size of its glyphs in points, `bold` where most
    of its letters are.
    """

    cells: tuple[Cell, ...]
    box: Box
    baseline: float
    size: float
    bold: bool = False

    @property
    def text(self) -> str:
        """The whole row; gaps between cells are single spaces."""
        return " ".join(cell.text for cell in self.cells)
