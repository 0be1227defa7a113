"""Puts the stacked fractions of labels in one line: a short rule with print close over it and close under it."""

from collections.abc import Sequence

from paperaudit.readers.draft.drawing.lettering import Run, joined_runs
from paperaudit.readers.draft.drawing.strokes import Straight

LONGEST = 45.0
"""Points of the longest rule of a fraction in a label."""
OVER, UNDER = (0.0, 0.75), (0.45, 1.35)
"""Sizes of print from the rule up to the baseline of the numerator, and down to that of the denominator."""
AXIS = 0.25
"""The rule stands so much over the baseline of what is beside it, in sizes of print."""
BESIDE = 0.45
"""Sizes of print between a fraction and what goes on beside it, at most."""


def with_fractions(runs: Sequence[Run], straights: Sequence[Straight]) -> tuple[list[Run], list[Straight]]:
    """The runs with stacked fractions as "(2/3)y", and the strokes without their rules."""
    rules = [
        one
        for one in straights
        if abs(one.start[1] - one.end[1]) < 0.3 and 2 < abs(one.start[0] - one.end[0]) <= LONGEST
    ]
    found = list(runs)
    gone: set[int] = set()
    cells: dict[int, list[Run]] = {}
    for run in found:
        cells.setdefault(int(run.middle[1] // 20), []).append(run)
    for rule in rules:
        row = int(rule.start[1] // 20)
        near = [run for at in (row - 1, row, row + 1) for run in cells.get(at, ())]
        over = _stacked(rule, near, OVER, -1)
        under = _stacked(rule, near, UNDER, 1)
        if over is None or under is None:
            continue
        joined = _beside(over, under, rule, near)
        gone.add(id(rule))
        parts = {id(one) for one in joined}
        whole = joined_runs(joined, over, under)
        found = [run for run in found if id(run) not in parts] + [whole]
        for cell in cells.values():
            cell[:] = [run for run in cell if id(run) not in parts]
        cells.setdefault(int(whole.middle[1] // 20), []).append(whole)
    return found, [one for one in straights if id(one) not in gone]


def _stacked(rule: Straight, runs: Sequence[Run], span: tuple[float, float], side: int) -> Run | None:
    """The run that stands on a rule (side −1) or hangs under it (1), no wider than it and in its middle."""
    left, right = sorted((rule.start[0], rule.end[0]))
    for run in runs:
        away = side * (run.baseline - rule.start[1]) / run.size
        centred = abs(run.middle[0] - (left + right) / 2) <= 0.25 * (right - left) + 0.8
        if span[0] <= away <= span[1] and centred and 2 * run.half_width <= right - left + 2.5:
            return run
    return None


def _beside(over: Run, under: Run, rule: Straight, runs: Sequence[Run]) -> list[Run]:
    """The fraction's two parts and what goes on to the left and to the right of it, from left to right."""
    left, right = sorted((rule.start[0], rule.end[0]))
    chain = [over, under]
    for run in sorted(runs, key=lambda one: one.box[0]):
        level = abs(run.baseline - rule.start[1] - AXIS * run.size) <= 0.14 * run.size
        if run in chain or not level:
            continue
        if 0 <= run.box[0] - right + 1 <= BESIDE * run.size + 1:
            chain.append(run)
            right = run.box[2]
        elif 0 <= left - run.box[2] + 1 <= BESIDE * run.size + 1:
            chain.insert(0, run)
    return chain


def is_in_label(rule: Straight, run: Run) -> bool:
    """Whether a short rule lies in, just over or just under a label."""
    left, top, right, bottom = run.box
    across, down = (rule.start[0] + rule.end[0]) / 2, (rule.start[1] + rule.end[1]) / 2
    return left - 2 <= across <= right + 2 and top - run.size / 2 <= down <= bottom + run.size / 2
