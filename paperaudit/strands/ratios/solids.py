"""Solids: volume, surface and lengths of prisms, cylinders, cones, pyramids, spheres and frustums."""

from dataclasses import replace
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.measure import UnitClash
from paperaudit.maths.number_forms import as_decimal, whole_or_fraction
from paperaudit.maths.units import conversion, unit_named
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Answer, Impossible, Outcome
from paperaudit.model.expression import Expression, Measured, Number, Product
from paperaudit.model.reading import Reading
from paperaudit.model.reckoning import Reckoning
from paperaudit.strands.finishing import ChecksDisagree
from paperaudit.strands.numbers.working import Working, require
from paperaudit.strands.ratios.amounts_worked import simplest, size_of
from paperaudit.strands.ratios.ending import ended
from paperaudit.strands.ratios.laws import Known, Law, apply, chain
from paperaudit.strands.ratios.meshes import Mesh, mesh_of

_ROUND = (Law("r = d/2"),)
_CUBOID = (Law("V = lbh"), Law("D² = l² + b² + h²"), Law("B = lb"))
LAWS: dict[str, tuple[Law, ...]] = {
    "cylinder": (Law("V = πr²h"), Law("C = 2πrh"), Law("S = 2πr² + 2πrh"), Law("B = πr²"), *_ROUND),
    "cone": (
        Law("V = (1/3)πr²h"), Law("L² = r² + h²"), Law("C = π r L"), Law("S = πr² + π r L"), Law("B = πr²"), *_ROUND,
    ),
    "sphere": (Law("V = (4/3)πr³"), Law("S = 4πr²"), *_ROUND),
    "hemisphere": (Law("V = (2/3)πr³"), Law("C = 2πr²"), Law("S = 3πr²"), *_ROUND),
    "cube": (Law("V = a³"), Law("S = 6a²"), Law("D² = 3a²")),
    "cuboid": (*_CUBOID, Law("S = 2lb + 2lh + 2bh")),
    "square pyramid": (
        Law("V = (1/3)a²h"), Law("L² = h² + (a/2)²"), Law("S = a² + 2a L"), Law("C = 2a L"), Law("B = a²"),
    ),
    "pyramid": (Law("V = (1/3)B h"),),
    "prism": (Law("V = B h"),),
    "triangular prism": (Law("B = b h/2", "area"), Law("V = B l")),
    "prism on a trapezium": (Law("B = (a + b) × h/2", "area"), Law("V = B l")),
    "right-angled triangular prism": (
        Law("B = ab/2", "area"), Law("V = B l"), Law("c² = a² + b²"), Law("S = ab + (a + b + c) × l"),
    ),
    "frustum": (
        Law("V = (1/3)π(a² + ab + b²) × h"), Law("L² = h² + (a − b)²"), Law("C = π(a + b) × L"),
        Law("S = πa² + πb² + π(a + b) × L"),
    ),
}  # fmt: skip
"""By the kind of solid."""
OPEN: dict[tuple[str, str], Law] = {
    ("cylinder", "open at the top"): Law("S = πr² + 2πrh"),
    ("cylinder", "open at both ends"): Law("S = 2πrh"),
    ("cone", "open at the top"): Law("S = π r L"),
    ("hemisphere", "open at the top"): Law("S = 2πr²"),
    ("cube", "open at the top"): Law("S = 5a²"),
    ("cuboid", "open at the top"): Law("S = lb + 2lh + 2bh"),
}
"""The surface of a solid with an open side."""
_LETTERS = {
    "volume": "V", "surface area": "S", "curved surface area": "C", "base area": "B", "radius": "r", "diameter": "d",
    "height": "h", "slant height": "L", "side": "a", "length": "l", "width": "b", "diagonal": "D",
}  # fmt: skip
_OWN = {
    "cylinder": {"length": "h"}, "prism": {"length": "h"}, "cube": {"length": "a", "height": "a"},
    "square pyramid": {"length": "a"}, "triangular prism": {"base": "b", "length": "l"},
    "prism on a trapezium": {"first parallel side": "a", "second parallel side": "b", "length": "l"},
    "right-angled triangular prism": {"first side": "a", "second side": "b", "hypotenuse": "c", "length": "l"},
}  # fmt: skip
_DIMENSIONS = {"V": ("volume", "³"), "S": ("area", "²"), "C": ("area", "²"), "B": ("area", "²")}
_SURFACES = ("S", "C")


def solid(task: Reckoning, reading: Reading) -> Outcome:
    """The sizes that are wanted, by the laws of the solid; checked on a mesh of flat triangles."""
    assert reading.ask is not None
    used = tuple(given.text for given in reading.givens)
    working = Working("volume", used)
    known, unit = _known(task, working)
    if reading.ask.pi is not None:
        known.pi = reading.ask.pi
    laws = _laws(task)
    if clash := _no_right_angle(task, known, reading):
        return clash
    answers = []
    for name in task.wanted:
        letter = letter_of(task.kind, name)
        unit_wished = next((one.removeprefix("in ") for one in task.details if one.startswith("in ")), "")
        ask = replace(reading.ask, unit=reading.ask.unit or unit_wished)
        answers.append(_answer(letter, laws, known, unit, ask, working))
    _measured_again(task, known)
    return working.derived(*answers, confirmed_by=_CONFIRMED)


_CONFIRMED = "measured again on a mesh of flat triangles, each result put back into its law"


