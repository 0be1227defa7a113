"""Reads marks in a setter's key: codes such as M1 A1 behind a line, numbers in their column."""

import re
from typing import Final

from paperaudit.readers.draft.marks import bare_number, marks_alone, marks_at_end

_CODE: Final = r"(?:[dD](?=[MAB]))?([A-Z]{1,3}[0-9]{1,2})(?:ft|cao|cso|oe|dep|\*)?"
_CODES: Final = re.compile(rf"[\[(]?(?:{_CODE}[\s,;+]*)+[\])]?")
_LETTERS: Final = frozenset(["M", "A", "B", "R", "S", "E", "C", "W", "F", "J", "P", "Q", "K", "CA", "SF", "RT", "NPR"])
_ONE: Final = re.compile(_CODE)
_END: Final = re.compile(rf"(?:^|(?<=\s))[\[(]?(?:{_CODE}[\s,;+]*)+[\])]?\s*$")


def is_codes(text: str) -> bool:
    """Whether a cell holds codes of marks and nothing else.

    >>> is_codes("M1 A1 A1"), is_codes("M1A1"), is_codes("P1 (2; 3)"), is_codes("")
    (True, True, False, False)
    """
    return bool(_CODES.fullmatch(text.strip())) and bool(_known(text))


def codes_at_end(text: str) -> tuple[str, tuple[str, ...]]:
    """A text without the codes that it ends with, and these; one code of an unusual letter is none.

    >>> codes_at_end("x = 5  M1 A1"), codes_at_end("∠ABC = 68°")
    (('x = 5', ('M1', 'A1')), ('∠ABC = 68°', ()))
    """
    match = _END.search(text)
    if match is None or not _known(match.group()):
        return text.strip(), ()
    return text[: match.start()].strip(), _known(match.group())


def marks_of_cell(text: str, bare: bool = True) -> int | None:
    """The marks that a cell states; a bare number only where its column is known."""
    if marks := marks_alone(text) or marks_at_end(text):
        return marks.number
    return bare_number(text) if bare else None


def _known(text: str) -> tuple[str, ...]:
    codes = tuple(match.group(1) for match in _ONE.finditer(text))
    known = all(code.rstrip("0123456789") in _LETTERS for code in codes)
    return codes if known else ()
