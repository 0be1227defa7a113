"""Mean, median, mode and range of single values and of values with frequencies."""

import statistics
from collections import Counter
from fractions import Fraction
from itertools import accumulate

from paperaudit.errors import NoValue
from paperaudit.maths.collected_values import in_order, number, weighted
from paperaudit.maths.quartiles import median_of
from paperaudit.model.derivation import Answer
from paperaudit.model.statistics_task import Categories, Frequencies, Grouped, Values
from paperaudit.strands.numbers.working import require
from paperaudit.strands.statistics.lines import Lines, over, products, shown, summed

_ORDINALS = {1: "st", 2: "nd", 3: "rd"}


def ordinal(place: int) -> str:
    """A place in a row: 1st, 2nd, 11th.

    >>> ordinal(22), ordinal(11)
    ('22nd', '11th')
    """
    return f"{place}{'th' if place % 100 in (11, 12, 13) else _ORDINALS.get(place % 10, 'th')}"


def mean(collected: Values | Frequencies | Grouped, lines: Lines) -> Answer:
    """The sum of the values over their number; of classes by their mid-values, an estimate."""
    rows = weighted(collected)
    count = sum(weight for _, weight in rows)
    total = sum((value * weight for value, weight in rows), Fraction(0))
    if isinstance(collected, Values):
        lines.say(f"mean = ({summed(collected.values)})/{count}", starts=True)
        lines.say(f"= {over(total, count)}", over(total, count))
    else:
        letter = "x"
        if isinstance(collected, Grouped):
            lines.say(f"mid-values: {', '.join(shown(value) for value, _ in rows)}", starts=True)
            letter = "m"
        lines.say(f"Σf{letter} = {products([(value, weight) for value, weight in rows])}", starts=True)
        lines.say(f"= {shown(total)}", shown(total))
        lines.say(f"Σf = {summed(collected.counts)} = {count}", str(count), starts=True)
        name = "estimated mean" if isinstance(collected, Grouped) else "mean"
        lines.say(f"{name} = {over(total, count)}", over(total, count))
    value = total / count
    if shown(value) != over(total, count):
        lines.say(f"= {shown(value)}", shown(value))
    require(mean_again(rows) == value, "the mean in two ways")
    return lines.end(number(value), "statistic", "mean")


def mean_again(rows: list[tuple[Fraction, int]]) -> Fraction:
    """The mean a second way: value by value as they come, each moving the mean by its share of the distance."""
    at, count = Fraction(0), 0
    for value, weight in rows:
        if weight:
            count += weight
            at += (value - at) * Fraction(weight, count)
    return at


def median(collected: Values | Frequencies, lines: Lines) -> Answer:
    """The middle value, or the mean of the two in the middle."""
    values = in_order(collected)
    count, half = len(values), len(values) // 2
    value = median_of(values)
    if isinstance(collected, Values):
        lines.say(f"in order: {', '.join(map(shown, values))}", starts=True)
        middle = f"the {ordinal(half + 1)} of {count} values" if count % 2 else ""
    else:
        rows = sorted(zip(collected.values, collected.counts, strict=True))
        ordered = "" if tuple(one for one, _ in rows) == collected.values else " of the values in order"
        lines.say(f"cumulative frequencies{ordered}: {', '.join(map(str, accumulate(weight for _, weight in rows)))}",
                  starts=True)  # fmt: skip
        middle = f"the {ordinal(half + 1)} of {count} values" if count % 2 else ""
    if middle:
        lines.say(f"median = {middle}")
    elif isinstance(collected, Frequencies):
        one, other = values[half - 1], values[half]
        lines.say(f"{ordinal(half)} value = {shown(one)}, {ordinal(half + 1)} value = {shown(other)}")
        lines.say(f"median = ({summed([one, other])})/2")
    else:
        lines.say(f"median = ({summed(values[half - 1 : half + 1])})/2")
    lines.say(f"= {shown(value)}", shown(value))
    require(statistics.median(values) == value and _splits(values, value), "the median in two ways")
    return lines.end(number(value), "statistic", "median")


def _splits(values: list[Fraction], value: Fraction) -> bool:
    """Whether no more than half of the values lie on either side."""
    return all(
        2 * sum(side) <= len(values) for side in ((one < value for one in values), (one > value for one in values))
    )


def mode(collected: Values | Frequencies | Categories, lines: Lines) -> Answer:
    """The value or values that occur most often; none where all occur equally often."""
    if isinstance(collected, Categories):
        named = [(name, count, Fraction(0)) for name, count in zip(collected.names, collected.counts, strict=True)]
    else:
        counts: Counter[Fraction] = Counter()
        for value, weight in weighted(collected):
            counts[value] += weight
        named = [(shown(value), count, value) for value, count in sorted(counts.items())]
    most = max(count for _, count, _ in named)
    modes = [(name, value) for name, count, value in named if count == most]
    if not isinstance(collected, Categories):
        again = sorted(statistics.multimode(in_order(collected)))
        require([value for _, value in modes] == again, "the mode in two ways")
    else:
        most_often = statistics.multimode(name for name, count, _ in named for _ in range(count))
        require([name for name, _ in modes] == most_often, "the mode in two ways")
    if len(modes) == len(named) > 1:
        lines.say("every value occurs equally often", starts=True)
        lines.say("there is no mode")
        return Answer("no mode", None, "mode", kind="statistic")
    times = f"{most} times" if most > 1 else "once"
    text = " and ".join(name for name, _ in modes)
    often = "occurs most often, " + times if len(modes) == 1 else f"occur most often, {times} each"
    lines.say(f"{text} {often}", starts=True)
    lines.say(f"mode = {text}", text)
    if len(modes) == 1 and not isinstance(collected, Categories):
        return lines.end(number(modes[0][1]), "statistic", "mode")
    return Answer(", ".join(name for name, _ in modes), None, "mode", kind="statistic")


def value_range(collected: Values | Frequencies, lines: Lines) -> Answer:
    """The largest value less the smallest; values that occur no time do not count."""
    values = in_order(collected)
    if not values:
        raise NoValue("there are no values")
    value = values[-1] - values[0]
    lines.say(f"range = {shown(values[-1])} − {bracketed_if_negative(values[0])}", skill="spread", starts=True)
    lines.say(f"= {shown(value)}", shown(value), "spread")
    require(all(abs(one - other) <= value for one in values[:1] for other in values), "the range in two ways")
    require(max(abs(one - values[0]) for one in values) == value, "the range in two ways")
    return lines.end(number(value), "statistic", "range")


def bracketed_if_negative(value: Fraction) -> str:
    """A number to be taken away."""
    return f"({shown(value)})" if value < 0 else shown(value)
