"""Quartiles under the conventions that schools and programs use, each by its name."""

from collections.abc import Callable, Sequence
from fractions import Fraction
from typing import TypeAlias

Three: TypeAlias = tuple[Fraction, Fraction, Fraction]
"""Lower quartile, median, upper quartile."""

WITHOUT_MIDDLE = "the medians of the two halves, the middle value in neither"
WITH_MIDDLE = "the medians of the two halves, the middle value in both"
PLACES_N_PLUS_1 = "the values at the places (n + 1)/4 and 3(n + 1)/4, interpolated"
PLACES_N_MINUS_1 = "the values at the places 1 + (n − 1)/4 and 1 + 3(n − 1)/4, interpolated"
PLACES_N = "the values at the places n/4 and 3n/4, rounded up, or half-way to the next where they are whole"
NEAREST_PLACE = "the values at the places nearest to (n + 1)/4 and 3(n + 1)/4"


def median_of(values: Sequence[Fraction]) -> Fraction:
    """The middle of values in order, or the mean of the two in the middle; raises IndexError for none.

    >>> median_of([Fraction(1), Fraction(2), Fraction(4), Fraction(9)])
    Fraction(3, 1)
    """
    half = len(values) // 2
    return values[half] if len(values) % 2 else (values[half - 1] + values[half]) / 2


def _without_middle(values: Sequence[Fraction]) -> Three:
    half = len(values) // 2
    return median_of(values[:half]), median_of(values), median_of(values[len(values) - half :])


def _with_middle(values: Sequence[Fraction]) -> Three:
    half = (len(values) + 1) // 2
    return median_of(values[:half]), median_of(values), median_of(values[len(values) - half :])


def _at(values: Sequence[Fraction], place: Fraction) -> Fraction:
    """The value at a place counted from 1, between two values in proportion."""
    place = min(max(place, Fraction(1)), Fraction(len(values)))
    below = place.__floor__()
    above = min(below + 1, len(values))
    return values[below - 1] + (values[above - 1] - values[below - 1]) * (place - below)


def _n_plus_1(values: Sequence[Fraction]) -> Three:
    step = Fraction(len(values) + 1, 4)
    return _at(values, step), median_of(values), _at(values, 3 * step)


def _n_minus_1(values: Sequence[Fraction]) -> Three:
    step = Fraction(len(values) - 1, 4)
    return _at(values, 1 + step), median_of(values), _at(values, 1 + 3 * step)


def _n(values: Sequence[Fraction]) -> Three:
    def found(place: Fraction) -> Fraction:
        whole = place.__ceil__()
        return (values[whole - 1] + values[whole]) / 2 if place == whole else values[whole - 1]

    return found(Fraction(len(values), 4)), median_of(values), found(Fraction(3 * len(values), 4))


def _nearest(values: Sequence[Fraction]) -> Three:
    def found(place: Fraction) -> Fraction:
        return values[min(max((place + Fraction(1, 2)).__floor__(), 1), len(values)) - 1]

    step = Fraction(len(values) + 1, 4)
    return found(step), median_of(values), found(3 * step)


CONVENTIONS: tuple[tuple[str, Callable[[Sequence[Fraction]], Three]], ...] = (
    (WITHOUT_MIDDLE, _without_middle),
    (WITH_MIDDLE, _with_middle),
    (PLACES_N_PLUS_1, _n_plus_1),
    (PLACES_N_MINUS_1, _n_minus_1),
    (PLACES_N, _n),
    (NEAREST_PLACE, _nearest),
)
"""Moore and McCabe's; Tukey's hinges; definitions 6, 7 and 2 of Hyndman and Fan, Sample Quantiles in Statistical
Packages, The American Statistician 50 (1996); the rounded place of school books (common practice, no source)."""


def quartiles(values: Sequence[Fraction], convention: str = WITHOUT_MIDDLE) -> Three:
    """The quartiles of values in order by a named convention. Needs at least two values.

    >>> quartiles([Fraction(n) for n in range(1, 8)])
    (Fraction(2, 1), Fraction(4, 1), Fraction(6, 1))
    """
    return dict(CONVENTIONS)[convention](values)


def by_depth(values: Sequence[Fraction]) -> Three:
    """The quartiles of WITHOUT_MIDDLE by counting the depth from either end, as a second way."""
    count = len(values)

    def at_depth(twice: int, ordered: Sequence[Fraction]) -> Fraction:
        low, high = twice // 2, (twice + 1) // 2
        return (ordered[low - 1] + ordered[high - 1]) / 2

    down = list(reversed(values))
    return at_depth(count // 2 + 1, values), at_depth(count + 1, values), at_depth(count // 2 + 1, down)
