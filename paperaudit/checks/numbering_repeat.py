"""A number is printed twice."""

from collections.abc import Iterator

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.numbering import runs
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding, Severity


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a repeated number; the parts below a repeated question are not named again."""
    repeated: set[str] = set()
    for run in runs(audited.paper):
        seen: set[str] = set()
        for member in run:
            label = member.label.lower()
            below_a_repeat = any(member.whole.startswith(f"{number}.") for number in repeated)
            if label in seen and member.whole not in repeated and not below_a_repeat:
                repeated.add(member.whole)
                yield CHECK.found(
                    f"The number {member.whole} is printed more than once.",
                    part=member.id,
                    places=(member.place,),
                    because=(f"the numbers here run {', '.join(one.label for one in run)}",),
                    suggestion="Renumber the later one and what follows it, in the key as well.",
                )
            seen.add(label)


CHECK = Check(
    name="numbering-repeat",
    severity=Severity.ERROR,
    title="A number is printed twice",
    meaning="Two questions, or two parts of one question, carry the same number.",
    matters="Learners number their answers as the paper does. Two answers under one number cannot be told apart, and "
    "the key and the mark sheet have a single place for both.",
    mend="Renumber from the repeated number on, in the paper, the key and the mark sheet.",
    faulty="""
questions:
  - {number: 1, ask: 12 + 5, answer: "17", marks: 1}
  - {number: 2, ask: 84 ÷ 7, answer: "12", marks: 1}
  - {number: 2, ask: 9 × 6, answer: "54", marks: 1}
""",
    clean="""
questions:
  - {number: 1, ask: 12 + 5, answer: "17", marks: 1}
  - {number: 2, ask: 84 ÷ 7, answer: "12", marks: 1}
  - {number: 3, ask: 9 × 6, answer: "54", marks: 1}
""",
    find=find,
)
