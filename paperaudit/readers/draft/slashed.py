"""Fractions set with a slash between a raised and a lowered number, ¹⁄₂, as linear text."""

import re
from collections import Counter
from collections.abc import Sequence
from itertools import takewhile
from typing import Final

from paperaudit.readers.draft.sign import Sign

_DIGITS: Final = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉", "0123456789" * 2)
_RAISED: Final = str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")
_SLASHES: Final = ("/", "⁄", "∕")
_SMALL: Final = 0.93
"""Of the usual size of a row: what is smaller is raised or lowered."""
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


def slope_is_doubtful(text: str, signs: Sequence[Sign]) -> bool:
    """Whether a small run before a full-size slash and one behind it are not the two terms that the text has there.

    ˣ⁺¹⁄₂ is (x + 1)/2, and 1¹⁄₂ is no 11/2: where the print says more than the text keeps, it is not trusted.
    """
    if not any(slash in text for slash in _SLASHES):
        return False
    ordered = sorted(signs, key=lambda sign: sign.left)
    usual = Counter(round(sign.size, 2) for sign in ordered).most_common(1)[0][0]
    small = [sign.size < _SMALL * usual for sign in ordered]
    for at, sign in enumerate(ordered):
        if sign.text in _SLASHES and not small[at]:
            over = _run(ordered[:at], small[:at], backwards=True)
            if over and _run(ordered[at + 1 :], small[at + 1 :]) and not _kept(text, over):
                return True
    return False


def _run(signs: Sequence[Sign], small: Sequence[bool], backwards: bool = False) -> str:
    """The small signs that stand beside a slash, as text."""
    pairs = list(zip(signs, small, strict=True))
    found = [sign.text for sign, _ in takewhile(lambda pair: pair[1], reversed(pairs) if backwards else pairs)]
    return "".join(reversed(found) if backwards else found)


def _kept(text: str, over: str) -> bool:
    """Whether the text has the whole run before a slash, as one number, letter or bracket with nothing beside it."""
    if over.startswith("(") and over.endswith(")") and over.count("(") == 1:
        return f"{over}/" in text.translate(_DIGITS).replace(" ", "").replace("⁄", "/").replace("∕", "/")
    if not re.fullmatch(r"\w+", over):
        return False
    raised = over.translate(_RAISED)
    if raised != over and re.search(rf"(?:(?<![A-Za-z⁰¹²³⁴-⁹])|(?<=[a-z]{{3}})){raised}\s?[/⁄∕]", text):
        return True
    return re.search(rf"(?<![\w⁰¹²³⁴-⁹])\^?{over}\s?[/⁄∕]", text) is not None
