"""The key's answer, or a given size, has no unit."""

from collections.abc import Iterator
from itertools import groupby

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.units import Pair, dimension_of, given_sizes, pairs
from paperaudit.checks.grounds.words import called
from paperaudit.maths.number_forms import form_of
from paperaudit.model.audited import AuditedPaper, AuditedPart
from paperaudit.model.derivation import Agreement
from paperaudit.model.expression import NumberForm
from paperaudit.model.finding import Finding, Severity


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding an answer without its unit, and one a length that stands bare beside lengths with units."""
    for _, parts in groupby(audited.parts, key=lambda part: part.question):
        shared = list(parts)
        yield from _in_givens(shared)
        for audited_part in shared:
            yield from _in_key(audited_part)


def _in_key(audited_part: AuditedPart) -> Iterator[Finding]:
    comparison, part, ask = audited_part.comparison, audited_part.part, audited_part.reading.ask
    if comparison is None or comparison.agreement is not Agreement.AGREES or part.answer is None:
        return
    unit_is_printed = ask is not None and bool(ask.unit)
    for pair in pairs(audited_part):
        if _lacks_a_percent_sign(pair) or (_lacks_a_unit(pair) and not unit_is_printed):
            yield CHECK.found(
                f"{called(audited_part.question, part)}: the key says {part.answer.text}, without its unit; "
                f"the answer is {pair.answer.text}.",
                part=part.id,
                places=(part.answer.place, part.place, audited_part.question.place),
                suggestion=f"Write {pair.answer.text} in the key, or ask for the answer in that unit.",
            )
            return


def _lacks_a_unit(pair: Pair) -> bool:
    """The value of a letter may go without: whether x or x° is the angle is the paper's own choice."""
    return bool(pair.derived_unit) and not pair.stated_unit and not pair.answer.letter


def _lacks_a_percent_sign(pair: Pair) -> bool:
    return form_of(pair.derived) is NumberForm.PERCENT and form_of(pair.stated) is NumberForm.INTEGER


def _in_givens(parts: list[AuditedPart]) -> Iterator[Finding]:
    """Lengths without a unit are in order where no length of the question has one."""
    sizes = {size.given.text: size for part in parts for size in given_sizes(part)}.values()
    lengths = [size for size in sizes if dimension_of(size.quantity) == "length"]
    with_unit = [size for size in lengths if size.unit]
    for size in lengths:
        if with_unit and not size.unit:
            question = parts[0].question
            yield CHECK.found(
                f"Question {question.number}: “{size.given.text}” has no unit, “{with_unit[0].given.text}” has one.",
                part=question.number,
                places=(size.given.place, question.place),
                suggestion="Give every length its unit, or none.",
            )


CHECK = Check(
    name="unit-missing",
    severity=Severity.WARNING,
    title="A unit is missing",
    meaning="The answer has a unit and the key gives the bare number, or one length of a question has no unit while "
    "others have.",
    matters="Markers will disagree on whether the unit is wanted. If it is, the key sets a bad example.",
    mend="Write the unit in the key. Where the unit should not count, print it behind the answer line (“in cm”).",
    faulty="""
questions:
  - {number: 1, ask: 65% of 240 litres, answer: "156", marks: 2}
""",
    clean="""
questions:
  - {number: 1, ask: 65% of 240 litres, answer: 156 litres, marks: 2}
""",
    find=find,
)
