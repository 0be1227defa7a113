"""Gives a part's marks to the lines of its derivation: the natural marks, merged or split where need be."""

from collections.abc import Collection, Iterator
from dataclasses import replace

from paperaudit.marking.convention import Convention
from paperaudit.marking.fitting import fitted
from paperaudit.marking.mark import Allocation, Alternative, Fit, Mark, PartScheme
from paperaudit.marking.qualifiers import qualified
from paperaudit.marking.set_up import as_marked
from paperaudit.marking.split import placed, read_split
from paperaudit.marking.tariff import Earning, earnings, most_of
from paperaudit.marking.usual import UsualMarks, usual_marks
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


def allocate(part: AuditedPart, convention: Convention, known: Collection[str] = ()) -> PartScheme:
    """The scheme of one part: its own marks on the lines of its derivation.

    The setter's split is kept where it adds up to the marks. Otherwise the natural allocation is
    merged or split until it has as many; what no line can bear is counted as unplaced. Reasons that the
    part does not ask for bear marks where its statements alone cannot. `known` are
    the statements of earlier parts of the question (`established`): their lines bear marks only where
    the new ones cannot bear them all.
    """
    printed = part.derivation()
    if printed is None or not printed.steps:
        return _without_derivation(part)
    derivation = as_marked(part, printed)
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
        _usual(part, convention, reasons, answers, known),
        target - allocation.total(),
        tuple(_alternative(other, convention, reasons, target, part, known) for other in others),
        remark,
    )


def _usual(
    part: AuditedPart, convention: Convention, reasons: bool, answers: tuple[Answer, ...], known: Collection[str]
) -> UsualMarks:
    """What is usual for the first working; the widest bounds of all of them."""
    workings = part.outcome.derivations if isinstance(part.outcome, Derived | Several) else ()
    first, *others = [usual_marks(as_marked(part, one), convention, reasons, answers, known) for one in workings]
    fewest, most = min(one.fewest for one in (first, *others)), max(one.most for one in (first, *others))
    return replace(first, fewest=fewest, most=most)


def _bearing(
    target: int,
    derivation: Derivation,
    convention: Convention,
    reasons: bool,
    answers: tuple[Answer, ...],
    known: Collection[str],
) -> tuple[Earning, ...]:
    """The new lines, or else all of them, or else with marks for reasons: the first that can bear so many marks."""
    ways = list(_ways(derivation, convention, reasons, answers, known))
    return next((lines for lines in ways if most_of(lines) >= target), max(ways, key=most_of))


def _ways(
    derivation: Derivation,
    convention: Convention,
    reasons: bool,
    answers: tuple[Answer, ...],
    known: Collection[str],
) -> Iterator[tuple[Earning, ...]]:
    for for_reasons in (reasons, True):
        for carried in (known, ()):
            yield earnings(derivation, convention, for_reasons, answers, carried)


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
    lines = _bearing(target, as_marked(part, derivation), convention, reasons, (), known)
    allocation = fitted(lines, target, convention, reasons)
    return Alternative(derivation, qualified(allocation, derivation, convention, part))
