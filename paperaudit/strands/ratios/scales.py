"""Scales of maps, plans and models: sizes on the map, sizes in reality, the scale itself."""

from dataclasses import replace
from fractions import Fraction

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.measure import UnitClash
from paperaudit.maths.units import conversion, unit_named
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import Measured
from paperaudit.model.reading import Reading
from paperaudit.model.reckoning import Reckoning
from paperaudit.strands.numbers.working import Working, require
from paperaudit.strands.ratios.plain_amounts import answered, bare_of, rational, text_of, working_of

_POWERS = {"length": (1, ""), "area": (2, "²"), "volume": (3, "³")}
_LARGEST = 10**12
_CONFIRMED = "the map's size and the real size compared with the scale crosswise"
_FITTING = (("km", 1000), ("m", 1), ("cm", Fraction(1, 100)))


def scale(task: Reckoning, reading: Reading) -> Derived:
    """A size from the other one and the scale, or the scale from both; compared crosswise in the base unit."""
    assert reading.ask is not None
    working = working_of("ratio", reading)
    if task.wanted == ("scale",):
        names = ("size on the map", "real size") if task.one("real size") else ("length on the map", "real length")
        number = _one_to(task.one(names[0]), task.one(names[1]), working)
        require(
            _in_base(task, names[0]) * number == _in_base(task, names[1]),
            "the scale does not lead from the map to reality",
        )
        return working.derived(Answer(f"1 : {number}", kind="ratio"), confirmed_by="the map's size enlarged again")
    forward = task.wanted == ("real size",)
    given = task.one("size on the map" if forward else "real size")
    assert given is not None
    size, unit = bare_of(given)
    known = unit_named(unit)
    power, sign = _POWERS[known.dimension if known is not None else ""]
    if forward and power == 1 and (direct := _by_the_unit(task, size, unit)):
        row, result, unit = direct
        working.say(f"real size = {row}", row)
        _crosswise(task, 1, result * _size(unit), True)
        ask = replace(reading.ask, unit=reading.ask.unit or next((one[3:] for one in task.details), ""))
        return working.derived(answered(result, unit, ask, working), confirmed_by=_CONFIRMED)
    number = _one_to(task.one("length on the map"), task.one("real length"), working)
    factor = number**power
    if power > 1:
        working.say(f"scale of the {'areas' if power == 2 else 'volumes'}: 1 : {number}{sign} = 1 : {factor}", "")
    ask = replace(reading.ask, unit=reading.ask.unit or next((one[3:] for one in task.details), ""))
    if not forward:
        size, unit = _in_map_units(size, unit, (ask.unit or f"cm{sign}"), working)
    result = enlarged(size, factor, forward)
    row = f"{text_of(size, unit)} {'×' if forward else '÷'} {factor}"
    working.say(f"{'real size' if forward else 'size on the map'} = {row}", row)
    if forward:
        working.say(f"= {text_of(result, unit)}", text_of(result, unit))
        target = ask.unit or _fitting(result, unit, sign)
        ask = replace(ask, unit=target)
    _crosswise(task, power, result * _size(unit), forward)
    answer = answered(result, unit, ask, working)
    return working.derived(answer, confirmed_by=_CONFIRMED)


def enlarged(size: Fraction, factor: Fraction, forward: bool) -> Fraction:
    """The size in reality from the one on the map, or back."""
    return size * factor if forward else size / factor


def _by_the_unit(task: Reckoning, size: Fraction, unit: str) -> tuple[str, Fraction, str] | None:
    """Without 1 : n, where the scale is in the unit of the map's size: 7 × 5 m, or 7 ÷ 2 × 5 m."""
    drawn, real = task.one("length on the map"), task.one("real length")
    if not (isinstance(drawn, Measured) and isinstance(real, Measured)) or drawn.unit != unit:
        return None
    (one, _), (other, large) = bare_of(drawn), bare_of(real)
    if one <= 0 or other <= 0:
        raise NoValue("a scale that is not positive")
    shares = [text_of(size)] + [f"÷ {text_of(one)}"] * (one != 1)
    return f"{' '.join(shares)} × {text_of(other, large)}", enlarged(size / one, other, True), large


def _one_to(drawn: object, real: object, working: Working) -> Fraction:
    """The n of 1 : n, with the lines that lead to it."""
    if not (isinstance(drawn, Measured) and isinstance(real, Measured)):
        number = rational(real) / rational(drawn)  # type: ignore[arg-type]
    else:
        (one, small), (other, large) = bare_of(drawn), bare_of(real)
        change = conversion(large, small)
        if change is None:
            raise UnitClash(f"{small} and {large} in one scale")
        number = other * change / one if one else Fraction(0)
        working.say(f"{text_of(one, small)} : {text_of(other, large)}", "", working.used)
        if large != small:
            working.say(f"= {text_of(one, small)} : {text_of(other * change, small)}", "")
        working.say(f"= 1 : {text_of(number)}", f"1 : {text_of(number)}")
    if number <= 0:
        raise NoValue("a scale that is not positive")
    if number > _LARGEST:
        raise BudgetExceeded("a scale of more than a million millions")
    return number


def _in_map_units(size: Fraction, unit: str, target: str, working: Working) -> tuple[Fraction, str]:
    change = conversion(unit, target)
    if change is None:
        raise UnitClash(f"{unit} is not brought to {target}")
    if change != 1:
        working.say(f"{text_of(size, unit)} = {text_of(size * change, target)}", text_of(size * change, target))
    return size * change, target


def _fitting(size: Fraction, unit: str, sign: str) -> str:
    """The largest unit of which there is at least one."""
    base = size * _size(unit)
    power = {"": 1, "²": 2, "³": 3}[sign]
    return next((f"{name}{sign}" for name, one in _FITTING if base >= Fraction(one) ** power), unit)


def _size(unit: str) -> Fraction:
    known = unit_named(unit)
    return known.size if known is not None else Fraction(1)


def _in_base(task: Reckoning, name: str) -> Fraction:
    value = task.one(name)
    assert value is not None
    number, unit = bare_of(value)
    return number * _size(unit)


def _crosswise(task: Reckoning, power: int, found: Fraction, forward: bool) -> None:
    given = _in_base(task, "size on the map" if forward else "real size")
    drawn, real = (found, given) if not forward else (given, found)
    one, other = _in_base(task, "length on the map"), _in_base(task, "real length")
    require(real * one**power == drawn * other**power, "the sizes are not in the scale crosswise")
