"""Reads the glyphs and thin strokes of one region as rows of print, their mathematics in linear form."""

import itertools
import unicodedata
from collections import Counter
from collections.abc import Sequence
from itertools import islice
from statistics import median

from paperaudit.model.place import Box
from paperaudit.readers.draft.accents import with_accents
from paperaudit.readers.draft.bars import Bars
from paperaudit.readers.draft.brackets import join_columns, joined_pieces
from paperaudit.readers.draft.gaps import Gaps, Spaces
from paperaudit.readers.draft.limits import join_limits
from paperaudit.readers.draft.linear import written
from paperaudit.readers.draft.page import Glyph, Path, box_around
from paperaudit.readers.draft.pool import Pool
from paperaudit.readers.draft.row import Cell, Row
from paperaudit.readers.draft.rules import rules_of
from paperaudit.readers.draft.sign import Sign, is_space, sign_of
from paperaudit.readers.draft.slashed import slope_is_doubtful, with_slashed_fractions
from paperaudit.readers.draft.stems import Stem, rows_of_stems

_WIDE = 1.9
"""A gap that parts two cells, in heights of the font; TeX's \\qquad is 2."""
_WIDER_THAN_USUAL = 2.2
"""How much wider than the other gaps of its row such a gap is, where a line is spread out to the margin."""
_WIDEST_SPACE = 1.6
"""A space between words is at most so wide, in heights of the font, however few words are spread out to the margin."""
_LEADERS = {".": 5, "·": 5, "_": 2, "…": 2, "‥": 2}
"""From how many in a row on these only lead to a margin or leave room to write."""
_MOST_RULES = 3000
"""Thin strokes of a region that are looked at, the shortest first; a page of fractions has some hundred."""
_DOTS_APART = 1.2
_PALEST = 0.93
"""Lightness of print that nobody sees."""
_DARK = 0.75
"""Lightness of a filled shape on which white print is seen."""
_MOST_DARK = 200
_MOST_ALIKE = 60
"""Signs of one text, one above the other, among which a second print is looked for."""
_SAME_PLACE = 0.3
"""Points between two prints of one glyph, which some programs use for bold."""


def rows_of(glyphs: Sequence[Glyph], paths: Sequence[Path] = ()) -> tuple[Row, ...]:
    """The rows of a region (a column, a cell of a table) from top to bottom; empty rows are left out.

    Stacked fractions, roots, powers, hats and brackets become linear text as the statement language has it. What
    is not certain is told in the `doubts` of its cell.
    """
    dark = [path.box for path in paths if path.fill is not None and path.fill < _DARK][:_MOST_DARK]
    shown = [glyph for glyph in glyphs if glyph.grey < _PALEST or _lies_on(dark, glyph)]
    pool = Pool(joined_pieces(with_accents(_once([sign_of(glyph) for glyph in shown if _is_printed(glyph)]))))
    rules = rules_of(paths)[:_MOST_RULES]
    Bars(pool, rules).work_in(rules)
    join_columns(pool)
    join_limits(pool)
    spaces = Spaces([glyph for glyph in shown if is_space(glyph)])
    rows = [_row(stems, spaces) for stems in rows_of_stems(pool.all())]
    sideways = [glyph for glyph in shown if not glyph.upright and not is_space(glyph)]
    return (*(row for row in rows if row is not None), *_sideways(sideways))


def _lies_on(boxes: Sequence[Box], glyph: Glyph) -> bool:
    """Whether a pale glyph is printed on something dark."""
    across, down = glyph.middle
    return any(left < across < right and top < down < bottom for left, top, right, bottom in boxes)


def _is_printed(glyph: Glyph) -> bool:
    return glyph.upright and not is_space(glyph)


def _once(signs: Sequence[Sign]) -> list[Sign]:
    """The signs without those that were printed a second time in the same place."""
    last: dict[str, list[Sign]] = {}
    once = []
    for sign in sorted(signs, key=lambda one: (one.key, one.glyphs)):
        alike = last.setdefault(sign.text, [])
        twice = False
        for other in islice(reversed(alike), _MOST_ALIKE):
            if sign.left - other.left > _SAME_PLACE:
                break
            twice = twice or abs(sign.axis - other.axis) < _SAME_PLACE
        if not twice:
            alike.append(sign)
            once.append(sign)
    return once


