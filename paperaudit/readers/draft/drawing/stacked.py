"""Reads the labels that have a root, a fraction or more than one level of print, by the reader of rows."""

from collections.abc import Iterator, Sequence

from paperaudit.model.place import Box
from paperaudit.readers.draft.drawing.label_kinds import LabelKind
from paperaudit.readers.draft.drawing.lettering import LONGEST, Run, label_text
from paperaudit.readers.draft.drawing.strokes import Straight
from paperaudit.readers.draft.page import Path, box_around
from paperaudit.readers.draft.rows import rows_of

LONGEST_RULE = 60.0
"""Points of the longest rule of a fraction or a root in a label."""
CLOSE, LEVELS = 0.4, 0.32
"""Sizes of print between the parts of a label, across and down, at most."""
MOST_GLYPHS = 24
BAND = 24.0
"""Points down the page in which the print near a rule is looked for."""


def with_stacked(
    runs: Sequence[Run], straights: Sequence[Straight], paths: Sequence[Path]
) -> tuple[list[Run], list[Straight]]:
    """The runs with roots and stacked fractions in linear form, and the strokes without their rules."""
    bands: dict[int, list[Run]] = {}
    for run in runs:
        if len(run.text) <= LONGEST:
            bands.setdefault(int(run.middle[1] // BAND), []).append(run)
    by_index = {path.index: path for path in paths}
    gone: set[int] = set()
    rules: set[int] = set()
    found: list[Run] = []
    for rule, over, under in _stacks(straights, bands):
        cluster = _cluster([over, under] if over else [under], rule, bands)
        if gone & {id(run) for run in cluster} or rule.path not in by_index:
            continue
        label = _read(cluster, [by_index[rule.path]])
        if label is not None:
            gone |= {id(run) for run in cluster}
            rules.add(id(rule))
            found.append(label)
    kept = [run for run in runs if id(run) not in gone]
    return kept + found, [one for one in straights if id(one) not in rules]


def _stacks(straights: Sequence[Straight], bands: dict[int, list[Run]]) -> Iterator[tuple[Straight, Run | None, Run]]:
    """Short level strokes with print close under them, and over them or with a root sign before them."""
    for rule in straights:
        left, right = sorted((rule.start[0], rule.end[0]))
        if abs(rule.start[1] - rule.end[1]) > 0.3 or not 2 < right - left <= LONGEST_RULE:
            continue
        height = rule.start[1]
        near = list(_near(height, bands))
        under = [run for run in near if _has_glyph(run, left, right, -height, (0.4, 1.4))]
        over = [run for run in near if _has_glyph(run, left, right, height, (0.0, 0.75))]
        roots = [run for run in near if run.text.endswith("√") and abs(run.box[2] - left) < 1.5]
        if under and (over or roots):
            yield rule, (over or roots)[0], under[0]


def _near(height: float, bands: dict[int, list[Run]]) -> Iterator[Run]:
    for band in (-1, 0, 1):
        yield from bands.get(int(height // BAND) + band, ())


def _has_glyph(run: Run, left: float, right: float, height: float, span: tuple[float, float]) -> bool:
    """Whether a glyph of a run stands on a rule, or hangs under it (`height` negative), so many sizes off."""
    side = 1 if height > 0 else -1
    return any(
        left - 1.5 <= glyph.box[0]
        and glyph.box[2] <= right + 1.5
        and span[0] <= (height - side * glyph.baseline) / glyph.size <= span[1]
        for glyph in run.glyphs
    )


def _cluster(parts: list[Run], rule: Straight, bands: dict[int, list[Run]]) -> list[Run]:
    """The parts of a label with all print that touches them."""
    cluster = list(parts)
    box = box_around([*(run.box for run in parts), (*rule.start, *rule.start), (*rule.end, *rule.end)])
    grown = True
    while grown:
        grown = False
        for run in _near(rule.start[1], bands):
            if all(run is not other for other in cluster) and run.kind is not LabelKind.POINT and _touches(run, box):
                cluster.append(run)
                box = box_around([box, run.box])
                grown = True
    return cluster


def _touches(run: Run, box: Box) -> bool:
    across = max(run.box[0] - box[2], box[0] - run.box[2])
    top, bottom = run.baseline - 0.7 * run.size, run.baseline + 0.05 * run.size
    down = max(top - box[3], box[1] - bottom)
    return across <= CLOSE * run.size and down <= -LEVELS * run.size


def _read(cluster: Sequence[Run], rules: Sequence[Path]) -> Run | None:
    glyphs = tuple(sorted((glyph for run in cluster for glyph in run.glyphs), key=lambda glyph: glyph.index))
    if len(glyphs) > MOST_GLYPHS:
        return None
    rows = rows_of(glyphs, rules)
    if len(rows) != 1 or len(rows[0].cells) != 1 or rows[0].cells[0].doubts:
        return None
    row = rows[0]
    return Run(label_text(row.text), row.box, row.baseline, row.size, glyphs, tuple(path.index for path in rules))
