"""Brings typed mathematics to one spelling, keeping the way back to the teacher's own text.

The grammars then know one minus, one multiplication dot, one way to put a hat on a letter, and
single spaces; a span in the plain text is still a span in what the teacher wrote.
"""

import re
import unicodedata
from dataclasses import dataclass
from functools import cache, lru_cache
from itertools import pairwise
from typing import Literal, TypeAlias

HAT = "\u0302"
"""The combining circumflex that follows a vertex letter."""

UNIT_MARK = "\ue000"
"""Stands before a one-letter unit (12 m), which the grammar could not tell from a letter (12m)."""

_ONE_FOR_ONE = {
    **dict.fromkeys("−–—‐‑‒﹣－⁃➖", "-"),
    **dict.fromkeys("×✕✖⨯", "×"),
    **dict.fromkeys("·⋅∙•‧", "·"),
    **dict.fromkeys("∗＊", "*"),
    **dict.fromkeys("÷➗", "÷"),
    **dict.fromkeys("∕⁄", "/"),
    **dict.fromkeys("∶：", ":"),
    **dict.fromkeys("≤⩽≦", "≤"),
    **dict.fromkeys("≥⩾≧", "≥"),
    **dict.fromkeys("≡≅≌", "≡"),
    **dict.fromkeys("∥‖⫽", "∥"),
    **dict.fromkeys("∼~～∽⫼", "∼"),
    **dict.fromkeys("△∆▲▵Δ", "△"),
    **dict.fromkeys("∠∡⦟", "∠"),
    **dict.fromkeys("⊥⟂", "⊥"),
    **dict.fromkeys("°º˚∘", "°"),
    **dict.fromkeys("′ʹ‘’ʼ'`´", "′"),
    **dict.fromkeys('“”„″"', '"'),
    **dict.fromkeys("⨀☉◉", "⊙"),
    "⌢": "⌒",
    "▱": "parallelogram ",
    "…": ".",
}
_AS_IT_IS = frozenset("²³¹⁰⁴⁵⁶⁷⁸⁹⁻⁺ⁿ½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞⅐⅑⅒≠π√∛∜ℝ")
_SEVERAL = (
    ("|||", "∼"),
    ("||", "∥"),
    ("///", "∼"),
    ("//", "∥"),
    ("<=", "≤"),
    (">=", "≥"),
    ("!=", "≠"),
    ("**", "^"),
    ("sqrt", "√"),
    ("cbrt", "∛"),
)
_LOWERED = re.compile("[₀₁₂₃₄₅₆₇₈₉]+|[ₐₑₓₘₙₚ]")
_SPECIAL = frozenset({typed[0] for typed, _ in _SEVERAL} | set("ˆ^₀₁₂₃₄₅₆₇₈₉ₐₑₓₘₙₚ"))
"""Where more than one character may belong together."""
_UNIT_SPOT = re.compile(
    r"(?<=[\d)]) (?=([mghlstLN])(?:[²³]|\^[23]|/(?:s|min|h|ml|(?:cm|m|km)(?:[²³]|\^[23])?))?(?![A-Za-z0-9(²³^]|\. ?f))"
)

Commas: TypeAlias = Literal["", "decimal", "thousands"]
"""What a comma before exactly three digits is, where the paper lets that be known."""

_DOUBTFUL = re.compile(r"(?<![0-9,.])([1-9][0-9]{0,2}),(?=[0-9]{3}(?![0-9]|[,.][0-9]))")
_TIMES_TEN = re.compile(r"(?<=\d)( ?)[xX]( ?)(?=10(?:\^|[⁰¹²³⁴⁵⁶⁷⁸⁹⁻]))")
_BEFORE_CAPITAL = re.compile(r"(?<=[A-Za-z])(?=[A-Z])")
_UNIT_CLOSE = re.compile(r"[A-Z]′? ?= ?\d+(?:[.,]\d+)?(m)(?![A-Za-z0-9(^²³]| ?[-+×*·/])")


@dataclass(frozen=True, slots=True)
class Notation:
    """Plain text with, for each of its characters and its end, the offset in the teacher's text.

    `cuts` are the positions of the plain text where a span was cut out.
    """

    text: str
    offsets: tuple[int, ...]
    source: str
    cuts: tuple[int, ...] = ()

    def offset(self, position: int) -> int:
        """Where a position of the plain text lies in the teacher's text."""
        return self.offsets[min(max(position, 0), len(self.text))]

    def source_of(self, start: int, end: int) -> str:
        """The teacher's own words behind a span of the plain text, trimmed."""
        bounds = [start, *(cut for cut in self.cuts if start < cut < end), end]
        pieces = (self.source[self.offset(one) : self.offset(other - 1) + 1] for one, other in pairwise(bounds))
        return " ".join(piece.strip() for piece in pieces if piece.strip()) if start < end else ""

    def with_units(self, letters: frozenset[str]) -> "Notation":
        """One-letter units marked as such: after a number and a space, or AB = 12m; never one of `letters`."""
        text, offsets = self.text, list(self.offsets)
        for spot in reversed(list(_UNIT_CLOSE.finditer(text))):
            if spot.group(1) not in letters:
                at = spot.start(1)
                text = f"{text[:at]} {text[at:]}"
                offsets.insert(at, offsets[at])
        text = _UNIT_SPOT.sub(lambda spot: " " if spot.group(1) in letters else UNIT_MARK, text)
        return Notation(text, tuple(offsets), self.source)

    def letters_apart(self) -> "Notation":
        """The text with a space between letters that stand side by side before a capital: nRT is n R T."""
        spots = [spot.start() for spot in _BEFORE_CAPITAL.finditer(self.text)]
        text, offsets = self.text, list(self.offsets)
        for at in reversed(spots):
            text = f"{text[:at]} {text[at:]}"
            offsets.insert(at, offsets[at])
        return Notation(text, tuple(offsets), self.source)

    def without(self, start: int, end: int) -> "Notation":
        """The text with a span cut out; a single space takes its place between words."""
        before = self.text[:start].rstrip(" ")
        if not before:
            end += len(self.text[end:]) - len(self.text[end:].lstrip(" "))
        after = self.text[end:]
        moved = len(before) - end
        gap = " " if before and after[:1] not in ("", ".", "?", "!", ",", ":", " ") else ""
        offsets = (*self.offsets[: len(before)], *([self.offsets[end]] if gap else ()), *self.offsets[end:])
        kept = (cut if cut <= start else cut + moved + len(gap) for cut in self.cuts if cut <= start or cut >= end)
        return Notation(before + gap + after, offsets, self.source, tuple(sorted({*kept, len(before)})))


