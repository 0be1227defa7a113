"""Finds the figures of a page: ink that hangs together and is no rule, no table, no frame; each with its print."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, field

from paperaudit.model.place import Box
from paperaudit.readers.draft.drawing.frames import (
    SCALE,
    is_table_or_frame,
    only_upright_and_level,
    part_box,
    share_inside,
)
from paperaudit.readers.draft.drawing.ink import Item, is_level, items_of, nets_of, together, without_rules
from paperaudit.readers.draft.drawing.label_kinds import LabelKind
from paperaudit.readers.draft.drawing.lettering import Run
from paperaudit.readers.draft.drawing.lines import dashes_joined
from paperaudit.readers.draft.drawing.strokes import Straight, Strokes
from paperaudit.readers.draft.page import Point, box_around

LEAST_WIDE, LEAST_HIGH = 30.0, 16.0
"""Points: what is smaller both ways, or flatter, is no figure."""
LABEL_REACH = 2.6
"""Sizes of print that a label may stand away from the ink."""
BESIDE = 60.0
"""Points between two parts of one figure that stand side by side, at most."""
DIMENSION = 40.0
"""Points between a figure and a dimension line beside it, at most."""
ORNAMENT = 3
"""A drawing without letters and sizes is one only if it has more strokes."""
MOST_STROKES = 400
"""Strokes of a figure; a drawing with more is no school figure and would take long."""


@dataclass
class Area:
    """The ink of one figure and the runs of print that belong to it."""

    box: Box
    strokes: Strokes
    runs: list[Run] = field(default_factory=list)

    @property
    def strokes_count(self) -> int:
        """How many straight and round strokes it has."""
        return len(self.strokes.straights) + len(self.strokes.bows)

    @property
    def paths(self) -> frozenset[int]:
        """The indexes of all its paths."""
        ink = self.strokes
        own = [one.path for kind in (ink.straights, ink.bows, ink.dots, ink.shapes) for one in kind]
        return frozenset(own) | {path.index for path in (*ink.curves, *ink.filled)}


def areas_of(strokes: Strokes, runs: Sequence[Run], page: tuple[float, float]) -> list[Area]:
    """The areas of a page that may be figures, from top to bottom."""
    strokes.straights = dashes_joined(strokes.straights)
    items = [item for item in items_of(strokes) if not _spans(item.box, page)]
    items = without_rules(items)
    tables = {id(item) for net in nets_of(items) if is_table_or_frame(net, runs) for item in net}
    items = [item for item in items if id(item) not in tables]
    every = together(items)
    parts = [part for part in every if not _is_small(part)]
    small = [part for part in every if _is_small(part)]
    _measured(parts, small)
    parts = [part for part in _nested(parts) if not is_table_or_frame(part, runs)]
    areas = [_area(part) for part in parts]
    _hand_out(runs, areas)
    areas = _side_by_side([area for area in areas if _may_be_figure(area)], runs)
    return sorted(areas, key=lambda area: (area.box[1], area.box[0]))


def _spans(box: Box, page: tuple[float, float]) -> bool:
    """Whether it is a frame or a ground of the whole page."""
    return box[2] - box[0] > 0.85 * page[0] and box[3] - box[1] > 0.7 * page[1]


def _is_small(part: Sequence[Item]) -> bool:
    left, top, right, bottom = part_box(part)
    wide, high = right - left, bottom - top
    return (
        max(wide, high) < LEAST_WIDE or (min(wide, high) < LEAST_HIGH and not _is_marked_line(part)) or _is_root(part)
    )


def _measured(parts: Sequence[list[Item]], small: Sequence[list[Item]]) -> None:
    """Gives dots, and dimension lines with marks at their ends, to the figure that they lie in or along."""
    for part in small:
        longest = max(item.box[2] - item.box[0] + item.box[3] - item.box[1] for item in part)
        box = part_box(part)
        dots = all(item.kind == "dots" for item in part)
        if not dots and (len(part) < 3 or longest < LEAST_WIDE or _is_root(part)):
            continue
        for other in parts:
            if share_inside(box, part_box(other)) > 0.9 if dots else _lies_along(box, part_box(other)):
                other.extend(part)
                break


def _lies_along(box: Box, other: Box) -> bool:
    """Whether a flat box lies beside another one, not far off, and no longer than it."""
    level = box[2] - box[0] > box[3] - box[1]
    low, high = (0, 2) if level else (1, 3)
    off = max(other[1] - box[3], box[1] - other[3]) if level else max(other[0] - box[2], box[0] - other[2])
    return -4 < off <= DIMENSION and box[low] >= other[low] - 6 and box[high] <= other[high] + 6


def _is_marked_line(part: Sequence[Item]) -> bool:
    """Whether it is a flat part with dots or arcs on it, or a line with strokes across it: points on a line."""
    level = [item for item in part if is_level(item)]
    across = sum(isinstance(item.ink, Straight) and not is_level(item) for item in part)
    scale = len(level) == 1 and across > SCALE and level[0].box[2] - level[0].box[0] > 2 * LEAST_WIDE
    return scale or any(item.kind in ("dots", "bows") for item in part)


def _is_root(part: Sequence[Item]) -> bool:
    """Whether it is a root sign drawn with the pen: one path that rises and ends in its long level bar."""
    if len({getattr(item.ink, "path", getattr(item.ink, "index", 0)) for item in part}) != 1 or len(part) > 5:
        return False
    level = [item for item in part if is_level(item)]
    left = min(item.box[0] for item in part)
    return (
        len(part) >= 3
        and len(level) == 1
        and level[0].box[0] - left < 14
        and level[0].box[1] <= part_box(part)[1] + 0.5
    )


def _nested(parts: list[list[Item]]) -> list[list[Item]]:
    """The parts with those that lie (almost) wholly inside another one's box joined to it."""
    found: list[list[Item]] = []
    for part in sorted(parts, key=lambda part: -_size(part_box(part))):
        box = part_box(part)
        for other in found:
            if share_inside(box, part_box(other)) > 0.6 and not only_upright_and_level(other):
                other.extend(part)
                break
        else:
            found.append(part)
    return found


