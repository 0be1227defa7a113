"""With these numbers a documented error gives the right answer."""

from collections.abc import Iterator

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.words import called, listed
from paperaudit.marking.expected_errors.wrong_answers import hidden_errors
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding, Severity


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One note a part whose numbers hide an error, or several."""
    for audited_part in audited.parts:
        hidden = hidden_errors(audited_part)
        if hidden:
            part, learners = audited_part.part, listed([error.says for error in hidden], "or")
            yield CHECK.found(
                f"{called(audited_part.question, part)}: a learner who {learners} gets the right answer too.",
                part=part.id,
                places=(part.ask.place if part.ask else part.place, part.place, audited_part.question.place),
                because=tuple(f"documented: {error.source}" for error in hidden),
                suggestion="Change a number so that the error leads to another answer.",
            )


CHECK = Check(
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
    find=find,
)
