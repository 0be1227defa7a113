"""The numbers of a paper as runs of siblings: questions, their parts, the parts of those."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import TypeAlias

from paperaudit.model.paper import Paper
from paperaudit.model.place import Place

REPEATED = "′"
"""What the readers put behind the number of a repeated question in its ids; it is not printed."""

_ROMAN = re.compile(r"(?=.)x{0,3}(?:ix|iv|v?i{0,3})")
_ROMAN_WORTH = {"i": 1, "v": 5, "x": 10}


@dataclass(frozen=True, slots=True)
class Numbered:
    """One printed number: its last level, the whole of it, where it stands, and the id that it goes by."""

    label: str
    whole: str
    place: Place
    id: str


Run: TypeAlias = tuple[Numbered, ...]
"""Numbers that should follow one another, in order of print."""


def runs(paper: Paper) -> Iterator[Run]:
    """Every run of the paper: its questions, then the parts of each question, level by level.

    Questions count on from one section to the next. Levels that stay the same from one part to the
    next count once: 1.a.i, 1.a.ii, 1.b has the runs (1), (a, b) and (i, ii). Numbers are as printed,
    without the sign that keeps the ids of repeated questions apart.
    """
    gathered: dict[tuple[str, ...], list[Numbered]] = {}
    previous: tuple[str, ...] = ()
    for question in paper.questions():
        own = tuple(question.number.split("."))
        for index, part in enumerate(question.parts):
            levels = tuple(part.id.split("."))
            kept = _shared(previous, levels, len(own) - 1 if index == 0 else len(levels) - 1)
            for depth in range(kept, len(levels)):
                place = question.place if depth < len(own) else part.place
                id = ".".join(levels[: depth + 1])
                shown = [level.rstrip(REPEATED) for level in levels[: depth + 1]]
                gathered.setdefault(levels[:depth], []).append(Numbered(shown[-1], ".".join(shown), place, id))
            previous = levels
    yield from (tuple(members) for members in gathered.values())


def _shared(first: tuple[str, ...], second: tuple[str, ...], most: int) -> int:
    """How many leading levels two numbers share, at most `most`."""
    same = 0
    while same < min(len(first), len(second), most) and first[same] == second[same]:
        same += 1
    return same


def position(label: str, siblings: Iterable[str]) -> int | None:
    """The place of a label in its kind of counting, from 1; None where it is of no kind.

    Whether "i" and "v" are roman is told by the siblings: a run that starts at i is.

    >>> position("c", ["a", "b", "c"]), position("iv", ["i", "ii", "iv"]), position("12", ["12"])
    (3, 4, 12)
    """
    plain = label.strip("() .").lower()
    if plain.isascii() and plain.isdigit() and len(plain) <= 4:
        return int(plain)
    if _is_roman([sibling.strip("() .").lower() for sibling in siblings]):
        return _roman(plain)
    if len(plain) == 1 and "a" <= plain <= "z":
        return ord(plain) - ord("a") + 1
    return None


def printed(place: int, like: str, siblings: Iterable[str]) -> str:
    """The label at a place, in the manner of the label `like`; the other way round from `position`."""
    plain = like.strip("() .")
    if plain.isdigit():
        return str(place)
    if _is_roman([sibling.strip("() .").lower() for sibling in siblings]):
        tens, ones = divmod(place, 10)
        text = "x" * tens + ("", "i", "ii", "iii", "iv", "v", "vi", "vii", "viii", "ix")[ones]
    else:
        text = chr(ord("a") + place - 1)
    return text.upper() if plain.isupper() else text


def _is_roman(plain: list[str]) -> bool:
    return bool(plain) and all(_ROMAN.fullmatch(one) for one in plain) and (plain[0] == "i" or len(plain[0]) > 1)


def _roman(plain: str) -> int:
    worth = [_ROMAN_WORTH[letter] for letter in plain]
    return sum(-one if index + 1 < len(worth) and one < worth[index + 1] else one for index, one in enumerate(worth))
