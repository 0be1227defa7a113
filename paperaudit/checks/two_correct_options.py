"""More than one option is right."""

from collections.abc import Iterator

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.options import choices, plain, printed, right_options
from paperaudit.checks.grounds.words import called, listed
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding, Severity


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a part of which two options or more are the derived answer.

    Right options with the same words are left to `repeated-option`: that is one slip.
    """
    for audited_part in choices(audited):
        part, right = audited_part.part, right_options(audited_part)
        if len({plain(line.text) for _, line in right}) > 1:
            letters = listed([letter for letter, _ in right])
            yield CHECK.found(
                f"{called(audited_part.question, part)}: options {letters} are {'both' if len(right) == 2 else 'all'} "
                "right.",
                part=part.id,
                places=(right[1][1].place, part.place, audited_part.question.place),
                because=printed(right),
                suggestion="Keep one of them and change the others.",
            )


CHECK = Check(
    name="two-correct-options",
    severity=Severity.ERROR,
    title="More than one option is right",
    meaning="Two options or more have the value of the derived answer, perhaps in different forms.",
    matters="A learner who chooses the one that the key does not name is right and is marked wrong.",
    mend="Change all right options but one.",
    faulty="""
questions:
  - {number: 1, ask: 20 ÷ 8, options: {A: "2.4", B: "2.5", C: 5/2, D: "12"}, answer: B, marks: 1}
""",
    clean="""
questions:
  - {number: 1, ask: 20 ÷ 8, options: {A: "2.4", B: "2.5", C: 2/5, D: "12"}, answer: B, marks: 1}
""",
    find=find,
)
