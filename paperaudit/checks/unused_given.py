"""A given that no line of any working needs."""

from collections.abc import Iterator
from itertools import groupby

from paperaudit.checks.check import Check
from paperaudit.model.audited import AuditedPaper, AuditedPart
from paperaudit.model.derivation import Derivation, Derived, Several
from paperaudit.model.fact import (
    BisectsAngle,
    Congruent,
    Fact,
    Given,
    Holds,
    Midpoint,
    Origin,
    Parallel,
    Perpendicular,
    Similar,
)
from paperaudit.model.finding import Finding, Severity

_SAYS_A_SIZE: tuple[type[Fact], ...] = (Holds, Parallel, Perpendicular, BisectsAngle, Midpoint, Congruent, Similar)
"""Facts that a working uses up. Shapes and the order of points draw the figure, whether a line quotes them or not."""


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a given; silent on a question of which any part was not derived with the givens it used."""
    for question, grouped in groupby(audited.parts, key=lambda audited_part: audited_part.question):
        parts = list(grouped)
        derivations = [derivation for part in parts for derivation in _derivations(part)]
        if not all(_derivations(part) for part in parts) or not all(one.givens_used for one in derivations):
            continue
        needed = {text for derivation in derivations for text in _rests_on(derivation)}
        for given in _givens_that_say_a_size(parts):
            if given.text not in needed:
                single = parts[0].part if len(parts) == 1 else None
                yield CHECK.found(
                    f"Question {question.number}: “{given.text}” is not needed for any answer.",
                    part=single.id if single else question.number,
                    places=(given.place, question.place),
                    because=("needed are: " + "; ".join(sorted(needed & _texts(parts))),),
                    suggestion="Take it out, or leave it in as a distractor if that is meant.",
                )


def _derivations(part: AuditedPart) -> tuple[Derivation, ...]:
    return part.outcome.derivations if isinstance(part.outcome, Derived | Several) else ()


def _rests_on(derivation: Derivation) -> Iterator[str]:
    yield from derivation.givens_used
    for step in derivation.steps:
        yield from step.uses


def _givens_that_say_a_size(parts: list[AuditedPart]) -> tuple[Given, ...]:
    """The candidates, each text once, in order of print."""
    found = {
        given.text: given
        for part in parts
        for given in part.reading.givens
        if given.origin is not Origin.CONVENTION and given.facts
        if all(isinstance(fact, _SAYS_A_SIZE) for fact in given.facts)
    }
    return tuple(found.values())


def _texts(parts: list[AuditedPart]) -> set[str]:
    return {given.text for part in parts for given in part.reading.givens}


CHECK = Check(
    name="unused-given",
    severity=Severity.NOTE,
    title="A given is not needed",
    meaning="No line of the working of any part of the question rests on this given.",
    matters="It may be a distractor, and then it is meant. It may also be left over from an earlier version, or show "
    "that the setter had another way in mind.",
    mend="Take it out, or leave it and tell the moderator that it is meant.",
    faulty="""
questions:
  - number: 1
    figure: [triangle ABC, BC is produced to D]
    given: [∠ACD = 112°, ∠BAC = 50°]
    ask: ∠ACB
    answer: 68°
    marks: 1
""",
    clean="""
questions:
  - number: 1
    figure: [triangle ABC, BC is produced to D]
    given: ∠ACD = 112°
    ask: ∠ACB
    answer: 68°
    marks: 1
""",
    find=find,
)
