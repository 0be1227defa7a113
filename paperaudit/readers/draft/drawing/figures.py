"""From a page to its figures, step by step."""

import math
from collections.abc import Sequence
from dataclasses import replace
from statistics import median

from paperaudit.readers.draft.drawing.angle_words import AngleWords
from paperaudit.readers.draft.drawing.angles import angle_marks
from paperaudit.readers.draft.drawing.arc_sizes import arc_labels, is_arc_dimension, plain_arc_labels
from paperaudit.readers.draft.drawing.areas import MOST_STROKES, Area, areas_of
from paperaudit.readers.draft.drawing.captions import is_note, with_words
from paperaudit.readers.draft.drawing.dimensions import dimensions, in_skeleton, without
from paperaudit.readers.draft.drawing.drawn_figure import DrawnFigure
from paperaudit.readers.draft.drawing.drawn_words import DrawnWords
from paperaudit.readers.draft.drawing.fractions import with_fractions
from paperaudit.readers.draft.drawing.lettering import LONGEST, LabelKind, runs_of_print
from paperaudit.readers.draft.drawing.lines import Line, lines_of, without_wedges
from paperaudit.readers.draft.drawing.naming import give_letters
from paperaudit.readers.draft.drawing.other_kinds import other_kind
from paperaudit.readers.draft.drawing.plane import off_segment
from paperaudit.readers.draft.drawing.rounds import Bow, joined
from paperaudit.readers.draft.drawing.side_words import SideWords
from paperaudit.readers.draft.drawing.sides import side_marks
from paperaudit.readers.draft.drawing.sizes import give_sizes
from paperaudit.readers.draft.drawing.small_marks import small_marks
from paperaudit.readers.draft.drawing.spots import MEET, skeleton_of
from paperaudit.readers.draft.drawing.strokes import strokes_of
from paperaudit.readers.draft.drawing.wording_pen import WordingPen, Written
from paperaudit.readers.draft.page import DraftPage, Point, box_around

USUAL_PRINT = 10.0
SAME_CIRCLE = 0.8
"""Points by which arcs of one circle may differ."""
LARGE = 2.0
"""Sizes of print: an arc between the ends of lines is part of the figure from this radius on."""
MOST_FIGURES, MOST_LINES, MOST_LABELS = 30, 50, 60
"""Drawings of a page, lines and labels of a drawing: more take long and are on no school paper."""
MOST_PIECES = 15_000
"""Strokes of a page; with more of them its drawings are maps or pictures."""
ARMS = 1.2
"""The arms of a marked angle reach at least so many radii of its arc."""
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
    runs, strokes.straights = with_fractions(runs, strokes.straights)
    areas = areas_of(strokes, runs, (page.width, page.height)) if page.paths else []
    found = [_read(area, page.number) for area in areas[:MOST_FIGURES]]
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


