"""The cognitive levels do not carry the shares of marks that the blueprint asks for."""

from collections.abc import Iterator
from fractions import Fraction
from typing import TYPE_CHECKING

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.targets import off_target, shares_of
from paperaudit.checks.grounds.words import counted
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding, Severity

if TYPE_CHECKING:
    from paperaudit.marking.blueprint import Blueprint
    from paperaudit.marking.spread import Aim


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """At most one finding, for the whole paper; none where the paper names no blueprint."""
    paper = audited.paper
    if not paper.blueprint:
        return
    from paperaudit.marking.blueprint import load

    blueprint = load(paper.blueprint)
    aims = _aims(audited, blueprint)
    off = off_target(aims)
    if off:
        proposed = any("level" in part.proposed for part in audited.parts)
        yield CHECK.found(
            f"Measured against the blueprint {blueprint.name}, the paper has {off}.",
            places=(paper.place,),
            because=(*shares_of(aims, blueprint.tolerance), *_unclassed(audited)),
            suggestion="Exchange a part of the level that has too much for one of the level that has too little."
            + (" Some levels are this program's proposals: state them in the paper where they are wrong." * proposed),
        )


def _aims(audited: AuditedPaper, blueprint: "Blueprint") -> "tuple[Aim, ...]":
    """The levels against the blueprint; the skills, whose file takes its time to read, are left out."""
    from paperaudit.marking.spread import Slice, Spread, level_aims

    held: dict[str, int] = {}
    for part in audited.parts:
        if part.level:
            held[part.level] = held.get(part.level, 0) + (part.part.marks or 0)
    slices = tuple(Slice(level, Fraction(marks)) for level, marks in held.items())
    return level_aims(Spread(sum(held.values()), slices, (), ()), blueprint)


def _unclassed(audited: AuditedPaper) -> tuple[str, ...]:
    """A line on the marks whose level is neither stated nor derived, where there are any."""
    marks = sum(part.part.marks or 0 for part in audited.parts if not part.level)
    told = f"{counted(marks, 'mark')} of parts that were not derived and state no level are left out"
    return (told,) if marks else ()


CHECK = Check(
    name="level-off-target",
    severity=Severity.WARNING,
    title="The cognitive levels are off the blueprint",
    meaning="The share of the marks on a cognitive level misses the blueprint's share by more than its tolerance.",
    matters="A test with too much routine work does not tell good learners apart, one with too little shuts weak "
    "learners out. The department's policy, which the blueprint stands for, settles the balance.",
    mend="Exchange parts, or change marks where the working allows it. Levels that the paper does not state are "
    "proposed from the working: state your own where you see it otherwise.",
    faulty="""
blueprint: even-spread
questions:
  - {number: 1, ask: 12 + 5, answer: "17", marks: 1, level: knowledge}
  - {number: 2, ask: 84 ÷ 7, answer: "12", marks: 1, level: knowledge}
""",
    clean="""
blueprint: even-spread
questions:
  - {number: 1, ask: 12 + 5, answer: "17", marks: 1, level: knowledge}
  - {number: 2, ask: 84 ÷ 7, answer: "12", marks: 1, level: routine}
  - {number: 3, ask: 9 × 6, answer: "54", marks: 1, level: complex}
  - {number: 4, ask: 31 - 8, answer: "23", marks: 1, level: problem solving}
""",
    find=find,
)
