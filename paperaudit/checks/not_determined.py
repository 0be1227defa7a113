"""The givens leave the answer open."""

from collections.abc import Iterator

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.words import called
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.derivation import NotDetermined
from paperaudit.model.finding import Finding, Severity


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a part that has infinitely many answers, with two cases that show it."""
    for audited_part in audited.parts:
        outcome, part = audited_part.outcome, audited_part.part
        if isinstance(outcome, NotDetermined):
            asked = f" {audited_part.reading.ask.text}" if audited_part.reading.ask else " the answer"
            yield CHECK.found(
                f"{called(audited_part.question, part)}: the givens do not settle{asked}; {_both(len(outcome.cases))}.",
                part=part.id,
                places=(part.place, audited_part.question.place),
                because=tuple(case.description for case in outcome.cases),
                suggestion=f"It would be settled by {outcome.missing}."
                if outcome.missing
                else "Add the given that the working of the key relies on.",
            )


def _both(cases: int) -> str:
    return "two figures that meet them differ" if cases == 2 else "more than one value meets them"


CHECK = Check(
    name="not-determined",
    severity=Severity.ERROR,
    title="The givens leave the answer open",
    meaning="More than one answer fits everything that the question states, and not only finitely many. The finding "
    "shows two cases that both meet every given and have different answers.",
    matters="No learner can find the answer. The key's answer rests on something that the setter saw in the figure "
    "and did not write down.",
    mend="State what is missing: parallel lines, equal sides, a size. Where one given would settle the answer, the "
    "finding names it.",
    faulty="""
questions:
  - number: 1
    figure: triangle ABC
    given: ∠A = 70°
    ask: ∠C
    marks: 1
""",
    clean="""
questions:
  - number: 1
    figure: triangle ABC
    given: [∠A = 70°, ∠B = 60°]
    ask: ∠C
    answer: 50°
    marks: 1
""",
    find=find,
)
