"""Speed, distance and time; mass, volume and density."""

from collections.abc import Mapping
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.measure import UnitClash
from paperaudit.maths.units import conversion, unit_named
from paperaudit.model.ask import Ask
from paperaudit.model.expression import Expression, Measured, Sum
from paperaudit.model.reckoning import Reckoning
from paperaudit.strands.finishing import ChecksDisagree
from paperaudit.strands.ratios.lawful import Kind, Units
from paperaudit.strands.ratios.laws import Law

_PARTS = {
    "km/h": ("km", "hour"), "m/s": ("m", "second"), "mph": ("mile", "hour"), "m/min": ("m", "minute"),
    "cm/s": ("cm", "second"), "km/s": ("km", "second"), "km/min": ("km", "minute"), "g/cm³": ("g", "cm³"),
    "kg/m³": ("kg", "m³"),
}  # fmt: skip
"""The units that a compound unit is made of."""


def _units(whole: str, above: str, below: str, letters: tuple[str, str, str]) -> Units:
    return dict(zip(letters, (whole, above, below), strict=True))


def compound_units(names: tuple[str, str, str], letters: tuple[str, str, str]):  # type: ignore[no-untyped-def]
    """Who chooses the units for a rate and its two parts: those of the rate where it is given or asked for."""

    def choose(task: Reckoning, ask: Ask) -> Units:
        rate, above, below = (unit_in(task.one(name)) for name in names)
        wished = unit_named(ask.unit)
        if not rate and names[0] in task.wanted and wished is not None and wished.symbol in _PARTS:
            rate = wished.symbol
        if rate:
            known = unit_named(rate)
            if known is None or known.symbol not in _PARTS:
                raise UnitClash(f"{rate} is no unit of {names[0]}")
            return _units(known.symbol, *_PARTS[known.symbol], letters)
        for compound, parts in _PARTS.items():
            if (above, below) == parts:
                return _units(compound, *parts, letters)
        if not (above or below):
            return _units("", "", "", letters)
        for compound, parts in _PARTS.items():
            if (
                above
                and below
                and all(conversion(one, two) is not None for one, two in zip((above, below), parts, strict=True))
            ):
                return _units(compound, *parts, letters)
        raise NoValue(f"{above or 'a bare number'} and {below or 'a bare number'} make no unit that is known")

    return choose


def unit_in(value: Expression | None) -> str:
    """The symbol of the unit that an amount is in, of the first part of a sum; "" for none."""
    first = value.terms[0] if isinstance(value, Sum) else value
    known = unit_named(first.unit) if isinstance(first, Measured) else None
    return known.symbol if known is not None else ""


def _by_steps(rate: str, whole: str, count: str):  # type: ignore[no-untyped-def]
    """A second way: the whole is gathered in a thousand equal steps."""

    def check(sizes: Mapping[str, Fraction]) -> None:
        if not {rate, whole, count} <= sizes.keys():
            return
        step = sizes[count] / 1000
        gathered = sum((sizes[rate] * step for _ in range(1000)), Fraction(0))
        if abs(gathered - sizes[whole]) > Fraction(1, 10**20) * max(Fraction(1), abs(gathered)):
            raise ChecksDisagree("gathered step by step it comes to something else")

    return check


MOTION = Kind(
    "speed, distance and time",
    {"speed": "s", "distance": "d", "time": "t"},
    (Law("s = d/t"), Law("d = s × t"), Law("t = d/s")),
    compound_units(("speed", "distance", "time"), ("s", "d", "t")),
    _by_steps("s", "d", "t"),
    "the distance gathered again in equal steps of time",
)
DENSITY = Kind(
    "density",
    {"density": "D", "mass": "m", "volume": "V"},
    (Law("D = m/V"), Law("m = D × V"), Law("V = m/D")),
    compound_units(("density", "mass", "volume"), ("D", "m", "V")),
    _by_steps("D", "m", "V"),
    "the mass gathered again in equal steps of volume",
)
