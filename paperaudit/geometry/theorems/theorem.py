"""The form that every theorem has: one value, with the instances that it finds in an arrangement."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import TypeAlias

from paperaudit.geometry.arrangement import Arrangement
from paperaudit.geometry.figure import Size, length
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import LengthOf


@dataclass(frozen=True, slots=True)
class Stated:
    """Holds because the paper says so: the index of the given."""

    label: int


@dataclass(frozen=True, slots=True)
class LinesParallel:
    """Two lines, by index with the lower first, are parallel."""

    first: int
    second: int


@dataclass(frozen=True, slots=True)
class SegmentsEqual:
    """Two segments are equal; use `segments_equal` to build one with its ends in order."""

    first: LengthOf
    second: LengthOf


@dataclass(frozen=True, slots=True)
class Claimed:
    """A claim that the question asks to establish, by its place in the ask."""

    number: int


Predicate: TypeAlias = Stated | LinesParallel | SegmentsEqual | Claimed


def lines_parallel(first: int, second: int) -> LinesParallel:
    """The predicate with the lower index first."""
    return LinesParallel(min(first, second), max(first, second))


def segments_equal(one: tuple[str, str], two: tuple[str, str]) -> SegmentsEqual:
    """The predicate with ends and segments in a fixed order."""
    first, second = sorted((length(*one), length(*two)), key=lambda size: (size.start, size.end))
    return SegmentsEqual(first, second)


@dataclass(frozen=True, slots=True)
class Instance:
    """A theorem at one place of a figure.

    Without `conclusion`: where the premises hold, `relation` = 0 holds. With one: where the
    premises hold and `relation` is found to be 0, the conclusion holds. `weight` is the number of
    lines that it costs a pupil, in tenths. `about` fills the slot of its reason.
    """

    theorem: str
    premises: tuple[Predicate, ...]
    relation: LinearForm[Size]
    conclusion: Predicate | None = None
    about: str = ""
    weight: int = 10
    skill: str = ""
    lead: "Instance | None" = None


@dataclass(frozen=True, slots=True)
class Theorem:
    """What a theorem says, where it comes from, what it trains, and where it fires.

    `name` is the key of its reason in `schemes/reasons/`. `fires` are the statements of a figure in
    which it has an instance, `silent` those of one in which it must have none.
    """

    name: str
    says: str
    skill: str
    source: str
    find: Callable[[Arrangement], Iterator[Instance]]
    fires: tuple[str, ...]
    silent: tuple[str, ...]
