"""Gives a part's marks to the lines of its derivation: the natural marks, merged or split where need be."""

from dataclasses import replace

from paperaudit.marking.convention import Convention
from paperaudit.marking.mark import Allocation, Alternative, Fit, Mark, PartScheme
from paperaudit.marking.qualifiers import qualified
from paperaudit.marking.split import placed, read_split
from paperaudit.marking.tariff import Earning, earnings
from paperaudit.model.audited import AuditedPart
from paperaudit.model.derivation import Answer, Derivation, Derived, Several

Levels = dict[int, int]
"""The rung that each earning line stands on, by the line's index."""


def natural(
    derivation: Derivation, convention: Convention, reasons_required: bool, answers: tuple[Answer, ...] = ()
) -> Allocation:
    """The marks that a derivation's lines earn by themselves, whatever the paper prints.

    Every line earns its usual tariff, a line with a routine or repeated reason its least. Where there
    is more than one answer, naming `answers` gives each its own accuracy mark.
    """
    lines = earnings(derivation, convention, reasons_required, answers)
    return _allocation(lines, _usual(lines), convention)


def natural_marks(
    derivation: Derivation, convention: Convention, reasons_required: bool, answers: tuple[Answer, ...] = ()
) -> tuple[int, int]:
    """The fewest and the most marks that a derivation bears without raising an eyebrow.

    Fewest: half of the natural marks, rounded up, and where reasons are required at least one for
    every line that needs one. Most: every line that shows its working split into method and accuracy.
    Common practice, no source.
    """
    lines = earnings(derivation, convention, reasons_required, answers)
    usual = sum(line.usual for line in lines)
    reasoned = sum(
        1 for line in lines
        if reasons_required and not line.routine and derivation.steps[line.step].reason is not None
        and line.kind in ("statement", "equation")
    )
    low = max((usual + 1) // 2, reasoned, min(1, len(lines)))
    return low, max(low, sum(len(line.rungs) - 1 for line in lines))


def allocate(part: AuditedPart, convention: Convention) -> PartScheme:
    """The scheme of one part: its own marks on the lines of its derivation.

    The setter's split is kept where it adds up to the marks. Otherwise the natural allocation is
    merged or split until it has as many; what no line can bear is counted as unplaced.
    """
    derivation = part.derivation()
    if derivation is None or not derivation.steps:
        return _without_derivation(part)
    reasons = reasons_required(part)
    answers = part.outcome.answers if isinstance(part.outcome, Derived | Several) else ()
    lines = earnings(derivation, convention, reasons, answers)
    own = _allocation(lines, _usual(lines), convention)
    split = read_split(part.part.split)
    target = next(marks for marks in (part.part.marks, _worth(split) or None, own.total()) if marks is not None)
    fit, allocation, remark = _placed(part, split, lines, convention, target)
    others = part.outcome.derivations[1:] if isinstance(part.outcome, Derived) else ()
    return PartScheme(
        part,
        fit,
        qualified(allocation, derivation, convention, part),
        own,
        natural_marks(derivation, convention, reasons, answers),
        target - allocation.total(),
        tuple(_alternative(other, convention, reasons, target, part) for other in others),
        remark,
    )


def reasons_required(part: AuditedPart) -> bool:
    """Whether the part asks for reasons: by its own key, else by its wording."""
    if part.part.reasons is not None:
        return part.part.reasons
    return part.reading.ask is not None and part.reading.ask.reasons


def fitted(lines: tuple[Earning, ...], target: int, convention: Convention, reasons: bool) -> Allocation:
    """The allocation nearest to the natural one that has `target` marks, or the most that the lines bear."""
    if target <= 0:
        return Allocation()
    levels = _usual(lines)
    while sum(levels.values()) > target and _lowered(lines, levels, convention, reasons):
        pass
    while sum(levels.values()) < target and _raised(lines, levels):
        pass
    return _allocation(lines, levels, convention)


def _placed(
    part: AuditedPart, split: tuple[Mark, ...], lines: tuple[Earning, ...], convention: Convention, target: int
) -> tuple[Fit, Allocation, str]:
    """The fit, the marks on their lines, and what to say of the setter's split where it was not kept."""
    if split and _worth(split) == target:
        return Fit.SETTER, placed(split, lines, part), ""
    remark = ""
    if part.part.split:
        printed = " ".join(part.part.split)
        remark = f"The split {printed} does not come to the marks of this part; the lines were marked without it."
    allocation = fitted(lines, target, convention, reasons_required(part))
    usual = sum(line.usual for line in lines)
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
    derivation: Derivation, convention: Convention, reasons: bool, target: int, part: AuditedPart
) -> Alternative:
    lines = earnings(derivation, convention, reasons)
    allocation = fitted(lines, target, convention, reasons)
    return Alternative(derivation, qualified(allocation, derivation, convention, part))


