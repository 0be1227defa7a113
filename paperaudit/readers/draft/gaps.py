"""Where the gaps of a row are spaces: judged by the fonts on both sides, since many files print no spaces at all."""

import itertools
import re
from bisect import bisect_left
from collections import defaultdict
from collections.abc import Sequence
from statistics import median

from paperaudit.readers.draft.page import Glyph
from paperaudit.readers.draft.sign import AXIS
from paperaudit.readers.draft.stems import Stem

_WORDS = 0.13
"""Letters of one upright font that are farther apart than this, in its heights, are of two words: justified lines of
Times have spaces down to 0.14 (its metrics in TeX: 0.25 less 0.11), letters touch."""
_LETTERS = 0.165
"""The same between letters of two fonts, and for italics, which lean out of their boxes."""
_LEANING = 0.14, 0.33
"""The same behind a letter of a mathematical italic, beyond what the next one is moved away by for its leaning, and
at most."""
_PRINTED = 0.3
"""The same in a row that prints its spaces."""
_PRINTED_BESIDE = 0.21
"""The same between letters of two fonts: programs of typesetting move on there without printing a space."""
_FACTOR = 0.28
"""A letter of mathematics this near to a fraction is multiplied with it (an office program leaves 0.25)."""
_ROUND_SIGNS = 0.12
"""A space beside an operator (TeX has 0.22 and 0.28 there)."""
_IN_BRACKETS = 0.3
"""A space behind an opening and before a closing bracket."""
_PRINTED_GAP = 0.04
"""What a printed space must at least leave free."""
_OPERATORS = frozenset("=+−–-×÷±<>≤≥≠≈≡∥∦⊥⟂∼≅≌⋙→⇒⇔∴∪∩∈∉⊂↦·:")
_CLOSE_BEFORE = frozenset(",.;:!?)]}°′″%’”")
_LEAN = (
    dict.fromkeys("DORGLAQ", 0.03)
    | dict.fromkeys("BES", 0.06)
    | dict.fromkeys("CHIKXZj", 0.08)
    | dict.fromkeys("JMNUf", 0.11)
    | dict.fromkeys("FPTW", 0.14)
    | dict.fromkeys("VY", 0.22)
)
"""By how much TeX moves the next letter away, in heights of the font: italic corrections of cmmi10.tfm, in classes."""
_MATHEMATICAL = re.compile("cmmi|mathi", re.IGNORECASE)
_SPACES_A_BAND = 6.0


class Spaces:
    """The printed spaces of a region by height, to ask whether one lies between two signs."""

    def __init__(self, glyphs: Sequence[Glyph]) -> None:
        self._bands: dict[int, list[float]] = defaultdict(list)
        for glyph in glyphs:
            axis = glyph.baseline - AXIS * glyph.size
            self._bands[int(axis // _SPACES_A_BAND)].append((glyph.box[0] + glyph.box[2]) / 2)
        for band in self._bands.values():
            band.sort()

    def between(self, left: float, right: float, axis: float) -> bool:
        """Whether the middle of a space lies from `left` to `right`, near the height `axis`."""
        middle = int(axis // _SPACES_A_BAND)
        for number in (middle - 1, middle, middle + 1):
            band = self._bands.get(number, [])
            at = bisect_left(band, left)
            if at < len(band) and band[at] <= right:
                return True
        return False


class Gaps:
    """The gaps of one row; letters that are spread out evenly count as touching."""

    def __init__(self, row: Sequence[Stem], spaces: Spaces | None = None) -> None:
        self._spaces = spaces
        self._spread = _spread(row) if spaces is not None else 0.0
        self._printed = spaces is not None and sum(self._printed_between(*pair) for pair in _pairs(row)) * 12 > len(row)

    def between(self, before: Stem, stem: Stem) -> bool:
        """Whether there is a space between two neighbours of the row."""
        size = (
            min(before.sign.size, stem.sign.size)
            if before.sign.shape == stem.sign.shape == "glyph"
            else max(before.sign.size, stem.sign.size)
        )
        gap = (stem.sign.left - before.right) / size
        if _beside_fraction(before, stem) and gap < _FACTOR:
            return False
        if gap > _PRINTED_GAP and self._printed_between(before, stem):
            return True
        return gap > self._least(before, stem) + self._spread

    def _printed_between(self, before: Stem, stem: Stem) -> bool:
        if self._spaces is None:
            return False
        return self._spaces.between(before.right - 1, stem.sign.left + 1, stem.sign.axis)

    def _least(self, before: Stem, stem: Stem) -> float:
        one, other = before.sign, stem.sign
        first, last = other.text[:1], one.text[-1:]
        if last in ",;":
            return _ROUND_SIGNS
        if first in _CLOSE_BEFORE or last in "([{":
            return _IN_BRACKETS
        if (one.text in _OPERATORS) != (other.text in _OPERATORS):
            return _ROUND_SIGNS
        if last.isdigit() and first.isalpha() and not other.italic:
            return _WORDS
        if (last.isalnum() or before.raised) and first.isdigit() and (one.font != other.font or one.size != other.size):
            return _LETTERS
        if self._printed:
            return _PRINTED_BESIDE if one.font != other.font and last.isalpha() and _names(first) else _PRINTED
        if last in _LEAN and _MATHEMATICAL.search(one.font):
            beyond, most = _LEANING
            return min(most, max(_LETTERS, _LEAN[last] + beyond))
        if one.font == other.font and not _MATHEMATICAL.search(one.font):
            return _WORDS
        return _LETTERS


def _beside_fraction(before: Stem, stem: Stem) -> bool:
    """Whether one is a fraction and the other a letter of mathematics, its factor where they are near."""
    for one, other in ((before.sign, stem.sign), (stem.sign, before.sign)):
        if one.shape in ("fraction", "number fraction") and other.italic and len(other.text) == 1:
            return True
    return False


def _pairs(row: Sequence[Stem]) -> list[tuple[Stem, Stem]]:
    return list(itertools.pairwise(row))


def _spread(row: Sequence[Stem]) -> float:
    """By how much the letters of a row are spread out, in heights of their font."""
    inside = [
        (stem.sign.left - before.right) / stem.sign.size
        for before, stem in _pairs(row)
        if before.sign.font == stem.sign.font and before.sign.text.isalpha() and stem.sign.text.isalpha()
    ]
    return max(0.0, median(inside)) if len(inside) > 8 else 0.0


def _names(sign: str) -> bool:
    return sign.isalpha() or sign in "∠△"
