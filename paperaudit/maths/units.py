"""Units of school papers: their spellings, what they measure, and exact conversion between them."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit: `size` is how many of its dimension's base unit it is; `plural` is "" for a symbol.

    Two units compare only where `dimension` is the same. A gallon differs from country to country and
    so is not converted. Sizes are the SI Brochure's, and the 1959
    international yard and pound agreement's for inch, foot, yard, mile, ounce and pound.
    """

    symbol: str
    dimension: str
    size: Fraction
    plural: str = ""
    spellings: tuple[str, ...] = ()


def _unit(symbol: str, dimension: str, size: str, plural: str = "", *spellings: str) -> Unit:
    return Unit(symbol, dimension, Fraction(size), plural, spellings)


_LENGTHS = (
    ("mm", "1/1000", "millimetre", "millimeter"),
    ("cm", "1/100", "centimetre", "centimeter"),
    ("m", "1", "metre", "meter"),
    ("km", "1000", "kilometre", "kilometer"),
)


def _metric_lengths() -> Iterator[Unit]:
    for symbol, size, *words in _LENGTHS:
        yield _unit(symbol, "length", size, "", *words, *(f"{word}s" for word in words))
        for power, dimension, word in (("²", "area", "square"), ("³", "volume", "cubic")):
            plain = "2" if power == "²" else "3"
            spoken = tuple(f"{word} {name}{ending}" for name in words for ending in ("", "s"))
            scale = Fraction(size) ** int(plain)
            yield Unit(symbol + power, dimension, scale, "", (symbol + "^" + plain, symbol + plain, *spoken))


UNITS: tuple[Unit, ...] = (
    *_metric_lengths(),
    _unit("micrometre", "length", "1/1000000", "micrometres", "micrometer", "micrometers", "μm"),
    _unit("nanometre", "length", "1/1000000000", "nanometres", "nanometer", "nanometers"),
    _unit("inch", "length", "127/5000", "inches", "in"),
    _unit("foot", "length", "381/1250", "feet", "ft"),
    _unit("yard", "length", "1143/1250", "yards", "yd"),
    _unit("mile", "length", "201168/125", "miles"),
    _unit("square foot", "area", "145161/1562500", "square feet", "ft²", "ft^2", "ft2"),
    _unit("square inch", "area", "16129/25000000", "square inches", "in²", "in^2", "in2"),
    _unit("hectare", "area", "10000", "hectares", "ha"),
    _unit("ml", "volume", "1/1000000", "", "mL", "mℓ", "millilitre", "millilitres", "milliliter", "milliliters"),
    _unit("litre", "volume", "1/1000", "litres", "l", "L", "ℓ", "liter", "liters"),
    _unit("kl", "volume", "1", "", "kL", "kℓ", "kilolitre", "kilolitres"),
    _unit("gallon", "gallons", "1", "gallons"),
    _unit("nanogram", "mass", "1/1000000000000", "nanograms"),
    _unit("microgram", "mass", "1/1000000000", "micrograms", "μg"),
    _unit("mg", "mass", "1/1000000", "", "milligram", "milligrams"),
    _unit("g", "mass", "1/1000", "", "gram", "grams"),
    _unit("kg", "mass", "1", "", "kilogram", "kilograms"),
    _unit("tonne", "mass", "1000", "tonnes", "t"),
    _unit("ounce", "mass", "45359237/1600000000", "ounces", "oz"),
    _unit("pound", "mass", "45359237/100000000", "pounds", "lb"),
    _unit("nanosecond", "time", "1/1000000000", "nanoseconds"),
    _unit("microsecond", "time", "1/1000000", "microseconds", "μs"),
    _unit("millisecond", "time", "1/1000", "milliseconds"),
    _unit("second", "time", "1", "seconds", "s", "sec"),
    _unit("minute", "time", "60", "minutes", "min"),
    _unit("hour", "time", "3600", "hours", "h", "hr", "hrs"),
    _unit("day", "time", "86400", "days"),
    _unit("week", "time", "604800", "weeks"),
    _unit("year", "years", "1", "years"),
    _unit("month", "years", "1/12", "months"),
    _unit("decade", "years", "10", "decades"),
    _unit("century", "years", "100", "centuries"),
    _unit("millennium", "years", "1000", "millennia"),
    _unit("m/s", "speed", "1", "", "metres per second", "m/second"),
    _unit("km/h", "speed", "5/18", "", "km/hour", "km per hour", "kilometres per hour"),
    _unit("m/min", "speed", "1/60", "", "metres per minute", "m/minute"),
    _unit("cm/s", "speed", "1/100", "", "centimetres per second"),
    _unit("km/s", "speed", "1000", "", "kilometres per second"),
    _unit("km/min", "speed", "50/3", "", "kilometres per minute"),
    _unit("g/cm³", "density", "1000", "", "g/cm^3", "grams per cubic centimetre", "g/ml"),
    _unit("kg/m³", "density", "1", "", "kg/m^3", "kilograms per cubic metre"),
    _unit("N", "force", "1", "", "newton", "newtons"),
    _unit("N/m²", "pressure", "1", "", "N/m^2", "newtons per square metre", "Pa", "pascal", "pascals"),
    _unit("N/cm²", "pressure", "10000", "", "N/cm^2", "newtons per square centimetre"),
    _unit("people/km²", "population density", "1", "", "people/km^2", "people per km²", "people per square kilometre"),
    _unit("mph", "speed", "1397/3125", "", "miles per hour", "mile/hour"),
    _unit("°", "angle", "1", "", "degree", "degrees"),
    _unit("°C", "temperature in °C", "1", "", "degrees Celsius"),
    _unit("°F", "temperature in °F", "1", "", "degrees Fahrenheit"),
    _unit("R", "rand", "1"),
    _unit("$", "dollars", "1"),
    _unit("£", "pounds sterling", "1"),
    _unit("€", "euros", "1"),
    _unit("₦", "naira", "1"),
    _unit("₹", "rupees", "1"),
    _unit("c", "cents", "1", "", "cent", "cents"),
    _unit("p", "pence", "1", "", "penny", "pence"),
)
"""Every unit that is known; a unit read from a paper may be any of a unit's spellings."""