@cache
def _plain(character: str) -> str:
    """One character in the grammars' spelling; several, one or none."""
    if character in _ONE_FOR_ONE:
        return _ONE_FOR_ONE[character]
    if character in _AS_IT_IS or (character.isascii() and character.isprintable()):
        return character
    if character.isspace():
        return " "
    category = unicodedata.category(character)
    if category in ("Cf", "Cc"):
        return ""
    spelled = unicodedata.normalize("NFKD", character)
    if len(spelled) > 4 or any(part.isspace() for part in spelled):
        return character
    return "".join(_ONE_FOR_ONE.get(part, part) for part in spelled)


def read_notation(
    text: str, letters: frozenset[str] = frozenset(), units: bool = True, commas: Commas = ""
) -> Notation:
    """The text in the grammars' spelling. `letters` are unknowns of the paper, never units.

    With `units` false no single letter is a unit: "solve 3 m = 12". `commas` says what the comma of
    12,500 is in this paper, where that is known; else it stays, and the number is refused as doubtful.

    >>> read_notation("AB̂C = 2 × 12,5 °").text
    'AB̂C = 2 × 12,5 °'
    """
    notation = _settled(_spelled(text), commas)
    return notation.with_units(letters) if units else notation


@lru_cache(maxsize=256)
def _spelled(text: str) -> Notation:
    """The spelling that does not depend on the rest of the paper; a part looks at each of its texts several times."""
    characters: list[str] = []
    offsets: list[int] = []
    at = 0
    while at < len(text):
        typed, plain = _next(text, at) if text[at] in _SPECIAL else (1, _plain(text[at]))
        for character in plain:
            if character == " " and (not characters or characters[-1] == " "):
                continue
            characters.append(character)
            offsets.append(at)
        at += typed
    while characters and characters[-1] == " ":
        characters.pop()
        offsets.pop()
    offsets.append(offsets[-1] + 1 if offsets else 0)
    plain = _TIMES_TEN.sub(r"\1×\2", _lower_words("".join(characters)))
    return Notation(plain, tuple(offsets), text)


_DOTS = re.compile(r"(?<![\d.,])\d{1,3}(?:\.\d{3})+(?=,\d{1,2}(?![\d,.]\d|\d))")
_DOLLARS = re.compile(r"[$£₦₹] ?\d{1,3}(?:,\d{3})+(?![\d,])")


def _settled(notation: Notation, commas: Commas) -> Notation:
    """Doubtful commas made decimal points, or the thousands behind them joined on.

    Dots and a comma in one number part thousands and hundredths (1.200,50); dollars, pounds, nairas and rupees are
    written with commas between thousands, and have no thousandths (common practice).
    """
    text = _DOTS.sub(lambda found: found[0].replace(".", " "), notation.text)
    if commas != "decimal":
        text = _DOLLARS.sub(lambda found: found[0].replace(",", " "), text)
    notation = Notation(text, notation.offsets, notation.source)
    if commas == "decimal":
        return Notation(_DOUBTFUL.sub(r"\1.", notation.text), notation.offsets, notation.source)
    if commas == "thousands":
        return Notation(_DOUBTFUL.sub(r"\1 ", notation.text), notation.offsets, notation.source)
    return notation


def _next(text: str, at: int) -> tuple[int, str]:
    """How many typed characters come next, and their spelling."""
    for typed, plain in _SEVERAL:
        if text.startswith(typed, at):
            return len(typed), plain
    character = text[at]
    base = _LOWERED.match(text, at) if text[at - 3 : at].lower() == "log" else None
    if base is not None:
        return len(base[0]), f"_({unicodedata.normalize('NFKD', base[0])})"
    if character in "ˆ^" and text[max(at - 1, 0)].isupper() and (character == "ˆ" or text[at + 1 : at + 2].isupper()):
        return 1, HAT
    return 1, _plain(character)


_WORD = re.compile(
    r"(?<![A-Za-z])(?:[A-Z][a-z]{2,}|In|At|Is|If|An|To|Of|On|By|Do|So|It|We|Or|As|No)(?![A-Za-z])"
    r"|(?:^|(?<=[.;:,?!] ))A (?!(?:is|are|and|to|be|on|in|at|has|or|lies|lie|meets|cuts|bisects|below)\b)(?=[a-z-]{3})"
)


def _lower_words(text: str) -> str:
    """Words that begin with a capital in small letters, so that only points stay in capitals."""
    return _WORD.sub(lambda word: word.group().lower(), text)
