"""The minutes do not suit the marks."""

from collections.abc import Iterator
from fractions import Fraction

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.words import counted
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding, Severity

LEAST_MINUTES_A_MARK = Fraction(9, 10)
MOST_MINUTES_A_MARK = Fraction(3, 2)
"""Published papers and class tests for Grades 7 to 12 give 1.0 to 1.25 minutes a mark; these bounds leave room
on both sides (a comparison of published papers; the bounds themselves are common practice, no source)."""


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """At most one finding, for the whole paper; none without minutes.

    The marks that the parts have count, not what the cover says; where some have none yet, there is no telling
    whether the time is too long.
    """
    paper = audited.paper
    complete = all(part.marks is not None for _, part in paper.parts())
    marks = paper.marks_sum()
    if paper.minutes is None or not marks:
        return
    pace = Fraction(paper.minutes, marks)
    if LEAST_MINUTES_A_MARK <= pace <= MOST_MINUTES_A_MARK:
        return
    short = pace < LEAST_MINUTES_A_MARK
    if not short and not complete:
        return
    yield CHECK.found(
        f"{counted(paper.minutes, 'minute')} for {counted(marks, 'mark')} "
        f"is {'very little' if short else 'a lot of'} time.",
        places=(paper.place,),
        because=(
            f"{paper.minutes} ÷ {marks} = {float(pace):.2f} minutes a mark; "
            f"usual are {float(LEAST_MINUTES_A_MARK):g} to {float(MOST_MINUTES_A_MARK):g}",
        ),
        suggestion=f"Give {_minutes_for(marks)}, or {'take out' if short else 'add'} a question.",
    )


def _minutes_for(marks: int) -> str:
    """The minutes that one mark a minute, and a fifth more, come to."""
    return f"{marks} to {-(-marks * 6 // 5)} minutes"


CHECK = Check(
    name="time-pressure",
    severity=Severity.WARNING,
    title="The time does not suit the marks",
    meaning="The minutes for each mark lie outside 0.9 to 1.5.",
    matters="With too little time the test measures speed. With too much, learners sit idle and the class grows "
    "restless.",
    mend="Allow one minute a mark and up to a fifth more, or change the number of questions. Work the paper yourself "
    "and take three times as long for the learners.",
    faulty="""
minutes: 5
questions:
  - {number: 1, ask: solve 2x + 3 = 11, answer: x = 4, marks: 2}
""",
    clean="""
minutes: 2
questions:
  - {number: 1, ask: solve 2x + 3 = 11, answer: x = 4, marks: 2}
""",
    find=find,
)
