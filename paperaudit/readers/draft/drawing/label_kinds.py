"""What a short run of print in a figure can be, by its text: a letter, a size in degrees or of length, words."""

import re
from enum import Enum, auto
from functools import lru_cache

_POINT = re.compile(r"[A-Z](?:[₀-₉]|′{1,3})?")
_UNIT = r"(?: ?(?:mm|cm|dm|km|m|units?))"
_NUMBER = r"(?:\d{1,4} \d{1,3}/\d{1,3}|\d{1,6}(?:[.,]\d{1,4})?)"
_TERM = (
    rf"(?:√|∛)?(?:{_NUMBER}|\(\d+/\d+\)|½|⅓|¼)?(?:√|∛)?(?:{_NUMBER}|[a-zα-ωπ]|\([^()=]{{1,14}}\))?(?:[²³])?(?:/\d+)?"
)
_SIZE = re.compile(rf"\(?{_TERM}(?: ?[−+] ?{_TERM}){{0,3}}\)?")

_OF_THE_TEXT = re.compile(
    r"|\(\d*[a-z]?\)|\([ivx]{2,4}\)|\d{1,2}\)|[a-z]{1,3}\)|\[\d{1,3}\]|[(\[]?\d{1,3} ?marks?[)\]]?", re.IGNORECASE
)
"""Numbers of parts and marks, which may stand close to a figure."""


class LabelKind(Enum):
    """What a run of print in a figure can be."""

    POINT = auto()
    ANGLE = auto()
    """A size in degrees."""
    LENGTH = auto()
    """A size with a unit of length."""
    SIZE = auto()
    """A number, a letter, an expression: an angle or a length, by where it stands."""
    WORDS = auto()


@lru_cache(maxsize=4096)
def kind_of(text: str) -> LabelKind:
    """What a label of this text can be.

    >>> [kind_of(text).name for text in ("A", "P′", "40°", "2x + 10°", "7,5 cm", "3x", "(3)", "2)", "the", "A(2; 3)")]
    ['POINT', 'POINT', 'ANGLE', 'ANGLE', 'LENGTH', 'SIZE', 'WORDS', 'WORDS', 'WORDS', 'WORDS']
    """
    if _POINT.fullmatch(text):
        return LabelKind.POINT
    if _OF_THE_TEXT.fullmatch(text) or not any(one.isalnum() for one in text):
        return LabelKind.WORDS
    if text.endswith("°"):
        return LabelKind.ANGLE if _SIZE.fullmatch(text[:-1].strip()) else LabelKind.WORDS
    if _in_terms_of_degrees(text):
        return LabelKind.ANGLE
    unit = re.search(_UNIT + r"$", text)
    if (
        unit
        and unit.start() > 0
        and _SIZE.fullmatch(text[: unit.start()])
        and re.search(r"\d|[a-z]", text[: unit.start()])
    ):
        return LabelKind.LENGTH
    return LabelKind.SIZE if _SIZE.fullmatch(text) else LabelKind.WORDS


def _in_terms_of_degrees(text: str) -> bool:
    """Whether degrees stand somewhere before the end: 40° + x."""
    plain = text.replace("°", "")
    return "°" in text and _SIZE.fullmatch(plain.strip()) is not None
