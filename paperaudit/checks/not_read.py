"""A part could not be audited."""

from collections.abc import Iterator

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.unread import why_not_read
from paperaudit.checks.grounds.words import called
from paperaudit.model.audited import AuditedPaper, AuditedPart
from paperaudit.model.derivation import Agreement, Comparison, NotRead
from paperaudit.model.finding import Finding, Severity


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a part that was not read or not derived, or whose key could not be compared, and why."""
    for audited_part in audited.parts:
        outcome, part, reading = audited_part.outcome, audited_part.part, audited_part.reading
        if isinstance(outcome, NotRead):
            others = (unread for unread in reading.unread if unread.text[:120] not in outcome.why)
            yield CHECK.found(
                f"{called(audited_part.question, part)} was not audited: {outcome.why.rstrip('.')}.",
                part=part.id,
                places=(*(unread.place for unread in reading.unread), part.place, audited_part.question.place),
                because=tuple(map(why_not_read, others)),
                suggestion="Work this part by hand, or put it in the words of the statement language.",
            )
        elif _could_not_be_compared(audited_part) and part.answer is not None:
            yield CHECK.found(
                f"{called(audited_part.question, part)}: the key, {part.answer.text}, could not be compared with the "
                "derived answer.",
                part=part.id,
                places=(part.answer.place, part.place, audited_part.question.place),
                because=_why(audited_part.comparison),
                suggestion="Compare them yourself, or write the key's answer as a plain value.",
            )


def _could_not_be_compared(audited_part: AuditedPart) -> bool:
    comparison = audited_part.comparison
    return comparison is not None and comparison.agreement is Agreement.CANNOT_TELL


def _why(comparison: Comparison | None) -> tuple[str, ...]:
    return (comparison.why,) if comparison and comparison.why else ()


CHECK = Check(
    name="not-read",
    severity=Severity.WARNING,
    title="The part was not audited",
    meaning="The program could not read the part, or could not reach and confirm an answer by two ways. It says what "
    "stopped it and claims nothing about the answer.",
    matters="Nobody has checked this part. A report without errors says nothing about it.",
    mend="Work the part yourself and compare with the key. Often a plain statement under “ask” and “given” is "
    "enough for the program to read it.",
    faulty="""
questions:
  - {number: 1, text: Explain to a friend why the sail does not reach the mast., marks: 2}
""",
    clean="""
questions:
  - {number: 1, ask: solve 2x + 3 = 11, answer: x = 4, marks: 2}
""",
    find=find,
)