def _row(stems: Sequence[Stem], spaces: Spaces) -> Row | None:
    cells = [cell for part in _parted(stems) if (cell := _cell(part, spaces)) is not None]
    if not cells:
        return None
    signs = [stem.sign for stem in stems]
    size = Counter(round(sign.size, 2) for sign in signs).most_common()
    commonest = max(size, key=lambda one: (one[1], one[0]))[0]
    plain = [sign for sign in signs if round(sign.size, 2) == commonest and sign.shape == "glyph"] or signs
    letters = [sign for sign in signs if sign.text[:1].isalpha()]
    return Row(
        cells=tuple(cells),
        box=box_around([cell.box for cell in cells]),
        baseline=median(sign.baseline for sign in plain),
        size=commonest,
        bold=2 * sum(sign.bold for sign in letters) > len(letters),
    )


def _cell(stems: Sequence[Stem], spaces: Spaces) -> Cell | None:
    if not stems:
        return None
    text, doubts = written(stems, Gaps(stems, spaces))
    signs = [sign for stem in stems for sign in stem.signs()]
    glyphs = tuple(sorted(number for sign in signs for number in sign.glyphs))
    text = unicodedata.normalize("NFC", text)
    if slope_is_doubtful(text, signs):
        doubts = (*doubts, "this fraction with a slash may have longer terms than are read")
    text = with_slashed_fractions(text)
    return Cell(text, box_around([sign.box for sign in signs]), glyphs, doubts) if text else None


def _parted(stems: Sequence[Stem]) -> list[list[Stem]]:
    """The stems between wide gaps, without leaders and lines to write on."""
    leading = _leaders(stems)
    usual = _usual_gap(stems)
    parts: list[list[Stem]] = [[]]
    last: Stem | None = None
    for at, stem in enumerate(stems):
        if at in leading:
            parts.append([])
            last = None
            continue
        if last is not None:
            size = max(last.sign.size, stem.sign.size)
            if stem.sign.left - last.right > max(_WIDE * size, _WIDER_THAN_USUAL * usual):
                parts.append([])
        parts[-1].append(stem)
        last = stem
    return [part for part in parts if part]


def _leaders(stems: Sequence[Stem]) -> set[int]:
    """The places of dots and underscores that come in long runs."""
    found: set[int] = set()
    start = 0
    for at in range(1, len(stems) + 1):
        goes_on = at < len(stems) and stems[at].sign.text == stems[start].sign.text
        if goes_on and stems[at].sign.left - stems[at - 1].sign.right < _DOTS_APART * stems[at].sign.size:
            continue
        if at - start >= _LEADERS.get(stems[start].sign.text, len(stems) + 1):
            found.update(range(start, at))
        start = at
    return found


def _usual_gap(stems: Sequence[Stem]) -> float:
    gaps = [after.sign.left - before.right for before, after in itertools.pairwise(stems)]
    wide = [gap for gap, stem in zip(gaps, stems, strict=False) if gap > 0.13 * stem.sign.size]
    widest = _WIDEST_SPACE * max((stem.sign.size for stem in stems), default=0.0)
    return min(median(wide), widest) if len(wide) > 3 else 0.0


def _sideways(glyphs: Sequence[Glyph]) -> list[Row]:
    """Print that does not stand upright: kept, and said to be doubtful."""
    if not glyphs:
        return []
    ordered = sorted(glyphs, key=lambda glyph: glyph.index)
    signs = [sign_of(glyph) for glyph in ordered]
    text = "".join(sign.text for sign in signs)
    box = box_around([glyph.box for glyph in ordered])
    cell = Cell(text, box, tuple(glyph.index for glyph in ordered), ("this does not stand upright on the page",))
    return [Row((cell,), box, box[3], median(glyph.size for glyph in ordered))]
