"""Fractions set with a slash between a raised and a lowered number, ¹⁄₂, as linear text."""

import re
from typing import Final

_DIGITS: Final = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉", "0123456789" * 2)
_SLASH: Final = r"\s?[/⁄∕]\s?"
_OF_NUMBERS: Final = re.compile(rf"(?P<whole>(?<![A-Za-z₀-₉])\d)?\s?(?P<over>[⁰¹²³⁴-⁹]+){_SLASH}(?P<under>[₀-₉]+)")
_HALF_SET: Final = re.compile(rf"(?<![\w₀-₉])(\w+){_SLASH}([₀-₉]+)")
_OF_LETTERS: Final = re.compile(rf"(?<![\w)\]])\^?(?P<over>\w+|\([^()]+\)){_SLASH}_(?P<under>\w|\([^()]+\))")


def with_slashed_fractions(text: str) -> str:
    """The text with 1/2 for ¹⁄₂, and 2 1/2 for 2¹⁄₂.

    >>> with_slashed_fractions("2¹⁄₂ × ³⁄₄"), with_slashed_fractions("x² / 4"), with_slashed_fractions("3⁄₄")
    ('2 1/2 × 3/4', 'x² / 4', '3/4')
    """
    if not ("/" in text or "⁄" in text or "∕" in text):
        return text
    text = _OF_NUMBERS.sub(_of_numbers, text)
    text = _HALF_SET.sub(lambda match: f"{match[1]}/{match[2].translate(_DIGITS)}", text)
    text = _OF_LETTERS.sub(lambda match: f"{match['over']}/{match['under']}", text)
    return text.replace("⁄", "/").replace("∕", "/")


def _of_numbers(match: re.Match[str]) -> str:
    whole, before = match.group("whole") or "", match.string[: match.start()]
    blank = " " if whole or match.group()[:1] == " " or before[-1:].isalpha() else ""
    return f"{whole}{blank}{match.group('over').translate(_DIGITS)}/{match.group('under').translate(_DIGITS)}"
