"""The sign of an expression between its critical values, and the intervals in which it is right."""

from collections.abc import Callable, Sequence
from fractions import Fraction
from itertools import pairwise

from paperaudit.maths.algebra.intervals import Interval, Intervals, end_size, interval_text, joined
from paperaudit.maths.write import write
from paperaudit.model.expression import Expression
from paperaudit.strands.algebra.working import Working


def by_signs(
    roots: Sequence[Expression],
    poles: Sequence[Expression],
    sign: str,
    letter: str,
    value_of: Callable[[Fraction], Fraction],
    working: Working,
) -> Intervals:
    """The intervals between critical values in which the sign is right."""
    critical = sorted({end_size(one): one for one in (*roots, *poles)}.items(), key=lambda pair: pair[0] or 0)
    ends = [one for _, one in critical]
    sizes = [size or Fraction(0) for size, _ in critical]
    forbidden = {end_size(one) for one in poles}
    if ends:
        working.say(f"critical values: {', '.join(f'{letter} = {write(one)}' for one in ends)}")
    samples = _between(sizes)
    signs = [value_of(at) > 0 for at in samples]
    shown = [Interval(low, high) for low, high in pairwise([None, *ends, None])]
    working.say(", ".join(
        f"{'positive' if positive else 'negative'} for {interval_text(interval, letter) if ends else 'every number'}"
        for positive, interval in zip(signs, shown, strict=True)
    ))  # fmt: skip
    wanted, closed = sign in ">≥", sign in "≤≥"
    found = [interval for positive, interval in zip(signs, shown, strict=True) if positive == wanted]
    if closed:
        found += [
            Interval(one, one, True, True) for one, size in zip(ends, sizes, strict=True) if size not in forbidden
        ]
    return joined(found)


def _between(sizes: Sequence[Fraction]) -> list[Fraction]:
    if not sizes:
        return [Fraction(0)]
    inner = [(one + other) / 2 for one, other in pairwise(sizes)]
    return [sizes[0] - 1, *inner, sizes[-1] + 1]


def compare_sizes(one: Fraction, sign: str, other: Fraction) -> bool:
    """Whether a sign holds between two numbers."""
    match sign:
        case "<":
            return one < other
        case ">":
            return one > other
        case "≤":
            return one <= other
        case "≥":
            return one >= other
    return one == other if sign == "=" else one != other
