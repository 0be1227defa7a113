"""The key names an option that is not there."""

from collections.abc import Iterator

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.options import choices, key_names_an_option, printed, right_options
from paperaudit.checks.grounds.words import called, listed
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding, Severity


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a part whose key is neither an option's letter nor what an option says."""
    for audited_part in choices(audited):
        part = audited_part.part
        right = listed([letter for letter, _ in right_options(audited_part)], "or")
        if part.answer is not None and not key_names_an_option(part):
            yield CHECK.found(
                f"{called(audited_part.question, part)}: the key says {part.answer.text}, but the options are "
                f"{listed([letter for letter, _ in part.options])}.",
                part=part.id,
                places=(part.answer.place, part.place, audited_part.question.place),
                because=printed(part.options),
                suggestion=f"Name the right option in the key: {right}."
                if right
                else "Name the letter of the right option in the key.",
            )


CHECK = Check(
    name="key-not-an-option",
    severity=Severity.ERROR,
    title="The key names no option",
    meaning="The key's answer is not the letter of an option, nor what one of the options says.",
    matters="The key belongs to another version of the question. Nobody can mark by it.",
    mend="Name the letter of the right option in the key, and check that its neighbours are not shifted as well.",
    faulty="""
questions:
  - {number: 1, ask: 9 × 6, options: {A: "45", B: "54", C: "63", D: "96"}, answer: E, marks: 1}
""",
    clean="""
questions:
  - {number: 1, ask: 9 × 6, options: {A: "45", B: "54", C: "63", D: "96"}, answer: B, marks: 1}
""",
    find=find,
    alongside=("not-read",),
)
