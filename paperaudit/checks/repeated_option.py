"""Two options say the same."""

from collections.abc import Iterator

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.options import choices, printed, right_options, same_options
from paperaudit.checks.grounds.words import called
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding, Severity


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a pair of options with the same words or the same value."""
    for audited_part in choices(audited):
        part = audited_part.part
        right = right_options(audited_part)
        for one, other in same_options(audited_part):
            and_right = ", and both are right" if one in right and other in right else ""
            yield CHECK.found(
                f"{called(audited_part.question, part)}: options {one[0]} and {other[0]} say the same{and_right}.",
                part=part.id,
                places=(other[1].place, part.place, audited_part.question.place),
                because=printed((one, other)),
                suggestion=f"Change option {other[0]}.",
            )


CHECK = Check(
    name="repeated-option",
    severity=Severity.ERROR,
    title="Two options say the same",
    meaning="Two options have the same words, or different words for the same value (0.5 and 1/2).",
    matters="If the repeated value is right, there are two right options. If it is wrong, careful learners rule both "
    "out at once, and the question has fewer choices than it shows.",
    mend="Change one of the two, best to the result of a mistake that learners really make.",
    faulty="""
questions:
  - {number: 1, ask: 9 × 6, options: {A: "45", B: "54", C: "63", D: "45"}, answer: B, marks: 1}
""",
    clean="""
questions:
  - {number: 1, ask: 9 × 6, options: {A: "45", B: "54", C: "63", D: "96"}, answer: B, marks: 1}
""",
    find=find,
)
