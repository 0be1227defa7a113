"""Relative frequencies, and the independence of two properties that are counted in a group."""

from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.model.chance_task import AreCounted, Observed
from paperaudit.model.derivation import Answer, Impossible
from paperaudit.strands.chance.lines import Lines, share
from paperaudit.strands.numbers.working import require
from paperaudit.strands.statistics.lines import shown


def relative(task: Observed, lines: Lines) -> Answer | Impossible:
    """How often of how many times; Impossible for more often than it was tried."""
    if task.count > task.whole:
        said = f"{task.count} of {task.whole}"
        return Impossible(tuple(given.text for given in lines.givens), (said, f"{task.count} ≤ {task.whole}: false"))
    if not task.whole:
        raise NoValue("no trials")
    value = Fraction(task.count, task.whole)
    before = share(task.count, task.whole)
    lines.say(f"relative frequency = {before}", before, starts=True)
    if lines.shown(value) != before:
        lines.say(f"= {lines.shown(value)}", lines.shown(value))
    require(1 - Fraction(task.whole - task.count, task.whole) == value, "the relative frequency in two ways")
    if not task.trials:
        return lines.end(value)
    expected = value * task.trials
    require(expected * task.whole == Fraction(task.count * task.trials), "the expected number in two ways")
    lines.say(f"{lines.shown(value)} × {task.trials} = {shown(expected)}", shown(expected))
    lines.decimals = True
    return lines.end(expected)


def are_counted(task: AreCounted, lines: Lines) -> Answer | Impossible:
    """Whether P(A) × P(B) = P(A and B) in a table of counts."""
    if not task.whole or not task.first:
        raise NoValue("nobody has the property")
    lines.skill = "combined events"
    one, other = task.names
    shares = [Fraction(count, task.whole) for count in (task.first, task.second, task.both)]
    for name, count, value in zip((one, other, f"{one} and {other}"), (task.first, task.second, task.both), shares,
                                  strict=True):  # fmt: skip
        before = share(count, task.whole)
        tail = f" = {lines.shown(value)}" if lines.shown(value) != before else ""
        lines.say(f"P({name}) = {before}{tail}", lines.shown(value), starts=True)
    product = shares[0] * shares[1]
    text = f"{lines.shown(shares[0])} × {lines.shown(shares[1])} = {lines.shown(product)}"
    lines.say(f"P({one}) × P({other}) = {text}", lines.shown(product))
    yes = product == shares[2]
    lines.say(f"{lines.shown(product)} {'=' if yes else '≠'} {lines.shown(shares[2])}, "
              f"so they are {'' if yes else 'not '}independent")  # fmt: skip
    require((Fraction(task.both, task.first) == shares[1]) == yes, "independence in two ways")
    return Answer("yes" if yes else "no")