def _read(area: Area, page: int) -> DrawnFigure:
    labels = [run for run in area.runs if run.kind is not LabelKind.WORDS]
    glyphs = frozenset(glyph.index for run in labels for glyph in run.glyphs)
    blank = DrawnFigure(page, area.box, glyphs=glyphs, paths=area.paths)
    strokes = area.strokes
    if area.strokes_count > MOST_STROKES:
        return replace(blank, unread=f"the drawing has more than {MOST_STROKES} strokes")
    print_size = median([run.size for run in labels]) if labels else USUAL_PRINT
    lines = lines_of(without_wedges(strokes.straights, strokes.bows))
    bows = joined(strokes.bows, SAME_CIRCLE, [end for line in lines for end in line.ends])
    marks = small_marks(lines, bows, strokes.shapes, print_size)
    circles = [bow for bow in bows if _is_part_of_figure(bow, marks.lines, print_size)]
    circles = [bow for bow in circles if not is_arc_dimension(bow, circles)]
    reason = other_kind(strokes, marks, circles, area.runs)
    if reason:
        return replace(blank, unread=reason)
    if len(marks.lines) > MOST_LINES or len(circles) > MOST_LINES or len(labels) > MOST_LABELS:
        return replace(blank, unread=f"the drawing has more than {MOST_LINES} lines or {MOST_LABELS} labels")
    skeleton = skeleton_of(marks.lines, circles, strokes.dots)
    letters = give_letters(skeleton, labels, marks.heads)
    measured = dimensions(skeleton, marks.ticks, marks.heads)
    if measured:
        marks = without(measured, marks)
        skeleton = skeleton_of(marks.lines, circles, strokes.dots)
        letters = give_letters(skeleton, labels, marks.heads)
        measured = [one for dimension in measured if (one := in_skeleton(dimension, skeleton))]
    if letters.repeated:
        return replace(blank, unread=f"the letter {letters.repeated[0]} stands at more than one point")
    arcs = [bow for bow in bows if bow not in circles]
    outer, labels = arc_labels(skeleton, [bow for bow in arcs if is_arc_dimension(bow, circles)], labels)
    arcs = [bow for bow in arcs if not is_arc_dimension(bow, circles)]
    angles, left = angle_marks(skeleton, arcs, marks.corners, marks.ticks)
    sides = side_marks(skeleton, marks.ticks, marks.heads, print_size)
    sizes = give_sizes(skeleton, angles, labels, measured)
    on_arcs, sizes.left = plain_arc_labels(skeleton, sizes.left)
    written = Written()
    AngleWords(skeleton, print_size, written).write(angles, sizes)
    SideWords(skeleton, print_size, written).write(angles, sides, sizes, [*outer, *on_arcs])
    DrawnWords(skeleton, print_size, written).write()
    WordingPen(skeleton, print_size, written).only_writable()
    doubts = [*_unread_print(area), *letters.doubts, *sizes.doubts, *written.doubts]
    doubts += [f"the label {run.text} stands at no angle and no side that could be told" for run in sizes.left]
    doubts += ["an arc stands between no two lines of the drawing"] * bool(left)
    if not labels and not written.given:
        return replace(blank, unread="the drawing has no letters and no sizes")
    return replace(
        blank,
        points=tuple((spot.name, *spot.at) for spot in skeleton.spots if spot.name),
        figure=tuple(written.figure),
        given=tuple(written.given),
        doubts=tuple(dict.fromkeys(doubts)),
        named_here=tuple(spot.name for spot in skeleton.spots if spot.given_here),
    )


def _is_part_of_figure(bow: Bow, lines: Sequence[Line], print_size: float) -> bool:
    """Whether an arc is a circle, or a part of one that ends where lines end, and no mark of an angle."""
    if not bow.exact:
        return False
    if bow.whole:
        return True
    if bow.radius < LARGE * print_size or all(_goes_beyond(bow, end, lines) for end in bow.ends):
        return False
    ends = [end for line in lines for end in line.ends]
    return all(any(abs(x - a) + abs(y - b) <= 1.5 * MEET for a, b in ends) for x, y in bow.ends)


def _goes_beyond(bow: Bow, end: Point, lines: Sequence[Line]) -> bool:
    """Whether a line from an arc's centre goes on beyond an end of the arc, as the arm of a marked angle does."""
    return any(
        off_segment(bow.centre, *line.ends) <= MEET
        and off_segment(end, *line.ends) <= MEET
        and max(math.dist(bow.centre, far) for far in line.ends if math.dist(far, end) < math.dist(far, bow.centre))
        >= ARMS * bow.radius
        for line in lines
        if any(math.dist(far, end) < math.dist(far, bow.centre) for far in line.ends)
    )


def _unread_print(area: Area) -> list[str]:
    """Short print inside the drawing that is no letter, no size and no note."""
    left, top, right, bottom = area.box
    return [
        f"the print {run.text} in the drawing could not be read"
        for run in area.runs
        if run.kind is LabelKind.WORDS
        and any(one.isalnum() for one in run.text)
        and len(run.text) <= LONGEST
        and left <= run.middle[0] <= right
        and top <= run.middle[1] <= bottom
        and not is_note(run.text)
    ]
