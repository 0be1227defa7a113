"""Says which drawings are no figures of plane geometry: graphs, solids, trees, Venn diagrams, charts, curves."""

import itertools
import re
from collections.abc import Sequence

from paperaudit.readers.draft.drawing.label_kinds import LabelKind
from paperaudit.readers.draft.drawing.lettering import Run
from paperaudit.readers.draft.drawing.lines import Line
from paperaudit.readers.draft.drawing.plane import slant
from paperaudit.readers.draft.drawing.rounds import Bow
from paperaudit.readers.draft.drawing.small_marks import SmallMarks
from paperaudit.readers.draft.drawing.strokes import Strokes

GRID = 5
"""So many level and so many upright lines make a grid."""
SCALE = 4
"""So many numbers in a row along a line make a scale."""
HIDDEN = 3
"""So many dashed lines that meet are the hidden edges of a solid."""


def other_kind(strokes: Strokes, marks: SmallMarks, circles: Sequence[Bow], runs: Sequence[Run]) -> str:
    """Why a drawing is not read as a figure of plane geometry, "" where it may be one."""
    if _is_grid(marks) or _has_axes(marks, runs):
        return "a graph or a coordinate grid is not read from a drawing"
    if is_scale(runs):
        return "a number line, a graph or a chart is not read from a drawing"
    if strokes.curves:
        return "it has a curve that is no part of a circle (a graph, an ellipse, a solid)"
    if len(strokes.filled) > 2:
        return "a chart or a shaded plan is not read from a drawing"
    if _is_solid(marks):
        return "it looks like a solid with hidden edges"
    if _is_tree(marks, circles, runs):
        return "it looks like a tree diagram"
    if _is_venn(marks, circles, runs):
        return "it looks like a Venn diagram"
    return ""


def _is_grid(marks: SmallMarks) -> bool:
    level = {round(line.start[1]) for line in marks.lines if slant(line.direction, 0) < 0.5}
    upright = {round(line.start[0]) for line in marks.lines if slant(line.direction, 90) < 0.5}
    return len(level) >= GRID and len(upright) >= GRID


def _has_axes(marks: SmallMarks, runs: Sequence[Run]) -> bool:
    """Whether two arrows at right angles have the letters x and y at their heads, or points have coordinates."""
    ends = [head for head in marks.heads if head.at_end]
    level = any(slant(head.direction, 0) < 1 for head in ends)
    upright = any(slant(head.direction, 90) < 1 for head in ends)
    names = {run.text for run in runs}
    if level and upright and ({"x", "y"} <= names or not any(run.kind is LabelKind.POINT for run in runs)):
        return True
    pairs = [run for run in runs if re.fullmatch(r"[A-Z]? ?\( ?[−\d.,]+ ?[;,] ?[−\d.,]+ ?\)", run.text)]
    return bool(pairs) and (level or upright or len(pairs) > 1 or {"x", "y"} <= names)


def is_scale(runs: Sequence[Run]) -> bool:
    """Whether plain numbers stand in a row, at one height or under each other, rising at even steps."""
    numbers = [run for run in runs if re.fullmatch(r"−?\d+(?:[.,]\d+)?", run.text)]
    for across in (True, False):
        rows: dict[int, list[tuple[float, float]]] = {}
        for run in numbers:
            value = float(run.text.replace("−", "-").replace(",", "."))
            level = run.baseline if across else run.box[2]
            rows.setdefault(round(level / 3), []).append((run.middle[0] if across else -run.middle[1], value))
        for row in rows.values():
            values = [value for _, value in sorted(row)]
            steps = {round(later - earlier, 6) for earlier, later in itertools.pairwise(values)}
            if len(values) >= SCALE and len(steps) == 1 and min(steps) > 0:
                return True
    return False


def _is_solid(marks: SmallMarks) -> bool:
    dashed = [line for line in marks.lines if line.dashed]
    if len(marks.lines) < 9 and len(dashed) < HIDDEN + 1:
        return False
    for line in dashed:
        for end in line.ends:
            near = [other for other in dashed if min(abs(end[0] - x) + abs(end[1] - y) for x, y in other.ends) < 2.5]
            if len(near) >= HIDDEN:
                return True
    return False


def _is_tree(marks: SmallMarks, circles: Sequence[Bow], runs: Sequence[Run]) -> bool:
    """Whether most lines have chances as labels, numbers from 0 to 1, and no angle has a size."""
    if circles or any(run.kind in (LabelKind.ANGLE, LabelKind.LENGTH) for run in runs):
        return False
    chances = [run for run in runs if re.fullmatch(r"0[.,]\d+|\(?\d+\)?/\(?\d+\)?", run.text)]
    return len(chances) >= 2 and 2 * len(chances) >= len(marks.lines)


def _is_venn(marks: SmallMarks, circles: Sequence[Bow], runs: Sequence[Run]) -> bool:
    """Whether circles overlap, in a frame or with numbers, with no line to any of their points."""
    whole = [circle for circle in circles if circle.whole]
    slanting = [line for line in marks.lines if min(slant(line.direction, 0), slant(line.direction, 90)) > 1]
    framed = len(marks.lines) == 4 and not slanting and all(_is_round(marks.lines, circle) for circle in whole)
    numbers = [run for run in runs if run.text.isdigit()]
    return len(whole) >= 2 and (framed or (not marks.lines and bool(numbers)))


def _is_round(lines: Sequence[Line], circle: Bow) -> bool:
    across = [x for line in lines for x, _ in line.ends]
    down = [y for line in lines for _, y in line.ends]
    (x, y), reach = circle.centre, circle.radius
    return min(across) < x - reach and max(across) > x + reach and min(down) < y - reach and max(down) > y + reach
