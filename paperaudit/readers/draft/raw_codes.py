"""Undoes Latin letters that stand for the codes of TeX's fonts, as fonts made for Windows and Matplotlib have them.

Such fonts (the TrueType forms of cmsy, cmmi, cmex, cmr) put code 0 to 9 at U+00A1 to U+00AA, 10 to 32 at U+00AD to
U+00C3, 127 at U+00C4 and every other code at the letter of that number, so that a root reads as p, a minus as ¡.
"""

import re
from typing import Final

from paperaudit.readers.draft.symbol_fonts import letter_of

_FAMILY: Final = re.compile(r"(?:^|\+)cm(?P<kind>sy|mi|ex|r)\d{1,2}$", re.IGNORECASE)
_TRUETYPE: Final = re.compile(r"(?:^|\+)[cC]m[a-z]")
"""The names that these fonts give themselves; ± and · in CMSY10 are the signs that they look like."""
_NO_LETTERS: Final = {
    "sy": frozenset("abcdefghijklmnopqrstuvwxyz0123456789["),
    "mi": frozenset(":;="),
    "ex": frozenset("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789"),
    "r": frozenset("^_{|~"),
}
"""What none of these fonts prints, so that it can only be a code."""
_ROMAN: Final = {
    **dict(enumerate("ΓΔΘΛΞΠΣΥΦΨΩ")),
    **dict(zip(range(11, 16), ("ff", "fi", "fl", "ffi", "ffl"), strict=True)),
    23: "˚",
    94: "\u0302",
    95: "\u02d9",
    123: "–",
    124: "—",
    126: "\u0303",
    127: "¨",
}


def letter_and_code(font: str, text: str) -> tuple[str, int]:
    """The letter that is printed and -1, or of a large sign no letter and its code.

    >>> letter_and_code("ABCDEF+Cmsy10", "¡"), letter_and_code("CMEX10", "p"), letter_and_code("CMR10", "p")
    (('−', -1), ('', 112), ('p', -1))
    """
    family = _FAMILY.search(font) if len(text) == 1 else None
    code = _code(text, family["kind"].lower(), bool(_TRUETYPE.search(font))) if family is not None else -1
    if family is None or code < 0:
        return text, -1
    kind = family["kind"].lower()
    letter = _ROMAN.get(code, "") if kind == "r" else "" if kind == "ex" else letter_of(font, code)
    return (letter, -1) if letter else ("", code)


def _code(text: str, kind: str, truetype: bool) -> int:
    at = ord(text)
    if truetype and 0xA1 <= at <= 0xAA:
        return at - 0xA1
    if truetype and 0xAD <= at <= 0xC3:
        return at - 0xAD + 10
    if truetype and at == 0xC4:
        return 127
    return at if text in _NO_LETTERS[kind] else -1
