"""No option is the right answer."""

from collections.abc import Iterator

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.options import all_wrong, choices, printed
from paperaudit.checks.grounds.words import called
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.derivation import Derived, Several
from paperaudit.model.finding import Finding, Severity


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a part whose options are all known to be wrong; silent where one could not be compared."""
    for audited_part in choices(audited):
        part, outcome = audited_part.part, audited_part.outcome
        if isinstance(outcome, Derived | Several) and all_wrong(audited_part):
            answer = ", ".join(one.text for one in outcome.answers)
            yield CHECK.found(
                f"{called(audited_part.question, part)}: none of the options is the answer, {answer}.",
                part=part.id,
                places=(part.options[0][1].place, part.place, audited_part.question.place),
                because=printed(part.options),
                suggestion=f"Put {answer} in place of an option.",
            )


CHECK = Check(
    name="no-correct-option",
    severity=Severity.ERROR,
    title="No option is right",
    meaning="The derived answer is not among the options.",
    matters="No choice can earn the mark fairly. Good learners lose time looking for their answer.",
    mend="Put the right answer in place of one of the options, and name its letter in the key.",
    faulty="""
questions:
  - {number: 1, ask: 9 × 6, options: {A: "45", B: "56", C: "63", D: "96"}, answer: B, marks: 1}
""",
    clean="""
questions:
  - {number: 1, ask: 9 × 6, options: {A: "45", B: "54", C: "63", D: "96"}, answer: B, marks: 1}
""",
    find=find,
    alongside=("answer-differs",),
)
