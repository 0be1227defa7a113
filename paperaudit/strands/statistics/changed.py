"""What becomes of averages and of spread where every value is multiplied and added to in one way."""

import statistics
from collections.abc import Callable, Sequence
from fractions import Fraction

from paperaudit.model.derivation import Derived
from paperaudit.model.reading import Reading
from paperaudit.model.reckoning import Reckoning
from paperaudit.strands.numbers.working import require
from paperaudit.strands.ratios.plain_amounts import answered, bare_of, rational, text_of, working_of

_SPREAD = ("range", "interquartile range", "standard deviation", "variance")
_MEASURED: dict[str, Callable[[Sequence[Fraction]], Fraction]] = {
    "mean": statistics.mean,
    "median": statistics.median,
    "mode": statistics.mode,
    "range": lambda values: max(values) - min(values),
    "variance": statistics.pvariance,
}
"""Measures of a list that is made up, for the second way."""


def changed(task: Reckoning, reading: Reading) -> Derived:
    """The new measures; measured again on values made up with the old ones."""
    assert reading.ask is not None
    working = working_of("spread" if task.wanted[0] in _SPREAD else "averages", reading)
    times, plus = (rational(value) for name in ("times", "plus") for value in task.all_of(name))
    answers = []
    for name in task.wanted:
        value, unit = bare_of(task.all_of(name)[0])
        if name == "variance":
            new, row = times**2 * value, f"{text_of(times)}² × {text_of(value)}"
        elif name in _SPREAD:
            new, row = abs(times) * value, f"{text_of(times)} × {text_of(value)}"
        else:
            sign = "+" if plus >= 0 else "−"
            new = times * value + plus
            row = f"{text_of(times)} × {text_of(value)} {sign} {text_of(abs(plus))}"
            row = row if plus else row.rsplit(" ", 2)[0]
            row = row.removeprefix("1 × ")
        if name in _SPREAD and times == 1:
            row = f"{text_of(value)}, as every value is moved by the same amount"
        working.say(f"new {name} = {row}", row, working.used)
        require(_made_up(name, value, times, plus) == new, f"the new {name} in two ways")
        answers.append(answered(new, unit, reading.ask, working))
    return working.derived(*answers, confirmed_by="measured on values made up with the old measures and changed")


def _made_up(name: str, value: Fraction, times: Fraction, plus: Fraction) -> Fraction:
    """The measure of changed values that had the told one: all alike for an average, apart for a spread."""
    if name in ("mean", "median", "mode", "lower quartile", "upper quartile"):
        return _MEASURED.get(name, statistics.median)([times * one + plus for one in (value,) * 3])
    pair = (Fraction(0), Fraction(2))
    measure = _MEASURED["variance" if name == "variance" else "range"]
    return value * measure([times * one + plus for one in pair]) / measure(pair)
