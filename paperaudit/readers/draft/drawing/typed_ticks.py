"""Ticks that are signs of a font, printed across the sides of a figure: |, ||, /, //."""

import math
from collections.abc import Iterator, Sequence
from typing import Final

from paperaudit.readers.draft.drawing.lettering import Run
from paperaudit.readers.draft.drawing.lines import Line
from paperaudit.readers.draft.drawing.plane import off_segment
from paperaudit.readers.draft.drawing.small_marks import Tick

_STROKES: Final = {"|": 1, "/": 1, "\\": 1, "||": 2, "∥": 2, "//": 2, "\\\\": 2, "|||": 3, "///": 3}
_OFF: Final = 0.25
"""Sizes of print that the middle of such a sign may lie beside its side."""
_SIDE: Final = 2.0
"""Sizes of print that a side is long, at least."""
_BESIDE: Final = 0.3
"""Sizes of print between two strokes of a sign."""


def typed_ticks(runs: Sequence[Run], lines: Sequence[Line]) -> Iterator[Tick]:
    """The strokes of signs that stand on one line alone, each as a tick across it."""
    for run in runs:
        count = _STROKES.get(run.text.replace(" ", "").replace("∣", "|").replace("∕", "/"), 0)
        hosts = [line for line in lines if off_segment(run.middle, *line.ends) <= _OFF * run.size] if count else []
        if len(hosts) != 1 or hosts[0].length < _SIDE * run.size:
            continue
        along = math.radians(hosts[0].direction)
        for at in range(count):
            away = (at - (count - 1) / 2) * _BESIDE * run.size
            place = run.middle[0] + away * math.cos(along), run.middle[1] + away * math.sin(along)
            yield Tick(place, run.glyphs[0].index, (hosts[0].direction + 90) % 180, 0.8 * run.size)
