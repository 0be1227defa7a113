"""Takes down what a page prints while pdfminer runs its commands: glyphs, paths and pictures, within a budget."""

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import Any

from pdfminer.layout import LTChar
from pdfminer.pdfcolor import PDFColorSpace
from pdfminer.pdfdevice import PDFTextDevice
from pdfminer.pdffont import PDFFont, PDFUnicodeNotDefined
from pdfminer.pdfinterp import PDFGraphicState, PDFResourceManager
from pdfminer.pdfpage import PDFPage
from pdfminer.pdftypes import PDFStream
from pdfminer.utils import Matrix, PathSegment, apply_matrix_pt

from paperaudit.model.place import Box
from paperaudit.readers.draft.bounded import TooMuch
from paperaudit.readers.draft.fonts import names_of
from paperaudit.readers.draft.hollow import strips_between
from paperaudit.readers.draft.page import DraftPage, Glyph, Path, Piece, Point, Raster, box_around
from paperaudit.readers.draft.raw_codes import letter_and_code
from paperaudit.readers.draft.solid_pictures import RULE_OF_A_ROOT, filled, is_solid, rule_of_root
from paperaudit.readers.draft.told_text import told_by, with_told

MOST_OBJECTS = 60_000
"""Glyphs, stretches of paths and pictures of a page; a full page of text has some 4,000."""
_NO_LETTERS = "\0\ufffd\ufffe\uffff"
"""What some files have in place of a letter that they do not know."""
_MEET = 0.01
"""Points between the ends of a path that is as good as closed."""
_WIDEST = 20_000.0
"""Points; what lies farther out than this is on no paper."""


class Pen(PDFTextDevice):
    """The device that pdfminer's interpreter draws a page on; `page` gives what was drawn.

    `handle` is how pdfminer hands over characters; nothing of its own layout is used, which takes twice the time.
    `ink` is the colour of stencils, which the interpreter sets.
    """

    def __init__(self, resources: PDFResourceManager) -> None:
        super().__init__(resources)
        self._glyphs: list[Glyph] = []
        self._paths: list[Path] = []
        self._rasters: list[Raster] = []
        self._drawn = 0
        self._width = self._height = 0.0
        self._left = self._top = 0.0
        self.ctm: Matrix = (1, 0, 0, 1, 0, 0)
        self.ink: object = 0.0
        self._frames: list[Matrix] = []
        self._told: list[tuple[int, str]] = []

    def begin_page(self, page: PDFPage, ctm: Matrix) -> None:
        """Starts a page, of which the cropbox is looked at; `ctm` brings its mediabox upright to the origin."""
        media, crop = ([float(side) for side in box] for box in (page.mediabox, page.cropbox))
        sides = [
            *(max(one, other) for one, other in zip(media[:2], crop[:2], strict=True)),
            *(min(one, other) for one, other in zip(media[2:], crop[2:], strict=True)),
        ]
        if sides[0] >= sides[2] or sides[1] >= sides[3]:
            sides = media
        corners = [apply_matrix_pt(ctm, (sides[at], sides[at + 1])) for at in (0, 2)]
        (self._left, right), (low, self._top) = (sorted(values) for values in zip(*corners, strict=True))
        self._width, self._height = right - self._left, self._top - low
        self.ctm = ctm

    def page(self, number: int) -> DraftPage:
        """All that was drawn so far, as page `number`."""
        return DraftPage(
            number, self._width, self._height, tuple(self._glyphs), tuple(self._paths), tuple(self._rasters)
        )

    def begin_figure(self, name: str, bbox: Any, matrix: Matrix) -> None:
        """A drawing kept as an object of its own starts; the interpreter sets its matrix."""
        self._frames.append(self.ctm)

    def end_figure(self, name: str) -> None:
        """The drawing ends."""
        if self._frames:
            self.ctm = self._frames.pop()

    def begin_tag(self, tag: object, props: object = None) -> None:
        """A stretch starts of which the file may tell what it stands for."""
        self._told.append((len(self._glyphs), told_by(props)))

    def end_tag(self) -> None:
        """The stretch ends."""
        start, told = self._told.pop() if self._told else (0, "")
        if told:
            self._glyphs[start:] = with_told(self._glyphs[start:], told)

    def render_image(self, name: str, stream: PDFStream) -> None:
        """A picture of dots fills the unit square; one that is a single dot of the pen's colour is a path."""
        self._count(1)
        first, second, third, last = corners = [self._place(corner) for corner in ((0, 0), (1, 0), (1, 1), (0, 1))]
        if is_solid(stream):
            if _on_paper(_around(corners)):
                self._paths.append(filled((first, second, third, last), self._drawn, lightness(self.ink)))
            return
        width, height = stream.get_any(("W", "Width")), stream.get_any(("H", "Height"))
        self._rasters.append(Raster(_around(corners), _whole(width), _whole(height)))

    def render_char(
        self,
        matrix: Matrix,
        font: PDFFont,
        fontsize: float,
        scaling: float,
        rise: float,
        cid: int,
        ncs: PDFColorSpace,
        graphicstate: PDFGraphicState,
    ) -> float:
        """One character at the origin of `matrix`; returns how far it moves the pen."""
        self._count(1)
        try:
            text = font.to_unichr(cid).strip(_NO_LETTERS)
        except PDFUnicodeNotDefined:
            text = ""
        text, raw = letter_and_code(str(font.fontname), text)
        item = LTChar(
            matrix, font, fontsize, scaling, rise, text, font.char_width(cid), font.char_disp(cid), ncs, graphicstate
        )
        a, b, c, d = matrix[:4]
        size = abs(fontsize) * math.hypot(c, d)
        origin = apply_matrix_pt(matrix, (0, rise))
        if _on_paper(item.bbox) and text == RULE_OF_A_ROOT and a > 0 and b == 0:
            at = origin[0] - self._left, self._top - origin[1]
            self._paths.append(rule_of_root(at, size, self._drawn, lightness(graphicstate.ncolor)))
        elif _on_paper(item.bbox) and size > 0:
            self._glyphs.append(
                Glyph(
                    text=text,
                    box=(item.x0 - self._left, self._top - item.y1, item.x1 - self._left, self._top - item.y0),
                    baseline=self._top - origin[1],
                    size=size,
                    font=str(font.fontname),
                    index=self._drawn,
                    upright=a > 0 and d > 0 and abs(b) + abs(c) < 0.3 * (a + d),
                    grey=lightness(graphicstate.ncolor),
                    code=raw if raw >= 0 else cid if not text and _own_encoding(font) else -1,
                    name=names_of(font).get(cid, "") if not text and raw < 0 else "",
                )
            )
        return item.adv

    def paint_path(
        self, graphicstate: PDFGraphicState, stroke: bool, fill: bool, evenodd: bool, path: Sequence[PathSegment]
    ) -> None:
        """A path of one or several strokes of the pen."""
        runs = [self._pieces(run) for run in _runs(path)]
        if fill and evenodd and not stroke and (strips := strips_between([pieces for pieces, _ in runs])):
            runs = [(_round_a_box(box), True) for box in strips]
        for pieces, closed in runs:
            self._count(len(pieces))
            points = [point for piece in pieces for point in piece.points]
            if not pieces or not _on_paper(_around(points)):
                continue
            scale = math.sqrt(abs(self.ctm[0] * self.ctm[3] - self.ctm[1] * self.ctm[2]))
            self._paths.append(
                Path(
                    pieces=tuple(pieces),
                    box=box_around([_around(list(piece.points)) for piece in pieces]),
                    index=self._drawn,
                    closed=closed or math.dist(points[0], points[-1]) < _MEET,
                    width=float(graphicstate.linewidth or 0) * scale,
                    dashed=bool(graphicstate.dash and graphicstate.dash[0]),
                    stroke=lightness(graphicstate.scolor) if stroke else None,
                    fill=lightness(graphicstate.ncolor) if fill else None,
                )
            )

    def _pieces(self, run: Sequence[PathSegment]) -> tuple[list[Piece], bool]:
        """The stretches of one stroke and whether it is closed by its own command."""
        pieces: list[Piece] = []
        start = here = self._place((run[0][1], run[0][2]))  # type: ignore[misc]
        closed = False
        for command, *numbers in run[1:]:
            points = [self._place((numbers[at], numbers[at + 1])) for at in range(0, len(numbers), 2)]
            if command == "h":
                closed = True
                points = [start]
            elif command == "v":
                points = [here, *points]
            elif command == "y":
                points = [*points, points[-1]]
            if len(points) not in (1, 3):
                continue
            if any(math.dist(here, point) > _MEET for point in points):
                pieces.append(Piece((here, *points)))
            here = points[-1]
        return pieces, closed

    def _place(self, point: tuple[float, float]) -> Point:
        across, up = apply_matrix_pt(self.ctm, (float(point[0]), float(point[1])))
        return across - self._left, self._top - up

    def _count(self, objects: int) -> None:
        self._drawn += objects
        if self._drawn > MOST_OBJECTS:
            raise TooMuch(f"more than {MOST_OBJECTS:,} letters and lines were read")


