"""Hats, dots and bars over letters: each goes to the letter that it lies over, whatever the order of printing."""

import re
from bisect import bisect_left
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import replace

from paperaudit.readers.draft.sign import Sign, built

HAT = "\u0302"
DOT = "\u0307"
ARROW = "\u20d7"
STROKE = "\u0338"
"""A slash through the sign that it lies over: ≠ from =."""

_ACCENTS = {
    **dict.fromkeys(("^", "ˆ", "\u0302", "⌃", "＾", "\u2038", "\u0311"), HAT),
    **dict.fromkeys(("˙", "\u0307", "⋅", "·", "."), DOT),
    **dict.fromkeys(("¯", "ˉ", "\u0304", "\u0305", "‾"), "\u0304"),
    **dict.fromkeys(("´", "\u0301"), "\u0301"),
    **dict.fromkeys(("`", "\u0300"), "\u0300"),
    **dict.fromkeys(("¨", "\u0308"), "\u0308"),
    **dict.fromkeys(("˜", "\u0303"), "\u0303"),
    **dict.fromkeys(("ˇ", "\u030c"), "\u030c"),
    **dict.fromkeys(("˚", "\u030a"), "\u030a"),
    **dict.fromkeys(("¸", "\u0327"), "\u0327"),
    **dict.fromkeys(("→", "\u20d7", "⇀"), ARROW),
    "\u0338": STROKE,
}
_STRUCK = {"=": "≠", "≡": "≢", "∈": "∉", "∥": "∦", "<": "≮", ">": "≯", "⊂": "⊄", "∼": "≁"}
_ALSO_SIGNS = frozenset("^.·⋅→⇀`´˚∘")
"""These are accents only where they lie over a letter."""
_OF_TEX = re.compile("cmsy|mathsymbols|cmbsy", re.IGNORECASE)
_BACK = 0.25
"""How far left of its origin a mark without width has its ink, in heights of the font."""
_MOST_NEAR = 60
"""Signs of a row that are looked at for one accent."""
_ASIDE = 0.34
"""How far beside the middle of a letter an accent may lie, in heights of the font."""
_FLAT = 0.05
"""A glyph narrower than this, in heights of its font, takes no room."""


def with_accents(signs: Sequence[Sign]) -> list[Sign]:
    """The signs with every accent joined to the letter that it lies over, and strokes to what they run through."""
    signs = _with_long_arrows(signs)
    accents = [sign for sign in signs if _may_be_accent(sign)]
    if not accents:
        return list(signs)
    known = set(accents)
    bands: dict[int, list[Sign]] = defaultdict(list)
    for sign in sorted(signs, key=lambda one: one.middle):
        if sign not in known or sign.text in _ALSO_SIGNS:
            bands[_band(sign.axis)].append(sign)
    carried: dict[Sign, list[tuple[Sign, bool]]] = defaultdict(list)
    gone: set[Sign] = set()
    for accent in accents:
        letter, sure = _letter_under(accent, bands)
        if letter is not None:
            carried[letter].append((accent, sure))
            gone.add(accent)
    return [_carrying(sign, carried[sign]) if sign in carried else sign for sign in signs if sign not in gone]


def _with_long_arrows(signs: Sequence[Sign]) -> Sequence[Sign]:
    """The signs with arrows that were put together from a head and strokes before it as one sign each."""
    heads = [sign for sign in signs if sign.text == "→"]
    if not heads:
        return signs
    strokes: dict[int, list[Sign]] = defaultdict(list)
    for sign in signs:
        if sign.text in ("−", "↦"):
            strokes[round(sign.axis)].append(sign)
    gone: set[Sign] = set()
    longer: list[Sign] = []
    for head in heads:
        row = [stroke for level in (-1, 0, 1) for stroke in strokes.get(round(head.axis) + level, ())]
        pieces, left = [head], head.left
        for stroke in sorted(row, key=lambda one: -one.right):
            if stroke not in gone and left - 0.02 * head.size < stroke.right < left + head.size and stroke.left <= left:
                pieces.append(stroke)
                left = stroke.left
        if len(pieces) > 1:
            text = "↦" if any(piece.text == "↦" for piece in pieces) else "→"
            longer.append(built(text, pieces, head.axis, head.size, "glyph"))
            gone.update(pieces)
    return [*(sign for sign in signs if sign not in gone), *longer]


