"""Quartiles, interquartile range, five-number summary, outliers, variance and standard deviation."""

import statistics
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.collected_values import in_order, number, variance, weighted
from paperaudit.maths.exact import exact_expression, exact_value
from paperaudit.maths.quartiles import CONVENTIONS, WITHOUT_MIDDLE, Three, by_depth, quartiles
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer
from paperaudit.model.expression import Expression, Number, NumberForm, Root
from paperaudit.model.statistics_task import Basis, Frequencies, Grouped, Values
from paperaudit.strands.numbers.working import require
from paperaudit.strands.statistics.averages import bracketed_if_negative
from paperaudit.strands.statistics.lines import LONGEST_SUM, Lines, over, products, shown, summed

_SKILL = "spread"


def _quartiles(collected: Values | Frequencies, lines: Lines) -> tuple[list[Fraction], Three]:
    """The values in order with their quartiles; the convention is named only where others give other numbers."""
    values = in_order(collected)
    if len(values) < 3:
        raise NoValue("quartiles of fewer than three values")
    three = quartiles(values)
    require(by_depth(values) == three, "the quartiles in two ways")
    half = len(values) // 2
    if not any(step.statement.startswith("lower half:") for step in lines.steps):
        if len(values) <= LONGEST_SUM:
            lines.say(f"in order: {', '.join(map(shown, values))}", skill=_SKILL, starts=True)
        lines.say(f"lower half: {_listed(values[:half])}", skill=_SKILL)
        lines.say(f"upper half: {_listed(values[len(values) - half :])}", skill=_SKILL)
    return values, three


def _listed(values: list[Fraction]) -> str:
    return ", ".join(map(shown, values)) if len(values) <= LONGEST_SUM else f"{len(values)} values"


def quartile(collected: Values | Frequencies, lines: Lines, upper: bool) -> Answer:
    """The median of the lower or of the upper half."""
    values, three = _quartiles(collected, lines)
    half = len(values) // 2
    part = values[len(values) - half :] if upper else values[:half]
    name = "upper quartile" if upper else "lower quartile"
    value = three[2 if upper else 0]
    _median_line(name, part, value, _convention(values, 2 if upper else 0), lines)
    return lines.end(number(value), "statistic", name)


def _convention(values: list[Fraction], place: int) -> str:
    """The name of the convention used, where another one gives another number."""
    differ = any(quartiles_by(values)[place] != quartiles(values)[place] for _, quartiles_by in CONVENTIONS)
    return f" ({WITHOUT_MIDDLE})" if differ else ""


def _median_line(name: str, part: list[Fraction], value: Fraction, convention: str, lines: Lines) -> None:
    half = len(part) // 2
    if len(part) % 2:
        lines.say(f"{name} = {shown(value)}{convention}", shown(value), _SKILL)
    else:
        lines.say(f"{name} = ({summed(part[half - 1 : half + 1])})/2{convention}", "", _SKILL)
        lines.say(f"= {shown(value)}", shown(value), _SKILL)


def interquartile_range(collected: Values | Frequencies, lines: Lines) -> Answer:
    """The upper quartile less the lower one."""
    _, (lower, _, upper) = _both(collected, lines)
    value = upper - lower
    require(lower + value == upper, "the interquartile range in two ways")
    lines.say(f"interquartile range = {shown(upper)} − {bracketed_if_negative(lower)}", skill=_SKILL)
    lines.say(f"= {shown(value)}", shown(value), _SKILL)
    return lines.end(number(value), "statistic", "interquartile range")


def _both(collected: Values | Frequencies, lines: Lines) -> tuple[list[Fraction], Three]:
    values, three = _quartiles(collected, lines)
    half = len(values) // 2
    if not any("quartile" in step.statement for step in lines.steps):
        _median_line("lower quartile", values[:half], three[0], _convention(values, 0), lines)
        _median_line("upper quartile", values[len(values) - half :], three[2], _convention(values, 2), lines)
    return values, three


def five_numbers(collected: Values | Frequencies, lines: Lines) -> Answer:
    """Smallest value, lower quartile, median, upper quartile, largest value."""
    values, three = _both(collected, lines)
    require(statistics.median(values) == three[1], "the median in two ways")
    lines.say(f"median = {shown(three[1])}", shown(three[1]), _SKILL)
    texts = [shown(one) for one in (values[0], *three, values[-1])]
    lines.say(f"smallest value = {texts[0]}, largest value = {texts[4]}", skill=_SKILL)
    return Answer(", ".join(texts), None, "five-number summary", kind="statistic")