def lightness(colour: object) -> float:
    """How light a colour is, from 0 (black) to 1 (white); black for what is no plain colour.

    >>> lightness(0.5), round(lightness((1, 0, 0)), 2), lightness((0, 0, 0, 1))
    (0.5, 0.3, 0.0)
    """
    given = colour if isinstance(colour, (tuple, list)) else (colour,)
    parts = [float(part) for part in given if isinstance(part, (int, float))]
    if not parts or len(parts) < len(given):
        return 0.0
    if len(parts) == 4:
        parts = [(1 - min(1.0, part)) * (1 - min(1.0, parts[3])) for part in parts[:3]]
    if len(parts) == 3:
        # The weights of ITU-R BT.601 for luma.
        return 0.299 * parts[0] + 0.587 * parts[1] + 0.114 * parts[2]
    return parts[0]


def _own_encoding(font: PDFFont) -> bool:
    """Whether the font's codes are those of its maker: none of the standard letters of PDF has been put behind them."""
    known = getattr(font, "cid2unicode", None)
    return isinstance(known, dict) and not all(code in known for code in range(ord("!"), ord("~")))


def _round_a_box(box: Box) -> list[Piece]:
    left, top, right, bottom = box
    corners = [(left, top), (right, top), (right, bottom), (left, bottom), (left, top)]
    return [Piece(pair) for pair in pairwise(corners)]


def _runs(path: Sequence[PathSegment]) -> list[list[PathSegment]]:
    runs: list[list[PathSegment]] = []
    for segment in path:
        if segment[0] == "m":
            runs.append([segment])
        elif runs:
            runs[-1].append(segment)
    return [run for run in runs if len(run) > 1]


def _around(points: list[Point]) -> Box:
    across, down = zip(*points, strict=True)
    return min(across), min(down), max(across), max(down)


def _on_paper(box: tuple[float, float, float, float]) -> bool:
    return all(math.isfinite(side) and abs(side) < _WIDEST for side in box)


def _whole(number: object) -> int:
    return int(number) if isinstance(number, (int, float)) else 0
