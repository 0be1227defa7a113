"""The marks of all questions do not add up to the total printed on the cover."""

from collections.abc import Iterator

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.sums import mismatch_over
from paperaudit.checks.grounds.words import counted
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding, Severity


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """At most one finding, for the whole paper."""
    paper = audited.paper
    wrong = mismatch_over(paper.total, paper.questions())
    if wrong:
        yield CHECK.found(
            f"The questions carry {counted(wrong.total(), 'mark')}, {wrong.gap()} than the total of {wrong.printed} "
            "on the cover.",
            places=(paper.place,),
            because=wrong.because(),
            suggestion=wrong.mend("on the cover", "a question"),
        )


CHECK = Check(
    name="paper-total-differs",
    severity=Severity.ERROR,
    title="The cover's total is not the sum of the questions",
    meaning="The marks of all parts of the paper add up to another number than the total that the cover prints.",
    matters="Every percentage is worked out on the cover's total. With a wrong total all of them are wrong.",
    mend="Add all parts again, question by question. Where a question's own total is wrong as well, mend that first.",
    faulty="""
total: 5
questions:
  - {number: 1, ask: 12 + 5, answer: "17", marks: 1}
  - {number: 2, ask: 84 ÷ 7, answer: "12", marks: 1}
""",
    clean="""
total: 2
questions:
  - {number: 1, ask: 12 + 5, answer: "17", marks: 1}
  - {number: 2, ask: 84 ÷ 7, answer: "12", marks: 1}
""",
    find=find,
)
