"""What a page of a draft shows, before anything is understood: glyphs, paths, pictures, each with its place.

All places are points of 1/72 inch from the left and from the top of the page as it is looked at, so y grows
downwards. Nothing here knows which program made the file.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from paperaudit.model.place import Box

Point = tuple[float, float]
"""Across from the left, down from the top, in points."""


@dataclass(frozen=True, slots=True)
class Glyph:
    """One printed character.

    `text` is what its font says that it stands for: a ligature has several letters, a glyph without a
    Unicode value has none. `baseline` is how far down the page its baseline is, `size` the height of its font,
    `grey` its lightness (0 black, 1 white), `index` its rank in the order of printing.
    Where its font gives it no `text`, `name` is what the font calls it, and `code` its number in an encoding that
    the font brings along (else -1).
    """

    text: str
    box: Box
    baseline: float
    size: float
    font: str
    index: int
    upright: bool = True
    grey: float = 0.0
    code: int = -1
    name: str = ""

    @property
    def width(self) -> float:
        """How far it reaches across."""
        return self.box[2] - self.box[0]

    @property
    def middle(self) -> Point:
        """The middle of its box."""
        return (self.box[0] + self.box[2]) / 2, (self.box[1] + self.box[3]) / 2


@dataclass(frozen=True, slots=True)
class Piece:
    """A stretch of a path: two points are a straight line, four a cubic Bézier curve with its handles."""

    points: tuple[Point, ...]

    @property
    def straight(self) -> bool:
        """Whether it is a line from its first point to its last."""
        return len(self.points) == 2


@dataclass(frozen=True, slots=True)
class Path:
    """A drawn path in one go of the pen; `closed` where it was closed or its ends meet.

    `width` is that of the pen; `stroke` and `fill` are lightnesses (0 black, 1 white) or None where the
    path is not stroked or not filled.
    """

    pieces: tuple[Piece, ...]
    box: Box
    index: int
    closed: bool = False
    width: float = 1.0
    dashed: bool = False
    stroke: float | None = 0.0
    fill: float | None = None

    @property
    def straight(self) -> bool:
        """Whether it is a single straight line."""
        return len(self.pieces) == 1 and self.pieces[0].straight

    @property
    def ends(self) -> tuple[Point, Point]:
        """Where the pen was set down and where it was lifted."""
        return self.pieces[0].points[0], self.pieces[-1].points[-1]


@dataclass(frozen=True, slots=True)
class Raster:
    """A picture made of dots; what it shows is not read. `width` and `height` are its dots."""

    box: Box
    width: int
    height: int


@dataclass(frozen=True, slots=True)
class DraftPage:
    """A page as it is looked at (rotation undone); `number` counts from 1."""

    number: int
    width: float
    height: float
    glyphs: tuple[Glyph, ...] = ()
    paths: tuple[Path, ...] = ()
    rasters: tuple[Raster, ...] = ()


def box_around(boxes: Iterator[Box] | tuple[Box, ...] | list[Box]) -> Box:
    """The smallest box that holds all of `boxes`, of which there is at least one.

    >>> box_around([(1, 2, 3, 4), (0, 3, 2, 9)])
    (0, 2, 3, 9)
    """
    lefts, tops, rights, bottoms = zip(*boxes, strict=True)
    return min(lefts), min(tops), max(rights), max(bottoms)
