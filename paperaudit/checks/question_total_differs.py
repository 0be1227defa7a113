"""The marks of a question's parts do not add up to the total printed at the question."""

from collections.abc import Iterator

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.sums import mismatch_below, mismatch_in
from paperaudit.checks.grounds.words import as_printed, counted
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding, Severity


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a question, or a part with parts of its own, whose printed total is not the sum of its parts."""
    for question in audited.paper.questions():
        wrong = mismatch_in(question)
        if wrong:
            yield CHECK.found(
                f"Question {question.number}: the parts carry {counted(wrong.total(), 'mark')}, {wrong.gap()} than the "
                f"printed total of {wrong.printed}.",
                part=question.number,
                places=(question.place,),
                because=wrong.because(),
                suggestion=wrong.mend(f"as the total of question {question.number}", "a part"),
            )
        for subtotal in question.subtotals:
            wrong = mismatch_below(question, subtotal)
            if wrong:
                name = as_printed(subtotal.id)
                yield CHECK.found(
                    f"Part {name}: its parts carry {counted(wrong.total(), 'mark')}, {wrong.gap()} than the "
                    f"printed {wrong.printed}.",
                    part=subtotal.id,
                    places=(subtotal.place, question.place),
                    because=wrong.because(),
                    suggestion=wrong.mend(f"at part {name}", "a part"),
                )


CHECK = Check(
    name="question-total-differs",
    severity=Severity.ERROR,
    title="A question's total is not the sum of its parts",
    meaning="The marks printed beside the parts of a question add up to another number than the total printed "
    "at that question.",
    matters="Learners and markers trust the total. A script is then marked out of the wrong number, and the error "
    "comes to light only when marks are captured.",
    mend="Add the parts again. Correct the total if the parts are as intended, otherwise the part that was changed "
    "last.",
    faulty="""
questions:
  - number: 1
    total: 6
    parts:
      - {number: a, ask: 12 + 5, answer: "17", marks: 1}
      - {number: b, ask: solve 2x + 3 = 11, answer: x = 4, marks: 2}
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
