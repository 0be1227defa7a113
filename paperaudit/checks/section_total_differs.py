"""The marks of a section's questions do not add up to the total printed at the section."""

from collections.abc import Iterator

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.sums import mismatch_over
from paperaudit.checks.grounds.words import counted
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding, Severity


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a section whose printed total is not the sum of its questions."""
    for section in audited.paper.sections:
        wrong = mismatch_over(section.total, section.questions)
        if wrong:
            name = f"The section “{section.title}”" if section.title else "The section"
            yield CHECK.found(
                f"{name} carries {counted(wrong.total(), 'mark')}, {wrong.gap()} than its printed total of "
                f"{wrong.printed}.",
                places=(section.place,),
                because=wrong.because(),
                suggestion=wrong.mend("as the section's total", "a question"),
            )


CHECK = Check(
    name="section-total-differs",
    severity=Severity.ERROR,
    title="A section's total is not the sum of its questions",
    meaning="The marks of all questions in a section add up to another number than the total printed at the "
    "section's heading.",
    matters="The section is weighted by its total. If that is wrong, so is the share of the test that a learner "
    "thinks the section is worth, and so may be the paper's total.",
    mend="Add the questions of the section again and correct the heading, or the question that was changed last.",
    faulty="""
sections:
  - title: Number
    total: 5
    questions:
      - {number: 1, ask: 12 + 5, answer: "17", marks: 1}
      - {number: 2, ask: 84 ÷ 7, answer: "12", marks: 1}
""",
    clean="""
sections:
  - title: Number
    total: 2
    questions:
      - {number: 1, ask: 12 + 5, answer: "17", marks: 1}
      - {number: 2, ask: 84 ÷ 7, answer: "12", marks: 1}
""",
    find=find,
)
