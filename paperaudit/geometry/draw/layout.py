"""From a drawn figure and its marks to a page: how large it is drawn, so that every text has room."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations, pairwise

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.draw.circles import outlines
from paperaudit.geometry.draw.elements import Circle, Layout
from paperaudit.geometry.draw.lettering import FINE, total_box
from paperaudit.geometry.draw.marks import Marks
from paperaudit.geometry.draw.page import FRAME_WIDTH, Endless, Page, lettered
from paperaudit.geometry.figure.plane import Spot

WIDTH, HEIGHT = 232.0, 180.0
"""The drawn lines fit into this, unless short segments ask for more."""
WIDEST, HIGHEST = 380.0, 330.0
SHORTEST = 26.0
"""Least length of a segment between two letters, if the page allows it."""
LARGER = (1.0, 1.25, 1.5625, 1.85)
"""How much larger a figure is tried where texts cover something."""


@dataclass(frozen=True, slots=True)
class Sheet:
    """What is put on a page: a figure, its marks, where lines go on, a triangle whose sides are drawn apart, a remark.

    `least_width` is the width that the page has at least.
    """

    arrangement: Arrangement
    marks: Marks
    endless: Endless
    triangle: tuple[str, str, str] | None = None
    note: str = ""
    least_width: float = FRAME_WIDTH

    def at_scale(self, at: Mapping[str, Spot], scale: float) -> tuple[float, Layout] | None:
        """How much is hidden by texts, and the layout; None where a page is too small. `scale` is page units a unit."""
        spots = {name: (x * scale, -y * scale) for name, (x, y) in at.items()}
        circles = outlines(self.arrangement.figure, spots)
        width, height = _spread(spots, circles)
        if width > WIDEST + 1 or height > HIGHEST + 1:
            return None
        page = Page(self.arrangement, spots, circles, self.marks, self.endless, self.triangle, self.note)
        return page.layout(self.least_width)


def lay_out(sheet: Sheet, at: Mapping[str, Spot]) -> Layout:
    """The figure on its page, so large that all has room. `at` is turned as it should stand, y up."""
    return lay_out_alike([sheet], [at])[0]


def lay_out_alike(sheets: Sequence[Sheet], places: Sequence[Mapping[str, Spot]]) -> list[Layout]:
    """Several figures, all at one scale."""
    scale = min(scale_for(sheet.arrangement, at) for sheet, at in zip(sheets, places, strict=True))
    best: tuple[float, list[Layout]] | None = None
    for larger in LARGER:
        tried = [sheet.at_scale(at, scale * larger) for sheet, at in zip(sheets, places, strict=True)]
        done = [one for one in tried if one]
        if len(done) < len(tried):
            break
        covered = sum(one[0] for one in done)
        if best is None or covered < best[0] - 0.5 or covered <= FINE:
            best = (covered, [one[1] for one in done])
        if best[0] <= FINE:
            break
    assert best is not None
    return best[1]


def scale_for(arrangement: Arrangement, at: Mapping[str, Spot]) -> float:
    """Page units a unit of the drawing, so that it fills its place and no segment is too short for letters."""
    width, height = _spread(at, outlines(arrangement.figure, at))
    size = max(width, height) or 1.0
    fitting = min(WIDTH / max(width, 1e-3 * size), HEIGHT / max(height, 1e-3 * size))
    most = min(WIDEST / max(width, 1e-3 * size), HIGHEST / max(height, 1e-3 * size))
    gaps = [math.dist(at[p], at[q]) for line in arrangement.lines for p, q in pairwise(line)]
    gaps += [math.dist(p, q) for p, q in combinations(lettered(at).values(), 2)]
    return max(fitting, min(most, SHORTEST / min(gaps))) if gaps else fitting


def _spread(spots: Mapping[str, Spot], circles: Mapping[str, Circle]) -> tuple[float, float]:
    boxes = [(x, y, x, y) for x, y in spots.values()] + [circle.box for circle in circles.values()]
    left, top, right, bottom = total_box(boxes)
    return right - left, bottom - top
