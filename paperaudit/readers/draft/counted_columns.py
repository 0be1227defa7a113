"""Finds a short second column by its question numbers, which go on where those of the first column end."""

from collections.abc import Iterator, Sequence
from typing import Final

from paperaudit.readers.draft.numbering import Number, Style, numbers_at
from paperaudit.readers.draft.runs import Run

_BESIDE: Final = 8.0
"""Points by which text of the first column ends before the second, at least."""
_FEWEST: Final = 3
"""Questions that the first column has, at least."""


def counted_gutter(runs: Sequence[Run], least: float, most: float) -> tuple[float, float, float] | None:
    """Where a column of few rows begins, and between which heights, as `columns.areas_of` needs it.

    Its first question follows the last one to its left, and nothing beside it runs across its left edge.
    """
    numbered = [(run, number) for run in runs if (number := _question(run)) is not None]
    for first, number in sorted(numbered, key=lambda pair: (pair[0].baseline, pair[0].box[0])):
        if not least <= first.box[0] <= most:
            continue
        counted = [(run, one) for run, one in numbered if _alike(one, number)]
        left = [(run, one) for run, one in counted if run.box[0] < first.box[0] - _BESIDE]
        right = [one.value[0] for run, one in counted if run.box[0] >= first.box[0] - _BESIDE]
        lasts = [one.value[0] for _, one in left]
        if len(left) < _FEWEST or lasts != sorted(lasts):
            continue
        if right != [*range(lasts[-1] + 1, lasts[-1] + 1 + len(right))]:
            continue
        top = max(_heads(runs, left[0][0], first.box[0], lasts[0] == 1), default=0.0)
        beside = [run for run in runs if run.baseline > top]
        edge = min((run.box[0] for run in beside if run.box[2] > first.box[0]), default=0.0)
        if edge >= first.box[0] - _BESIDE and edge - max(_ends(beside, edge)) >= _BESIDE:
            return edge, top, max(run.box[3] for run in beside) + 1
    return None


def _question(run: Run) -> Number | None:
    """The number of a question that a run begins with, dressed so that it is no number of its text."""
    return next((one for one in numbers_at(run.text) if one.style is Style.ARABIC and one.dress), None)


def _alike(one: Number, other: Number) -> bool:
    return one.style is other.style and one.dress == other.dress


def _heads(runs: Sequence[Run], first: Run, edge: float, begins: bool) -> Iterator[float]:
    """Where rows end that stand above question 1 or run across the gutter above it."""
    for run in runs:
        if run.box[3] <= first.box[1] + 1 and (begins or run.box[0] < edge < run.box[2]):
            yield run.box[3]


def _ends(runs: Sequence[Run], edge: float) -> list[float]:
    return [run.box[2] for run in runs if run.box[0] < edge] or [edge]
