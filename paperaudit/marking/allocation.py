"""Gives a part's marks to the lines of its derivation: the natural marks, merged or split where need be."""

from collections.abc import Collection

from paperaudit.marking.convention import Convention
from paperaudit.marking.fitting import fitted
from paperaudit.marking.mark import Allocation, Alternative, Fit, Mark, PartScheme
from paperaudit.marking.qualifiers import qualified
from paperaudit.marking.split import placed, read_split
from paperaudit.marking.tariff import Earning, earnings
from paperaudit.model.audited import AuditedPart
from paperaudit.model.derivation import Answer, Derivation, Derived, Several


def natural(
    derivation: Derivation,
    convention: Convention,
    reasons_required: bool,
    answers: tuple[Answer, ...] = (),
    known: Collection[str] = (),
) -> Allocation:
    """The marks that a derivation's lines earn by themselves, whatever the paper prints.

    Every line earns its usual tariff, a line with a routine or repeated reason its least, a line that
    is `known` from an earlier part of the question nothing. Where there is more than one answer,
    naming `answers` gives each its own accuracy mark.
    """
    lines = earnings(derivation, convention, reasons_required, answers, known)
    return fitted(lines, sum(line.usual for line in lines), convention, reasons_required)


def natural_marks(
    derivation: Derivation,
    convention: Convention,
    reasons_required: bool,
    answers: tuple[Answer, ...] = (),
    known: Collection[str] = (),
) -> tuple[int, int]:
    """The fewest and the most marks that a derivation bears without raising an eyebrow.

    Fewest: half of the natural marks, rounded up, and where reasons are required at least one for
    every line that needs one; lines that are `known` from an earlier part count for nothing. Most:
    every line, known or not, that shows its working split into method and accuracy.
    Common practice, no source.
    """
    lines = earnings(derivation, convention, reasons_required, answers, known)
    usual = sum(line.usual for line in lines)
    reasoned = sum(
        1 for line in lines
        if reasons_required and not line.routine and derivation.steps[line.step].reason is not None
        and line.kind in ("statement", "equation")
    )
    low = max((usual + 1) // 2, reasoned, min(1, len(lines)))
    return low, max(low, _most(lines), _most(earnings(derivation, convention, reasons_required, answers)))


def allocate(part: AuditedPart, convention: Convention, known: Collection[str] = ()) -> PartScheme:
    """The scheme of one part: its own marks on the lines of its derivation.

    The setter's split is kept where it adds up to the marks. Otherwise the natural allocation is
    merged or split until it has as many; what no line can bear is counted as unplaced. `known` are
    the statements of earlier parts of the question (`established`): their lines bear marks only where
    the new ones cannot bear them all.
    """
    derivation = part.derivation()
    if derivation is None or not derivation.steps:
        return _without_derivation(part)
    reasons = reasons_required(part)
    answers = part.outcome.answers if isinstance(part.outcome, Derived | Several) else ()
    own = natural(derivation, convention, reasons, answers, known)
    split = read_split(part.part.split)
    target = next(marks for marks in (part.part.marks, _worth(split) or None, own.total()) if marks is not None)
    lines = _bearing(target, derivation, convention, reasons, answers, known)
    fit, allocation, remark = _placed(part, split, lines, convention, target, own.total())
    others = part.outcome.derivations[1:] if isinstance(part.outcome, Derived) else ()
    return PartScheme(
        part,
        fit,
        qualified(allocation, derivation, convention, part),
        own,
        natural_marks(derivation, convention, reasons, answers, known),
        target - allocation.total(),
        tuple(_alternative(other, convention, reasons, target, part, known) for other in others),
        remark,
    )


def _bearing(
    target: int,
    derivation: Derivation,
    convention: Convention,
    reasons: bool,
    answers: tuple[Answer, ...],
    known: Collection[str],
) -> tuple[Earning, ...]:
    """The new lines, or all of them where the new ones cannot bear so many marks."""
    new = earnings(derivation, convention, reasons, answers, known)
    return new if _most(new) >= target else earnings(derivation, convention, reasons, answers)


def _most(lines: tuple[Earning, ...]) -> int:
    return sum(len(line.rungs) - 1 for line in lines)


def reasons_required(part: AuditedPart) -> bool:
    """Whether the part asks for reasons: by its own key, else by its wording."""
    if part.part.reasons is not None:
        return part.part.reasons
    return part.reading.ask is not None and part.reading.ask.reasons


def _placed(
    part: AuditedPart,
    split: tuple[Mark, ...],
    lines: tuple[Earning, ...],
    convention: Convention,
    target: int,
    usual: int,
) -> tuple[Fit, Allocation, str]:
    """The fit, the marks on their lines, and what to say of the setter's split where it was not kept."""
    if split and _worth(split) == target:
        return Fit.SETTER, placed(split, lines, part), ""
    remark = ""
    if part.part.split:
        printed = " ".join(part.part.split)
        remark = f"The split {printed} does not come to the marks of this part; the lines were marked without it."
    allocation = fitted(lines, target, convention, reasons_required(part))
    if part.part.marks is None:
        return Fit.UNMARKED, allocation, remark
    if allocation.total() < target:
        return Fit.TOO_MANY, allocation, remark
    return (Fit.NATURAL if target == usual else Fit.MERGED if target < usual else Fit.SPLIT), allocation, remark


def _worth(marks: tuple[Mark, ...]) -> int:
    return sum(mark.worth for mark in marks)


def _without_derivation(part: AuditedPart) -> PartScheme:
    return PartScheme(part, Fit.NOT_DERIVED, unplaced=part.part.marks or 0)


def _alternative(
    derivation: Derivation,
    convention: Convention,
    reasons: bool,
    target: int,
    part: AuditedPart,
    known: Collection[str],
) -> Alternative:
    lines = _bearing(target, derivation, convention, reasons, (), known)
    allocation = fitted(lines, target, convention, reasons)
    return Alternative(derivation, qualified(allocation, derivation, convention, part))
