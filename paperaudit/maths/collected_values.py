"""Exact sums over collected values: expanded lists, variances, and what another convention would give."""

import itertools
from collections.abc import Iterator, Sequence
from fractions import Fraction

from paperaudit.errors import BudgetExceeded
from paperaudit.maths.quartiles import CONVENTIONS, Three
from paperaudit.model.expression import Expression, Number, NumberForm, Root
from paperaudit.model.statistics_task import ClassInterval, Collected, Frequencies, Grouped, Summary, Values

MOST_EXPANDED = 20_000
POPULATION = "the sum of squares divided by n (population)"
SAMPLE = "the sum of squares divided by n − 1 (sample)"


def in_order(collected: Values | Frequencies) -> list[Fraction]:
    """Every value, from the smallest; raises BudgetExceeded for thousands of them."""
    if isinstance(collected, Values):
        return sorted(collected.values)
    if sum(collected.counts) > MOST_EXPANDED:
        raise BudgetExceeded("thousands of values")
    rows = zip(collected.values, collected.counts, strict=True)
    return sorted(value for value, count in rows for _ in range(count))


def weighted(collected: Values | Frequencies | Grouped) -> list[tuple[Fraction, int]]:
    """Values with their frequencies; of a class its mid-value."""
    match collected:
        case Values(values):
            return [(value, 1) for value in values]
        case Frequencies(values, counts):
            return list(zip(values, counts, strict=True))
        case Grouped(classes, counts):
            return [((one.low + one.high) / 2, count) for one, count in zip(classes, counts, strict=True)]


def variance(rows: Sequence[tuple[Fraction, int]], sample: bool) -> Fraction:
    """The mean square distance from the mean; of a sample divided by n − 1. Raises ZeroDivisionError for one value.

    >>> variance([(Fraction(1), 1), (Fraction(3), 1)], sample=True)
    Fraction(2, 1)
    """
    count = sum(weight for _, weight in rows)
    mean = sum((value * weight for value, weight in rows), Fraction(0)) / count
    squares = sum(((value - mean) ** 2 * weight for value, weight in rows), Fraction(0))
    return squares / (count - 1 if sample else count)


def boundaries(classes: Sequence[ClassInterval]) -> list[tuple[Fraction, Fraction]] | None:
    """The ends of classes that meet; whole-number classes one apart (10–19, 20–29) meet half-way. None for gaps."""
    gaps = {other.low - one.high for one, other in itertools.pairwise(classes)}
    if gaps <= {Fraction(0)}:
        return [(one.low, one.high) for one in classes]
    whole = all(one.low.denominator == one.high.denominator == 1 for one in classes)
    if gaps != {Fraction(1)} or not whole:
        return None
    return [(one.low - Fraction(1, 2), one.high + Fraction(1, 2)) for one in classes]


def interpolated(grouped: Grouped, place: Fraction) -> Fraction | None:
    """The value below which `place` of the values lie, each class evenly spread; None where classes leave gaps."""
    ends, below = boundaries(grouped.classes), Fraction(0)
    if ends is None:
        return None
    for (low, high), count in zip(ends, grouped.counts, strict=True):
        if count and place <= below + count:
            return low + (place - below) / count * (high - low)
        below += count
    return None


def number(value: Fraction) -> Number:
    """A value as it is printed: whole, else a decimal that ends, else a fraction."""
    from paperaudit.maths.number_forms import as_decimal, whole_or_fraction

    return as_decimal(value) or whole_or_fraction(value)


def other_values(task: Summary, measure: str) -> Iterator[tuple[str, Expression]]:
    """What a measure is by other conventions than the one derived, with the convention's name."""
    collected = task.collected
    if measure in ("variance", "standard deviation") and not task.basis and _weighs(collected):
        assert isinstance(collected, Values | Frequencies | Grouped)
        rows = weighted(collected)
        if sum(count for _, count in rows) > 1:
            other = variance(rows, sample=True)
            yield SAMPLE, number(other) if measure == "variance" else Root(Number(other, NumberForm.FRACTION))
    if isinstance(collected, Grouped):
        yield from _other_places(collected, measure)
    if isinstance(collected, Values | Frequencies):
        yield from _other_quartiles(in_order(collected), measure)


def _weighs(collected: Collected) -> bool:
    return isinstance(collected, Values | Frequencies | Grouped)


def _other_quartiles(values: Sequence[Fraction], measure: str) -> Iterator[tuple[str, Expression]]:
    picked = {"lower quartile": 0, "upper quartile": 2}
    if len(values) < 3 or measure not in (*picked, "interquartile range"):
        return
    for name, quartiles_by in CONVENTIONS[1:]:
        three: Three = quartiles_by(values)
        yield name, number(three[picked[measure]] if measure in picked else three[2] - three[0])


def _other_places(grouped: Grouped, measure: str) -> Iterator[tuple[str, Expression]]:
    """Interpolating to the (n + 1)/2-th value in place of the n/2-th."""
    shares = {"lower quartile": 1, "median": 2, "upper quartile": 3}
    count = sum(grouped.counts)

    def at(quarters: int) -> Fraction | None:
        return interpolated(grouped, Fraction(quarters * (count + 1), 4))

    if measure in shares and (value := at(shares[measure])) is not None:
        yield "interpolated to the place of n + 1 in place of n", number(value)
    if measure == "interquartile range" and (upper := at(3)) is not None and (lower := at(1)) is not None:
        yield "interpolated to the places of n + 1 in place of n", number(upper - lower)