def _size(box: Box) -> float:
    return (box[2] - box[0]) * (box[3] - box[1])


def _area(part: Sequence[Item]) -> Area:
    strokes = Strokes()
    for item in part:
        getattr(strokes, item.kind).append(item.ink)
    return Area(part_box(part), strokes)


def _hand_out(runs: Sequence[Run], areas: Sequence[Area]) -> None:
    """Gives every run that may be a label to the area whose ink is nearest to it."""
    points = [_ink_points(area) if area.strokes_count <= MOST_STROKES else [] for area in areas]
    for run in runs:
        best: tuple[float, int] | None = None
        for number, area in enumerate(areas):
            reach = LABEL_REACH * run.size
            if _outside(run.box, area.box) > reach:
                continue
            away = min((_off_box(point, run.box) for point in points[number]), default=math.inf)
            inside = _outside(run.box, area.box) == 0
            if (away <= reach or inside) and (best is None or away < best[0]):
                best = away, number
        if best is not None:
            areas[best[1]].runs.append(run)


def _ink_points(area: Area) -> list[Point]:
    return [point for item in items_of(area.strokes) for point in item.points]


def _outside(box: Box, other: Box) -> float:
    """How far a box lies outside another one, 0 where they overlap."""
    return max(0.0, other[0] - box[2], box[0] - other[2], other[1] - box[3], box[1] - other[3])


def _off_box(point: Point, box: Box) -> float:
    return math.hypot(max(0.0, box[0] - point[0], point[0] - box[2]), max(0.0, box[1] - point[1], point[1] - box[3]))


def _may_be_figure(area: Area) -> bool:
    """Whether an area has letters, sizes or round strokes at all, and not just upright and level rules."""
    strokes = area.strokes
    labels = [run for run in area.runs if run.kind is not LabelKind.WORDS]
    slanting = any(
        min(abs(one.start[0] - one.end[0]), abs(one.start[1] - one.end[1])) > 2 and one.length > 12
        for one in strokes.straights
    )
    many = len(strokes.straights) + len(strokes.bows) > ORNAMENT
    return bool(labels) or (many and (bool(strokes.bows) or slanting)) or bool(strokes.curves) or bool(strokes.filled)


def _side_by_side(areas: list[Area], runs: Sequence[Run]) -> list[Area]:
    """The areas with those put together that are parts of one figure: near, at one height, their letters different."""
    found: list[Area] = []
    for area in sorted(areas, key=lambda one: one.box[0]):
        for at, other in enumerate(found):
            if _one_figure(other, area, runs):
                found[at] = _joined(other, area)
                break
        else:
            found.append(area)
    return found


def _one_figure(one: Area, other: Area, runs: Sequence[Run]) -> bool:
    gap = other.box[0] - one.box[2]
    high = min(one.box[3], other.box[3]) - max(one.box[1], other.box[1])
    least = min(one.box[3] - one.box[1], other.box[3] - other.box[1])
    wide = (one.box[2] - one.box[0] + other.box[2] - other.box[0]) / 2
    letters = [{run.text for run in area.runs if run.kind is LabelKind.POINT} for area in (one, other)]
    if gap > min(BESIDE, 0.9 * wide) or high < 0.5 * least or letters[0] & letters[1] or not all(letters):
        return False
    if any(_is_caption(run.text) for run in (*one.runs, *other.runs)) or not _same_kind(one, other):
        return False
    between = (one.box[2], max(one.box[1], other.box[1]), other.box[0], min(one.box[3], other.box[3]))
    under = max(one.box[3], other.box[3])
    return not any(
        (len(run.text) > 8 and share_inside(run.box, between) > 0.2)
        or (_is_caption(run.text) and under < run.baseline < under + 40 and one.box[0] < run.middle[0] < other.box[2])
        for run in runs
    )


def _same_kind(one: Area, other: Area) -> bool:
    """Whether two drawings have as many sides and as many circles, as similar and congruent figures have."""
    sides = [sum(stroke.length > LEAST_HIGH for stroke in area.strokes.straights) for area in (one, other)]
    rounds = [sum(bow.radius > LEAST_HIGH and bow.sweep > 90 for bow in area.strokes.bows) for area in (one, other)]
    return abs(sides[0] - sides[1]) <= 1 and rounds[0] == rounds[1]


def _is_caption(text: str) -> bool:
    return text.startswith(("Fig", "FIG", "Diagram", "DIAGRAM", "Sketch")) or text in (
        "(a)",
        "(b)",
        "(i)",
        "(ii)",
        "(c)",
    )


def _joined(one: Area, other: Area) -> Area:
    strokes = Strokes(
        one.strokes.straights + other.strokes.straights,
        one.strokes.bows + other.strokes.bows,
        one.strokes.dots + other.strokes.dots,
        one.strokes.shapes + other.strokes.shapes,
        one.strokes.curves + other.strokes.curves,
        one.strokes.filled + other.strokes.filled,
    )
    return Area(box_around([one.box, other.box]), strokes, one.runs + other.runs)
