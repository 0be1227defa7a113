"""Finds the words that belong to figures: captions and notes that a drawing is not to scale."""

import re
from collections.abc import Sequence
from dataclasses import replace

from paperaudit.model.place import Box
from paperaudit.readers.draft.drawing.drawn_figure import DrawnFigure
from paperaudit.readers.draft.drawing.lettering import Run

UNDER, OVER, NOTE = 95.0, 40.0, 45.0
"""Points from a figure down to its caption, up to it, and to a note on its scale, at most."""
ASIDE = 40.0
"""Points that the middle of a caption may lie beyond the sides of its figure."""
TEXT = 14
"""So many characters between a figure and a caption are text that parts them."""
_CAPTION = re.compile(r"((?:Figure|Fig|Diagram|Sketch)\.? ?\d+(?:\.\d+)*)(?=$|[.:;,)] ?| ?[−(])", re.IGNORECASE)
_SCALE = re.compile(r"not (?:drawn )?(?:to scale|accurately)", re.IGNORECASE)


def with_words(figures: Sequence[DrawnFigure], runs: Sequence[Run]) -> list[DrawnFigure]:
    """The figures of a page with their captions, each of which goes to the nearest one, and notes on scale."""
    found = list(figures)
    pairs = [
        (away, number, run, match.group(1))
        for run in runs
        if (match := _CAPTION.match(run.text))
        for number, figure in enumerate(found)
        if (away := _away(run, figure.box, runs)) is not None
    ]
    taken: set[int] = set()
    for _, number, run, caption in sorted(pairs, key=lambda pair: pair[:2]):
        if id(run) not in taken and not found[number].caption:
            taken.add(id(run))
            found[number] = replace(_with_glyphs(found[number], run), caption=caption)
    for run in runs:
        if _SCALE.search(run.text) and found:
            away, number = min((_off(run, figure.box), at) for at, figure in enumerate(found))
            if away <= NOTE:
                found[number] = replace(_with_glyphs(found[number], run), not_to_scale=True)
    return found


def is_note(text: str) -> bool:
    """Whether a text is a caption or a note on the scale.

    >>> is_note("Figure 2"), is_note("NOT TO SCALE"), is_note("Figure 2 shows a sail.")
    (True, True, False)
    """
    return bool(_CAPTION.match(text) or _SCALE.search(text))


def _with_glyphs(figure: DrawnFigure, run: Run) -> DrawnFigure:
    return replace(figure, glyphs=figure.glyphs | {glyph.index for glyph in run.glyphs})


def _away(run: Run, box: Box, runs: Sequence[Run]) -> float | None:
    """How far a caption stands from a figure, None where it is not that one's; under it is better than over it."""
    x, y = run.middle
    if max(box[0] - x, x - box[2]) > ASIDE:
        return None
    under, over = y - box[3], box[1] - y
    if -12 <= under <= UNDER and not _parted(box, box[3], y, run, runs):
        return abs(under)
    if -12 <= over <= OVER and not _parted(box, y, box[1], run, runs):
        return abs(over) + OVER / 2
    return 0.0 if box[1] <= y <= box[3] else None


def _parted(box: Box, top: float, bottom: float, caption: Run, runs: Sequence[Run]) -> bool:
    return any(
        len(run.text) >= TEXT
        and top + 2 < run.middle[1] < bottom - 2
        and run is not caption
        and run.box[0] < box[2]
        and run.box[2] > box[0]
        and not _SCALE.search(run.text)
        for run in runs
    )


def _off(run: Run, box: Box) -> float:
    y = run.middle[1]
    return max(0.0, box[0] - run.box[2], run.box[0] - box[2]) + max(0.0, box[1] - y, y - box[3])
