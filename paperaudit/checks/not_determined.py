"""The givens leave the answer open."""

from collections.abc import Iterator

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.words import called
from paperaudit.model.ask import Find
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.derivation import NotDetermined
from paperaudit.model.expression import AreaOf, Expression, LengthOf, Number, PerimeterOf, leaves
from paperaudit.model.fact import Given, Holds, Shape
from paperaudit.model.finding import Finding, Severity
from paperaudit.model.reading import Reading

_HAS_LENGTH = (LengthOf, AreaOf, PerimeterOf)


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
                else _what_could_settle(audited_part.reading),
            )


def _both(cases: int) -> str:
    return "two figures that meet them differ" if cases == 2 else "more than one value meets them"


def _what_could_settle(reading: Reading) -> str:
    """What to add where the derivation names nothing: a length where none is given, else any further size."""
    wanted = reading.ask.task.wanted if reading.ask and isinstance(reading.ask.task, Find) else ()
    sizes = {type(leaf) for given in reading.givens for leaf in _measured(given)}
    has_length = any(isinstance(leaf, _HAS_LENGTH) for item in wanted for leaf in leaves(item))
    side = _a_side(reading, wanted) if has_length and LengthOf not in sizes else ""
    if side:
        return f"Add a length, such as that of {side}: no given states one."
    return "Add a given that fixes the answer, such as another size or two sides that are equal."


def _measured(given: Given) -> Iterator[Expression]:
    """The quantities of a given that states a number for one."""
    for fact in given.facts:
        if isinstance(fact, Holds):
            both = [*leaves(fact.relation.left), *leaves(fact.relation.right)]
            if any(isinstance(leaf, Number) for leaf in both):
                yield from both


def _a_side(reading: Reading, wanted: tuple[Expression, ...]) -> str:
    """A side of a shape of the figure that is not itself asked for, "" where there is none."""
    asked_for = [leaf for item in wanted for leaf in leaves(item)]
    asked = {frozenset((leaf.start, leaf.end)) for leaf in asked_for if isinstance(leaf, LengthOf)}
    for given in reading.givens:
        for fact in given.facts:
            if isinstance(fact, Shape):
                for one, other in zip(fact.points, (*fact.points[1:], fact.points[0]), strict=True):
                    if frozenset((one, other)) not in asked:
                        return one + other
    return ""


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
