"""From a page to its figures."""

from dataclasses import replace

from paperaudit.readers.draft.drawing.areas import areas_of
from paperaudit.readers.draft.drawing.captions import with_words
from paperaudit.readers.draft.drawing.drawn_figure import DrawnFigure
from paperaudit.readers.draft.drawing.lettering import runs_of_print
from paperaudit.readers.draft.drawing.read_area import read_area
from paperaudit.readers.draft.drawing.stacked import with_stacked
from paperaudit.readers.draft.drawing.strokes import Dot, strokes_of
from paperaudit.readers.draft.page import DraftPage, Glyph, Point, box_around

MOST_PIECES = 15_000
"""Strokes of a page; with more of them its drawings are maps or pictures."""
MOST_FIGURES = 30
"""Drawings of a page that are read."""
_DOTS = frozenset("•●∙⚫")
_DOT_NAMES = frozenset({"bullet", "dot", "disc", "disk", "filledcircle"})
DOT_SIZE, DOT_HEIGHT = 0.2, 0.38
"""The radius of a dot of a font, and how far over the baseline its middle is, in sizes of print."""
LEAST_PICTURE = 40.0
"""Points: pictures of dots smaller than this are ornaments."""


def figures_of(page: DraftPage) -> tuple[DrawnFigure, ...]:
    """The figures of a page, from top to bottom; what cannot be read has `unread` with the reason."""
    runs = runs_of_print(page.glyphs) if page.paths or page.rasters else []
    if sum(len(path.pieces) for path in page.paths) > MOST_PIECES:
        box = box_around([path.box for path in page.paths])
        paths = frozenset(path.index for path in page.paths)
        reason = f"the page has more than {MOST_PIECES} strokes, and its drawings are not read"
        return (DrawnFigure(page.number, box, paths=paths, unread=reason),)
    strokes = strokes_of(page.paths)
    runs, strokes.straights = with_stacked(runs, strokes.straights, page.paths)
    areas = []
    if page.paths:
        strokes.dots += _printed_dots(page)
        areas = areas_of(strokes, runs, (page.width, page.height))
    found = [read_area(area, page.number) for area in areas[:MOST_FIGURES]]
    found += [
        DrawnFigure(page.number, area.box, paths=area.paths, unread=f"the page has more than {MOST_FIGURES} drawings")
        for area in areas[MOST_FIGURES:]
    ]
    for raster in page.rasters:
        wide, high = raster.box[2] - raster.box[0], raster.box[3] - raster.box[1]
        if min(wide, high) >= LEAST_PICTURE:
            found.append(DrawnFigure(page.number, raster.box, unread="the figure is a picture made of dots"))
    found.sort(key=lambda figure: (figure.box[1], figure.box[0]))
    return tuple(_with_dots(figure, page) for figure in with_words(found, runs)) if found else ()


def _printed_dots(page: DraftPage) -> list[Dot]:
    """The dots that are signs of a font; their numbers, below 0, are those of no path."""
    return [
        Dot(_middle_of_dot(one), one.size * DOT_SIZE, -1 - one.index)
        for one in page.glyphs
        if one.text in _DOTS or one.name.lower() in _DOT_NAMES
    ]


def _middle_of_dot(glyph: Glyph) -> Point:
    """A sign as wide as a letter stands over the baseline; one without a width is set by its middle."""
    if glyph.width < glyph.size / 10:
        return glyph.box[0], glyph.baseline
    return glyph.middle[0], glyph.baseline - DOT_HEIGHT * glyph.size


def _with_dots(figure: DrawnFigure, page: DraftPage) -> DrawnFigure:
    """The figure with the dots in it that are signs of a font, with or without a letter behind them."""
    left, top, right, bottom = figure.box
    dots = {
        one.index
        for one in page.glyphs
        if one.text.strip("•●∙⋅·") == "" and not one.text.isspace()
        if left <= one.box[0] <= right and top <= one.baseline <= bottom
    }
    return replace(figure, glyphs=figure.glyphs | dots) if dots else figure
