"""A part stands on another page than its figure."""

from collections.abc import Iterator

from paperaudit.checks.check import Check
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding, Severity


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a question: the parts that are not on the page of the question's figure."""
    for question in audited.paper.questions():
        figure = question.figure_page
        away = [part for part in question.parts if part.page and part.page != figure] if figure else []
        if away:
            pages = ", ".join(dict.fromkeys(str(part.page) for part in away))
            names = ", ".join(part.id for part in away)
            whose = f"Part {names} is" if len(away) == 1 else f"Parts {names} are"
            if len(away) == len(question.parts) == 1:
                whose = f"Question {question.number} is"
            yield CHECK.found(
                f"{whose} on page {pages}, the figure on page {figure}.",
                part=question.number,
                places=(away[0].place, question.place),
                suggestion="Keep them on one page, or print the figure again.",
            )


CHECK = Check(
    name="figure-overleaf",
    severity=Severity.WARNING,
    title="A part is on another page than its figure",
    meaning="The figure of a question is printed on one page, and a part that belongs to it on another.",
    matters="Learners turn to and fro, copy a size wrongly, or never see the figure at all.",
    mend="Move the question so that it stands on one page with its figure, or print the figure again at the part.",
    faulty="""
questions:
  - number: 1
    figure: [triangle ABC]
    given: [∠A = 70°, ∠B = 60°]
    figure_page: 1
    parts:
      - {number: a, ask: ∠C, answer: 50°, marks: 1, page: 1}
      - {number: b, ask: "∠A : ∠B", answer: "7 : 6", marks: 1, page: 2}
""",
    clean="""
questions:
  - number: 1
    figure: [triangle ABC]
    given: [∠A = 70°, ∠B = 60°]
    figure_page: 1
    parts:
      - {number: a, ask: ∠C, answer: 50°, marks: 1, page: 1}
      - {number: b, ask: "∠A : ∠B", answer: "7 : 6", marks: 1, page: 1}
""",
    find=find,
)
