"""What a part's working is worth under the paper's convention, over all its workings."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from itertools import takewhile

from paperaudit.marking.allocation import natural, natural_marks, reasons_required
from paperaudit.marking.convention import Convention
from paperaudit.model.audited import AuditedPart
from paperaudit.model.derivation import Derivation, Derived, Step


@dataclass(frozen=True, slots=True)
class Worth:
    """The fewest and the most marks that a part's workings bear, and the usual ones of the first, as printed."""

    fewest: int
    most: int
    usual: int
    printed: str
    lines: tuple[str, ...]

    def because(self) -> tuple[str, ...]:
        """The lines of the working and the marks that they usually earn."""
        return (*self.lines, f"these lines usually earn {self.printed} = {self.usual}")


def worth(part: AuditedPart, convention: Convention, known: frozenset[str] = frozenset()) -> Worth | None:
    """What the part's own working is worth; None where it was not derived in lines that earn marks.

    Lines that reach what is `known` from earlier parts, and lines that only lead to these, earn nothing.
    The most counts marks for reasons though none are asked for: many departments expect them anyway.
    """
    outcome = part.outcome
    if not isinstance(outcome, Derived):
        return None
    reasons, workings = reasons_required(part), [_from_there_on(one, known) for one in outcome.derivations]
    if not workings or not all(working.steps for working in workings):
        return None
    first = natural(workings[0], convention, reasons, outcome.answers)
    if not first.marks:
        return None
    return Worth(
        fewest=min(natural_marks(one, convention, reasons, outcome.answers)[0] for one in workings),
        most=max(natural_marks(one, convention, True, outcome.answers)[1] for one in workings),
        usual=first.total(),
        printed=first.printed(),
        lines=tuple(step.statement for step in workings[0].steps),
    )


def reached_before(part: AuditedPart, parts: Iterable[AuditedPart]) -> frozenset[str]:
    """The statements and values that earlier parts of the same question reach on their way."""
    same = takewhile(lambda one: one.part.id != part.part.id, parts)
    earlier = [one for one in same if one.question.number == part.question.number]
    steps = [step for one in earlier if isinstance(one.outcome, Derived) for step in one.outcome.derivations[0].steps]
    return frozenset(text for step in steps for text in (step.statement, _assigned(step)) if text)


def _assigned(step: Step) -> str:
    """What a line settles, whichever way it came there: its left side and its last value, "x = 20°"."""
    left, equals, _ = step.statement.partition(" = ")
    return f"{left} = {step.value.rpartition(' = ')[2]}" if equals and step.value else ""


def _from_there_on(derivation: Derivation, known: frozenset[str]) -> Derivation:
    """The lines of a derivation that are still to be written when what is `known` may be quoted."""
    if not known or not derivation.steps:
        return derivation
    by_statement = {step.statement: step for step in derivation.steps}
    wanted, kept = [derivation.steps[-1]], set[str]()
    while wanted:
        step = wanted.pop()
        quoted = step.statement in known or _assigned(step) in known
        if step.statement in kept or (quoted and step is not derivation.steps[-1]):
            continue
        kept.add(step.statement)
        wanted.extend(by_statement[use] for use in step.uses if use in by_statement)
    return replace(derivation, steps=tuple(step for step in derivation.steps if step.statement in kept))
