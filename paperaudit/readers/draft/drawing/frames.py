"""Tells tables and frames from figures that are made of upright and level strokes alone."""

import math
from collections.abc import Sequence

from paperaudit.model.place import Box
from paperaudit.readers.draft.drawing.ink import LEVEL, Item, is_level
from paperaudit.readers.draft.drawing.label_kinds import LabelKind
from paperaudit.readers.draft.drawing.lettering import Run
from paperaudit.readers.draft.drawing.other_kinds import is_scale
from paperaudit.readers.draft.drawing.strokes import Straight
from paperaudit.readers.draft.page import Path, box_around

GRID = 5
"""So many level and so many upright strokes may be a grid."""
WHOLE = 0.85
"""Share of the width or height of a table that its longest rules have."""
SCALE_REACH = 18.0
"""Points from a chart to the numbers of its scale, at most."""
_WORD = 4
"""Letters of what is longer than the sizes in a figure."""
SCALE = 4
"""A line with more strokes across it is a scale."""


def part_box(part: Sequence[Item]) -> Box:
    """The smallest box round strokes."""
    return box_around([item.box for item in part])


def share_inside(box: Box, other: Box) -> float:
    """The share of a box that lies inside another one."""
    wide = min(box[2], other[2]) - max(box[0], other[0])
    high = min(box[3], other[3]) - max(box[1], other[1])
    if wide < 0 or high < 0:
        return 0.0
    return (wide + 1) * (high + 1) / ((box[2] - box[0] + 1) * (box[3] - box[1] + 1))


def only_upright_and_level(part: Sequence[Item]) -> bool:
    """Whether all strokes are upright or level."""
    return all(
        isinstance(item.ink, Straight)
        and min(abs(item.ink.start[0] - item.ink.end[0]), abs(item.ink.start[1] - item.ink.end[1])) <= LEVEL
        for item in part
    )


def _has_opposite_sides(strokes: Sequence[Item]) -> bool:
    """Whether two level or two upright rules are as long as the whole; the legs of a right angle are not."""
    left, top, right, bottom = part_box(strokes)
    across: dict[int, float] = {}
    down: dict[int, float] = {}
    for item in strokes:
        if is_level(item):
            at = round(item.box[1] / 3)
            across[at] = across.get(at, 0.0) + item.box[2] - item.box[0]
        else:
            at = round(item.box[0] / 3)
            down[at] = down.get(at, 0.0) + item.box[3] - item.box[1]
    level = sum(length >= WHOLE * (right - left) for length in across.values())
    upright = sum(length >= WHOLE * (bottom - top) for length in down.values())
    return level >= 2 or upright >= 2


def is_table_or_frame(part: Sequence[Item], runs: Sequence[Run]) -> bool:
    """Whether upright and level strokes that hang together are a table, or a frame round text, and no figure.

    A figure has letters outside its corners, a chart a scale below it or on its left; a grid is one whose cells
    are mostly empty; a frame without much text in it may be a rectangle.
    """
    strokes = [item for item in part if item.kind != "filled"]
    if not strokes and _is_ground(part, runs):
        return True
    if not strokes or not only_upright_and_level(strokes) or not _has_opposite_sides(strokes):
        return False
    ends = [point for item in part if isinstance(item.ink, Straight) for point in (item.ink.start, item.ink.end)]
    left, top, right, bottom = box = part_box(part)
    near = (left - 25, top - 25, right + 25, bottom + 25)
    letters = {
        run.text
        for run in runs
        if run.kind is LabelKind.POINT
        and share_inside(run.box, near) > 0.5
        and not (left + 2 < run.middle[0] < right - 2 and top + 2 < run.middle[1] < bottom - 2)
        and any(math.dist(run.middle, end) < 1.9 * run.size for end in ends)
    }
    inside = [run for run in runs if share_inside(run.box, box) > 0.9]
    words = sum(len(run.text) > 7 for run in inside)
    level, upright = _rows_and_columns(strokes)
    cells = level > 2 and upright > 2
    if words > 3 or len(letters) < 2 or (cells and _lettered_corners(box, runs) < 3):
        beside = [
            run
            for run in runs
            if (0 < run.middle[1] - bottom < SCALE_REACH and left - 9 < run.middle[0] < right + 9)
            or (0 < left - run.middle[0] < SCALE_REACH and top - 9 < run.middle[1] < bottom + 9)
        ]
        if (level == 1 and upright > SCALE) or is_scale(beside):
            return False
        if level >= GRID and upright >= GRID:
            return len(inside) > 0.3 * (level - 1) * (upright - 1)
        return bool(inside) if level + upright <= 4 and words <= 3 and not len(inside) > 6 else True
    return False


def _is_ground(part: Sequence[Item], runs: Sequence[Run]) -> bool:
    """Whether filled rectangles are the ground of words: the coloured band of a title."""
    sides = [piece.points for item in part if isinstance(item.ink, Path) for piece in item.ink.pieces]
    upright = all(
        len(points) == 2 and min(abs(points[0][at] - points[1][at]) for at in (0, 1)) <= LEVEL for points in sides
    )
    box = part_box(part)
    return upright and any(len(run.text) > _WORD and share_inside(run.box, box) > 0.9 for run in runs)


def _lettered_corners(box: Box, runs: Sequence[Run]) -> int:
    """How many corners of a box have a letter outside it, off to both sides or to one."""
    corners = [(x, y) for x in (box[0], box[2]) for y in (box[1], box[3])]
    letters = [run for run in runs if run.kind is LabelKind.POINT]
    return sum(any(math.dist(run.middle, corner) < 1.9 * run.size for run in letters) for corner in corners)


def _rows_and_columns(strokes: Sequence[Item]) -> tuple[int, int]:
    """At how many heights level strokes are, and at how many places upright ones."""
    level = {round(item.box[1] / 2) for item in strokes if is_level(item)}
    upright = {round(item.box[0] / 2) for item in strokes if not is_level(item)}
    return len(level), len(upright)
