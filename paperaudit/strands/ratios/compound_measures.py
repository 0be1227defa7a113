"""Pressure, population density, a fixed loss of value, and tanks that are filled at a steady rate."""

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.measure import UnitClash
from paperaudit.maths.units import MONEY, conversion, unit_named
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Derived
from paperaudit.model.expression import Expression, Measured, Quotient
from paperaudit.model.reading import Reading
from paperaudit.model.reckoning import Reckoning
from paperaudit.strands.finishing import ChecksDisagree
from paperaudit.strands.numbers.working import require
from paperaudit.strands.ratios.amounts_worked import simplest, size_of
from paperaudit.strands.ratios.ending import converted, ended
from paperaudit.strands.ratios.lawful import Kind, Units, in_unit
from paperaudit.strands.ratios.laws import Known, Law, apply
from paperaudit.strands.ratios.meshes import mesh_of
from paperaudit.strands.ratios.motion import unit_in
from paperaudit.strands.ratios.plain_amounts import answered, bare_of, text_of, working_of

_MOST_TIMES = 1000


def _units_of_pressure(task: Reckoning, ask: Ask) -> Units:
    named = unit_named(ask.unit)
    pressure = unit_in(task.one("pressure")) or (named.symbol if named and named.dimension == "pressure" else "")
    area = unit_in(task.one("area"))
    if not pressure:
        pressure = "N/cm²" if area == "cm²" else "N/m²"
    return {"P": pressure, "F": "N", "A": "cm²" if pressure == "N/cm²" else "m²"}


def _units_of_density(task: Reckoning, ask: Ask) -> Units:
    return {"D": "people/km²", "N": "", "A": "km²"}


def _spread_out(rate: str, whole: str, area: str):  # type: ignore[no-untyped-def]
    """A second way: the area in a thousand equal pieces, each with its share."""

    def check(sizes: Mapping[str, Fraction]) -> None:
        gathered = sum((sizes[rate] * sizes[area] / 1000 for _ in range(1000)), Fraction(0))
        if abs(gathered - sizes[whole]) > Fraction(1, 10**20) * max(Fraction(1), abs(gathered)):
            raise ChecksDisagree("gathered piece by piece it comes to something else")

    return check


PRESSURE = Kind(
    "compound measures",
    {"pressure": "P", "force": "F", "area": "A"},
    (Law("P = F/A"), Law("F = P × A"), Law("A = F/P")),
    _units_of_pressure,
    _spread_out("P", "F", "A"),
    "the force gathered again over equal pieces of the area",
)
POPULATION = Kind(
    "compound measures",
    {"population density": "D", "population": "N", "area": "A"},
    (Law("D = N/A"), Law("N = D × A"), Law("A = N/D")),
    _units_of_density,
    _spread_out("D", "N", "A"),
    "the people counted again over equal pieces of the area",
)


def fixed_loss(task: Reckoning, reading: Reading) -> Derived:
    """A value after so many losses of one amount, or how many there are until it has a value; taken off one by one."""
    assert reading.ask is not None
    working = working_of("interest", reading)
    bare = {amount.name: bare_of(amount.value) for amount in task.amounts}
    (price, unit), (loss, other) = bare["price"], bare["loss a time"]
    if unit not in MONEY or other != unit or loss <= 0:
        raise NoValue("a price and a loss in one currency")
    (period,) = task.details
    if task.wanted == ("value",):
        times = bare["times"][0]
        value = price - times * loss
        if times.denominator != 1 or times > _MOST_TIMES:
            raise BudgetExceeded("that many losses")
        total = times * loss
        working.say(f"{text_of(times)} × {text_of(loss, unit)} = {text_of(total, unit)}", text_of(total, unit))
        working.say(f"{text_of(price, unit)} − {text_of(total, unit)} = {text_of(value, unit)}", text_of(value, unit))
        if value < 0:
            raise NoValue("it would be worth less than nothing")
        require(_left(price, loss, int(times)) == value, "the value taken off one by one")
        answer = answered(value, unit, reading.ask, working)
        return working.derived(answer, confirmed_by="the loss taken off one time after the other")
    value, own = bare["value"]
    if own != unit or value > price:
        raise NoValue("a value that is not below the price")
    times = (price - value) / loss
    working.say(f"{text_of(price, unit)} − {text_of(value, unit)} = {text_of(price - value, unit)}", "")
    working.say(f"{text_of(price - value, unit)} ÷ {text_of(loss, unit)} = {text_of(times)}", text_of(times))
    if times.denominator != 1:
        raise NoValue(f"it would take {text_of(times)} {period}s, which is not whole")
    require(times <= _MOST_TIMES and _left(price, loss, int(times)) == value, "the value taken off one by one")
    answer = answered(times, period, reading.ask, working)
    return working.derived(answer, confirmed_by="the loss taken off one time after the other")


def _left(price: Fraction, loss: Fraction, times: int) -> Fraction:
    for _ in range(times):
        price -= loss
    return price


def filling(task: Reckoning, reading: Reading) -> Derived:
    """How long a tank takes to fill: its volume over the volume that flows in a unit of time."""
    assert reading.ask is not None
    working = working_of("compound measures", reading)
    kind = task.kind.removeprefix("filling a ")
    laws = {"cuboid": (Law("V = lbh"),), "cylinder": (Law("r = d/2"), Law("V = πr²h"))}[kind]
    letters = {"length": "l", "width": "b", "height": "h", "radius": "r", "diameter": "d"}
    flow = task.one("flow")
    assert isinstance(flow, Measured)
    volume_unit = unit_named(flow.unit)
    if volume_unit is None or volume_unit.dimension != "volume":
        raise UnitClash(f"{flow.unit} is no unit of volume")
    unit = next(amount.value.unit for amount in task.amounts if isinstance(amount.value, Measured))
    known = Known(pi=reading.ask.pi)
    for amount in task.amounts:
        if amount.name in letters:
            known.values[letters[amount.name]] = in_unit(amount.value, unit, working)
    for law in laws:
        missing = [letter for letter in law.letters if letter not in known.values]
        if len(missing) == 1:
            apply(law, missing[0], known, working)
    volume: Expression = known.values["V"]
    found = converted(Measured(volume, unit + "³"), flow.unit, working)
    row = Quotient(found.amount, flow.amount, "÷")
    time = simplest(row)
    working.say(f"t = {write(row)}", write(row))
    per = next(one.removeprefix("per ") for one in task.details if one.startswith("per "))
    wished = next((one.removeprefix("in ") for one in task.details if one.startswith("in ")), "")
    ask = replace(reading.ask, unit=reading.ask.unit or wished)
    answer = ended(Measured(time, per), ask, working, "t")
    sizes = {letter: float(size_of(value)) for letter, value in known.values.items()}
    scale = conversion(unit + "³", flow.unit)
    assert scale is not None
    measured = mesh_of(kind, sizes).volume * float(scale)
    if abs(measured - float(size_of(time)) * float(size_of(flow.amount))) > 5e-3 * measured:
        raise ChecksDisagree("what flows in is not the volume measured on a mesh")
    return working.derived(answer, confirmed_by="what flows in that time against the tank measured on a mesh")
