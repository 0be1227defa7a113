"""What a part's working is worth under the paper's convention, over all its workings."""

from collections.abc import Collection
from dataclasses import dataclass

from paperaudit.marking.allocation import allocate
from paperaudit.marking.convention import Convention
from paperaudit.model.audited import AuditedPart
from paperaudit.model.derivation import Derived


@dataclass(frozen=True, slots=True)
class Worth:
    """The fewest and the most marks that raise no eyebrow, the usual ones in words, and the working's lines."""

    fewest: int
    most: int
    usual: str
    lines: tuple[str, ...]


def worth(part: AuditedPart, convention: Convention, known: Collection[str] = ()) -> Worth | None:
    """What the part's own working is worth, as the mark scheme has it; None where no lines earn marks.

    Lines that say what is `known` from earlier parts do not count towards the fewest and the usual marks.
    """
    outcome = part.outcome
    if not isinstance(outcome, Derived) or not all(working.steps for working in outcome.derivations):
        return None
    scheme = allocate(part, convention, known)
    if not scheme.natural.marks:
        return None
    lines = tuple(step.statement for step in outcome.derivations[0].steps)
    return Worth(scheme.usual.fewest, scheme.usual.most, scheme.usual.advice(), lines)
