"""A value or a mean that is missing from a story of means: by the sums of the values."""

from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.collected_values import number
from paperaudit.model.derivation import Answer
from paperaudit.model.statistics_task import MeanBalance, MeanGroup
from paperaudit.strands.numbers.working import require
from paperaudit.strands.statistics.averages import mean_again
from paperaudit.strands.statistics.lines import Lines, bracketed, over, shown, summed


def found(task: MeanBalance, lines: Lines) -> Answer:
    """What is missing: the mean of the whole, or the mean (the value, of a single one) of one group."""
    if task.wanted == "sum":
        value = _sum(task.whole, lines, f"sum of all {task.whole.count}")
        require(value / task.whole.count == task.whole.mean, "the sum in two ways")
    elif task.whole.mean is None and not task.whole.values:
        value = _of_the_whole(task, lines)
        groups = [(group.count, _mean(group)) for group in task.groups]
        require(mean_again([(mean, count) for count, mean in groups]) == value, "the mean of the whole in two ways")
    else:
        value = _of_a_group(task, lines)
    return lines.end(number(value))


def _mean(group: MeanGroup) -> Fraction:
    if group.values:
        return mean_again([(value, 1) for value in group.values])
    assert group.mean is not None
    return group.mean


def _sum(group: MeanGroup, lines: Lines, name: str) -> Fraction:
    """The sum of the values of a group, with its line."""
    if group.values:
        total = sum(group.values, Fraction(0))
        if len(group.values) > 1:
            lines.say(f"{name}: {summed(group.values)} = {shown(total)}", shown(total), starts=True)
        return total
    assert group.mean is not None
    total = group.mean * group.count
    if group.count > 1:
        lines.say(f"{name}: {group.count} × {bracketed(group.mean)} = {shown(total)}", shown(total), starts=True)
    return total


def _of_the_whole(task: MeanBalance, lines: Lines) -> Fraction:
    sums = [_sum(group, lines, f"sum of {_values(group)}") for group in task.groups]
    total, count = sum(sums, Fraction(0)), sum(group.count for group in task.groups)
    if count != task.whole.count:
        raise NoValue("the groups are not the whole")
    if len(sums) > 1:
        lines.say(f"sum of all {count}: {summed(sums)} = {shown(total)}", shown(total))
    lines.say(f"mean = {over(total, count)}", over(total, count))
    if shown(total / count) != over(total, count):
        lines.say(f"= {shown(total / count)}", shown(total / count))
    return total / count


def _values(group: MeanGroup) -> str:
    return f"{group.count} values" if group.count > 1 else "one value"


def _of_a_group(task: MeanBalance, lines: Lines) -> Fraction:
    unknown = [group for group in task.groups if group.mean is None and not group.values]
    if len(unknown) != 1 or sum(group.count for group in task.groups) != task.whole.count:
        raise NoValue("the groups are not the whole")
    total = _sum(task.whole, lines, f"sum of all {task.whole.count}")
    known = [_sum(group, lines, f"sum of {_values(group)}") for group in task.groups if group is not unknown[0]]
    rest = total - sum(known, Fraction(0))
    lines.say(f"{shown(total)} − {' − '.join(map(bracketed, known))} = {shown(rest)}", shown(rest))
    value = rest / unknown[0].count
    if unknown[0].count > 1:
        lines.say(f"mean = {over(rest, unknown[0].count)}", over(rest, unknown[0].count))
        lines.say(f"= {shown(value)}", shown(value))
    parts = [(value if group is unknown[0] else _mean(group), group.count) for group in task.groups]
    require(mean_again(parts) == _mean(task.whole), "the missing value in two ways")
    return value
