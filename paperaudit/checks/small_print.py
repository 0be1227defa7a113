"""Text is too small to be read with ease."""

from collections.abc import Iterator
from typing import Final

from paperaudit.checks.check import Check
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding, Severity

LEAST_SIZE: Final = 10.0
"""Points of running text, below which it is small print (common practice, no source)."""
_ROUNDING: Final = 0.05
"""Points: sizes come out of a file as 9.96 where 10 was set."""


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a page; powers, labels of figures and running heads do not count."""
    for page in audited.paper.printed:
        if page.smallest is not None and page.smallest < LEAST_SIZE - _ROUNDING:
            yield CHECK.found(
                f"Page {page.number} has text of {page.smallest:.1f} points; {LEAST_SIZE:g} or more is read with ease.",
                places=(page.small, page.place),
                suggestion=f"Set it in {LEAST_SIZE:g} points or more.",
            )


CHECK = Check(
    name="small-print",
    severity=Severity.NOTE,
    title="Text is very small",
    meaning="A line of text, other than a running head, a power or the labels of a figure, is smaller than 10 points.",
    matters="Learners misread what they can hardly see, and a copier makes it worse.",
    mend="Use 10 points at least, 12 where you can. Learners with weak sight may need a larger copy still.",
    faulty="""
printed: [{page: 1, smallest: 8.0}]
questions:
  - {number: 1, ask: 12 + 5, answer: "17", marks: 1}
""",
    clean="""
printed: [{page: 1, smallest: 11.0}]
questions:
  - {number: 1, ask: 12 + 5, answer: "17", marks: 1}
""",
    find=find,
)
