"""A part carries more marks than its working bears."""

from collections.abc import Iterator

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.marks import worth
from paperaudit.checks.grounds.words import called, counted
from paperaudit.marking.carried import established
from paperaudit.marking.convention import load
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding, Severity


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a part whose marks are above the most of any of its workings."""
    convention = load(audited.paper.marking)
    for audited_part in audited.parts:
        part = audited_part.part
        earned = worth(audited_part, convention, established(audited.parts, audited_part))
        if earned and part.marks is not None and part.marks > earned.most:
            yield CHECK.found(
                f"{called(audited_part.question, part)} carries {counted(part.marks, 'mark')}; "
                f"usual for its working is {earned.usual}.",
                part=part.id,
                places=(part.place, audited_part.question.place),
                because=earned.lines,
                suggestion="Give it fewer marks, or ask for more.",
            )


CHECK = Check(
    name="too-many-marks",
    severity=Severity.WARNING,
    title="More marks than the working bears",
    meaning="The part has clearly more marks than the lines of its working, their reasons and their values come to.",
    matters="Learners look for steps that are not there. The scheme has to invent marks, and an easy line weighs as "
    "much as a hard one.",
    mend="Take marks away and give them to a part with a longer working, or ask for more.",
    faulty="""
questions:
  - {number: 1, ask: 12 + 5, answer: "17", marks: 6}
""",
    clean="""
questions:
  - {number: 1, ask: 12 + 5, answer: "17", marks: 1}
""",
    find=find,
)
