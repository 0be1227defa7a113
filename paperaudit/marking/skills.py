"""The skills that lines of working show, and the strand that each belongs to."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

from paperaudit.resources import shipped

OTHER = "other"
"""The strand of a skill that nobody has placed."""


@dataclass(frozen=True, slots=True)
class Skill:
    """One skill of `schemes/skills.yaml`: its name, its strand, and what a pupil does who has it."""

    name: str
    strand: str
    sentence: str


def strands() -> tuple[str, ...]:
    """The strands, in the order in which reports list them."""
    return _contents().strands


@cache
def skills() -> Mapping[str, Skill]:
    """Every shipped skill by its name, in the order of the file."""
    return MappingProxyType({skill.name: skill for skill in _contents().skills})


def known(skill: str) -> Skill | None:
    """The shipped skill of that name, however it is spaced and capitalised; None for a setter's own.

    >>> known("Angles  on a straight line").name
    'angles on a straight line'
    """
    return _by_folded_name().get(_folded(skill))


def printed(skill: str) -> str:
    """A skill's name as reports print it: the shipped spelling, or the setter's own, trimmed."""
    found = known(skill)
    return found.name if found else " ".join(skill.split())


def strand_of(skill: str, otherwise: str = "") -> str:
    """The strand of a skill; of a setter's own skill `otherwise`, which is the strand of its part.

    >>> strand_of("percentages"), strand_of("knots", "measures"), strand_of("knots")
    ('ratio and percent', 'measures', 'other')
    """
    found = known(skill)
    return found.strand if found else otherwise.strip() or OTHER


@cache
def _by_folded_name() -> Mapping[str, Skill]:
    return MappingProxyType({_folded(name): skill for name, skill in skills().items()})


def _folded(name: str) -> str:
    return " ".join(name.casefold().replace("’", "'").split())


@dataclass(frozen=True, slots=True)
class _Contents:
    strands: tuple[str, ...]
    skills: tuple[Skill, ...]


@cache
def _contents() -> _Contents:
    from ruamel.yaml import YAML

    with shipped("schemes", "skills.yaml").open(encoding="utf-8") as file:
        contents = YAML(typ="safe", pure=True).load(file)
    return _Contents(tuple(contents["strands"]), tuple(Skill(**row) for row in contents["skills"]))
