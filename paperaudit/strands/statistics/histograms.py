"""Histograms of classes with different widths: frequency is frequency density times width."""

from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.collected_values import boundaries, number
from paperaudit.model.derivation import Answer
from paperaudit.model.spread_task import OfHistogram
from paperaudit.model.statistics_task import ClassInterval, Densities, Grouped
from paperaudit.strands.numbers.working import require
from paperaudit.strands.statistics.lines import Lines, shown, summed

_SKILL = "tables and charts"


def of_histogram(task: OfHistogram, lines: Lines) -> Answer:
    """Frequencies, frequency densities or the total frequency; put back into areas of the bars."""
    lines.unit = ""
    widths = _widths(task.collected.classes)
    if isinstance(task.collected, Densities):
        sizes = frequencies_of(task.collected, lines, () if task.want == "total frequency" else task.of)
        if task.want == "frequency densities":
            raise NoValue("frequency densities that the table has")
    else:
        sizes = _densities(task.collected, widths, lines, task.of)
    if task.want == "total frequency":
        total = sum(sizes, Fraction(0))
        lines.say(f"{summed(sizes)} = {shown(total)}", shown(total), _SKILL)
        return lines.end(number(total), "statistic", "total frequency")
    wanted = [sizes[at] for at in task.of or range(len(sizes))]
    if len(wanted) == 1:
        return lines.end(number(wanted[0]))
    return Answer(", ".join(map(shown, wanted)), None, task.want, kind="numbers in order")


def frequencies_of(collected: Densities, lines: Lines, of: tuple[int, ...] = ()) -> list[Fraction]:
    """The frequency of each class, with the lines of those at `of`; raises NoValue where one is not whole."""
    widths = _widths(collected.classes)
    sizes = [density * width for density, width in zip(collected.densities, widths, strict=True)]
    for at, (size, width) in enumerate(zip(sizes, widths, strict=True)):
        if size.denominator != 1:
            raise NoValue(f"the class {collected.classes[at].text} would hold {shown(size)} values")
        require(size / width == collected.densities[at], "frequency and frequency density of a bar differ")
        if not of or at in of:
            text = f"{collected.classes[at].text}: {shown(collected.densities[at])} × {shown(width)} = {shown(size)}"
            lines.say(text, shown(size), _SKILL, starts=True)
    return sizes


def as_grouped(collected: Densities, lines: Lines) -> Grouped:
    """The classes with their frequencies, which a mean or a median is worked out from."""
    sizes = frequencies_of(collected, lines)
    return Grouped(collected.classes, tuple(map(int, sizes)), collected.unit)


def _densities(grouped: Grouped, widths: list[Fraction], lines: Lines, of: tuple[int, ...]) -> list[Fraction]:
    sizes = [count / width for count, width in zip(grouped.counts, widths, strict=True)]
    for at, (count, width) in enumerate(zip(grouped.counts, widths, strict=True)):
        if not of or at in of:
            text = f"{grouped.classes[at].text}: {count} ÷ {shown(width)} = {shown(sizes[at])}"
            lines.say(text, shown(sizes[at]), _SKILL, starts=True)
    areas = sum((size * width for size, width in zip(sizes, widths, strict=True)), Fraction(0))
    require(areas == sum(grouped.counts), "the areas of the bars are not the number of values")
    return sizes


def _widths(classes: tuple[ClassInterval, ...]) -> list[Fraction]:
    ends = boundaries(classes)
    if ends is None:
        raise NoValue("the classes leave gaps between them")
    return [high - low for low, high in ends]
