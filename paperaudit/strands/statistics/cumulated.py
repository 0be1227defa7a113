"""How many values lie between ends of classes, by cumulative frequencies."""

from fractions import Fraction
from itertools import pairwise

from paperaudit.maths.collected_values import number
from paperaudit.model.derivation import Answer, Impossible
from paperaudit.model.statistics_task import UpTo
from paperaudit.strands.numbers.working import require
from paperaudit.strands.statistics.lines import Lines, shown


def up_to(task: UpTo, lines: Lines) -> Answer | Impossible:
    """The difference of two cumulative frequencies; Impossible where they go down somewhere."""
    for (one, before), (other, after) in pairwise(zip(task.ends, task.sums, strict=True)):
        if after < before:
            said = f"cumulative frequency: {before} up to {shown(one)}, {after} up to {shown(other)}"
            return Impossible(lines.used, (said, f"{after} ≥ {before}: false"))
    sums = dict(zip(task.ends, task.sums, strict=True))
    above = sums[task.high] if task.high is not None else task.sums[-1]
    below = sums[task.low] if task.low is not None else 0
    if task.high is not None:
        lines.say(f"up to {shown(task.high)}: {above}", str(above), "tables and charts", starts=True)
    if task.low is not None:
        if task.high is None:
            lines.say(f"in all: {above}", str(above), "tables and charts", starts=True)
        lines.say(f"up to {shown(task.low)}: {below}", str(below), "tables and charts", starts=True)
        lines.say(f"{above} − {below} = {above - below}", str(above - below), "tables and charts")
    # A second way: class by class.
    counts = [after - before for before, after in pairwise((0, *task.sums))]
    inside = sum(count for end, count in zip(task.ends, counts, strict=True)
                 if (task.low is None or end > task.low) and (task.high is None or end <= task.high))  # fmt: skip
    require(inside == above - below, "the number in two ways")
    return lines.end(number(Fraction(above - below)), unit=False)
