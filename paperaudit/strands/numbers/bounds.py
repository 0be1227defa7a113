"""Bounds of rounded and truncated numbers, error intervals, and bounds of what is worked out with them."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import product

from paperaudit.errors import NoValue
from paperaudit.maths.exact import rational_value
from paperaudit.maths.measure import bare
from paperaudit.maths.number_forms import as_decimal, whole_or_fraction
from paperaudit.maths.postfix import agree, decimal_value
from paperaudit.maths.rounding import nearest_multiple, step_of
from paperaudit.maths.write import write
from paperaudit.model.accuracy_task import Bound, RoundedTo
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import (
    Expression,
    Letter,
    Measured,
    Number,
    NumberForm,
    Power,
    Product,
    Quotient,
    Sum,
    letters_of,
)
from paperaudit.model.reading import Reading
from paperaudit.strands.calculating import calculated
from paperaudit.strands.finishing import finished
from paperaudit.strands.numbers.working import Working, exact, number, require
from paperaudit.strands.substitution import substituted

SKILL = "bounds"
_INSIDE = (Fraction(1, 7), Fraction(1, 2), Fraction(5, 6))
_MOST_LETTERS = 4


@dataclass(frozen=True, slots=True)
class Interval:
    """What a rounded size may be: from `low` up to, and not including, `high`."""

    name: str
    low: Fraction
    high: Fraction
    unit: str = ""
    said: str = ""

    def text(self, value: Fraction) -> str:
        """A value of it as it is printed, with its unit."""
        return write(self.expression(value))

    def expression(self, value: Fraction) -> Expression:
        """A value of it with its unit."""
        amount = as_decimal(value) or whole_or_fraction(value)
        return Measured(amount, self.unit) if self.unit else amount


def bound(task: Bound, reading: Reading) -> Derived:
    """The bounds asked for, of a number or of what is worked out with several."""
    known = {fact.name: (fact, given.text) for given in reading.givens for fact in given.facts
             if isinstance(fact, RoundedTo)}  # fmt: skip
    task = _of_shape(task, tuple(fact for fact, _ in known.values()))
    letters = letters_of(task.of) if task.of is not None else ()
    if task.accuracy is None and task.of is not None and letters != (getattr(task.of, "name", None),):
        return _of_calculation(task, known, reading)
    fact, used = _single(task, known, letters)
    working = Working(SKILL, used)
    interval = _interval(fact, working, used[0] if used else "")
    return _answered(task, interval, working)


def _of_shape(task: Bound, facts: tuple[RoundedTo, ...]) -> Bound:
    """The area of a rectangle as length × width, where that is what is asked for."""
    shapes = {fact.shape for fact in facts if fact.shape}
    formula = FORMULAS.get((next(iter(shapes)), task.name)) if len(shapes) == 1 and task.of is None else None
    return task if formula is None else replace(task, of=formula)


def _named(*names: str) -> tuple[Expression, ...]:
    return tuple(map(Letter, names))


_TWO, _FOUR = number(2), number(4)
FORMULAS: Mapping[tuple[str, str], Expression] = {
    ("rectangle", "area"): Product(_named("length", "width"), "×"),
    ("rectangle", "perimeter"): Product((_TWO, Sum(_named("length", "width"))), "×"),
    ("square", "area"): Power(Letter("side"), _TWO),
    ("square", "perimeter"): Product((_FOUR, Letter("side")), "×"),
    ("triangle", "area"): Product((Number(Fraction(1, 2), NumberForm.FRACTION), *_named("base", "height")), "×"),
    ("circle", "area"): Product((Letter("π"), Power(Letter("radius"), _TWO)), "×"),
    ("circle", "circumference"): Product((_TWO, *_named("π", "radius")), "×"),
    ("cuboid", "volume"): Product(_named("length", "width", "height"), "×"),
    ("cube", "volume"): Power(Letter("side"), number(3)),
    ("journey", "speed"): Quotient(Letter("distance"), Letter("time")),
    ("mass and volume", "density"): Quotient(Letter("mass"), Letter("volume")),
}
"""What is worked out with the sizes of a shape, by shape and quantity."""


def _single(
    task: Bound, known: Mapping[str, tuple[RoundedTo, str]], letters: tuple[str, ...]
) -> tuple[RoundedTo, tuple[str, ...]]:
    """The one size that a bound is asked of: stated in the ask, named, or the only one that is given."""
    if task.accuracy is not None and task.of is not None:
        return RoundedTo(task.name, task.of, task.accuracy), ()
    if letters and letters[0] in known:
        fact, text = known[letters[0]]
        return fact, (text,)
    if len(known) != 1 or (letters and next(iter(known))):
        raise NoValue("which of the givens the bound is asked of is not said")
    ((fact, text),) = known.values()
    return fact, (text,)


def _interval(fact: RoundedTo, working: Working, said: str) -> Interval:
    """The interval of a size, with its lines; the value must be one that the accuracy can give."""
    amount, unit = bare(fact.value)
    value = exact(amount)
    step = step_of(fact.accuracy, value, unit)
    if nearest_multiple(value, step) != value:
        raise NoValue(f"{write(fact.value)} is not a number to that accuracy")
    uses = (said,) if said else working.used
    shown = Interval(fact.name, value, value + step, unit, said)
    if fact.truncated:
        require(value // step * step == value, f"{write(fact.value)} as a truncated number")
        return Interval(fact.name, value, value + step, unit, said)
    half = step / 2
    working.say(f"{shown.text(step)} ÷ 2 = {shown.text(half)}", shown.text(half), uses)
    found = Interval(fact.name, value - half, value + half, unit, said)
    inside = [found.low, found.low + step * Fraction(3, 7), found.high - step / 1000]
    # Above a power of ten the step of significant figures grows, below one it shrinks: the step is the value's own.
    rounds = [nearest_multiple(one, step) for one in inside if value >= 0]
    require(all(one == value for one in rounds), f"what rounds to {write(fact.value)}")
    require(nearest_multiple(found.high, step) != value or value < 0, f"what rounds to {write(fact.value)}")
    return found


def _answered(task: Bound, interval: Interval, working: Working) -> Derived:
    middle = (interval.low + interval.high) / 2
    half = middle - interval.low
    require(interval.low < interval.high, "the lower bound is below the upper one")
    truncated = not working.steps
    texts = {
        "lower": interval.text(interval.low)
        if truncated
        else f"{interval.text(middle)} − {interval.text(half)} = {interval.text(interval.low)}",
        "upper": f"{interval.text(middle)} + {interval.text(half)} = {interval.text(interval.high)}"
        if not truncated
        else interval.text(interval.high),
    }
    wanted = ("lower", "upper") if task.which in ("both", "interval") else (task.which,)
    for which in wanted:
        value = interval.low if which == "lower" else interval.high
        working.say(f"{which} bound = {texts[which]}", interval.text(value))
    check = "values inside the interval rounded again, and its upper end rounds up"
    if task.which == "interval":
        name = task.name or interval.name or "x"
        text = f"{interval.text(interval.low)} ≤ {name} < {interval.text(interval.high)}"
        working.conclude(text, text)
        return working.derived(Answer(text, kind="error interval"), confirmed_by=check)
    ends = {"lower": min(interval.low, interval.high), "upper": max(interval.low, interval.high)}
    answers = [
        Answer(interval.text(value), interval.expression(value), kind="bound" if len(wanted) == 1 else "bounds")
        for which in wanted
        for value in [ends[which]]
    ]
    return working.derived(*answers, confirmed_by=check)


def _of_calculation(task: Bound, known: Mapping[str, tuple[RoundedTo, str]], reading: Reading) -> Derived:
    """A bound of an expression: which bound of each letter gives it, and its value there."""
    assert task.of is not None and reading.ask is not None
    names = [name for name in letters_of(task.of) if name != "π"]
    missing = [name for name in names if name not in known]
    if missing or not names or len(names) > _MOST_LETTERS or task.which not in ("upper", "lower"):
        raise NoValue(f"{missing[0]} has no accuracy" if missing else "not one bound of one expression")
    working = Working(SKILL, tuple(dict.fromkeys(known[name][1] for name in names)))
    scratch = Working(SKILL)
    intervals = {name: _interval(known[name][0], scratch, known[name][1]) for name in names}
    corner = _corner(task.of, intervals, task.which)
    for name, value in corner.items():
        own = intervals[name]
        which = "upper" if value == own.high else "lower"
        working.say(f"{which} bound of {name} = {own.text(value)}", own.text(value), (own.said,))
    lines = tuple(step.statement for step in working.steps)
    put_in = substituted(task.of, {name: intervals[name].expression(value) for name, value in corner.items()})
    worked = calculated(put_in, reading.ask.unit)
    named = f"the {task.name}" if task.name and len(task.name) > 1 else write(task.of)
    first = f"{task.which} bound of {named} = {write(worked[0])}"
    working.say(first, write(worked[0]), lines)
    for line in worked[1:]:
        working.say(f"= {write(line)}", write(line))
    answer, closing = finished(worked[-1], reading.ask, working.steps[-1].statement)
    working.steps.extend(closing)
    return working.derived(answer, confirmed_by="all bounds put in one with another, and values between them")


def _corner(of: Expression, intervals: Mapping[str, Interval], which: str) -> dict[str, Fraction]:
    """The bound of each letter that makes the expression greatest or least, found by moving one letter at a time."""
    sign = 1 if which == "upper" else -1
    middle = {name: (one.low + one.high) / 2 for name, one in intervals.items()}
    corner: dict[str, Fraction] = {}
    for name, one in intervals.items():
        at_high, at_low = (_value(of, {**middle, name: end}) for end in (one.high, one.low))
        corner[name] = one.high if sign * (at_high - at_low) > 0 else one.low
    best = _value(of, corner)
    points = product(*(
        [one.low, *(one.low + share * (one.high - one.low) for share in _INSIDE), one.high]
        for one in intervals.values()
    ))  # fmt: skip
    for point in points:
        value = _value(of, dict(zip(intervals, point, strict=True)))
        require(sign * (best - value) >= 0, f"the {which} bound of {write(of)}")
    return corner


def _value(of: Expression, values: Mapping[str, Fraction]) -> Fraction:
    """The value of the expression, exactly where it is rational, and by a second way on decimals."""
    put_in = substituted(of, {name: whole_or_fraction(value) for name, value in values.items()})
    decimal = decimal_value(put_in)
    value = None if Letter("π") in (put_in,) or "π" in letters_of(put_in) else rational_value(put_in)
    if value is None:
        return Fraction(decimal)
    require(agree(decimal_value(whole_or_fraction(value)), decimal), write(put_in))
    return value
