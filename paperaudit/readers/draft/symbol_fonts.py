"""What the glyphs of mathematical fonts stand for that come without a Unicode value.

The encodings are published: Appendix F of Knuth's TeXbook for cmmi, cmsy and cmex, the metrics files of amsfonts for
msam and msbm, Annex D of ISO 32000 for Symbol. Only signs that a school paper can have are here; others stay unknown.
"""

import re
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Tall:
    """A sign that hangs from its baseline: how far it goes down from there, in heights of its font."""

    text: str
    depth: float
    piece: bool = False


_FAMILY = re.compile(r"(?:^|\+)(?:lm|LM)?(?P<family>[A-Za-z]+?)-?\d*(?:-[A-Za-z]+)?$")
_LETTERS = {
    **dict(enumerate("ΓΔΘΛΞΠΣΥΦΨΩαβγδεζηθικλμνξπρστυφχψωεθπρσφ")),
    126: "\u20d7",
    **{code: chr(code) for code in (*range(48, 58), *range(65, 91), *range(97, 123))},
    **dict(zip(range(58, 62), ".,</", strict=True)),
    62: ">",
    64: "∂",
    95: "⌢",
    96: "ℓ",
}
_SIGNS = {
    **dict(enumerate("−·×∗÷⋄±∓⊕⊖⊗⊘⊙◯∘•≍≡⊆⊇≤≥≼≽∼≈⊂⊃≪≫≺≻←→↑↓↔↗↘≃⇐⇒⇑⇓⇔↖↙∝′∞∈∋△▽")),
    54: "\u0338",
    **dict(zip(range(56, 65), "∀∃¬∅ℜℑ⊤⊥ℵ", strict=True)),
    **dict(zip(range(91, 96), "∪∩⊎∧∨", strict=True)),
    **dict(zip(range(98, 113), "⌊⌋⌈⌉{}⟨⟩|∥↕⇕\\≀√", strict=True)),
    114: "∇",
    115: "∫",
}
_RELATIONS = {
    3: "□",
    41: "∴",
    42: "∵",
    54: "⩽",
    62: "⩾",
    77: "△",
    78: "▲",
    79: "▽",
    92: "∠",
    93: "∡",
    94: "∢",
    97: "⌢",
}
_MORE_RELATIONS = {4: "≮", 5: "≯", 44: "∦", 63: "∅", 91: "\u0302", 92: "\u0302", 115: "∼", 116: "≈"}
_DOUBLE_STRUCK = {"C": "ℂ", "N": "ℕ", "Q": "ℚ", "R": "ℝ", "Z": "ℤ"}
_BRACKETS = "()[]⌊⌋⌈⌉{}⟨⟩"
_EXTENSIBLE: dict[int, Tall] = {
    **{code: Tall(text, 1.16) for code, text in enumerate(_BRACKETS + "|∥/\\")},
    **{16 + at: Tall(text, 1.76) for at, text in enumerate("()")},
    **{18 + at: Tall(text, 2.36) for at, text in enumerate(_BRACKETS + "/\\")},
    **{32 + at: Tall(text, 2.96) for at, text in enumerate(_BRACKETS + "/\\")},
    **{46 + at: Tall(text, 1.76) for at, text in enumerate("/\\")},
    **{48 + at: Tall(text, 1.77, True) for at, text in enumerate("()[][]")},
    **{54 + at: Tall(text, 0.6, True) for at, text in enumerate("[]")},
    **{56 + at: Tall(text, 0.91, True) for at, text in enumerate("{}{}")},
    **{60 + at: Tall(text, 1.81, True) for at, text in enumerate("{}")},
    **{62 + at: Tall(text, 0.31 if at == 0 else 0.6, True) for at, text in enumerate("{|")},
    **{64 + at: Tall(text, 1.76, True) for at, text in enumerate("()")},
    **{66 + at: Tall(text, 0.61, True) for at, text in enumerate("()")},
    **{68 + at: Tall(text, 1.76) for at, text in enumerate("⟨⟩")},
    **{80 + at: Tall(text, 1.0 if text != "∫" else 1.11) for at, text in enumerate("∑∏∫∪∩")},
    **{88 + at: Tall(text, 1.4 if text != "∫" else 2.22) for at, text in enumerate("∑∏∫∪∩")},
    **dict.fromkeys((98, 99, 100), Tall("\u0302", 0.0)),
    **dict.fromkeys((101, 102, 103), Tall("\u0303", 0.0)),
    **{104 + at: Tall(text, 1.76) for at, text in enumerate("[]⌊⌋⌈⌉{}")},
    **{112 + at: Tall("√", depth) for at, depth in enumerate((1.16, 1.76, 2.36, 2.96))},
}
_ADOBE_SYMBOL = {
    **dict(zip(range(0x41, 0x5B), "ΑΒΧΔΕΦΓΗΙϑΚΛΜΝΟΠΘΡΣΤΥςΩΞΨΖ", strict=True)),
    **dict(zip(range(0x61, 0x7B), "αβχδεφγηιϕκλμνοπθρστυϖωξψζ", strict=True)),
    **{code: chr(code) for code in range(0x20, 0x40)},
    0x22: "∀",
    0x24: "∃",
    0x27: "∋",
    0x2A: "∗",
    0x2D: "−",
    0x40: "≅",
    **dict(zip(range(0x5B, 0x5F), "[∴]⊥", strict=True)),
    **dict(zip(range(0x7B, 0x7F), "{|}∼", strict=True)),
    **dict(zip(range(0xA1, 0xA6), "ϒ′≤⁄∞", strict=True)),
    **dict(zip(range(0xAB, 0xB9), "↔←↑→↓°±″≥×∝∂•÷", strict=True)),
    **dict(zip(range(0xB9, 0xBD), "≠≡≈…", strict=True)),
    **dict(zip(range(0xC4, 0xD0), "⊗⊕∅∩∪⊃⊇⊄⊂⊆∈∉", strict=True)),
    0xD0: "∠",
    0xD5: "∏",
    0xD6: "√",
    0xD7: "·",
    0xD8: "¬",
    **dict(zip(range(0xD9, 0xDF), "∧∨⇔⇐⇑⇒", strict=True)),
    0xE5: "∑",
    **dict(zip(range(0xE6, 0xF0), "((([[[{{{{", strict=True)),
    0xF2: "∫",
    **dict(zip(range(0xF6, 0xFF), ")))]]]}}}", strict=True)),
}
_NAMED = {
    "bardbl": "∥",
    "prime": "′",
    "triangle": "△",
    "triangleinv": "▽",
    "trianglesolid": "▲",
    "negationslash": "\u0338",
    "circledot": "⊙",
    "circlecopyrt": "◯",
    "diamondmath": "⋄",
    "similarequal": "≃",
    "lessorequalslant": "⩽",
    "greaterorequalslant": "⩾",
    "lessdblequal": "≦",
    "greaterdblequal": "≧",
    "notparallel": "∦",
    "measuredangle": "∡",
    "sphericalangle": "∢",
    "angbracketleft": "⟨",
    "angbracketright": "⟩",
    "floorleft": "⌊",
    "floorright": "⌋",
    "ceilingleft": "⌈",
    "ceilingright": "⌉",
    "vector": "\u20d7",
    "epsilon1": "ε",
    "pi1": "π",
    "rho1": "ρ",
    "lscript": "ℓ",
    "slurabove": "⌢",
    "frown": "⌢",
    "square": "□",
    "precedesequal": "≼",
    "followsequal": "≽",
    "lessmuch": "≪",
    "greatermuch": "≫",
    "arrownortheast": "↗",
    "arrowsoutheast": "↘",
    "owner": "∋",
    "dotlessj": "j",
    "hatwide": "\u0302",
    "hatwider": "\u0302",
    "mapsto": "\u21a6",
}
_LARGE = re.compile(
    r"(?P<base>paren|bracket|brace|floor|ceiling|angbracket|angle|slash|backslash|vextendsingle|vextenddouble|radical"
    r"|arrowvertexdbl|arrowvertex|summation|product|integral|union|intersection|hatwide|tildewide|widehat|widetilde)"
    r"(?P<side>left|right)?(?P<size>big|Big|bigg|Bigg|tp|bt|ex|mid|text|display|r|st|[1-6])?"
)
_BASES = {
    "paren": "()",
    "bracket": "[]",
    "brace": "{}",
    "floor": "⌊⌋",
    "ceiling": "⌈⌉",
    "angbracket": "⟨⟩",
    "angle": "⟨⟩",
    "slash": "/",
    "backslash": "\\",
    "vextendsingle": "|",
    "vextenddouble": "∥",
    "arrowvertex": "|",
    "arrowvertexdbl": "∥",
    "radical": "√",
    "summation": "∑",
    "product": "∏",
    "integral": "∫",
    "union": "∪",
    "intersection": "∩",
    "hatwide": "\u0302",
    "widehat": "\u0302",
    "tildewide": "\u0303",
    "widetilde": "\u0303",
}
_DEPTHS = {"big": 1.16, "Big": 1.76, "bigg": 2.36, "Bigg": 2.96, "text": 1.0, "display": 1.4}
_PIECES = {"tp": 1.77, "bt": 1.76, "ex": 0.6, "mid": 1.81}
_BY_FAMILY: tuple[tuple[str, dict[int, str]], ...] = (
    ("cmmi|cmmib|mathitalic|mathi|rtxmi|rpxmi|eurm", _LETTERS),
    ("cmsy|cmbsy|mathsymbols|mathsy|txsy|pxsy|eusm", _SIGNS),
    ("msam", _RELATIONS),
    ("msbm", _MORE_RELATIONS),
)
_EXTENSION = re.compile(r"cmex|mathextension|mathex|txex|pxex|euex", re.IGNORECASE)
_COMPACT = re.compile(r"[pt]xex", re.IGNORECASE)
"""Fonts whose brackets are lower and whose signs of sums are taller than those of cmex."""
_STRUCK_TWICE = re.compile(r"msbm|bbold|dsrom|bbm|blackb|fplmbb", re.IGNORECASE)
_SYMBOL = re.compile(r"symbol", re.IGNORECASE)
_ADOBES = re.compile(r"Symbol(?:MT|PS|Set)?(?:[-,].*)?")
_PICTURES = re.compile(r"dingbat|wingding|webding|marvosym|fontawesome", re.IGNORECASE)


