"""So many of several independent events: paths of a tree, or nCr × pʳ × qⁿ⁻ʳ where the trials are many."""

from collections.abc import Sequence
from fractions import Fraction
from itertools import product
from math import comb, prod

from paperaudit.errors import BudgetExceeded
from paperaudit.maths.collected_values import number
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.write import write
from paperaudit.model.chance_task import Successes
from paperaudit.model.derivation import Answer
from paperaudit.model.expression import Number, Power
from paperaudit.strands.chance.lines import Lines
from paperaudit.strands.numbers.working import require

MOST_TRIALS = 60
_TREE = 4
_MOST_SUMMED = 8


def successes(task: Successes, lines: Lines) -> Answer:
    """The probability; raises BudgetExceeded for more trials than a paper has."""
    lines.skill, lines.decimals = "combined events", task.decimal
    count = len(task.chances)
    if count > MOST_TRIALS:
        raise BudgetExceeded(f"more than {MOST_TRIALS} trials")
    wanted, others = range(task.least, task.most + 1), [*range(task.least), *range(task.most + 1, count + 1)]
    if len(wanted) > len(others) and others:
        value = 1 - _summed(task, others, lines)
        lines.say(f"1 − {lines.shown(1 - value)} = {lines.shown(value)}", lines.shown(value))
    else:
        value = _summed(task, wanted, lines)
    shares = trial_by_trial(task.chances)
    require(sum(shares[task.least : task.most + 1], Fraction(0)) == value, "the probability in two ways")
    return lines.end(value)


def _summed(task: Successes, counts: Sequence[int], lines: Lines) -> Fraction:
    """The probability that the number of events is one of `counts`, with its lines."""
    if len(counts) > _MOST_SUMMED:
        raise BudgetExceeded("a sum of so many terms")
    same = len(set(zip(task.names, task.chances, strict=True))) == 1
    values: list[Fraction] = []
    for count in counts:
        values += [_power(task, count, lines)] if same else _paths(task, count, lines)
    total = sum(values, Fraction(0))
    if len(values) > 1:
        lines.say(f"{' + '.join(map(lines.shown, values))} = {lines.shown(total)}", lines.shown(total))
    return total


def _power(task: Successes, count: int, lines: Lines) -> Fraction:
    """So many of equal trials."""
    trials, chance, name = len(task.chances), task.chances[0], task.names[0]
    factors = [chance] * count + [1 - chance] * (trials - count)
    orders = comb(trials, count)
    value = orders * prod(factors, start=Fraction(1))
    if trials <= _TREE:
        path = ", ".join([name] * count + [f"not {name}"] * (trials - count))
        one = prod(factors, start=Fraction(1))
        lines.say(f"P({path}) = {' × '.join(map(lines.shown, factors))}", starts=True)
        lines.say(f"= {lines.shown(one)}", lines.shown(one))
        if orders > 1:
            lines.say(f"{orders} orders: {orders} × {lines.shown(one)} = {lines.shown(value)}", lines.shown(value))
        return value
    powers = [
        _power_text(lines, base, times) for base, times in ((chance, count), (1 - chance, trials - count)) if times
    ]
    ways = [f"{trials}C{count}"] if 0 < count < trials else []
    lines.say(f"P({count} of {trials}) = {' × '.join([*ways, *powers])}", starts=True)
    if ways:
        lines.say(f"= {' × '.join([str(orders), *powers])}")
    lines.say(f"= {lines.shown(value)}", lines.shown(value))
    return value


def _power_text(lines: Lines, base: Fraction, times: int) -> str:
    """0.7³, or 0.7 for a single factor."""
    shape = number(base) if lines.decimals else whole_or_fraction(base)
    return write(Power(shape, Number(Fraction(times)))) if times > 1 else write(shape)


def _paths(task: Successes, count: int, lines: Lines) -> list[Fraction]:
    """So many of different events, each path of the tree with its line."""
    values = []
    for path in product((True, False), repeat=len(task.chances)):
        if sum(path) != count:
            continue
        factors = [chance if happens else 1 - chance for chance, happens in zip(task.chances, path, strict=True)]
        names = [name if happens else f"not {name}" for name, happens in zip(task.names, path, strict=True)]
        value = prod(factors, start=Fraction(1))
        lines.say(f"P({', '.join(names)}) = {' × '.join(map(lines.shown, factors))}", starts=True)
        lines.say(f"= {lines.shown(value)}", lines.shown(value))
        values.append(value)
    return values


def trial_by_trial(chances: Sequence[Fraction]) -> list[Fraction]:
    """The probabilities of 0, 1, 2 … events, one trial after the other taken in.

    >>> trial_by_trial([Fraction(1, 2), Fraction(1, 2)])
    [Fraction(1, 4), Fraction(1, 2), Fraction(1, 4)]
    """
    shares = [Fraction(1)]
    for chance in chances:
        without = [share * (1 - chance) for share in shares] + [Fraction(0)]
        with_it = [Fraction(0)] + [share * chance for share in shares]
        shares = [one + other for one, other in zip(without, with_it, strict=True)]
    return shares
