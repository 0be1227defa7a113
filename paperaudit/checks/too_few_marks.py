"""A part carries fewer marks than its working bears."""

from collections.abc import Iterator

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.marks import worth
from paperaudit.checks.grounds.words import called, counted
from paperaudit.marking.carried import established
from paperaudit.marking.convention import load
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding, Severity


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a part whose marks are below the fewest of any of its workings, earlier parts' results quoted."""
    convention = load(audited.paper.marking)
    for audited_part in audited.parts:
        part = audited_part.part
        earned = worth(audited_part, convention, established(audited.parts, audited_part))
        if earned and part.marks is not None and part.marks < earned.fewest:
            yield CHECK.found(
                f"{called(audited_part.question, part)} carries {counted(part.marks, 'mark')}; "
                f"usual for its working is {earned.usual}.",
                part=part.id,
                places=(part.place, audited_part.question.place),
                because=earned.lines,
                suggestion="Give it more marks, or ask for less.",
            )


CHECK = Check(
    name="too-few-marks",
    severity=Severity.WARNING,
    title="Fewer marks than the working bears",
    meaning="The part has clearly fewer marks than its working bears: not even two for five lines that show something "
    "new, or one for two reasons where reasons are asked for.",
    matters="Learners judge by the marks how much is wanted, and stop early. Markers must decide which lines they pass "
    "over, and each decides differently.",
    mend="Give the part the marks that its lines earn, or shorten what is asked.",
    faulty="""
questions:
  - number: 1
    figure: [triangle ABC, BC is produced to D]
    given: [AB = AC, ∠ACD = 112°]
    ask: ∠BAC
    answer: 44°
    reasons: required
    marks: 1
""",
    clean="""
questions:
  - number: 1
    figure: [triangle ABC, BC is produced to D]
    given: [AB = AC, ∠ACD = 112°]
    ask: ∠BAC
    answer: 44°
    reasons: required
    marks: 4
""",
    find=find,
)
