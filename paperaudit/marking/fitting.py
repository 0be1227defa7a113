"""Merges or splits marks until lines have as many as a part carries, under the rules that bind marks."""

from dataclasses import replace
from math import inf

from paperaudit.marking.convention import Convention
from paperaudit.marking.mark import Allocation, Mark
from paperaudit.marking.tariff import Earning

_FEW = 3
"""Two lines on the way and the answer's: where one of them must go, it is the first."""

Levels = dict[int, int]
"""The rung that each earning line stands on, by the line's index."""


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


def _usual(lines: tuple[Earning, ...]) -> Levels:
    return {line.step: line.usual for line in lines}


def _lowered(lines: tuple[Earning, ...], levels: Levels, convention: Convention, reasons: bool) -> bool:
    """Takes one mark off the line that can best do without it; False where none can."""
    open_to_it = [line for line in lines if levels[line.step] > line.floor]
    keeping = [line for line in open_to_it if not reasons or _keeps_a_reason(line, lines, levels, convention)]
    candidates = keeping or open_to_it
    if not candidates:
        return False
    kept = [line.step for line in lines if levels[line.step]]
    levels[min(candidates, key=lambda line: _worth_keeping(line, levels, kept)).step] -= 1
    return True


def _worth_keeping(line: Earning, levels: Levels, kept: list[int]) -> tuple[int, int, float, int]:
    """Givens and arithmetic go first, then routine lines, then algebra, the lines that only tidy before the others.

    A second answer's mark goes before that of the method's decisive line, statements merge before they go, the
    answer's line comes last. Among equals the line goes that leaves the marks most evenly over the working, the
    first of which stays longest; then the later one. A single method mark stands on the last, which implies the
    others.
    """
    on_the_way = line.spot == "on the way"
    if not on_the_way and levels[line.step] > 1 and line.kind in ("algebra", "calculation", "conclusion"):
        return (4, 0, 0, -line.step)
    if on_the_way and line.kind in ("given", "arithmetic", "conclusion"):
        rank = 0
    elif on_the_way and line.routine:
        rank = 1
    elif on_the_way and line.kind in ("algebra", "calculation", "construction"):
        rank = (2, 3, 5)[line.move]
    else:
        rank = 6 if levels[line.step] > 1 else 7
    return (rank, not on_the_way, _gap(line.step, kept), -line.step)


def _gap(step: int, kept: list[int]) -> float:
    """How many lines would lie between the marks beside a line if it had none; for the first of three without end."""
    before = [other for other in kept if other < step]
    after = [other for other in kept if other > step]
    if before and after:
        return after[0] - before[-1]
    return inf if len(kept) > _FEW else 0


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
