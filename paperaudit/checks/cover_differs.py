"""What the cover claims is not what follows."""

from collections.abc import Iterator

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.words import counted
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding, Severity
from paperaudit.model.paper import Paper


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a claim of the cover that the paper does not bear out."""
    paper = audited.paper
    for thing, claimed in paper.claims:
        there = _count(paper, thing)
        if there is not None and there != claimed:
            yield CHECK.found(
                f"The cover says {counted(claimed, thing.removesuffix('s'))}, but there "
                f"{'is' if there == 1 else 'are'} {there}.",
                places=(paper.place,),
                suggestion=f"Correct the cover, or look for what {'is missing' if there < claimed else 'was added'}.",
            )


def _count(paper: Paper, thing: str) -> int | None:
    """How many of a thing the paper has, None where that is not known: most question files say nothing of pages."""
    match thing:
        case "questions":
            return sum(1 for _ in paper.questions())
        case "parts":
            return sum(1 for _ in paper.parts())
        case "sections":
            return len(paper.sections)
        case "pages":
            return len(paper.printed) or None
        case _:
            return None


CHECK = Check(
    name="cover-differs",
    severity=Severity.ERROR,
    title="The cover claims what the paper does not have",
    meaning="The cover states how many questions, sections or pages the paper has, and the paper has another number.",
    matters="Learners are told to check their paper against the cover. If it is wrong, they ask for the missing page.",
    mend="Correct the cover last, when nothing else changes any more.",
    faulty="""
cover: {questions: 3}
questions:
  - {number: 1, ask: 12 + 5, answer: "17", marks: 1}
  - {number: 2, ask: 84 ÷ 7, answer: "12", marks: 1}
""",
    clean="""
cover: {questions: 2}
questions:
  - {number: 1, ask: 12 + 5, answer: "17", marks: 1}
  - {number: 2, ask: 84 ÷ 7, answer: "12", marks: 1}
""",
    find=find,
)
