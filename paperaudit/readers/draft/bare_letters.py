"""Finds parts that are numbered by a letter alone, "a Find x." under "b Find y.", by where these letters stand."""

import re
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import Final

from paperaudit.readers.draft.numbering import Number, Style
from paperaudit.readers.draft.print_line import PrintLine

_LETTER: Final = re.compile(r"(?P<letter>[a-h])(?=\s+\S)|(?P<roman>i{1,3}|iv|vi{0,3})(?=\s+\S)")
_QUESTION: Final = re.compile(r"\d{1,2}[.)]?\s+(?=[a-z]{1,3}\s)")
_ROMANS: Final = ("i", "ii", "iii", "iv", "v", "vi", "vii", "viii")
_UNDER: Final = 3.0
"""Points within which letters stand under one another."""
_SHARE: Final = 0.5
"""Share of the rows that begin at the place of the letters and have one."""


def bare_letter_at(text: str, line: PrintLine, offset: int, places: Sequence[float]) -> tuple[Number, ...]:
    """The letter alone at `offset` of a row, as a part's number where it stands at one of the `places` of such."""
    left = line.left_of(0, offset) - line.column.left
    return letter_alone(text) if any(place - _UNDER <= left <= place + 2 * _UNDER for place in places) else ()


def letter_alone(text: str) -> tuple[Number, ...]:
    """The letter or small Roman number without any dress that a text begins with.

    >>> [(one.style.name, one.value) for one in letter_alone("b Find x.")], letter_alone("by now")
    ([('LETTER', (2,))], ())
    """
    match = _LETTER.match(text)
    if match is None:
        return ()
    if roman := match["roman"]:
        return (Number(Style.ROMAN, (_ROMANS.index(roman) + 1,), "", roman, match.end()),)
    return (Number(Style.LETTER, (ord(match.group()) - ord("a") + 1,), "", match.group(), match.end()),)


def places_of_letters(lines: Sequence[PrintLine]) -> tuple[float, ...]:
    """How far from the left of their column letters alone stand in front of parts in this draft.

    They count on from a, and few rows begin there with anything else.
    """
    starts = sorted((left, at, rank) for at, line in enumerate(lines) for left, rank in _letters(line))
    begun = sorted(line.box[0] - line.column.left for line in lines)
    places: list[float] = []
    while starts:
        left = starts[0][0]
        own = sorted((at, rank) for place, at, rank in starts if place <= left + _UNDER)
        starts = [start for start in starts if start[0] > left + _UNDER]
        ranks = [rank for _, rank in own]
        rows = sum(left - _UNDER <= place <= left + 2 * _UNDER for place in begun)
        if _count_on(ranks) and len(own) >= _SHARE * rows:
            places.append(left)
    return tuple(places)


def _count_on(ranks: Sequence[int]) -> bool:
    """Whether letters come in rows a, b, c, none of them alone.

    >>> _count_on([1, 2, 3, 1, 2]), _count_on([1, 1, 2]), _count_on([1])
    (True, False, False)
    """
    steps = pairwise([*ranks, 1])
    return (
        bool(ranks) and ranks[0] == 1 and all(there == here + 1 or (there == 1 and here > 1) for here, there in steps)
    )


def _letters(line: PrintLine) -> Iterator[tuple[float, int]]:
    """Where a row has a letter alone in front, behind the number of its question or first, and which one it is."""
    text = line.row.cells[0].text
    question = _QUESTION.match(text)
    offset = question.end() if question else 0
    for number in letter_alone(text[offset:]):
        yield line.left_of(0, offset) - line.column.left, number.value[0]
