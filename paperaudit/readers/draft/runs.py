"""A first glance at a page: runs of glyphs on a baseline, before anything is read as mathematics."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from paperaudit.model.place import Box
from paperaudit.readers.draft.page import Glyph, box_around

_SAME_BASELINE = 0.35
"""Sizes of a glyph within which baselines are one."""
_GAP = 1.5
"""Sizes of a glyph; a wider gap ends a run."""
_SPACE = 0.18


@dataclass(frozen=True, slots=True)
class Run:
    """Glyphs on one baseline without a wide gap."""

    glyphs: tuple[Glyph, ...]
    box: Box
    baseline: float

    @property
    def text(self) -> str:
        """Its letters, with a space where the gap is that of a space."""
        return "".join(_spaced(self.glyphs)).strip()


def runs_of(glyphs: Sequence[Glyph], gap: float = _GAP) -> tuple[Run, ...]:
    """The runs of `glyphs`, row by row from the top, each row from the left; blanks are left out."""
    found: list[Run] = []
    for line in _baselines(glyphs):
        run: list[Glyph] = []
        for glyph in sorted(line, key=lambda one: (one.box[0], one.index)):
            if run and glyph.box[0] - run[-1].box[2] > gap * glyph.size:
                found.append(part_of(run))
                run = []
            run.append(glyph)
        if run:
            found.append(part_of(run))
    return tuple(found)


def _baselines(glyphs: Sequence[Glyph]) -> Iterator[list[Glyph]]:
    line: list[Glyph] = []
    for glyph in sorted((one for one in glyphs if one.text.strip()), key=lambda one: one.baseline):
        if line and glyph.baseline - line[0].baseline > _SAME_BASELINE * max(glyph.size, line[0].size):
            yield line
            line = []
        line.append(glyph)
    if line:
        yield line


def part_of(glyphs: Sequence[Glyph]) -> Run:
    """The run that some glyphs of a baseline make, from left to right."""
    return Run(tuple(glyphs), box_around([one.box for one in glyphs]), glyphs[0].baseline)


def _spaced(glyphs: Sequence[Glyph]) -> Iterator[str]:
    for at, glyph in enumerate(glyphs):
        if at and glyph.box[0] - glyphs[at - 1].box[2] > _SPACE * glyph.size:
            yield " "
        yield glyph.text