def _may_be_accent(sign: Sign) -> bool:
    if sign.text == "\ufffd":
        return sign.width < _FLAT * sign.size
    return sign.text in _ACCENTS


def _band(axis: float) -> int:
    return int(axis // 6)


def _letter_under(accent: Sign, bands: dict[int, list[Sign]]) -> tuple[Sign | None, bool]:
    """The letter nearest to the middle of the accent's ink, and whether no other one comes near."""
    middle = _ink_middle(accent)
    found: list[tuple[float, Sign]] = []
    for band in range(_band(accent.axis) - 1, _band(accent.axis + 1.3 * accent.size) + 1):
        row = bands.get(band, [])
        reach = 1.5 * accent.size
        at = bisect_left(row, middle - reach, key=lambda one: one.middle)
        end = min(len(row), at + _MOST_NEAR)
        while at < end and row[at].middle <= middle + reach:
            if row[at] is not accent and _lies_over(accent, middle, row[at]):
                found.append((abs(row[at].middle - middle), row[at]))
            at += 1
    found.sort(key=lambda one: (one[0], one[1].key))
    if not found:
        return None, False
    near = len(found) > 1 and found[1][0] - found[0][0] < 0.12 * accent.size
    return found[0][1], not near and accent.text != "\ufffd"


def _ink_middle(accent: Sign) -> float:
    """Where the ink of an accent is: that of a mark without width lies left of its origin."""
    if accent.width >= _FLAT * accent.size:
        return accent.middle
    if _ACCENTS.get(accent.text) == STROKE:
        # The stroke of TeX's own font lies right of its origin, that of others left, as the metrics files have it.
        return accent.middle + (0.39 if _OF_TEX.search(accent.font) else -0.39) * accent.size
    return accent.middle - _BACK * accent.size


def _lies_over(accent: Sign, middle: float, letter: Sign) -> bool:
    kind = _ACCENTS.get(accent.text, HAT)
    if kind == STROKE:
        return letter.text in _STRUCK and abs(letter.middle - middle) < 0.6 * letter.size
    if not (letter.text[:1].isalnum() or letter.text in ("ı", "ȷ")) or letter.text in _ACCENTS:
        return False
    if abs(letter.middle - middle) > max(_ASIDE * letter.size, letter.width / 2):
        return False
    raised = (letter.baseline - accent.baseline) / letter.size
    if accent.text not in _ALSO_SIGNS:
        return -0.35 < raised < 1.0 and accent.size < 1.6 * letter.size
    overlap = min(accent.right, letter.right) - max(accent.left, letter.left)
    if overlap < 0.5 * min(accent.width, letter.width):
        return False
    if kind == DOT:
        # A full stop used as a recurring dot is higher up than one in the middle of its font's letters.
        lowest, highest = (0.6, 0.95) if accent.text == "." else (0.35, 0.75)
        return letter.text.isdecimal() and lowest < raised < highest
    return (0.3 if kind == ARROW else -0.1) < raised < 1.0


def _carrying(letter: Sign, accents: list[tuple[Sign, bool]]) -> Sign:
    marks = sorted(accents, key=lambda one: one[0].key)
    doubts = [
        f"what the mark over {letter.text} is cannot be told; it is taken for a hat"
        for accent, _ in marks
        if accent.text == "\ufffd"
    ]
    doubts += [
        f"the mark over {letter.text} lies between two letters"
        for accent, sure in marks
        if not sure and accent.text != "\ufffd"
    ]
    kinds = list(dict.fromkeys(_ACCENTS.get(accent.text, HAT) for accent, _ in marks))
    text = letter.text
    for kind in kinds:
        text = _STRUCK[text] if kind == STROKE else text + ("" if kind == ARROW else kind)
    known = [replace(accent, doubts=()) if accent.text == "\ufffd" else accent for accent, _ in marks]
    whole = built(text, [letter, *known], letter.axis, letter.size, letter.shape, doubts)
    return replace(letter, text=text, glyphs=whole.glyphs, doubts=whole.doubts, top=min(letter.top, whole.top))
