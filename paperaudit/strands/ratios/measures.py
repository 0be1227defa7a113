"""Measures in other units, and times of day."""

from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.exact import rational_value
from paperaudit.maths.measure import UnitClash
from paperaudit.maths.number_forms import as_decimal, whole_or_fraction
from paperaudit.maths.units import conversion, unit_named, unit_text
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import Expression, Measured, Number, Sum
from paperaudit.model.reading import Reading
from paperaudit.model.reckoning import Reckoning
from paperaudit.strands.numbers.working import Working, require
from paperaudit.strands.ratios.ending import ended

_DAY = 24 * 60
_COMPOUND = {"km/h": (1000, 3600), "km/min": (1000, 60), "m/min": (1, 60), "km/s": (1000, 1)}


def conversion_of(task: Reckoning, reading: Reading) -> Derived:
    """A measure in another unit; checked by way of the base unit and back."""
    assert reading.ask is not None
    working = Working("units", tuple(given.text for given in reading.givens))
    value, target = task.amounts[0].value, task.wanted[0].removeprefix("measure in ")
    assert isinstance(value, Measured)
    scale, amount = conversion(value.unit, target), rational_value(value.amount)
    if scale is None or amount is None:
        raise UnitClash(f"{write(value)} is not brought to {target}")
    result = amount * scale
    row = f"{write(value.amount)} {_by(value.unit, target, scale)}"
    working.say(f"{write(value)} = {row}{unit_text(target, True)}", row)
    decimals = as_decimal(result)
    number = whole_or_fraction(result) if decimals is None else decimals
    one, other = unit_named(value.unit), unit_named(target)
    assert one is not None and other is not None
    cents = one.dimension != other.dimension
    require(cents or result * other.size == amount * one.size, "both measures in the base unit differ")
    answer = ended(Measured(number, target), reading.ask, working)
    return working.derived(answer, confirmed_by="both measures brought to the base unit")


def _by(unit: str, target: str, scale: Fraction) -> str:
    """What the amount is multiplied or divided by: × 1000, ÷ 60, × 1000 ÷ 3600."""
    for one, other, signs in ((unit, target, "×÷"), (target, unit, "÷×")):
        parts = _COMPOUND.get(one)
        if parts and other == "m/s":
            first, second = f"{signs[0]} {parts[0]}", f"{signs[1]} {parts[1]}"
            return f"{first} {second}" if signs == "×÷" else f"{second} {first}"
    if scale < 1 and (1 / scale).denominator == 1:
        return f"÷ {1 / scale}"
    return f"× {write(as_decimal(scale) or whole_or_fraction(scale))}"


def clock_time(task: Reckoning, reading: Reading) -> Derived:
    """A time of day so many minutes after another, or before it."""
    working = Working("units", tuple(given.text for given in reading.givens))
    start, span = _whole(task.one("start")), _minutes(task.one("time"))
    back, twelve = "before" in task.details, "12 hours" in task.details
    end = (start - span if back else start + span) % _DAY
    hours, rest = divmod(span, 60)
    pieces = [f"{hours} h"] * bool(hours) + [f"{rest} min"] * bool(rest)
    if hours and rest:
        working.say(f"{span} minutes = {' '.join(pieces)}")
    now, sign = start, "−" if back else "+"
    for piece, amount in zip(pieces, [60 * hours] * bool(hours) + [rest] * bool(rest), strict=True):
        after = (now - amount if back else now + amount) % _DAY
        said = clock_text(after, twelve)
        working.say(f"{clock_text(now, twelve)} {sign} {piece} = {said}", said)
        now = after
    require(now == end, "hour by hour it comes to another time")
    return working.derived(
        Answer(clock_text(end, twelve), kind="clock"), confirmed_by="counted in minutes after midnight"
    )


def time_between(task: Reckoning, reading: Reading) -> Derived:
    """The time from one time of day to the next other one."""
    assert reading.ask is not None
    working = Working("units", tuple(given.text for given in reading.givens))
    start, end = _whole(task.one("start")), _whole(task.one("end"))
    later = "the next day" in task.details
    span = end - start + _DAY if later else (end - start) % _DAY
    if not span:
        raise NoValue("both times are the same")
    if later and not start:
        raise NoValue("whether midnight begins the day or ends it")
    full = (-start) % 60
    arrival = clock_text(end, False) + (" the next day" if later else "")
    if span > full and full:
        hour = clock_text((start + full) % _DAY, False)
        working.say(f"{clock_text(start, False)} to {hour}: {full} min")
        hours, rest = divmod(span - full, 60)
        working.say(f"{hour} to {arrival}: {hours} h {rest} min")
        working.say(f"together {span} minutes", f"{span} minutes")
    else:
        working.say(f"{clock_text(start, False)} to {arrival}: {span} minutes", f"{span} minutes")
    require((start + span) % _DAY == end, "added to the start it does not give the end")
    unit = next((one for one in task.details if one in ("hour", "minute")), "")
    hours, rest = divmod(span, 60)
    if unit == "hour":
        value: Expression = Measured(as_decimal(Fraction(span, 60)) or whole_or_fraction(Fraction(span, 60)), "hour")
    elif unit or not hours or reading.ask.unit == "minute":
        value = Measured(Number(Fraction(span)), "minute")
    elif not rest:
        value = Measured(Number(Fraction(hours)), "hour")
    else:
        value = Sum((Measured(Number(Fraction(hours)), "hour"), Measured(Number(Fraction(rest)), "minute")))
        text = f"{hours} h {rest} min"
        working.conclude(f"= {text}", text)
        return working.derived(Answer(text, value), confirmed_by="added to the start again")
    return working.derived(ended(value, reading.ask, working), confirmed_by="added to the start again")


def clock_text(minutes: int, twelve: bool) -> str:
    """A time of day: 3:15 PM, or 15:15."""
    hour, minute = divmod(minutes, 60)
    if twelve:
        return f"{(hour - 1) % 12 + 1}:{minute:02} {'PM' if hour >= 12 else 'AM'}"
    return f"{hour:02}:{minute:02}"


def _whole(value: Expression | None) -> int:
    exact = rational_value(value) if value is not None else None
    if exact is None or exact.denominator != 1:
        raise NoValue("a time of day in parts of a minute")
    return exact.numerator


def _minutes(value: Expression | None) -> int:
    parts = value.terms if isinstance(value, Sum) else (value,)
    total = Fraction(0)
    for part in parts:
        scale = conversion(part.unit, "minute") if isinstance(part, Measured) else None
        amount = rational_value(part.amount) if isinstance(part, Measured) else None
        if scale is None or amount is None:
            raise NoValue("a time without a unit")
        total += amount * scale
    return _whole(Number(total))
