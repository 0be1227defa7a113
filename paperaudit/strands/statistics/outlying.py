"""Whether one value is an outlier: further than 1.5 interquartile ranges from the quartiles."""

from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.collected_values import in_order
from paperaudit.maths.quartiles import CONVENTIONS
from paperaudit.model.derivation import Answer
from paperaudit.model.spread_task import IsOutlier
from paperaudit.strands.numbers.working import require
from paperaudit.strands.statistics.lines import Lines, shown
from paperaudit.strands.statistics.spread import fences

_SKILL = "spread"
_REACH = Fraction(3, 2)


def is_outlier(task: IsOutlier, lines: Lines) -> Answer:
    """Whether the value lies beyond a fence; NoValue where the conventions for quartiles do not agree on it."""
    values = in_order(task.collected)
    low, high = fences(task.collected, lines)
    beyond = task.value < low or task.value > high
    for name, quartiles_by in CONVENTIONS:
        lower, _, upper = quartiles_by(values)
        far = max(lower - task.value, task.value - upper) > _REACH * (upper - lower)
        if far != beyond:
            raise NoValue(f"whether it is an outlier hangs on the convention for the quartiles: {name}")
    inside = sum(low <= one <= high for one in values)
    outside = sum(one < low or one > high for one in values)
    require(inside + outside == len(values), "values inside and outside the fences")
    if beyond:
        fence, sign = (low, "<") if task.value < low else (high, ">")
        said = f"{shown(task.value)} {sign} {shown(fence)}, so {shown(task.value)} is an outlier"
    else:
        said = f"{shown(low)} ≤ {shown(task.value)} ≤ {shown(high)}, so {shown(task.value)} is not an outlier"
    lines.say(said, "yes" if beyond else "no", _SKILL)
    if task.claimed:
        return Answer("shown" if beyond else f"false: {said}")
    return Answer("yes" if beyond else "no")
