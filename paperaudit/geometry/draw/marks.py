"""The marks of a figure as values, before they have a place: angles, sides, parallels, and classes of equals."""

from collections.abc import Hashable, Sequence
from dataclasses import dataclass
from typing import TypeVar

from paperaudit.model.expression import AngleOf, LengthOf
from paperaudit.model.fact import Path

Item = TypeVar("Item", bound=Hashable)


@dataclass(frozen=True, slots=True)
class AngleMark:
    """An angle with an arc (or a square): its label, how many strokes cross the arc, its number in the figure."""

    angle: AngleOf
    label: str = ""
    strokes: int = 0
    is_right: bool = False
    is_asked: bool = False
    number: int = 0


@dataclass(frozen=True, slots=True)
class SideMark:
    """A segment with its length beside it, and ticks for the class of its equals."""

    side: LengthOf
    label: str = ""
    ticks: int = 0
    is_asked: bool = False


@dataclass(frozen=True, slots=True)
class ParallelMark:
    """A line with `arrows` arrow heads, the same number for all that are parallel to it."""

    path: Path
    arrows: int


@dataclass(frozen=True, slots=True)
class Marks:
    """Everything that a figure shows beside its lines and letters; `squares` are pairs of lines at right angles
    that share no letter.
    """

    angles: tuple[AngleMark, ...] = ()
    sides: tuple[SideMark, ...] = ()
    parallels: tuple[ParallelMark, ...] = ()
    squares: tuple[tuple[Path, Path], ...] = ()


def classed(pairs: Sequence[tuple[Item, Item]]) -> dict[Item, int]:
    """Each item with the number, from 1, of the class of equals that it belongs to, in order of mention.

    >>> classed([("AB", "AC"), ("PQ", "PR"), ("AC", "AD")])
    {'AB': 1, 'AC': 1, 'PQ': 2, 'PR': 2, 'AD': 1}
    """
    leader: dict[Item, Item] = {}

    def lead(item: Item) -> Item:
        while leader.setdefault(item, item) != item:
            item = leader[item]
        return item

    for one, other in pairs:
        first, second = lead(one), lead(other)
        leader[second] = first
    numbers: dict[Item, int] = {}
    return {item: numbers.setdefault(lead(item), len(numbers) + 1) for item in leader}
