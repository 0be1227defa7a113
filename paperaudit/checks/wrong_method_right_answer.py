"""With these numbers a documented error gives the right answer: described, and not looked for yet."""

from paperaudit.checks.check import Check
from paperaudit.model.finding import Severity

PLANNED = Check(
    name="wrong-method-right-answer",
    severity=Severity.NOTE,
    title="A wrong method gives the right answer",
    meaning="With the numbers of this question an error that learners are known to make leads to the right answer.",
    matters="A learner who makes the error earns the marks and is confirmed in it. The marker cannot tell the two "
    "apart where only the answer is written down.",
    mend="Change a number so that the error leads to another answer.",
    faulty="""
questions:
  - {number: 1, ask: 2², answer: "4", marks: 1}
""",
    clean="""
questions:
  - {number: 1, ask: 3², answer: "9", marks: 1}
""",
    find=lambda audited: (),
)
