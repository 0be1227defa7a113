"""A frequency that is missing from a table whose mean or whose total is told."""

from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.collected_values import number
from paperaudit.model.derivation import Answer, Case, Impossible, NotDetermined
from paperaudit.model.statistics_task import MissingCount
from paperaudit.strands.numbers.working import require
from paperaudit.strands.statistics.averages import mean_again
from paperaudit.strands.statistics.lines import Lines, shown


def missing_count(task: MissingCount, lines: Lines) -> Answer | Impossible | NotDetermined:
    """The frequency; Impossible where it would be no number of things, or where mean and total disagree."""
    known = [(value, count) for value, count in zip(task.values, task.counts, strict=True) if count is not None]
    at = task.counts.index(None)
    count, total = sum(count for _, count in known), sum((value * count for value, count in known), Fraction(0))
    used = tuple(dict.fromkeys(lines.used))
    if task.mean is None:
        assert task.whole is not None
        lines.say(f"{' + '.join(str(size) for _, size in known)} = {count}", str(count), starts=True)
        value = Fraction(task.whole - count)
        lines.say(f"{task.letter} = {task.whole} − {count} = {shown(value)}", shown(value))
    else:
        if task.middles:
            lines.say(f"class mid-points: {', '.join(map(shown, task.values))}", starts=True)
        letter, mean, own = task.letter, task.mean, task.values[at]
        below = f"{count} + {letter}"
        term = letter if own == 1 else f"{shown(own)}{letter}"
        above = f"{shown(total)} + {term}" if own > 0 else shown(total)
        sums = " + ".join(f"{shown(one)} × {size if size is not None else letter}"
                          for one, size in zip(task.values, task.counts, strict=True))  # fmt: skip
        lines.say(f"Σfx = {sums} = {above}", above, starts=True)
        lines.say(f"Σf = {below}", below, starts=True)
        lines.say(f"({above})/({below}) = {shown(mean)}")
        if own == mean:
            return _without_letter(total, mean * count, lines, used)
        own_mean = letter if mean == 1 else f"{shown(mean)}{letter}"
        lines.say(f"{above} = {shown(mean * count)} + {own_mean}")
        share, rest = own - mean, mean * count - total
        if share < 0:
            share, rest = -share, -rest
        if share != 1:
            lines.say(f"{shown(share)}{letter} = {shown(rest)}")
        value = rest / share
        lines.say(f"{letter} = {shown(value)}", shown(value))
    if task.mean is not None:
        weight = task.values[at] * value
        require(total + weight == task.mean * (count + value), "the mean, with the frequency put in")
    if task.mean is not None and value > 0 and value.denominator != 1:
        _not_rounded(task, known, value)
    if value < 0 or value.denominator != 1:
        return Impossible(used, (f"{task.letter} would be {shown(value)}", "a frequency is a whole number: false"))
    if task.mean is not None:
        full = [(one, int(value) if size is None else size) for one, size in zip(task.values, task.counts, strict=True)]
        require(mean_again(full) == task.mean, "the mean in two ways")
        if task.whole is not None and count + value != task.whole:
            return Impossible(used, (f"{count} + {shown(value)} = {shown(count + value)}",
                                     f"{shown(count + value)} = {task.whole}: false"))  # fmt: skip
    else:
        require(count + value == task.whole, "the total in two ways")
    return lines.end(number(value), unit=False)


def _not_rounded(task: MissingCount, known: list[tuple[Fraction, int]], value: Fraction) -> None:
    """Raises NoValue where a whole frequency has this mean after rounding to the figures that are written."""
    assert task.mean is not None
    figures = next(places for places in range(12) if (task.mean * 10**places).denominator == 1)
    own = task.values[task.counts.index(None)]
    for count in (value.__floor__(), value.__ceil__()):
        if round(mean_again([*known, (own, count)]) - task.mean, figures) == 0:
            raise NoValue("the mean looks rounded")


def _without_letter(
    total: Fraction, needed: Fraction, lines: Lines, used: tuple[str, ...]
) -> Impossible | NotDetermined:
    """The missing frequency is that of the mean itself: it falls out of the equation."""
    if total == needed:
        cases = tuple(Case(f"a frequency of {count} gives this mean", (Answer(str(count)),)) for count in (1, 2))
        return NotDetermined(cases, "how many there are in all")
    return Impossible(used, (f"{shown(total)} = {shown(needed)}: false",))
