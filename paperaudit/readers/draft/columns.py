"""Finds the columns of a page: gutters that rows of text on both sides leave free."""

from collections.abc import Sequence
from itertools import pairwise
from typing import Final

from paperaudit.model.place import Box
from paperaudit.readers.draft.counted_columns import counted_gutter
from paperaudit.readers.draft.marks import marks_alone
from paperaudit.readers.draft.runs import Run, part_of

_GUTTER: Final = 8.0
"""Points that stay free between two columns."""
_NARROW_GUTTER: Final = 0.8
"""Sizes of print between what stands at the right edge of a column and the next column's text, at least."""
_EDGE: Final = 3.0
"""Points within which left edges of rows are one."""
_FULL: Final = 0.55
"""Share of its column that a row fills to count as text; columns of marks and of options have none like that."""
_FEWEST: Final = 3
"""Rows of text on each side that make columns."""
_NARROWEST: Final = 0.25
"""Share of the page's text that a column is wide."""
_MOST_CANDIDATES: Final = 12


def areas_of(runs: Sequence[Run], box: Box, deepest: int = 3) -> tuple[Box, ...]:
    """The areas of `box` in reading order: bands across the page, and columns within a band."""
    if deepest == 0 or len(runs) < 2 * _FEWEST:
        return (box,)
    found = _gutter(runs, box)
    if found is None:
        return (box,)
    edge, top, bottom = found
    across = edge - _GUTTER / 2
    runs = [piece for run in runs for piece in _parted(run, edge)]
    left, _, right, _ = box
    parts: list[Box] = []
    above, below = (left, box[1], right, top), (left, bottom, right, box[3])
    parts += areas_of(_within(runs, above), above, deepest) if _within(runs, above) else ()
    for side in ((left, top, across, bottom), (across, top, right, bottom)):
        parts += areas_of(_within(runs, side), side, deepest - 1)
    parts += areas_of(_within(runs, below), below, deepest - 1) if _within(runs, below) else ()
    return tuple(parts)


def _within(runs: Sequence[Run], box: Box) -> list[Run]:
    return [run for run in runs if box[0] <= run.box[0] < box[2] and box[1] <= run.baseline < box[3]]


def _gutter(runs: Sequence[Run], box: Box) -> tuple[float, float, float] | None:
    """Where the text of a second column begins, and the heights between which it stands beside the first, if any."""
    text_left, text_right = min(run.box[0] for run in runs), max(run.box[2] for run in runs)
    wide = text_right - text_left
    best: tuple[int, float, float, float] | None = None
    edges = _candidates(runs, text_left + _NARROWEST * wide, text_right - _NARROWEST * wide)
    begun = [edge for edge in edges if _has_text(runs, edge, _FULL * _NARROWEST * wide)]
    for edge in edges:
        # Beyond a neighbour there may be a third column.
        left = max((other for other in begun if other < edge - _NARROWEST * wide), default=text_left)
        right = min((other for other in begun if other > edge + _NARROWEST * wide), default=text_right)
        for top, bottom, inside in _bands(runs, edge, box):
            top = max([top, *_heads(inside, edge, edges)])
            inside = [run for run in inside if run.baseline > top]
            count = _text_on_both_sides(inside, edge, left, right)
            if count >= 2 * _FEWEST and (best is None or count > best[0]):
                best = (count, edge, top, bottom)
    if best is not None:
        return best[1:]
    return counted_gutter(runs, text_left + _NARROWEST * wide, text_right - _NARROWEST * wide)


def _candidates(runs: Sequence[Run], least: float, most: float) -> list[float]:
    """Left edges that several rows share, the commonest first; marks of the first column may stand close before one."""
    edges: list[list[float]] = []
    begun = [edge for run in runs for edge in (run.box[0], *_begun_within(run))]
    for edge in sorted(edge for edge in begun if least <= edge <= most):
        if edges and edge - edges[-1][0] <= _EDGE:
            edges[-1].append(edge)
        else:
            edges.append([edge])
    common = sorted((group for group in edges if len(group) >= _FEWEST), key=lambda group: (-len(group), group[0]))
    return [group[0] for group in common[:_MOST_CANDIDATES]]


def _bands(runs: Sequence[Run], edge: float, box: Box) -> list[tuple[float, float, list[Run]]]:
    """The stretches of the page between rows that run across the gutter, each with its runs."""
    bands: list[tuple[float, float, list[Run]]] = []
    top, inside = box[1], list[Run]()
    parted = [piece for run in runs for piece in _parted(run, edge)]
    for run in sorted(parted, key=lambda one: one.baseline):
        if run.box[0] < edge - _GUTTER and run.box[2] > edge - _GUTTER / 4:
            bands.append((top, run.box[1], inside))
            top, inside = run.box[3], []
        else:
            inside.append(run)
    return [*bands, (top, box[3], inside)]


def _heads(runs: Sequence[Run], edge: float, edges: Sequence[float]) -> list[float]:
    """Where rows end that stand above a column's first row without standing under others: a head in several parts."""
    begun = min((run.box[1] for run in runs if abs(run.box[0] - edge) <= _EDGE), default=0.0)
    above = (run for run in runs if run.box[0] > edge + _EDGE and run.box[3] < begun)
    alone = (run for run in above if not any(abs(run.box[0] - other) <= _EDGE for other in edges))
    return [run.box[3] for run in alone if not marks_alone(run.text)]


def _has_text(runs: Sequence[Run], edge: float, least: float) -> bool:
    """Whether several rows begin at an edge that are longer than marks are."""
    own = (piece for run in runs for piece in _parted(run, edge) if abs(piece.box[0] - edge) <= _EDGE)
    return sum(run.box[2] - run.box[0] >= least for run in own) >= _FEWEST


def _begun_within(run: Run) -> list[float]:
    """Where glyphs begin behind a gap in the run that is as wide as a gutter."""
    return [
        after.box[0]
        for before, after in pairwise(run.glyphs)
        if after.box[0] - before.box[2] >= _NARROW_GUTTER * after.size
    ]


def _parted(run: Run, edge: float) -> tuple[Run, ...]:
    """The run, in two where a gap in it ends at the left edge of a column."""
    if not run.box[0] < edge - _EDGE < run.box[2]:
        return (run,)
    for at, (before, after) in enumerate(pairwise(run.glyphs), 1):
        if abs(after.box[0] - edge) <= _EDGE and after.box[0] - before.box[2] >= _NARROW_GUTTER * after.size:
            return part_of(run.glyphs[:at]), part_of(run.glyphs[at:])
    return (run,)


def _text_on_both_sides(runs: Sequence[Run], edge: float, left: float, right: float) -> int:
    """How many rows of text the poorer side has, twice; 0 where one side has too few."""
    on_left = [run for run in runs if run.box[0] < edge - _GUTTER]
    on_right = [run for run in runs if run.box[0] >= edge - _EDGE]
    full_left = sum(run.box[2] - run.box[0] >= _FULL * (edge - left) for run in on_left)
    full_right = sum(run.box[2] - run.box[0] >= _FULL * (right - edge) for run in on_right)
    least = min(full_left, full_right)
    return 2 * least if least >= _FEWEST else 0