def letter_of(font: str, code: int, name: str = "") -> str:
    """What a glyph stands for that its font calls `name`, or the glyph `code` of a TeX font in its own encoding.

    >>> letter_of("ABCDEF+CMSY10", 52), letter_of("ABCDEF+Times", 52), letter_of("", -1, "bardbl")
    ('△', '', '∥')
    """
    if name in _NAMED:
        return _NAMED[name]
    shape = _FAMILY.search(font)
    if name or shape is None or code < 0:
        return ""
    family = shape["family"].lower()
    for names, table in _BY_FAMILY:
        if re.fullmatch(names, family):
            return table.get(code, "")
    return ""


def styled_letter_of(font: str, text: str) -> str:
    """A letter of a font whose letters are all double-struck, as the set of numbers that it names.

    >>> styled_letter_of("ABCDEF+MSBM10", "R"), styled_letter_of("Times", "R")
    ('ℝ', 'R')
    """
    return _DOUBLE_STRUCK.get(text, text) if _STRUCK_TWICE.search(font) else text


def tall_sign_of(font: str, code: int, name: str = "") -> Tall | None:
    """The sign of one of TeX's fonts of large signs, which hang below their baseline.

    >>> tall_sign_of("ABCDEF+CMEX10", 18), tall_sign_of("LMMathExtension10-Regular", -1, "radicalBig")
    (Tall(text='(', depth=2.36, piece=False), Tall(text='√', depth=1.76, piece=False))
    """
    if not _EXTENSION.search(font):
        return None
    tall = _tall_sign(code, name)
    if tall is None or not _COMPACT.search(font):
        return tall
    if tall.text in "∑∏":
        return Tall(tall.text, 1.57 if tall.depth > 1 else 0.9)
    return Tall(tall.text, 0.8 * tall.depth, tall.piece) if tall.text in _BRACKETS else tall


