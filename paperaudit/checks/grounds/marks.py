"""What a part's working is worth under the paper's convention, over all its workings."""

from dataclasses import dataclass

from paperaudit.marking.allocation import natural, natural_marks, reasons_required
from paperaudit.marking.convention import Convention
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


def worth(part: AuditedPart, convention: Convention) -> Worth | None:
    """What the part's own working is worth; None where it was not derived in lines that earn marks."""
    outcome = part.outcome
    if not isinstance(outcome, Derived) or not outcome.derivations or not outcome.derivations[0].steps:
        return None
    reasons = reasons_required(part)
    ranges = [natural_marks(derivation, convention, reasons, outcome.answers) for derivation in outcome.derivations]
    first = natural(outcome.derivations[0], convention, reasons, outcome.answers)
    if not first.marks:
        return None
    return Worth(
        fewest=min(low for low, _ in ranges),
        most=max(high for _, high in ranges),
        usual=first.total(),
        printed=first.printed(),
        lines=tuple(step.statement for step in outcome.derivations[0].steps),
    )