def _no_right_angle(task: Reckoning, known: Known, reading: Reading) -> Impossible | None:
    """Three sides that are said to have a right angle and have none."""
    if task.kind != "right-angled triangular prism" or "c" not in known.values:
        return None
    one, other, longest = (size_of(known.values[letter]) for letter in "abc")
    if one**2 + other**2 == longest**2:
        return None
    sides = [write(known.values[letter]) for letter in "abc"]
    why = (
        f"a right angle needs {sides[0]}² + {sides[1]}² = {sides[2]}²",
        f"{one**2 + other**2:f} = {longest**2:f} is false",
    )
    return Impossible(tuple(given.text for given in reading.givens), why)


def _laws(task: Reckoning) -> tuple[Law, ...]:
    laws = LAWS[task.kind]
    for detail in task.details:
        if detail.startswith("in ") or "surface area" not in task.wanted:
            continue
        law = OPEN.get((task.kind, detail))
        if law is None:
            raise NoValue(f"the surface of a {task.kind} that is {detail}")
        laws = (*(one for one in laws if not one.text.startswith("S = ")), law)
    return laws


def letter_of(kind: str, name: str) -> str:
    """The letter of a size in the laws of a solid; raises NoValue where the solid has no such size."""
    letter = _OWN.get(kind, {}).get(name) or _LETTERS[name]
    known = {one for law in LAWS[kind] for one in law.letters}
    if letter not in known:
        raise NoValue(f"a {kind} has no {name} here")
    return letter


def _known(task: Reckoning, working: Working) -> tuple[Known, str]:
    """The amounts by their letters, all in one unit of length, and that unit."""
    known = Known()
    named: list[tuple[str, str, Expression]] = []
    for amount in task.amounts:
        if amount.name == "π":
            assert isinstance(amount.value, Number)
            known.pi = amount.value
            continue
        letter = letter_of(task.kind, amount.name) if (task.kind, amount.name) != ("frustum", "radius") else "a"
        if letter == "a" and any(other == "a" for other, _, _ in named):
            letter = "b"
        named.append((letter, amount.name, amount.value))
    unit = _unit_of_lengths(named)
    for letter, name, value in named:
        known.values[letter] = in_unit(letter, name, value, unit, working)
    if task.kind == "frustum" and {"a", "b"} <= known.values.keys():
        larger, smaller = sorted((known.values["a"], known.values["b"]), key=size_of, reverse=True)
        known.values |= {"a": larger, "b": smaller}
    return known, unit


def _unit_of_lengths(named: list[tuple[str, str, Expression]]) -> str:
    """The unit of the first length, else the root of the first area's or volume's; "" for bare numbers."""
    units = [(letter, value.unit) for letter, _, value in named if isinstance(value, Measured)]
    if len(units) not in (0, len(named)):
        raise NoValue("some sizes have units and others have none")
    for letter, unit in units:
        known = unit_named(unit)
        wanted = _DIMENSIONS.get(letter, ("length", ""))[0]
        if known is None or known.dimension != wanted:
            raise UnitClash(f"{unit} is no unit of a {wanted}")
    lengths = [unit for letter, unit in units if letter not in _DIMENSIONS]
    if lengths:
        return lengths[0]
    for _, unit in units:
        if unit[-1] in "²³":
            return unit[:-1]
        return "cm" if unit in ("ml", "litre") else "m"
    return ""


def in_unit(letter: str, name: str, value: Expression, unit: str, working: Working) -> Expression:
    """The bare amount in a unit of length, area or volume, with its line; raises UnitClash."""
    if not isinstance(value, Measured):
        return value
    power = _DIMENSIONS.get(letter, ("", ""))[1]
    scale = conversion(value.unit, unit + power)
    if scale is None:
        raise UnitClash(f"{value.unit} is not {unit + power}")
    if scale == 1:
        return value.amount
    changed = _scaled(value.amount, scale)
    was, now = unit_named(value.unit), unit_named(unit + power)
    assert was is not None and now is not None
    before, after = Fraction(size_of(value.amount)) * was.size, Fraction(size_of(changed)) * now.size
    require(abs(before - after) <= abs(before) / 10**30, f"{write(value)} in {unit}{power}")
    working.say(f"{write(value)} = {write(Measured(changed, unit + power))}", write(changed), working.used)
    return changed


def _scaled(amount: Expression, scale: Fraction) -> Expression:
    if isinstance(amount, Number):
        return as_decimal(amount.value * scale) or whole_or_fraction(amount.value * scale)
    return simplest(Product((amount, Number(scale)), "×"))


def _answer(letter: str, laws: tuple[Law, ...], known: Known, unit: str, ask: Ask, working: Working) -> Answer:
    path = chain(laws, known.values, letter)
    if path is None:
        raise NoValue(f"{letter} does not follow from what is given by the laws of the solid")
    working.skill = "volume" if letter == "V" else "area" if letter in _DIMENSIONS else "volume"
    for law, found in path:
        value = apply(law, found, known, working)
        if size_of(value) <= 0:
            raise NoValue(f"{found} would not be positive")
    value = known.values[letter]
    power = _DIMENSIONS.get(letter, ("", ""))[1]
    measured = Measured(value, unit + power) if unit else value
    return ended(measured, ask, working, letter)


def _measured_again(task: Reckoning, known: Known) -> None:
    """Volume and surfaces measured on a mesh with the lengths that are known by now."""
    if task.kind in ("pyramid", "prism"):
        return
    sizes = {letter: float(size_of(value)) for letter, value in known.values.items()}
    mesh: Mesh = mesh_of(task.kind, sizes)
    for letter, found in (("V", mesh.volume), ("C", mesh.sides), ("S", mesh.surface(task.details))):
        if letter in sizes and abs(sizes[letter] - found) > mesh.tolerance * found:
            raise ChecksDisagree(f"{letter} measures about {found:.4g} on a mesh")
