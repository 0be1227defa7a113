"""Derives the asks that a part puts side by side, one after the other."""

from collections.abc import Callable
from dataclasses import replace

from paperaudit.model.derivation import Answer, Derivation, Derived, NotRead, Outcome, Step
from paperaudit.model.each_asked import EachAsked
from paperaudit.model.reading import Reading
from paperaudit.strands.left_aside import unless_left_aside

Derive = Callable[[Reading], tuple[str, Outcome]]


def derive_each(task: EachAsked, derive: Derive) -> tuple[str, Outcome]:
    """The answers to all asks with their lines, by the strand of the first; NotRead where one of them is open."""
    strands: list[str] = []
    answers: list[Answer] = []
    derivations: list[Derivation] = []
    for count, reading in enumerate(task.readings):
        strand, outcome = derive(reading)
        outcome = unless_left_aside(reading, outcome)
        said = reading.ask.text if reading.ask is not None else ""
        if isinstance(outcome, NotRead):
            return strand, NotRead(f"of “{said}”: {outcome.why}")
        if not isinstance(outcome, Derived) or not outcome.derivations:
            return strand, NotRead(f"“{said}” has not one answer beside the other asks")
        strands.append(strand)
        answers.extend(replace(answer, of=count) for answer in outcome.answers)
        derivations.append(outcome.derivations[0])
    return strands[0], Derived(tuple(answers), (_joined(derivations),))


def _joined(derivations: list[Derivation]) -> Derivation:
    """The lines of all, a line that both begin with once."""
    seen: set[str] = set()
    steps: list[Step] = []
    for one in derivations:
        steps.extend(step for step in one.steps if step.statement not in seen)
        seen.update(step.statement for step in one.steps)
    confirmed = "; ".join(dict.fromkeys(one.confirmed_by for one in derivations))
    return Derivation(
        tuple(steps), confirmed, tuple(dict.fromkeys(used for one in derivations for used in one.givens_used))
    )
