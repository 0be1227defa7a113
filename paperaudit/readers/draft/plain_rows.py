"""Puts glyphs into rows by their baselines alone; mathematics that is built of several lines is not put together."""

from collections.abc import Sequence

from paperaudit.readers.draft.page import Glyph, Path, box_around
from paperaudit.readers.draft.row import Cell, Row

_SAME = 0.45
"""Sizes of a glyph that a baseline may differ within a row."""
_SPACE = 0.18
_WIDE = 2.0


def rows_of(glyphs: Sequence[Glyph], paths: Sequence[Path]) -> tuple[Row, ...]:
    """The rows of a region from top to bottom."""
    lines: list[list[Glyph]] = []
    for glyph in sorted(glyphs, key=lambda one: one.baseline):
        if lines and glyph.baseline - lines[-1][0].baseline < _SAME * max(glyph.size, lines[-1][0].size):
            lines[-1].append(glyph)
        else:
            lines.append([glyph])
    return tuple(row for line in lines if (row := _row(sorted(line, key=lambda one: one.box[0]))))


def _row(line: list[Glyph]) -> Row | None:
    cells: list[Cell] = []
    run: list[Glyph] = []
    text = ""
    for glyph in line:
        if not glyph.text.strip():
            continue
        gap = glyph.box[0] - run[-1].box[2] if run else 0.0
        if run and gap > _WIDE * glyph.size:
            cells.append(_cell(text, run))
            run, text = [], ""
        text += (" " if run and gap > _SPACE * glyph.size else "") + glyph.text
        run.append(glyph)
    if not run:
        return None
    cells.append(_cell(text, run))
    sizes = sorted(glyph.size for glyph in line)
    bold = sum("bold" in glyph.font.lower() or "bx" in glyph.font.lower() for glyph in line) * 2 > len(line)
    box = box_around([cell.box for cell in cells])
    return Row(tuple(cells), box, line[0].baseline, sizes[len(sizes) // 2], bold)


def _cell(text: str, run: list[Glyph]) -> Cell:
    sizes = [one.size for one in run]
    doubts = ("what is built of several lines was not put together",) if min(sizes) < 0.85 * max(sizes) else ()
    return Cell(text, box_around([one.box for one in run]), tuple(one.index for one in run), doubts)
