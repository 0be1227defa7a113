"""Nothing satisfies the givens of a part."""

from collections.abc import Iterator

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.words import called, listed
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.derivation import Impossible
from paperaudit.model.finding import Finding, Severity


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a part whose givens clash."""
    for audited_part in audited.parts:
        outcome, part = audited_part.outcome, audited_part.part
        if isinstance(outcome, Impossible):
            yield CHECK.found(
                f"{called(audited_part.question, part)}: {_what_clashes(outcome.clash)}",
                part=part.id,
                places=(part.place, audited_part.question.place),
                because=(*outcome.clash, *outcome.why),
                suggestion=outcome.suggestion or "Change or take out one of the givens that clash.",
            )


def _what_clashes(clash: tuple[str, ...]) -> str:
    if not clash:
        return "nothing satisfies the question."
    if len(clash) == 1:
        return f"the given “{clash[0]}” cannot hold."
    return f"the givens {listed([f'“{text}”' for text in clash])} cannot all hold."


CHECK = Check(
    name="impossible-givens",
    severity=Severity.ERROR,
    title="Nothing satisfies the givens",
    meaning="No figure and no number can have everything that the question states. The finding names a smallest set "
    "of givens that clash: take any one of them away and the others can hold.",
    matters="Learners who use different givens get different answers, each by sound working, and none of them can be "
    "marked wrong.",
    mend="Change one of the named givens. Givens that repeat what follows from the others are best taken out: they "
    "are what goes wrong when a number is changed later.",
    faulty="""
questions:
  - number: 1
    figure: triangle ABC
    given: [∠A = 70°, ∠B = 60°, ∠C = 60°]
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
