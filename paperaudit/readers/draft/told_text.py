"""What a file says that a stretch of its print stands for, where its fonts leave a glyph without a letter."""

import unicodedata
from collections.abc import Mapping, Sequence
from dataclasses import replace

from pdfminer.utils import decode_text

from paperaudit.readers.draft.page import Glyph

_LONGEST = 200
"""Letters of a stretch that are looked at; programs mark single letters with their accents so."""


def told_by(properties: object) -> str:
    """The text that a mark in the file gives to the stretch after it (ActualText, ISO 32000, 14.9.4), or none.

    >>> told_by({"ActualText": b"\\xfe\\xff\\x00B\\x03\\x02"}) == "B" + chr(0x302)
    True
    """
    given = properties.get("ActualText") if isinstance(properties, Mapping) else None
    return decode_text(given)[:_LONGEST] if isinstance(given, bytes) else ""


def with_told(glyphs: Sequence[Glyph], told: str) -> list[Glyph]:
    """The glyphs of a stretch, one that has no letter with what the told text has beside the letters of the others."""
    unknown = [at for at, glyph in enumerate(glyphs) if not glyph.text]
    if len(unknown) != 1:
        return list(glyphs)
    rest = unicodedata.normalize("NFD", told)
    for glyph in glyphs:
        known = unicodedata.normalize("NFD", glyph.text)
        if known not in rest:
            return list(glyphs)
        rest = rest.replace(known, "", 1)
    at = unknown[0]
    return [*glyphs[:at], replace(glyphs[at], text=unicodedata.normalize("NFC", rest)), *glyphs[at + 1 :]]
