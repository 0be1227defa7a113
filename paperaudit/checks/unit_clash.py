"""A unit that cannot be the unit of what it stands with."""

from collections.abc import Iterator

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.units import dimension_named, dimension_of, given_sizes, only_the_unit_clashes, pairs
from paperaudit.checks.grounds.words import called
from paperaudit.model.audited import AuditedPaper, AuditedPart
from paperaudit.model.finding import Finding, Severity


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a key whose unit alone is wrong as it measures something else, and one a given of that kind.

    A key whose number is wrong as well is left to `answer-differs`.
    """
    seen: set[tuple[str, str]] = set()
    for audited_part in audited.parts:
        yield from _in_key(audited_part)
        for finding in _in_givens(audited_part):
            if (finding.part, finding.message) not in seen:
                seen.add((finding.part, finding.message))
                yield finding


def _in_key(audited_part: AuditedPart) -> Iterator[Finding]:
    part = audited_part.part
    for pair in pairs(audited_part) if only_the_unit_clashes(audited_part) else ():
        if pair.units_clash() and part.answer is not None:
            ours, theirs = dimension_named(pair.derived_unit), dimension_named(pair.stated_unit)
            yield CHECK.found(
                f"{called(audited_part.question, part)}: the key says {part.answer.text}, which is "
                f"{_of(theirs)}; the answer, {pair.answer.text}, is {_of(ours)}.",
                part=part.id,
                places=(part.answer.place, part.place, audited_part.question.place),
                suggestion=f"Write {pair.answer.text} in the key.",
            )


def _in_givens(audited_part: AuditedPart) -> Iterator[Finding]:
    question = audited_part.question
    for size in given_sizes(audited_part):
        wanted, found = dimension_of(size.quantity), dimension_named(size.unit)
        if wanted and found and wanted != found:
            yield CHECK.found(
                f"Question {question.number}: “{size.given.text}” gives {_of(wanted)} in a unit of {found}.",
                part=question.number,
                places=(size.given.place, question.place),
                suggestion="Correct the unit.",
            )


def _of(dimension: str) -> str:
    article = "an" if dimension[0] in "aeiou" else "a"
    return f"{article} {dimension}"


CHECK = Check(
    name="unit-clash",
    severity=Severity.ERROR,
    title="The unit is of another kind",
    meaning="A unit stands with something that it cannot measure: an area in centimetres, a volume in degrees.",
    matters="The number may be right and the answer is still wrong. Learners who copy the unit from the question carry "
    "the mistake on.",
    mend="Correct the unit where it is wrong, in the question or in the key.",
    faulty="""
questions:
  - {number: 1, ask: 65% of 240 litres, answer: 156 cm, marks: 2}
""",
    clean="""
questions:
  - {number: 1, ask: 65% of 240 litres, answer: 156 litres, marks: 2}
""",
    find=find,
)
