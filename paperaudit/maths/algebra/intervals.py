"""Sets of real numbers as unions of intervals with exact ends, written and compared."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.same_value import number_of, same_value
from paperaudit.maths.write import write
from paperaudit.model.expression import Expression


@dataclass(frozen=True, slots=True)
class Interval:
    """The numbers between two ends; None is no end on that side; an end is in the interval where it says so."""

    low: Expression | None
    high: Expression | None
    has_low: bool = False
    has_high: bool = False

    def holds(self, value: Fraction) -> bool:
        """Whether a number is in it."""
        low, high = end_size(self.low), end_size(self.high)
        above = low is None or value > low or (self.has_low and value == low)
        below = high is None or value < high or (self.has_high and value == high)
        return above and below


Intervals = tuple[Interval, ...]
EVERYTHING: Intervals = (Interval(None, None),)


def end_size(end: Expression | None) -> Fraction | None:
    """The size of an end, None where there is no end; raises NoValue for an end without a value."""
    if end is None:
        return None
    number = number_of(end)
    if number is None:
        raise NoValue(f"{write(end)} has no value")
    return Fraction(number)


def interval_text(interval: Interval, letter: str) -> str:
    """An interval as an inequality: −1 ≤ x < 4, x > 2, x = 3."""
    low, high = interval.low, interval.high
    if low is not None and high is not None:
        if same_value(low, high):
            return f"{letter} = {write(low)}"
        return f"{write(low)} {_sign(interval.has_low)} {letter} {_sign(interval.has_high)} {write(high)}"
    if low is not None:
        return f"{letter} {'≥' if interval.has_low else '>'} {write(low)}"
    if high is not None:
        return f"{letter} {_sign(interval.has_high)} {write(high)}"
    return "all real numbers"


def _sign(closed: bool) -> str:
    return "≤" if closed else "<"


def text_of(intervals: Intervals, letter: str) -> str:
    """A union as a pupil writes it: x < −2 or x > 3; x ≠ 2 where one number is left out."""
    if not intervals:
        return "no solution"
    if len(intervals) == 2 and _leaves_out_one(intervals):
        end = intervals[0].high
        assert end is not None
        return f"{letter} ≠ {write(end)}"
    return " or ".join(interval_text(interval, letter) for interval in intervals)


def _leaves_out_one(intervals: Intervals) -> bool:
    one, other = intervals
    open_outside = one.low is None and other.high is None and not one.has_high and not other.has_low
    return open_outside and one.high is not None and other.low is not None and bool(same_value(one.high, other.low))


def both(one: Intervals, other: Intervals) -> Intervals:
    """The numbers in both unions."""
    found = (_overlap(first, second) for first in one for second in other)
    return joined([interval for interval in found if interval is not None])


def _overlap(one: Interval, other: Interval) -> Interval | None:
    low, has_low = _later(one.low, one.has_low, other.low, other.has_low, 1)
    high, has_high = _later(one.high, one.has_high, other.high, other.has_high, -1)
    bottom, top = end_size(low), end_size(high)
    if bottom is not None and top is not None and (bottom > top or (bottom == top and not (has_low and has_high))):
        return None
    return Interval(low, high, has_low, has_high)


def _later(
    one: Expression | None, has_one: bool, other: Expression | None, has_other: bool, sign: int
) -> tuple[Expression | None, bool]:
    first, second = end_size(one), end_size(other)
    if first is None:
        return other, has_other
    if second is None or first * sign > second * sign:
        return one, has_one
    if first == second:
        return one, has_one and has_other
    return other, has_other


def joined(intervals: Sequence[Interval]) -> Intervals:
    """In order, intervals that touch or overlap made one."""
    found: list[Interval] = []
    for interval in sorted(intervals, key=lambda one: (one.low is not None, end_size(one.low) or 0, not one.has_low)):
        if found and _touch(found[-1], interval):
            found[-1] = _union(found[-1], interval)
        else:
            found.append(interval)
    return tuple(found)


def _touch(one: Interval, other: Interval) -> bool:
    end, start = end_size(one.high), end_size(other.low)
    if end is None or start is None:
        return True
    return start < end or (start == end and (one.has_high or other.has_low))


def _union(one: Interval, other: Interval) -> Interval:
    first, second = end_size(one.high), end_size(other.high)
    if first is None or (second is not None and first > second):
        return one
    closed = other.has_high or (first == second and one.has_high)
    return Interval(one.low, other.high, one.has_low, closed)


def same_set(one: Intervals, other: Intervals) -> bool | None:
    """Whether two unions are the same set; None where an end cannot be compared."""
    if len(one) != len(other):
        return False
    for first, second in zip(one, other, strict=True):
        if (first.has_low, first.has_high) != (second.has_low, second.has_high):
            return False
        for end, against in ((first.low, second.low), (first.high, second.high)):
            if (end is None) != (against is None):
                return False
            if end is None or against is None:
                continue
            same = same_value(end, against)
            if not same:
                return same
    return True
