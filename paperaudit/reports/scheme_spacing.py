"""Keeps together what reads as one word at a line's end: AB ∥ CD, 8 cm, (b)(ii)."""

import re
from dataclasses import fields, is_dataclass, replace
from typing import Any, TypeVar

NO_BREAK = "\u00a0"
"""A space at which a line never ends."""

_RELATION = re.compile(r"(?<![^\s(,;])([△∠]?[A-Z]{1,4}) ([=∥⊥∼≡]) (?=[△∠]?[A-Z]{1,4}(?![A-Za-z]))")
_MEASURE = re.compile(r"(?<=\d) (?=(?:mm|cm|m|km|g|kg|ml|l|s|h|min)\b[²³]?)")
_DRAWING = "<svg"

Written = TypeVar("Written")


def kept_together(text: str) -> str:
    """A text with spaces that do not break inside short relations and between a number and its unit.

    >>> kept_together("AB ∥ CD and AB = 8 cm").replace(NO_BREAK, "_")
    'AB_∥_CD and AB = 8_cm'
    """
    if text.startswith(_DRAWING):
        return text
    bound = _RELATION.sub(lambda found: f"{found[1]}{NO_BREAK}{found[2]}{NO_BREAK}", text)
    return _MEASURE.sub(NO_BREAK, bound)


def spaced(sheet: Written) -> Written:
    """A sheet of values with every text in it kept together."""
    changed: Any = _spaced(sheet)
    return changed  # type: ignore[no-any-return]


def _spaced(value: Any) -> Any:
    if isinstance(value, str):
        return kept_together(value)
    if isinstance(value, tuple):
        return tuple(map(_spaced, value))
    if is_dataclass(value) and not isinstance(value, type):
        return replace(value, **{field.name: _spaced(getattr(value, field.name)) for field in fields(value)})
    return value
