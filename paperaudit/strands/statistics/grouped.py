"""Classes with frequencies: modal class, median class, median and quartiles by interpolation."""

from fractions import Fraction
from itertools import accumulate

from paperaudit.errors import NoValue
from paperaudit.maths.collected_values import boundaries, interpolated, number
from paperaudit.model.derivation import Answer
from paperaudit.model.statistics_task import Grouped
from paperaudit.strands.numbers.working import require
from paperaudit.strands.statistics.averages import ordinal
from paperaudit.strands.statistics.lines import Lines, shown

_QUARTERS = {"lower quartile": 1, "median": 2, "upper quartile": 3}


def modal_class(grouped: Grouped, lines: Lines) -> Answer:
    """The class with the highest frequency; where widths differ it must be the densest one too."""
    most = max(grouped.counts)
    found = [one for one, count in zip(grouped.classes, grouped.counts, strict=True) if count == most]
    widths = boundaries(grouped.classes) or [(one.low, one.high) for one in grouped.classes]
    dense = [count / (high - low) for (low, high), count in zip(widths, grouped.counts, strict=True)]
    densest = [one for one, density in zip(grouped.classes, dense, strict=True) if density == max(dense)]
    if densest != found:
        raise NoValue("the classes have different widths, and the one with most values is not the densest")
    text = " and ".join(one.text for one in found)
    lines.say(f"highest frequency: {most}", str(most), starts=True)
    lines.say(f"modal class: {text}", text)
    return Answer(text, None, "modal class", kind="statistic")


def median_class(grouped: Grouped, lines: Lines) -> Answer:
    """The class that holds the middle value."""
    sums = list(accumulate(grouped.counts))
    count = sums[-1]
    middle = {(count + 1) // 2, count // 2 + 1}
    at = {next(place for place, below in enumerate(sums) if below >= one) for one in middle}
    if len(at) > 1:
        raise NoValue("the two middle values lie in different classes")
    found = grouped.classes[at.pop()]
    lines.say(f"cumulative frequencies: {', '.join(map(str, sums))}", starts=True)
    lines.say(f"middle of {count} values: the {' and the '.join(ordinal(one) for one in sorted(middle))}")
    lines.say(f"median class: {found.text}", found.text)
    expanded = [one for one, weight in zip(grouped.classes, grouped.counts, strict=True) for _ in range(weight)]
    require(all(expanded[one - 1] == found for one in middle), "the median class in two ways")
    return Answer(found.text, None, "median class", kind="statistic")


def quarter(grouped: Grouped, lines: Lines, measure: str) -> Answer:
    """The median or a quartile of classes by interpolation, an estimate."""
    value = _interpolated(grouped, lines, measure)
    return lines.end(number(value), "statistic", measure)


def interquartile_range(grouped: Grouped, lines: Lines) -> Answer:
    """The upper quartile less the lower one, both by interpolation."""
    lower = _interpolated(grouped, lines, "lower quartile")
    upper = _interpolated(grouped, lines, "upper quartile")
    lines.say(f"interquartile range = {shown(upper)} − {shown(lower)}", skill="spread")
    lines.say(f"= {shown(upper - lower)}", shown(upper - lower), "spread")
    return lines.end(number(upper - lower), "statistic", "interquartile range")


def _interpolated(grouped: Grouped, lines: Lines, measure: str) -> Fraction:
    count = sum(grouped.counts)
    place = Fraction(_QUARTERS[measure] * count, 4)
    ends = boundaries(grouped.classes)
    if ends is None:
        raise NoValue("the classes leave gaps between them")
    sums = list(accumulate(grouped.counts))
    at = next(position for position, below in enumerate(sums) if below >= place and grouped.counts[position])
    before = sums[at] - grouped.counts[at]
    low, high = ends[at]
    skill = "averages" if measure == "median" else "spread"
    lines.say(f"cumulative frequencies: {', '.join(map(str, sums))}", skill=skill, starts=True)
    share = {1: "n/4", 2: "n/2", 3: "3n/4"}[_QUARTERS[measure]]
    lines.say(f"{share} = {shown(place)}, in the class {grouped.classes[at].text}", shown(place), skill)
    lines.say(f"{measure} = {shown(low)} + ({shown(place)} − {before})/{grouped.counts[at]} × {shown(high - low)}",
              skill=skill)  # fmt: skip
    value = low + (place - before) / grouped.counts[at] * (high - low)
    lines.say(f"= {shown(value)}", shown(value), skill)
    # A second way: how many values lie below it, each class spread evenly.
    below = sum((min(max((value - one) / (other - one), Fraction(0)), Fraction(1)) * weight
                 for (one, other), weight in zip(ends, grouped.counts, strict=True)), Fraction(0))  # fmt: skip
    require(below == place and interpolated(grouped, place) == value, "the interpolation in two ways")
    return value
