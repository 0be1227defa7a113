"""A part has no marks."""

from collections.abc import Iterator

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.words import called, counted
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding, Severity
from paperaudit.model.paper import Question


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a part without marks; a single, milder one where no part of the paper or of a marked question has."""
    paper = audited.paper
    if all(part.marks is None for _, part in paper.parts()):
        yield CHECK.found(
            "No part of the paper has marks.",
            places=(paper.place,),
            suggestion="Give each part its marks; the mark scheme and the workbooks need them.",
            severity=Severity.WARNING,
        )
        return
    for question in paper.questions():
        if _is_marked_as_a_whole(question):
            yield CHECK.found(
                f"The {counted(question.total or 0, 'mark')} of question {question.number} are not shared out "
                "among its parts.",
                part=question.number,
                places=(question.place,),
                suggestion="Give each part its marks; the mark scheme and the workbooks need them.",
                severity=Severity.WARNING,
            )
    for question, part in paper.parts():
        if part.marks is None and not _is_marked_as_a_whole(question):
            yield CHECK.found(
                f"{called(question, part)} has no marks.",
                part=part.id,
                places=(part.place, question.place),
                suggestion=_remainder(question) or "Print the marks beside it.",
            )


def _is_marked_as_a_whole(question: Question) -> bool:
    """Whether marks are printed at a question and at none of its parts."""
    return question.total is not None and all(part.marks is None for part in question.parts)


def _remainder(question: Question) -> str:
    """What the printed total leaves for the only part without marks."""
    if question.total is None or sum(part.marks is None for part in question.parts) != 1:
        return ""
    left = question.total - sum(part.marks or 0 for part in question.parts)
    return f"The total of question {question.number} leaves {counted(left, 'mark')} for it." if left > 0 else ""


CHECK = Check(
    name="marks-missing",
    severity=Severity.ERROR,
    title="A part has no marks",
    meaning="The paper gives marks, but not for this part.",
    matters="Learners use the marks to judge how much to write, and markers cannot mark without them.",
    mend="Print the marks beside the part, and see that the question's and the paper's totals still hold.",
    faulty="""
questions:
  - number: 1
    total: 3
    parts:
      - {number: a, ask: 12 + 5, answer: "17", marks: 1}
      - {number: b, ask: solve 2x + 3 = 11, answer: x = 4}
""",
    clean="""
questions:
  - number: 1
    total: 3
    parts:
      - {number: a, ask: 12 + 5, answer: "17", marks: 1}
      - {number: b, ask: solve 2x + 3 = 11, answer: x = 4, marks: 2}
""",
    find=find,
)
