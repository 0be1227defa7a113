"""What a part's working is worth under the paper's convention, over all its workings."""

from collections.abc import Collection
from dataclasses import dataclass

from paperaudit.marking.allocation import natural, natural_marks, reasons_required
from paperaudit.marking.convention import Convention
from paperaudit.marking.mark import Allocation
from paperaudit.model.audited import AuditedPart
from paperaudit.model.derivation import Derived


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


def worth(part: AuditedPart, convention: Convention, known: Collection[str] = ()) -> Worth | None:
    """What the part's own working is worth; None where it was not derived in lines that earn marks.

    Lines that say what is `known` from earlier parts do not count towards the fewest and the usual
    marks. The most counts reasons though none are asked for: many departments expect them anyway.
    """
    outcome = part.outcome
    if not isinstance(outcome, Derived) or not all(working.steps for working in outcome.derivations):
        return None
    reasons, answers, workings = reasons_required(part), outcome.answers, outcome.derivations
    usual = natural(workings[0], convention, reasons, answers, known) if workings else Allocation()
    if not usual.marks:
        return None
    return Worth(
        fewest=min(natural_marks(one, convention, reasons, answers, known)[0] for one in workings),
        most=max(natural_marks(one, convention, True, answers)[1] for one in workings),
        usual=usual.total(),
        printed=usual.printed(),
        lines=tuple(step.statement for step in workings[0].steps),
    )
