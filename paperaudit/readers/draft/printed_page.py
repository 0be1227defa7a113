"""Measures what concerns the print of a page alone: its number, its smallest and its faintest row of text."""

from collections.abc import Sequence
from dataclasses import dataclass
from statistics import median_low
from typing import Final

from paperaudit.model.place import Box
from paperaudit.readers.draft.drawing.drawn_figure import DrawnFigure
from paperaudit.readers.draft.page import DraftPage
from paperaudit.readers.draft.running import RunningMatter
from paperaudit.readers.draft.runs import runs_of

_FEWEST: Final = 4
"""Letters of a run that counts as text; powers, hats and marks are smaller by nature."""
_FAINT: Final = 0.02
"""Lightness that black ink may have."""


@dataclass(frozen=True, slots=True)
class Measured:
    """A page's number if it is printed, its smallest size of text in points and its lightest text, with their boxes."""

    page: int
    numbered: bool
    smallest: tuple[float, Box] | None
    faintest: tuple[float, Box] | None


def measured(page: DraftPage, figures: Sequence[DrawnFigure], running: RunningMatter) -> Measured:
    """The measures of a page; its figures and running heads are left out of them."""
    gone = set(running.glyphs).union(*(figure.glyphs for figure in figures))
    sizes: list[tuple[float, Box]] = []
    greys: list[tuple[float, Box]] = []
    for run in runs_of([one for one in page.glyphs if one.index not in gone and one.upright]):
        letters = [one for one in run.glyphs if one.text.isalpha()]
        if len(letters) < _FEWEST:
            continue
        sizes.append((median_low(one.size for one in letters), run.box))
        greys.append((median_low(one.grey for one in letters), run.box))
    faintest = max(greys, default=None, key=lambda one: one[0])
    return Measured(
        page.number,
        running.number is not None,
        min(sizes, default=None, key=lambda one: one[0]),
        faintest if faintest and faintest[0] > _FAINT else None,
    )