def fences(collected: Values | Frequencies, lines: Lines) -> tuple[Fraction, Fraction]:
    """The two numbers beyond which values are outliers: 1.5 interquartile ranges from the quartiles (Tukey)."""
    _, (lower, _, upper) = _both(collected, lines)
    reach = Fraction(3, 2) * (upper - lower)
    low, high = lower - reach, upper + reach
    lines.say(f"interquartile range = {shown(upper)} − {bracketed_if_negative(lower)} = {shown(upper - lower)}",
              skill=_SKILL)  # fmt: skip
    lines.say(f"{shown(lower)} − 1.5 × {shown(upper - lower)} = {shown(low)}", shown(low), _SKILL)
    lines.say(f"{shown(upper)} + 1.5 × {shown(upper - lower)} = {shown(high)}", shown(high), _SKILL)
    return low, high


def outliers(collected: Values | Frequencies, lines: Lines) -> Answer:
    """Values beyond the fences."""
    low, high = fences(collected, lines)
    values = in_order(collected)
    lower, _, upper = by_depth(values)
    found = sorted({one for one in values if not low <= one <= high})
    again = sorted({one for one in values if 2 * max(lower - one, one - upper) > 3 * (upper - lower)})
    require(found == again, "outliers in two ways")
    text = ", ".join(map(shown, found)) if found else "no outliers"
    beyond = f"below {shown(low)} or above {shown(high)}"
    lines.say(f"{beyond}: {text if found else 'none'}", text, _SKILL)
    return Answer(text, None, "outliers", kind="statistic")


def deviation(collected: Values | Frequencies | Grouped, lines: Lines, basis: Basis, squared: bool) -> Answer:
    """The variance, or its root; a population's unless a sample's is asked for."""
    rows = weighted(collected)
    count = sum(weight for _, weight in rows)
    sample = basis == "sample"
    if count < 2:
        raise NoValue("the spread of a single value")
    mean = sum((value * weight for value, weight in rows), Fraction(0)) / count
    square = variance(rows, sample)
    squares = [((value - mean) ** 2, weight) for value, weight in rows]
    total = sum((value * weight for value, weight in squares), Fraction(0))
    if isinstance(collected, Grouped):
        lines.say(f"mid-values: {', '.join(shown(value) for value, _ in rows)}", skill=_SKILL, starts=True)
    if isinstance(collected, Values):
        lines.say(f"mean = ({summed(collected.values)})/{count} = {shown(mean)}", shown(mean), _SKILL, starts=True)
        lines.say(f"squares of the distances from it: {', '.join(shown(value) for value, _ in squares)}", "", _SKILL)
        lines.say(f"sum of squares = {shown(total)}", shown(total), _SKILL)
    else:
        lines.say(f"mean = ({products(rows)})/{count} = {shown(mean)}", shown(mean), _SKILL, starts=True)
        lines.say(f"squares of the distances from it: {', '.join(shown(value) for value, _ in squares)}", "", _SKILL)
        lines.say(f"sum of squares = {products(squares)} = {shown(total)}", shown(total), _SKILL)
    kind = "n − 1, of a sample" if sample else "n, of a population"
    below = count - 1 if sample else count
    lines.say(f"variance = {over(total, below)} ({kind})", "", _SKILL)
    lines.say(f"= {shown(square)}", shown(square), _SKILL)
    _confirmed(rows, square, sample)
    if squared:
        return lines.end(number(square), "statistic", "variance", unit=False)
    root = exact_expression(exact_value(Root(Number(square, NumberForm.FRACTION))))
    value: Expression = number(root.value) if isinstance(root, Number) else root
    lines.say(f"standard deviation = √{shown(square)}" if square.denominator == 1 or "/" not in shown(square)
              else f"standard deviation = √({shown(square)})", "", _SKILL)  # fmt: skip
    if isinstance(root, Number):
        lines.say(f"= {write(value)}", write(value), _SKILL)
    return lines.end(value, "statistic", "standard deviation")


def _confirmed(rows: list[tuple[Fraction, int]], square: Fraction, sample: bool) -> None:
    """A second way: from the distances between all pairs of values, without any mean."""
    count = sum(weight for _, weight in rows)
    apart = sum(
        (weight * other_weight * (value - other) ** 2 for value, weight in rows for other, other_weight in rows),
        Fraction(0),
    )
    require(apart / (2 * count * (count - 1 if sample else count)) == square, "the variance in two ways")
