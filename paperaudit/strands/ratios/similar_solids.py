"""Similar solids: areas go with the square of lengths, volumes and masses with the cube (Euclid XII.18, XI.33)."""

from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.measure import UnitClash
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.units import conversion, unit_named
from paperaudit.maths.write import write
from paperaudit.model.derivation import Derived
from paperaudit.model.expression import Expression, Measured, Number, Power, Product, Root
from paperaudit.model.reading import Reading
from paperaudit.model.reckoning import Reckoning
from paperaudit.strands.numbers.working import Working, require
from paperaudit.strands.ratios.amounts_worked import simplest, size_of
from paperaudit.strands.ratios.ending import ended
from paperaudit.strands.ratios.plain_amounts import bare_of, working_of

_POWERS = {"length": 1, "area": 2, "volume": 3, "mass": 3}


def power_of(name: str) -> int:
    """How a size grows with the lengths: 1 for a length, 2 for an area, 3 for a volume or a mass."""
    return 2 if "area" in name else 3 if name in ("volume", "mass") else 1


def similar_solids(task: Reckoning, reading: Reading) -> Derived:
    """A size of one of two similar solids; both ratios are raised to compare them."""
    assert reading.ask is not None
    working = working_of("ratio", reading)
    sizes = {tuple(one.name.split(" ", 1)): one.value for one in task.amounts}
    who, name = task.wanted[0].split(" ", 1)
    other = next(label for label, _ in sizes if label != who)
    known = sizes.get((other, name))
    if known is None:
        raise NoValue(f"the {name} of the {other} one is not known")
    both = [one for _, one in sizes if (who, one) in sizes and (other, one) in sizes]
    if len(set(both)) != 1:
        raise NoValue("no size, or more than one, is known of both")
    given, wanted = power_of(both[0]), power_of(name)
    for one, power in ((both[0], given), (name, wanted)):
        require(power == _POWERS.get(one.rpartition(" ")[2], 1), f"how the {one} grows with the lengths")
    _dimensions_fit(sizes)
    ratio = _ratio(sizes[who, both[0]], sizes[other, both[0]])
    factor = _factor(ratio, both[0], given, wanted, working)
    amount, unit = (known.amount, known.unit) if isinstance(known, Measured) else (known, "")
    row = Product((amount, factor), "×")
    working.say(f"{name} = {write(row)}", write(row))
    value = simplest(row)
    found = size_of(value) / size_of(amount)
    require(abs(found**given - size_of(Number(ratio)) ** wanted) <= found**given / 10**20, "the ratios do not fit")
    answer = ended(Measured(value, unit) if unit else value, reading.ask, working)
    return working.derived(answer, confirmed_by="both ratios raised to the same power")


def _dimensions_fit(sizes: dict[tuple[str, ...], Expression]) -> None:
    for (_, name), value in sizes.items():
        unit = unit_named(value.unit) if isinstance(value, Measured) else None
        if unit is not None and _POWERS.get(unit.dimension) != power_of(name):
            raise UnitClash(f"{unit.symbol} is no unit of a {name}")


def _ratio(one: Expression, other: Expression) -> Fraction:
    (first, unit), (second, own) = bare_of(one), bare_of(other)
    scale = conversion(unit, own)
    if scale is None or first <= 0 or second <= 0:
        raise NoValue("two sizes that do not compare")
    return first * scale / second


def _factor(ratio: Fraction, name: str, given: int, wanted: int, working: Working) -> Expression:
    """The factor of the wanted size, with its lines."""
    lengths = simplest(Root(whole_or_fraction(ratio), given)) if given > 1 else whole_or_fraction(ratio)
    working.say(f"ratio of the {'lengths' if given == 1 else _plural(name)} = {write(whole_or_fraction(ratio))}", "")
    if given == wanted:
        return whole_or_fraction(ratio)
    if given > 1:
        root = "√" if given == 2 else "³√"
        inside = write(whole_or_fraction(ratio))
        inside = inside if ratio.denominator == 1 else f"({inside})"
        working.say(f"ratio of the lengths = {root}{inside} = {write(lengths)}", write(lengths))
    if wanted == 1:
        return lengths
    factor = raised(ratio, given, wanted)
    word = {2: "areas", 3: "volumes"}[wanted]
    row = write(Power(lengths, Number(Fraction(wanted))))
    working.say(f"ratio of the {word} = {row} = {write(factor)}", write(factor))
    return factor


def raised(ratio: Fraction, given: int, wanted: int) -> Expression:
    """The ratio of sizes of one power from that of another power."""
    number = whole_or_fraction(ratio**wanted)
    return simplest(Root(number, given)) if given > 1 else number


def _plural(name: str) -> str:
    return f"{name}es" if name.endswith("s") else f"{name}s"
