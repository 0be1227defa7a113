"""Sets print for tests: glyphs on baselines, bars and rules, in a font whose letters are all half as wide as high."""

import itertools
from collections.abc import Sequence
from dataclasses import dataclass, field

from paperaudit.readers.draft.page import Glyph, Path, Piece
from paperaudit.readers.draft.rows import rows_of

WIDTH = 0.5
SPACE = 0.3


@dataclass
class Print:
    """A page that is being set; `x` is where the next glyph goes."""

    x: float = 50.0
    y: float = 100.0
    size: float = 12.0
    glyphs: list[Glyph] = field(default_factory=list)
    paths: list[Path] = field(default_factory=list)

    def put(
        self, text: str, size: float | None = None, lift: float = 0.0, font: str = "Roman", name: str = ""
    ) -> "Print":
        """Letters one beside the other, a space as a gap; `lift` raises them above the baseline."""
        high = size or self.size
        for letter in text:
            if letter == " ":
                self.x += SPACE * high
                continue
            self.at(letter, self.x, self.y - lift, high, font, name=name)
            self.x += WIDTH * high
        return self

    def at(
        self, text: str, x: float, y: float, size: float, font: str = "Roman", wide: float = WIDTH, name: str = ""
    ) -> "Print":
        """One glyph anywhere; the pen does not move."""
        box = (x, y - 0.75 * size, x + wide * size, y + 0.25 * size)
        self.glyphs.append(Glyph("" if name else text, box, y, size, font, len(self.glyphs), name=name))
        return self

    def rule(self, left: float, right: float, y: float, filled: bool = False) -> "Print":
        """A thin horizontal stroke, or a thin filled box."""
        if filled:
            corners = [(left, y - 0.3), (right, y - 0.3), (right, y + 0.3), (left, y + 0.3), (left, y - 0.3)]
            sides = tuple(Piece((one, other)) for one, other in itertools.pairwise(corners))
            self.paths.append(Path(sides, (left, y - 0.3, right, y + 0.3), 0, True, 0, False, None, 0.0))
        else:
            self.paths.append(Path((Piece(((left, y), (right, y))),), (left, y, right, y), 0, width=0.4))
        return self

    def stroke(self, points: Sequence[tuple[float, float]]) -> "Print":
        """A path along points."""
        across, down = zip(*points, strict=True)
        pieces = tuple(Piece((one, other)) for one, other in itertools.pairwise(points))
        self.paths.append(Path(pieces, (min(across), min(down), max(across), max(down)), 0, width=0.5))
        return self

    def fraction(self, above: str, below: str, size: float | None = None, filled: bool = False) -> "Print":
        """A stacked fraction, its bar a quarter of the row's size above the baseline."""
        high = size or self.size
        wide = max(_width(above, high), _width(below, high))
        bar = self.y - 0.25 * self.size
        left, right = self.x + 1, self.x + 1 + wide
        for text, down in ((above, -0.35 * high), (below, 0.95 * high)):
            self.x, self.y, old = (left + right - _width(text, high)) / 2, bar + down, self.y
            self.put(text, high)
            self.y = old
        self.rule(left, right, bar, filled)
        self.x = right + 1
        return self

    def root(self, inside: str) -> "Print":
        """A root: its sign, and a rule over what is under it."""
        self.at("√", self.x, self.y, self.size, wide=0.6)
        self.x += 0.6 * self.size
        left = self.x
        self.put(inside)
        return self.rule(left, self.x, self.y - 0.85 * self.size)

    def down(self, by: float = 1.3) -> "Print":
        """On to the next row."""
        self.x, self.y = 50.0, self.y + by * self.size
        return self

    def read(self) -> list[str]:
        """The rows as they are read, their cells parted by a bar."""
        return [" ¦ ".join(cell.text for cell in row.cells) for row in rows_of(self.glyphs, self.paths)]

    def doubts(self) -> list[str]:
        """What of the rows is doubtful."""
        return [doubt for row in rows_of(self.glyphs, self.paths) for cell in row.cells for doubt in cell.doubts]


def _width(text: str, size: float) -> float:
    return sum(SPACE if letter == " " else WIDTH for letter in text) * size
