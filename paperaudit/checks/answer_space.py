"""There is too little room to write the answer in."""

from collections.abc import Iterator

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.words import counted
from paperaudit.model.audited import AuditedPaper, AuditedPart
from paperaudit.model.finding import Finding, Severity


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a part with fewer lines to write on than its working has; none where the paper has no lines at all.

    A part with options needs none.
    """
    if not any(part.part.space for part in audited.parts):
        return
    for part in audited.parts:
        space, needed = part.part.space, _lines_needed(part)
        if space is not None and space < needed and not part.part.options:
            yield CHECK.found(
                f"Part {part.part.id} has {counted(space, 'line')} to write on; its working takes {needed}.",
                part=part.part.id,
                places=(part.part.place,),
                suggestion=f"Leave {needed} lines, and more for those who write large.",
            )


def _lines_needed(part: AuditedPart) -> int:
    derivation = part.derivation()
    return len(derivation.steps) if derivation else 0


CHECK = Check(
    name="answer-space",
    severity=Severity.NOTE,
    title="There is little room for the answer",
    meaning="A part has fewer lines to write on than the lines of its shortest working.",
    matters="Learners write in the margin or on the next question, and markers overlook it. Space also tells how much "
    "is expected.",
    mend="Leave a line for each line of working and one to spare.",
    faulty="""
questions:
  - number: 1
    parts:
      - {number: a, ask: 12 + 5, answer: "17", marks: 1, space: 2}
      - {number: b, ask: solve 3(x - 4) = 2x + 5, answer: x = 17, marks: 3, space: 1}
""",
    clean="""
questions:
  - number: 1
    parts:
      - {number: a, ask: 12 + 5, answer: "17", marks: 1, space: 2}
      - {number: b, ask: solve 3(x - 4) = 2x + 5, answer: x = 17, marks: 3, space: 4}
""",
    find=find,
)
