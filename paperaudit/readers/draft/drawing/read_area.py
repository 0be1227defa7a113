"""Reads one area of a page as a figure: its strokes, its print, its marks, and the statements that they make."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from statistics import median

from paperaudit.model.place import Box
from paperaudit.readers.draft.drawing.angle_words import AngleWords
from paperaudit.readers.draft.drawing.angles import angle_marks
from paperaudit.readers.draft.drawing.arc_sizes import ArcLabel, arc_labels, is_arc_dimension, plain_arc_labels
from paperaudit.readers.draft.drawing.areas import MOST_STROKES, Area
from paperaudit.readers.draft.drawing.captions import is_note
from paperaudit.readers.draft.drawing.dimensions import Dimension, dimensions, in_skeleton, without
from paperaudit.readers.draft.drawing.drawn_figure import DrawnFigure
from paperaudit.readers.draft.drawing.drawn_words import DrawnWords
from paperaudit.readers.draft.drawing.label_kinds import LabelKind
from paperaudit.readers.draft.drawing.lettering import LONGEST, Run
from paperaudit.readers.draft.drawing.lines import Line, lines_of, without_wedges
from paperaudit.readers.draft.drawing.naming import Letters, give_letters
from paperaudit.readers.draft.drawing.other_kinds import other_kind
from paperaudit.readers.draft.drawing.plane import off_segment
from paperaudit.readers.draft.drawing.rounds import Bow, joined
from paperaudit.readers.draft.drawing.side_words import SideWords
from paperaudit.readers.draft.drawing.sides import side_marks
from paperaudit.readers.draft.drawing.sizes import Sizes, give_sizes
from paperaudit.readers.draft.drawing.small_marks import SmallMarks, small_marks
from paperaudit.readers.draft.drawing.spots import MEET, Skeleton, skeleton_of
from paperaudit.readers.draft.drawing.typed_ticks import typed_ticks
from paperaudit.readers.draft.drawing.wording_pen import WordingPen, Written
from paperaudit.readers.draft.page import Point

USUAL_PRINT = 10.0
SAME_CIRCLE = 0.8
"""Points by which arcs of one circle may differ."""
LARGE = 2.0
"""Sizes of print: an arc between the ends of lines is part of the figure from this radius on."""
ARMS = 1.2
"""The arms of a marked angle reach at least so many radii of its arc."""
MOST_LINES, MOST_LABELS = 50, 60
"""Lines and labels of a drawing: more take long and are on no school paper."""
STRAY = 0.9
"""Print without a place in the figure is none of its labels if it stands so many sizes outside."""


@dataclass
class _Shapes:
    """What was drawn in an area: sides and marks, the circles of the figure, and arcs that are none."""

    marks: SmallMarks
    circles: list[Bow]
    arcs: list[Bow]
    print_size: float


def read_area(area: Area, page: int) -> DrawnFigure:
    """The figure of an area of the page `page`, with `unread` where it cannot be read."""
    labels = [run for run in area.runs if run.kind is not LabelKind.WORDS]
    inner = [run for run in area.runs if _is_inside(run, area.box)]
    blank = DrawnFigure(page, area.box, glyphs=_glyphs(inner), paths=area.paths)
    if area.strokes_count > MOST_STROKES:
        return replace(blank, unread=f"the drawing has more than {MOST_STROKES} strokes")
    shapes = _shapes(area, labels)
    reason = other_kind(area.strokes, shapes.marks, shapes.circles, area.runs)
    if not reason and max(len(shapes.marks.lines), len(shapes.circles)) > MOST_LINES:
        reason = f"the drawing has more than {MOST_LINES} lines"
    if not reason and len(labels) > MOST_LABELS:
        reason = f"the drawing has more than {MOST_LABELS} labels"
    return replace(blank, unread=reason) if reason else _read(area, shapes, labels, blank)


def _shapes(area: Area, labels: Sequence[Run]) -> _Shapes:
    strokes = area.strokes
    print_size = median([run.size for run in labels]) if labels else USUAL_PRINT
    lines = lines_of(without_wedges(strokes.straights, strokes.bows))
    bows = joined(strokes.bows, SAME_CIRCLE, [end for line in lines for end in line.ends])
    marks = small_marks(lines, bows, strokes.shapes, print_size)
    marks.ticks += typed_ticks(area.runs, marks.lines)
    circles = [bow for bow in bows if _is_part_of_figure(bow, marks.lines, print_size)]
    circles = [bow for bow in circles if not is_arc_dimension(bow, circles)]
    return _Shapes(marks, circles, [bow for bow in bows if bow not in circles], print_size)


def _read(area: Area, shapes: _Shapes, labels: Sequence[Run], blank: DrawnFigure) -> DrawnFigure:
    skeleton, letters, measured = _lettered(area, shapes, labels)
    if letters.repeated:
        return replace(blank, unread=f"the letter {letters.repeated[0]} stands at more than one point")
    outside = [bow for bow in shapes.arcs if is_arc_dimension(bow, shapes.circles)]
    arcs, rest = arc_labels(skeleton, outside, labels)
    marks = shapes.marks
    angles, left = angle_marks(skeleton, [bow for bow in shapes.arcs if bow not in outside], marks.corners, marks.ticks)
    sides = side_marks(skeleton, marks.ticks, marks.heads, shapes.print_size)
    sizes = give_sizes(skeleton, angles, rest, measured)
    more, sizes.left = plain_arc_labels(skeleton, sizes.left)
    arcs += more
    written = Written()
    AngleWords(skeleton, shapes.print_size, written).write(angles, sizes)
    SideWords(skeleton, shapes.print_size, written).write(angles, sides, sizes, arcs)
    DrawnWords(skeleton, shapes.print_size, written).write()
    WordingPen(skeleton, shapes.print_size, written).only_writable()
    strays = [*letters.left, *sizes.left]
    doubts = [*_unread_print(area), *letters.doubts, *sizes.doubts, *written.doubts]
    doubts += [
        f"the {'letter' if run.kind is LabelKind.POINT else 'label'} {run.text} stands at nothing that could be told"
        for run in strays
        if _outside(run, area.box) <= STRAY * run.size
    ]
    doubts += ["an arc stands between no two lines of the drawing"] * bool(left)
    used = _used(letters, sizes, arcs)
    if not used and not written.given:
        return replace(blank, unread="the drawing has no letters and no sizes")
    return replace(
        blank,
        points=tuple((spot.name, *spot.at) for spot in skeleton.spots if spot.name),
        figure=tuple(written.figure),
        given=tuple(written.given),
        doubts=tuple(dict.fromkeys(doubts)),
        glyphs=blank.glyphs | _glyphs(used),
        paths=blank.paths | {rule for run in used for rule in run.rules},
        named_here=tuple(spot.name for spot in skeleton.spots if spot.given_here),
    )


def _lettered(area: Area, shapes: _Shapes, labels: Sequence[Run]) -> tuple[Skeleton, Letters, list[Dimension]]:
    """The points with their letters, dimension lines taken out of the drawing."""
    skeleton = skeleton_of(shapes.marks.lines, shapes.circles, area.strokes.dots)
    letters = give_letters(skeleton, labels, shapes.marks.heads)
    measured = dimensions(skeleton, shapes.marks.ticks, shapes.marks.heads)
    if not measured:
        return skeleton, letters, []
    shapes.marks = without(measured, shapes.marks)
    skeleton = skeleton_of(shapes.marks.lines, shapes.circles, area.strokes.dots)
    letters = give_letters(skeleton, labels, shapes.marks.heads)
    return skeleton, letters, [one for dimension in measured if (one := in_skeleton(dimension, skeleton))]


def _used(letters: Letters, sizes: Sizes, arcs: Sequence[ArcLabel]) -> list[Run]:
    """The print that has a place in the figure."""
    placed = [run for run, _ in [*sizes.angles, *sizes.corners]] + [run for run, _ in sizes.sides]
    return [*letters.used, *placed, *(one.run for one in sizes.numbered), *(arc.run for arc in arcs)]


def _glyphs(runs: Sequence[Run]) -> frozenset[int]:
    return frozenset(glyph.index for run in runs for glyph in run.glyphs)


def _is_inside(run: Run, box: Box) -> bool:
    """Whether print is no part of the text: words in the drawing, and what may be a label close to it."""
    reach = 0.0 if run.kind is LabelKind.WORDS else STRAY * run.size
    return _outside(run, box) <= reach and len(run.text) <= LONGEST


def _outside(run: Run, box: Box) -> float:
    """How far the middle of print lies outside a box."""
    x, y = run.middle
    return max(0.0, box[0] - x - run.half_width, x - run.half_width - box[2], box[1] - y, y - box[3])


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
    """Short print in the drawing that is no letter, no size and no note."""
    return [
        f"the print {run.text} in the drawing could not be read"
        for run in area.runs
        if run.kind is LabelKind.WORDS
        and any(one.isalnum() or one in "√∛" for one in run.text)
        and len(run.text) <= LONGEST
        and _outside(run, area.box) <= 0.3 * run.size
        and not is_note(run.text)
    ]