MONEY: frozenset[str] = frozenset({"R", "$", "£", "€", "₦", "₹"})
"""Symbols that stand before the amount."""

_HUNDREDTHS = {("c", "R"), ("c", "$"), ("c", "€"), ("p", "£")}
_BY_SPELLING = {
    spelling: unit for unit in UNITS for spelling in (unit.symbol, unit.plural, *unit.spellings) if spelling
}


def unit_named(spelling: str) -> Unit | None:
    """The unit of a symbol, a word or its plural; None where it is not known.

    >>> unit_named("litres").symbol
    'litre'
    """
    return _BY_SPELLING.get(spelling) or _BY_SPELLING.get(spelling.lower())


def same_unit(first: str, second: str) -> bool:
    """Whether two spellings name one unit; an unknown one is the same as itself only."""
    if first == second:
        return True
    one, other = unit_named(first), unit_named(second)
    return one is not None and one is other


def conversion(source: str, target: str) -> Fraction | None:
    """How many of `target` one `source` is; None where they measure different things or are not known.

    >>> conversion("m", "cm")
    Fraction(100, 1)
    >>> conversion("cm", "litre") is None
    True
    """
    if source == target:
        return Fraction(1)
    one, other = unit_named(source), unit_named(target)
    if one is None or other is None:
        return None
    if (one.symbol, other.symbol) in _HUNDREDTHS:
        return Fraction(1, 100)
    if (other.symbol, one.symbol) in _HUNDREDTHS:
        return Fraction(100)
    return one.size / other.size if one.dimension == other.dimension else None


def unit_text(unit: str, plural: bool) -> str:
    """A unit behind its amount, with the space that belongs there: "°", " cm", " litres".

    A unit that was written by its symbol (l, h) keeps it; one that is a word gets its plural.
    No space before the degree sign of a plane angle (SI Brochure 5.3.3, NIST SP 811 7.2).
    """
    known = unit_named(unit)
    if known is not None and plural and unit == known.symbol and known.plural:
        return f" {known.plural}"
    return unit if unit == "°" else f" {unit}"
