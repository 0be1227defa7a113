"""Signs: what stands in a row, one glyph or something that was put together from several, with where its ink is."""

import re
import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from typing import Literal, NamedTuple, TypeAlias

from paperaudit.model.place import Box
from paperaudit.readers.draft.page import Glyph
from paperaudit.readers.draft.symbol_fonts import (
    letter_of,
    private_letter_of,
    shows_pictures,
    styled_letter_of,
    tall_sign_of,
)

AXIS = 0.25
"""How far above its baseline a font has its minus signs and fraction bars, in heights of the font (cmsy10 has 0.25)."""
Shape: TypeAlias = Literal["glyph", "number fraction", "fraction", "root", "bracketed", "large", "piece"]
"""What a sign is made of; `piece` is a part of a bracket that is put together."""

_DEEP = frozenset("gjpqyQ()[]{}|,;_βγζημξρφχψ∫√")
_LOW = frozenset("acegmnopqrsuvwxyzαγεικμνοπρστυχψω.,:;_−-–+=~∼<>•·…")
_FLAT = frozenset("−-–—.,…_·=")
_ITALIC = re.compile(r"ital|obliq|cmmi|cmti|mathi|slant|(?:[-,]|\b)(?:bold)?it\b", re.IGNORECASE)
_BOLD = re.compile(r"bold|black|heavy|demi|cmbx|cmssbx|-bd|medi$", re.IGNORECASE)
_HANGS = 0.04
"""How far signs that hang from their baseline reach above it, in heights of their font (cmex10)."""
_HANGING_ROOT = re.compile("cmsy|cmbsy|mathsymbols", re.IGNORECASE)
_CELLS = 3.0
"""A gap that parts cells, in heights of the font; no numerator has one."""
_KEPT = frozenset("²³¹⁰⁴⁵⁶⁷⁸⁹⁻⁺ⁿ½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞⅐⅑⅒º°ª…′″‴™₀₁₂₃₄₅₆₇₈₉ℝℕℤℚℂ´¨¯¸˙˚˘˝˛¼‾")
_SPELLED = {"⟂": "⊥", "◦": "∘"}
_CID = re.compile(r"\(cid:\d+\)")


@dataclass(frozen=True, slots=True, eq=False)
class Sign:
    """One sign in a row.

    `axis` is how far down the page its middle line is, on which fraction bars lie; two signs of one row have the
    same. `top` and `bottom` are where its ink probably ends. `order` ranks signs that nothing else tells apart.
    """

    text: str
    left: float
    right: float
    top: float
    bottom: float
    axis: float
    size: float
    font: str = ""
    shape: Shape = "glyph"
    italic: bool = False
    glyphs: tuple[int, ...] = ()
    doubts: tuple[str, ...] = ()

    @property
    def middle(self) -> float:
        """Halfway across."""
        return (self.left + self.right) / 2

    @property
    def baseline(self) -> float:
        """Where letters of its size would stand in its row."""
        return self.axis + AXIS * self.size

    @property
    def width(self) -> float:
        """How far it reaches across."""
        return self.right - self.left

    @property
    def box(self) -> Box:
        """Its ink."""
        return self.left, self.top, self.right, self.bottom

    @property
    def key(self) -> tuple[float, float, float, str]:
        """Sorts signs from left to right, and always in one way."""
        return self.left, self.right, self.axis, self.text

    @property
    def bold(self) -> bool:
        """Whether its font says so."""
        return bool(_BOLD.search(self.font))


def is_space(glyph: Glyph) -> bool:
    """Whether a glyph prints nothing but a gap."""
    return bool(glyph.text) and not glyph.text.strip()


def sign_of(glyph: Glyph) -> Sign:
    """The sign that a glyph prints; of one that cannot be told the text is a replacement character."""
    form = _form(glyph.text, glyph.font, glyph.code, glyph.name)
    left, _, right, _ = glyph.box
    baseline, size = glyph.baseline, glyph.size
    return Sign(
        form.text,
        min(left, right),
        max(left, right),
        baseline - form.above * size,
        baseline + form.below * size,
        baseline - form.axis * size,
        size,
        glyph.font,
        form.shape,
        form.italic,
        (glyph.index,),
        form.doubts,
    )


class _Form(NamedTuple):
    """What all glyphs of one kind have in common; places are in heights of the font, from the baseline."""

    text: str
    above: float
    below: float
    axis: float
    shape: Shape
    italic: bool
    doubts: tuple[str, ...]


