"""The second way for a story: the sizes found are put back into its sentences, without its equations."""

from collections.abc import Iterator, Mapping
from fractions import Fraction
from itertools import pairwise

from paperaudit.errors import NoValue
from paperaudit.model.story import (
    Added,
    Amount,
    Claim,
    Consecutive,
    Divided,
    Extreme,
    Figures,
    Gap,
    Job,
    Later,
    Mover,
    Multiplied,
    Named,
    NotLess,
    Same,
    Scaled,
    Size,
    Squared,
    StoryTask,
    Stream,
    Taken,
)

PUT_BACK = "put back into every sentence of the story: each of them holds"
Values = Mapping[str, Fraction]


def broken(task: StoryTask, values: Values) -> tuple[str, ...]:
    """The sentences that do not hold for these values of everything that is sought."""
    return tuple(dict.fromkeys(said.text for said in task.said if not holds(said.claim, values)))


def holds(claim: Claim, values: Values) -> bool:
    """Whether what a sentence claims is so: ages, roads, streams and jobs are gone through, not computed by formula."""
    match claim:
        case Same(left, right):
            return measured(left, values) == measured(right, values)
        case Consecutive(keys, step, parity):
            row = [values[key] for key in keys]
            whole = all(value.denominator == 1 for value in row)
            kinds = {"": (0, 1), "even": (0,), "odd": (1,)}[parity]
            return whole and all(b - a == step for a, b in pairwise(row)) and all(value % 2 in kinds for value in row)
        case NotLess(key, than):
            return values[key] >= values[than]
        case Gap(first, second, time, distance):
            clock = measured(time, values)
            return _place(first, clock, values) - _place(second, clock, values) == measured(distance, values)
        case Stream(speed, flow, direction, distance, time):
            carried = measured(flow, values) * measured(time, values) * direction
            own = measured(speed, values) * measured(time, values)
            return own + carried == measured(distance, values)
        case Job(workers):
            done = Fraction(0)
            for alone, hours, sign in workers:
                done += sign * _over(Fraction(1), measured(alone, values)) * measured(hours, values)
            return done == 1


def _place(mover: Mover, clock: Fraction, values: Values) -> Fraction:
    """Where somebody is on the road when the clock shows a time; who has not left is still at the start."""
    under_way = max(clock - measured(mover.late, values), Fraction(0))
    return measured(mover.start, values) + mover.direction * measured(mover.speed, values) * under_way


def measured(size: Size, values: Values) -> Fraction:
    """The number that a size comes to. Raises NoValue for a division by nought."""
    match size:
        case Amount(number):
            return number.value
        case Named(key):
            return values[key]
        case Later(key, years):
            return values[key] + years.value
        case Scaled(factor, inner):
            return factor.value * measured(inner, values)
        case Added(sizes):
            return sum((measured(one, values) for one in sizes), Fraction(0))
        case Taken(one, other):
            return measured(one, values) - measured(other, values)
        case Multiplied(one, other):
            return measured(one, values) * measured(other, values)
        case Divided(one, other):
            return _over(measured(one, values), measured(other, values))
        case Squared(inner):
            return measured(inner, values) ** 2
        case Extreme(keys, largest):
            return (max if largest else min)(values[key] for key in keys)
        case Figures(keys):
            return Fraction(_written(tuple(values[key] for key in keys)))


def _written(figures: tuple[Fraction, ...]) -> int:
    if any(figure.denominator > 1 or not 0 <= figure <= 9 for figure in figures):
        raise NoValue("a figure that is not one of 0 to 9")
    return int("".join(str(int(figure)) for figure in figures))


def _over(above: Fraction, below: Fraction) -> Fraction:
    if not below:
        raise NoValue("a division by nought")
    return above / below


def faults(task: StoryTask, values: Values) -> Iterator[str]:
    """Why these values cannot be what the story speaks of: a negative length, half a ticket."""
    from paperaudit.maths.number_forms import as_decimal, whole_or_fraction
    from paperaudit.maths.write import write

    for sought in task.sought:
        value = values[sought.key]
        said = f"{sought.meaning} would be {write(as_decimal(value) or whole_or_fraction(value))}"
        if sought.sign == "positive" and value <= 0:
            yield f"{said}, and {sought.kind} is positive"
        elif sought.sign == "not negative" and value < 0:
            yield f"{said}, and {sought.kind} cannot be negative"
        elif sought.whole and value.denominator != 1:
            yield f"{said}, and {sought.kind} must be whole"
    for line in task.said:
        if isinstance(line.claim, Consecutive) and line.claim.parity:
            row = [values[key] for key in line.claim.keys]
            wrong = [value for value in row if value.denominator > 1 or value % 2 != (line.claim.parity == "odd")]
            if wrong:
                yield f"{write(whole_or_fraction(wrong[0]))} is not an {line.claim.parity} number"
        if isinstance(line.claim, NotLess) and not holds(line.claim, values):
            yield line.text
        if isinstance(line.claim, Same):
            for size in (line.claim.left, line.claim.right):
                yield from _no_figures(size, values)


def _no_figures(size: Size, values: Values) -> Iterator[str]:
    if isinstance(size, Figures) and (any(not 0 <= values[key] <= 9 for key in size.keys) or not values[size.keys[0]]):
        yield "a figure would not be one of 0 to 9, or the number would begin with 0"
