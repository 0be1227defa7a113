"""Fonts of a draft with the names of their glyphs, and without letters that only stand there by mistake."""

import re
from collections.abc import Mapping
from typing import Any

from pdfminer.encodingdb import name2unicode
from pdfminer.pdffont import PDFFont, PDFSimpleFont
from pdfminer.pdftypes import PDFStream, list_value, resolve1
from pdfminer.psparser import PSLiteral, literal_name

from paperaudit.readers.draft.symbol_fonts import symbol_codes

_NAMED = re.compile(rb"dup\s+(\d{1,3})\s*/([\x21-\x2e\x30-\x7e]{1,60})\s+put")
"""A line of the encoding that a Type 1 font file begins with."""
_LONGEST_HEADER = 60_000
"""Bytes of a font file in which the names of its glyphs are looked for."""


def with_names(font: PDFFont, spec: Mapping[str, object]) -> PDFFont:
    """The font, with the names of those of its glyphs that have no letter, for `names_of`; two things are mended.

    Where a font gives a code a name that nobody knows, pdfminer leaves the letter that the code has in the standard
    encoding, so that a bracket would be read as a q; and the font Symbol, which has an encoding of its own, would be
    read with the letters of the standard one.
    """
    if not hasattr(font, "glyph_names"):
        names = _names(font, spec)
        font.glyph_names = names  # type: ignore[attr-defined]
        known = getattr(font, "cid2unicode", None)
        if isinstance(known, dict):
            for code in names:
                known.pop(code, None)
            symbols = symbol_codes(str(getattr(font, "basefont", "")))
            if symbols is not None and not isinstance(resolve1(spec.get("Encoding")), dict):
                known.clear()
                known.update(symbols)
    return font


def names_of(font: PDFFont) -> dict[int, str]:
    """The names of those glyphs of a font that have no letter behind them."""
    names: dict[int, str] = getattr(font, "glyph_names", {})
    return names


def _names(font: PDFFont, spec: Mapping[str, Any]) -> dict[int, str]:
    if not isinstance(font, PDFSimpleFont):
        return {}
    encoding = resolve1(spec.get("Encoding"))
    named = _differences(encoding) if isinstance(encoding, dict) else {}
    if not named and "Encoding" not in spec:
        named = _of_the_file(font)
    return {code: name for code, name in named.items() if not _has_letter(name)}


def _differences(encoding: Mapping[str, Any]) -> dict[int, str]:
    """The codes that an encoding renames, which are listed as a number and the names from it on."""
    named: dict[int, str] = {}
    code = 0
    for entry in list_value(encoding.get("Differences", [])):
        if isinstance(entry, int):
            code = entry
        elif isinstance(entry, PSLiteral):
            named[code] = str(literal_name(entry))
            code += 1
    return named


def _of_the_file(font: PDFSimpleFont) -> dict[int, str]:
    """The names that a Type 1 font file begins with."""
    file = getattr(font, "fontfile", None)
    if not isinstance(file, PDFStream):
        return {}
    header = file.get_data()[:_LONGEST_HEADER]
    return {int(code): name.decode("latin-1") for code, name in _NAMED.findall(header)}


def _has_letter(name: str) -> bool:
    if name == ".notdef":
        return False
    try:
        return bool(name2unicode(name))
    except (KeyError, ValueError):
        return False