def _tall_sign(code: int, name: str) -> Tall | None:
    large = _LARGE.fullmatch(name)
    if large is None:
        return None if name else _EXTENSIBLE.get(code)
    base, size = large["base"], large["size"] or ""
    text = _BASES[base][large["side"] == "right" if len(_BASES[base]) == 2 else 0]
    if text in "\u0302\u0303":
        return Tall(text, 0.0)
    if text == "∫":
        return Tall(text, 2.22 if size == "display" else 1.11)
    depth = _PIECES.get(size, 0.6 if base.startswith(("vextend", "arrowvertex")) else _DEPTHS.get(size, 1.16))
    return Tall(text, depth, size in _PIECES or base.startswith(("vextend", "arrowvertex")))


def private_letter_of(font: str, text: str) -> str:
    """What a code of the private area U+F000 to U+F0FF is in a font with the encoding of Adobe's Symbol.

    >>> private_letter_of("SymbolMT", chr(0xF0D0))
    '∠'
    """
    if shows_pictures(font):
        return "•"
    return "".join(_ADOBE_SYMBOL.get(ord(sign) - 0xF000, "") for sign in text) if _SYMBOL.search(font) else ""


def symbol_codes(font: str) -> dict[int, str] | None:
    """The letters of Adobe's Symbol by code, where a font is of that name; it has no letters of the alphabet.

    >>> (symbol_codes("ABCDEF+SymbolMT") or {})[0x61], symbol_codes("OpenSymbol")
    ('α', None)
    """
    return dict(_ADOBE_SYMBOL) if _ADOBES.fullmatch(font.split("+")[-1]) else None


def shows_pictures(font: str) -> bool:
    """Whether the glyphs of a font are pictures, which papers use for the dots of lists."""
    return bool(_PICTURES.search(font))
