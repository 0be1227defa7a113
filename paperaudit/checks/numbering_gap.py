"""A number is left out, or numbers are out of order."""

from collections.abc import Iterator

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.numbering import Numbered, Run, position, printed, runs
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding, Severity


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a jump. A run with a number of no kind that we know is left alone."""
    for run in runs(audited.paper):
        labels = [member.label for member in run]
        places = [position(label, labels) for label in labels]
        known = [place for place in places if place is not None]
        if len(known) == len(run):
            yield from _jumps(run, known, labels)


def _jumps(run: Run, places: list[int], labels: list[str]) -> Iterator[Finding]:
    highest = 0
    for index, (member, place) in enumerate(zip(run, places, strict=True)):
        if place > highest + 1:
            skipped = range(highest + 1, place)
            yield _jump(run, index, [printed(one, member.label, labels) for one in skipped[:3]], len(skipped))
        highest = max(highest, place)


def _jump(run: Run, index: int, skipped: list[str], count: int) -> Finding:
    member = run[index]
    before = f"After {run[index - 1].whole} comes {member.whole}" if index else f"The first number is {member.whole}"
    later = {one.label.lower() for one in run[index + 1 :]}
    out_of_order = all(label.lower() in later for label in skipped)
    names = ", ".join(_beside(member, label) for label in skipped) + (", …" if count > len(skipped) else "")
    verb = "is" if count == 1 else "are"
    return CHECK.found(
        f"{before}; {names} {verb} {'printed later' if out_of_order else 'missing'}.",
        part=member.whole,
        places=(member.place,),
        because=(f"the numbers here run {', '.join(one.label for one in run)}",),
        suggestion="Print them in order." if out_of_order else "Renumber, or put back what was taken out.",
    )


def _beside(member: Numbered, label: str) -> str:
    """The whole number of a missing sibling."""
    return member.whole.removesuffix(member.label) + label


CHECK = Check(
    name="numbering-gap",
    severity=Severity.WARNING,
    title="A number is left out",
    meaning="The numbers of the questions, or of the parts of a question, jump over one, start late, or are out of "
    "order.",
    matters="Learners look for the question that is not there and think that a page is missing.",
    mend="Renumber, in the paper and the key, or put back the question that was taken out.",
    faulty="""
questions:
  - {number: 1, ask: 12 + 5, answer: "17", marks: 1}
  - {number: 3, ask: 84 ÷ 7, answer: "12", marks: 1}
""",
    clean="""
questions:
  - {number: 1, ask: 12 + 5, answer: "17", marks: 1}
  - {number: 2, ask: 84 ÷ 7, answer: "12", marks: 1}
""",
    find=find,
)
