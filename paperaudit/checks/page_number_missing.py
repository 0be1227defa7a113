"""A page has no number."""

from collections.abc import Iterator

from paperaudit.checks.check import Check
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding, Severity


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding for all pages without a number; the first page, a cover, and a single sheet need none."""
    pages = audited.paper.printed
    bare = [page for page in pages if page.number > 1 and not page.numbered]
    if not bare:
        return
    numbers = ", ".join(str(page.number) for page in bare)
    yield CHECK.found(
        f"Page {numbers} has no page number." if len(bare) == 1 else f"Pages {numbers} have no page number.",
        places=(bare[0].place,),
        suggestion="Put “Page 2 of 6” at the foot of every page.",
    )


CHECK = Check(
    name="page-number-missing",
    severity=Severity.WARNING,
    title="A page has no number",
    meaning="Behind the first page, a page was found that its own number does not stand on.",
    matters="Sheets that fall apart are put together in the wrong order, and nobody notices that one is missing.",
    mend="Number the pages in the foot, and say there how many there are.",
    faulty="""
printed: [{page: 1}, {page: 2, numbered: false}]
questions:
  - {number: 1, ask: 12 + 5, answer: "17", marks: 1}
""",
    clean="""
printed: [{page: 1}, {page: 2}]
questions:
  - {number: 1, ask: 12 + 5, answer: "17", marks: 1}
""",
    find=find,
)
