"""How a paper's marks are spread over levels, strands and skills, exactly, and against a blueprint."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from paperaudit.marking.blueprint import LEVELS, Blueprint, Share
from paperaudit.marking.skills import printed, strand_of, strands
from paperaudit.model.audited import AuditedPaper, AuditedPart

NO_SKILL = "no skill named"
"""Stands for the skill of a part that names none, so that its marks are not lost from a total."""

_TAUGHT_AS = {"equations": "algebra"}
"""A strand of the audit whose name is none of the strands of `schemes/skills.yaml`, and the one that it is part of."""


@dataclass(frozen=True, slots=True)
class Portion:
    """The marks of one part that go to one of its skills."""

    part: AuditedPart
    skill: str
    strand: str
    marks: Fraction


@dataclass(frozen=True, slots=True)
class Slice:
    """The marks that one level, strand or skill carries in the whole paper."""

    name: str
    marks: Fraction


@dataclass(frozen=True, slots=True)
class Spread:
    """A paper's marks by level, strand and skill; the last two add up to `total`.

    The levels add up to `total` less `unclassed`, the marks of parts whose level nobody knows.
    All four levels are there, the easiest first; strands in the order of `schemes/skills.yaml` and
    skills in order of print, both only where marks or parts are.
    """

    total: int
    levels: tuple[Slice, ...]
    strands: tuple[Slice, ...]
    skills: tuple[Slice, ...]
    unclassed: int = 0


@dataclass(frozen=True, slots=True)
class Aim:
    """A blueprint's share against what the paper has; `percent` and `difference` are in points of 100.

    `difference` is positive where the paper has too much.
    """

    share: Share
    marks: Fraction
    percent: Fraction
    difference: Fraction
    within: bool


def portions(part: AuditedPart) -> tuple[Portion, ...]:
    """A part's marks shared equally among its skills; a part without printed marks has 0 to share.

    Three marks with two skills give 3/2 to each. A skill that is named twice counts once.
    """
    strand = _TAUGHT_AS.get(part.strand, part.strand)
    named = tuple(dict.fromkeys(printed(skill) for skill in part.skills if skill.strip())) or (NO_SKILL,)
    each = Fraction(part.part.marks or 0, len(named))
    return tuple(Portion(part, skill, strand_of(skill, strand), each) for skill in named)


def spread(audited: AuditedPaper) -> Spread:
    """The marks of an audited paper by level, strand and skill, exact."""
    shared = [portion for part in audited.parts for portion in portions(part)]
    return Spread(
        total=sum(part.part.marks or 0 for part in audited.parts),
        levels=_gathered(
            [(level, Fraction(0)) for level in LEVELS]
            + [(part.level, Fraction(part.part.marks or 0)) for part in audited.parts if part.level]
        ),
        strands=tuple(
            sorted(_gathered((portion.strand, portion.marks) for portion in shared), key=lambda held: rank(held.name))
        ),
        skills=_gathered((portion.skill, portion.marks) for portion in shared),
        unclassed=sum(part.part.marks or 0 for part in audited.parts if not part.level),
    )


def rank(strand: str) -> int:
    """Where a strand stands in a list of them; strands that the file does not know come last."""
    return strands().index(strand) if strand in strands() else len(strands())


def level_aims(spread: Spread, blueprint: Blueprint) -> tuple[Aim, ...]:
    """The paper's levels against the blueprint's; none where no marks are classed.

    Shares are of the marks whose level is known.
    """
    return _aims(spread.levels, blueprint.levels, spread.total - spread.unclassed, blueprint.tolerance)


def content_aims(spread: Spread, blueprint: Blueprint) -> tuple[Aim, ...]:
    """The paper's strands against the blueprint's content; none where the paper has no marks."""
    return _aims(spread.strands, blueprint.content, spread.total, blueprint.tolerance)


def balance_index(marks: Sequence[Fraction | int]) -> Fraction | None:
    """Webb's balance index, from 1 (the same for each) down; None where there is nothing to weigh.

    1 − ½·Σ|1/O − Iₖ/H| over O skills that share H marks, Iₖ of them on skill k. N. L. Webb, Criteria
    for Alignment of Expectations and Assessments, 1997 (quoted from memory), who counts 0.70 and
    above as balanced and 0.60 to 0.69 as weak.

    >>> float(balance_index([4, 3, 2, 1]))
    0.8
    """
    shares = [Fraction(held) for held in marks]
    total = sum(shares, Fraction(0))
    if not total:
        return None
    even = Fraction(1, len(shares))
    return 1 - sum((abs(even - share / total) for share in shares), Fraction(0)) / 2


def _gathered(amounts: Iterable[tuple[str, Fraction]]) -> tuple[Slice, ...]:
    held: dict[str, Fraction] = {}
    for name, marks in amounts:
        held[name] = held.get(name, Fraction(0)) + marks
    return tuple(Slice(name, marks) for name, marks in held.items())


def _aims(slices: Sequence[Slice], shares: Sequence[Share], total: int, tolerance: Fraction) -> tuple[Aim, ...]:
    if not total:
        return ()
    return tuple(_aim(share, slices, total, tolerance) for share in shares)


def _aim(share: Share, slices: Sequence[Slice], total: int, tolerance: Fraction) -> Aim:
    marks = sum((held.marks for held in slices if held.name in share.members), Fraction(0))
    percent = 100 * marks / total
    difference = percent - share.percent
    return Aim(share, marks, percent, difference, abs(difference) <= tolerance)