@lru_cache(maxsize=4096)
def _form(letters: str, font: str, code: int, name: str) -> _Form:
    italic = bool(_ITALIC.search(font)) or _mathematical_italic(letters)
    hanging = tall_sign_of(font, code, name)
    if hanging is not None and hanging.depth == 0.0:  # a wide hat: its ink is above its baseline
        return _Form(hanging.text, 0.75, -0.56, 0.655, "large", italic, ())
    if hanging is not None:
        shape: Shape = "piece" if hanging.piece else "large"
        return _Form(hanging.text, _HANGS, hanging.depth, (_HANGS - hanging.depth) / 2, shape, italic, ())
    text = _letters(letters, font, code, name)
    if not text:
        doubt = f"a sign of the font {font.split('+')[-1]} has no letter behind it"
        return _Form("\ufffd", 0.72, 0.0, AXIS, "glyph", italic, (doubt,))
    if text == "√" and _HANGING_ROOT.search(font):
        return _Form(text, _HANGS, 0.96, (_HANGS - 0.96) / 2, "large", italic, ())
    if text == "∫":  # it may be as high as in a formula of its own
        return _Form(text, 1.4, 0.9, AXIS, "glyph", italic, ())
    top, bottom = ink(text, 0.0, 1.0)
    return _Form(text, -top, bottom, AXIS, "glyph", italic, ())


def ink(text: str, baseline: float, size: float) -> tuple[float, float]:
    """Where the ink of letters on a baseline probably begins and ends, seen downwards."""
    low = all(letter in _LOW for letter in text)
    deep = any(letter in _DEEP for letter in text)
    return baseline - (0.48 if low else 0.72) * size, baseline + (0.22 * size if deep else 0.0)


def around(signs: Sequence[Sign]) -> Box:
    """The smallest box with all of their ink."""
    return (
        min(sign.left for sign in signs),
        min(sign.top for sign in signs),
        max(sign.right for sign in signs),
        max(sign.bottom for sign in signs),
    )


def built(text: str, of: Sequence[Sign], axis: float, size: float, shape: Shape, more: Sequence[str] = ()) -> Sign:
    """One sign put together from others, with their glyphs and doubts."""
    left, top, right, bottom = around(of)
    doubts = tuple(dict.fromkeys([*more, *(doubt for sign in of for doubt in sign.doubts)]))
    glyphs = tuple(sorted(number for sign in of for number in sign.glyphs))
    return Sign(text, left, right, top, bottom, axis, size, of[0].font, shape, glyphs=glyphs, doubts=doubts)


def _letters(printed: str, font: str, code: int, name: str) -> str:
    text = _CID.sub("", printed)
    if shows_pictures(font):
        return "•"
    if text and all("\uf000" <= letter <= "\uf8ff" for letter in text):
        if all("\uf730" <= letter <= "\uf739" for letter in text):
            return "".join(chr(ord(letter) - 0xF700) for letter in text)  # old-style figures
        return private_letter_of(font, text)
    text = text.replace("\u00ad", "-")  # a soft hyphen that was printed, at the end of a row
    text = "".join(letter for letter in text if unicodedata.category(letter) not in ("Cc", "Cf", "Co", "Cn"))
    return styled_letter_of(font, plain(text)) if text else letter_of(font, code, name)


def plain(text: str) -> str:
    """Letters without the styles that Unicode has for them (italics, ligatures, wide forms).

    >>> plain("𝑥ﬁ²")
    'xfi²'
    """
    if text.isascii():
        return text
    return "".join(letter if letter in _KEPT else _plain_letter(letter) for letter in text)


def _plain_letter(letter: str) -> str:
    plainer = _SPELLED.get(letter) or unicodedata.normalize("NFKC", letter)
    return plainer if plainer.strip() == plainer else letter


def _mathematical_italic(text: str) -> bool:
    return text == "ℎ" or "\U0001d434" <= text[:1] <= "\U0001d7cb"


def has_cells(signs: Sequence[Sign], size: float) -> bool:
    """Whether signs of one row stand in cells: the names of columns, over the rule of a table's head."""
    ordered = sorted(signs, key=lambda one: one.key)
    return any(after.left - before.right > _CELLS * size for before, after in pairwise(ordered))