def _usual(lines: tuple[Earning, ...]) -> Levels:
    return {line.step: line.usual for line in lines}


def _lowered(lines: tuple[Earning, ...], levels: Levels, convention: Convention, reasons: bool) -> bool:
    """Takes one mark off the line that can best do without it; False where none can."""
    open_to_it = [line for line in lines if levels[line.step] > line.floor]
    keeping = [line for line in open_to_it if not reasons or _keeps_a_reason(line, lines, levels, convention)]
    candidates = keeping or open_to_it
    if not candidates:
        return False
    levels[min(candidates, key=lambda line: _worth_keeping(line, levels)).step] -= 1
    return True


def _worth_keeping(line: Earning, levels: Levels) -> tuple[int, int, int]:
    """Givens and arithmetic go first, then routine lines, then algebra; statements merge before they go.

    The answer's line comes last, and among equals the earlier line goes.
    """
    if line.kind in ("given", "arithmetic", "conclusion"):
        rank = 0
    elif line.routine:
        rank = 1
    elif line.kind in ("algebra", "calculation", "construction"):
        rank = 2
    else:
        rank = 3 if levels[line.step] > 1 else 4
    return (rank if line.spot == "on the way" else max(rank, 3), 0 if line.spot == "on the way" else 1, line.step)


def _keeps_a_reason(line: Earning, lines: tuple[Earning, ...], levels: Levels, convention: Convention) -> bool:
    """Whether a mark for a reason is left somewhere when this line gives up one of its marks."""
    after = {**levels, line.step: levels[line.step] - 1}
    before = _rewards_reason(lines, levels, convention)
    return not before or _rewards_reason(lines, after, convention)


def _rewards_reason(lines: tuple[Earning, ...], levels: Levels, convention: Convention) -> bool:
    return any(convention.kinds[code].rewards_reason for line in lines for code in line.rungs[levels[line.step]])


def _raised(lines: tuple[Earning, ...], levels: Levels) -> bool:
    """Gives one more mark to a line that can bear it, below its usual ones first; False where none can.

    The answer's line is split first (M1 M1 A1 for three marks on two lines), then from the top.
    """
    candidates = [line for line in lines if levels[line.step] < len(line.rungs) - 1]
    if not candidates:
        return False
    chosen = min(candidates, key=lambda line: (not line.routine, line.spot == "on the way", line.step))
    levels[chosen.step] += 1
    return True


def _allocation(lines: tuple[Earning, ...], levels: Levels, convention: Convention) -> Allocation:
    marks = tuple(Mark(code, line.step) for line in lines for code in line.rungs[levels[line.step]])
    return Allocation(tuple(_bound(mark, marks[:at], convention) for at, mark in enumerate(marks)))


def _bound(mark: Mark, before: tuple[Mark, ...], convention: Convention) -> Mark:
    """The mark under its binding rule: one whose method has no mark stands alone, under another letter."""
    kind = convention.kinds[mark.kind]
    on_its_line = kind.where == "on its line"
    met = any(other.kind in kind.needs and (other.step == mark.step or not on_its_line) for other in before)
    return mark if met or not kind.needs or not kind.alone else replace(mark, kind=kind.alone)
