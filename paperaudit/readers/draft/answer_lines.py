"""Lines that pupils write on: leaders of dots or underscores, long rules, empty boxes."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from paperaudit.model.place import Box
from paperaudit.readers.draft.page import Glyph, Path
from paperaudit.readers.draft.runs import runs_of

_LEADERS: Final = frozenset("._…‥·‧․")
_SHORTEST: Final = 5
"""Signs in a row that make a leader; an ellipsis glyph stands for three dots."""
_LONG_RULE: Final = 90.0
"""Points; a shorter rule may be a fraction's."""


@dataclass(frozen=True, slots=True)
class AnswerLines:
    """The glyphs that are leaders, and where lines to write on are."""

    glyphs: frozenset[int]
    boxes: tuple[Box, ...]


def leaders_of(glyphs: Sequence[Glyph]) -> AnswerLines:
    """The leaders among `glyphs`: at least five dots or underscores in a row."""
    candidates = [glyph for glyph in glyphs if glyph.text and set(glyph.text) <= _LEADERS]
    taken: set[int] = set()
    boxes: list[Box] = []
    for run in runs_of(candidates, gap=1.0):
        if sum(3 if glyph.text == "…" else len(glyph.text) for glyph in run.glyphs) >= _SHORTEST:
            taken.update(glyph.index for glyph in run.glyphs)
            boxes.append(run.box)
    return AnswerLines(frozenset(taken), tuple(boxes))


def long_rules(paths: Sequence[Path]) -> tuple[Box, ...]:
    """The level rules that are too long for a fraction."""
    return tuple(
        path.box for path in paths if path.box[3] - path.box[1] < 2.0 and path.box[2] - path.box[0] >= _LONG_RULE
    )
