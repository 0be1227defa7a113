"""Solids put together or cut out of each other, melted down, poured, dropped into water, weighed."""

from dataclasses import dataclass, replace
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.exact import rational_value
from paperaudit.maths.measure import UnitClash
from paperaudit.maths.number_forms import as_decimal, whole_or_fraction
from paperaudit.maths.units import conversion, unit_named
from paperaudit.maths.write import write
from paperaudit.model.derivation import Derived
from paperaudit.model.expression import Expression, Measured, Negative, Number, Product, Quotient, Root, Sum
from paperaudit.model.reading import Reading
from paperaudit.model.reckoning import Reckoning
from paperaudit.strands.finishing import ChecksDisagree
from paperaudit.strands.numbers.working import Working
from paperaudit.strands.ratios.amounts_worked import PI, simplest, size_of, worked
from paperaudit.strands.ratios.ending import ended
from paperaudit.strands.ratios.laws import Known, Law, apply, chain
from paperaudit.strands.ratios.meshes import mesh_of
from paperaudit.strands.ratios.plain_amounts import working_of
from paperaudit.strands.ratios.solids import LAWS, in_unit, letter_of

_CAPS = ("cone", "hemisphere")
_CONFIRMED = "measured again on meshes of flat triangles"
_MOST = 10**6


@dataclass(slots=True)
class Body:
    """A solid with what is known of it, all lengths in one unit."""

    label: str
    kind: str
    known: Known


def together(task: Reckoning, reading: Reading) -> Derived:
    """Volume, surface or mass of solids that are joined, or of one that another is cut out of."""
    assert reading.ask is not None
    working = working_of("volume", reading)
    bodies, unit = _bodies(task, reading, working)
    _heights(task, bodies, unit, working)
    cut = task.kind == "solids removed"
    if task.wanted == ("surface area",):
        if cut:
            raise NoValue("the surface of a solid with a hole")
        total, power = _surface(bodies, working), "²"
    else:
        total, power = _volume(bodies, cut, working), "³"
    measured = Measured(total, unit + power)
    if task.wanted == ("mass",):
        measured = _mass(task, total, unit, working)
    letter = {"mass": "m", "volume": "V", "surface area": "S"}[task.wanted[0]]
    answer = ended(measured, reading.ask, working, letter)
    _on_meshes(bodies, total, power, cut)
    return working.derived(answer, confirmed_by=_CONFIRMED)


def _bodies(task: Reckoning, reading: Reading, working: Working) -> tuple[list[Body], str]:
    assert reading.ask is not None
    unit = next(
        one.value.unit
        for one in task.amounts
        if isinstance(one.value, Measured) and (named := unit_named(one.value.unit)) and named.dimension == "length"
    )
    bodies = []
    for label in task.details:
        kind = label.split(" ", 1)[1] if label.split(" ")[0] in ("first", "second", "third", "fourth") else label
        known = Known(pi=reading.ask.pi)
        for one in task.amounts:
            name = one.name.removeprefix(f"{label} ")
            if one.name.startswith(f"{label} "):
                letter = letter_of(kind, name)
                known.values[letter] = in_unit(letter, name, one.value, unit, working)
        bodies.append(Body(label, kind, known))
    return bodies, unit


def _heights(task: Reckoning, bodies: list[Body], unit: str, working: Working) -> None:
    """The one height that is missing, from the height of the whole."""
    total = task.one("total height")
    if total is None:
        return
    left = in_unit("h", "height", total, unit, working)
    open_ones = [body for body in bodies if "h" not in body.known.values and body.kind not in ("sphere", "hemisphere")]
    if len(open_ones) != 1:
        raise NoValue("the heights of the parts do not follow from the whole height")
    others = []
    for body in bodies:
        if body is open_ones[0]:
            continue
        if body.kind == "hemisphere":
            _length(body, "r", working)
        height = body.known.values.get("r" if body.kind == "hemisphere" else "h")
        if height is None:
            raise NoValue("the heights of the parts do not follow from the whole height")
        others.append(height)
    row = Sum((left, *(Negative(one) for one in others)))
    value = simplest(row)
    if size_of(value) <= 0:
        raise NoValue("the whole is no higher than its parts")
    working.say(f"height of the {open_ones[0].label} = {write(row)} = {write(value)}", write(value))
    open_ones[0].known.values["h"] = value


def _length(body: Body, letter: str, working: Working) -> Expression:
    """A size of one body by its laws, with their lines under the name of the body."""
    path = chain(LAWS[body.kind], body.known.values, letter)
    if path is None:
        raise NoValue(f"the {body.label} is not known well enough")
    for law, found in path:
        _applied(body, law, found, working)
    return body.known.values[letter]


def _applied(body: Body, law: Law, letter: str, working: Working) -> Expression:
    at = len(working.steps)
    value = apply(law, letter, body.known, working)
    head = working.steps[at]
    if letter in ("V", "C", "S"):
        said = f"{letter} of the {body.label}{head.statement.removeprefix(letter)}"
        working.steps[at] = replace(head, statement=said, value=said)
        for index in range(at + 1, len(working.steps)):
            step = working.steps[index]
            uses = tuple(said if one == head.statement else one for one in step.uses)
            working.steps[index] = replace(step, uses=uses)
    if size_of(value) <= 0:
        raise NoValue(f"{letter} would not be positive")
    return value


def _volume(bodies: list[Body], cut: bool, working: Working) -> Expression:
    values = [_length(body, "V", working) for body in bodies]
    if len(values) == 1:
        return values[0]
    ordered = list(reversed(values)) if cut else values
    if cut and size_of(ordered[0]) <= size_of(ordered[1]):
        raise NoValue("more is cut out than there is")
    row = Sum((ordered[0], *(Negative(one) if cut else one for one in ordered[1:])))
    working.say(f"V = {write(row)}", write(row))
    return added(row, working)


def added(row: Sum, working: Working) -> Expression:
    """The sum of the parts, with its line."""
    return worked(row)[-1]


def _surface(bodies: list[Body], working: Working) -> Expression:
    """The curved surfaces, and the flat ends that nothing covers."""
    kinds = [body.kind for body in bodies]
    caps, tubes = sum(kind in _CAPS for kind in kinds), kinds.count("cylinder")
    if caps + tubes != len(kinds) or tubes > 1 or caps > 2 or (not tubes and caps != 2):
        raise NoValue("the surface where these solids meet")
    radii = {size_of(_length(body, "r", working)) for body in bodies}
    if len(radii) != 1:
        raise NoValue("the surface where the radii differ")
    parts = [_length(body, "C", working) for body in bodies]
    if ends := 2 - caps:
        radius = bodies[kinds.index("cylinder")].known.values["r"]
        pi = bodies[0].known.pi or PI
        area = simplest(Product((*([Number(Fraction(ends))] * (ends > 1)), pi, radius, radius), "×"))
        count = "2 × " if ends > 1 else ""
        working.say(f"flat end{'s' * (ends > 1)} = {count}πr² = {write(area)}", write(area))
        parts.append(area)
    row = Sum(tuple(parts))
    working.say(f"S = {write(row)}", write(row))
    return added(row, working)


def _mass(task: Reckoning, volume: Expression, unit: str, working: Working) -> Measured:
    density = task.one("density")
    if not isinstance(density, Measured):
        raise NoValue("the density is not known")
    parts = {"g/cm³": ("g", "cm³"), "kg/m³": ("kg", "m³")}.get(density.unit)
    if parts is None:
        raise UnitClash(f"{density.unit} is no unit of density")
    scale = conversion(unit + "³", parts[1])
    assert scale is not None
    if scale != 1:
        volume = simplest(Product((volume, as_decimal(scale) or whole_or_fraction(scale)), "×"))
        working.say(f"V = {write(Measured(volume, parts[1]))}", write(volume))
    working.skill = "density"
    row = Product((density.amount, volume), "×")
    working.say(f"m = D × V = {write(row)}", write(row))
    return Measured(simplest(row), parts[0])


def _on_meshes(bodies: list[Body], total: Expression, power: str, cut: bool) -> None:
    found, tolerance, radius = 0.0, 2e-3, 0.0
    for index, body in enumerate(bodies):
        sizes = {letter: float(size_of(value)) for letter, value in body.known.values.items()}
        mesh = mesh_of(body.kind, sizes)
        found += (mesh.volume if power == "³" else mesh.sides) * (-1 if cut and index == 0 else 1)
        radius = sizes.get("r", radius)
    if power == "²":
        ends = 2 - sum(body.kind in _CAPS for body in bodies)
        found += ends * mesh_of("cylinder", {"r": radius, "h": 1.0}).bottom
    if abs(float(size_of(total)) - found) > 3 * tolerance * abs(found):
        raise ChecksDisagree(f"on meshes it measures about {found:.4g}")


def moved(task: Reckoning, reading: Reading) -> Derived:
    """What becomes of a volume that is poured or melted down, and how far it raises water."""
    assert reading.ask is not None
    working = working_of("volume", reading)
    (source, target), unit = _bodies(task, reading, working)
    wanted = task.wanted[0]
    volume = _length(source, "V", working)
    if wanted == "number":
        return _number(volume, source, target, reading, working)
    if wanted == "rise":
        wanted, letter = "rise of the water", "h"
        target.known.values.pop("h", None)
    else:
        letter = letter_of(target.kind, wanted.removeprefix(f"{target.label} "))
        if not wanted.startswith(target.label):
            raise NoValue("a size of the first solid")
        known = target.known.values.pop("h", None) if task.kind == "solids poured" and letter == "h" else None
    number = task.one("number of them")
    if number is not None:
        row = Quotient(volume, number, "÷")
        volume = simplest(row)
        working.say(f"V of each {target.label} = {write(row)} = {write(volume)}", write(volume))
    target.known.values["V"] = volume
    target.known.lines["V"] = working.steps[-1].statement
    value = _length(target, letter, working)
    if task.kind == "solids poured" and known is not None and size_of(value) > size_of(known):
        raise NoValue("the water runs over")
    power = "³" if letter == "V" else "²" if letter in "SC" else ""
    answer = ended(Measured(value, unit + power), reading.ask, working, letter)
    _same_volume(source, target, float(size_of(number)) if number is not None else 1.0)
    return working.derived(answer, confirmed_by="both volumes measured on meshes of flat triangles")


def _same_volume(source: Body, target: Body, number: float) -> None:
    sizes = [
        {letter: float(size_of(value)) for letter, value in body.known.values.items()} for body in (source, target)
    ]
    one, other = (mesh_of(body.kind, size).volume for body, size in zip((source, target), sizes, strict=True))
    if abs(one - number * other) > 6e-3 * abs(one):
        raise ChecksDisagree("the two volumes measure differently")


def _number(volume: Expression, source: Body, target: Body, reading: Reading, working: Working) -> Derived:
    assert reading.ask is not None
    small = _length(target, "V", working)
    row = Quotient(volume, small)
    value = simplest(row)
    working.say(write(Quotient(volume, small, "÷")), "")
    count = rational_value(value) if not isinstance(value, Root) else None
    if count is None or count < 1 or count > _MOST:
        raise NoValue("a number of solids that is not known exactly")
    if count.denominator != 1:
        working.say(f"= {write(as_decimal(count, 1) or whole_or_fraction(count))}", "")
        count = Fraction(count.__floor__())
    answer = ended(Number(count), reading.ask, working)
    sizes = [{letter: float(size_of(one)) for letter, one in body.known.values.items()} for body in (source, target)]
    one, other = (mesh_of(body.kind, size).volume for body, size in zip((source, target), sizes, strict=True))
    if not -0.02 < one / other / float(count) - 1 < 1 / float(count) + 0.02:
        raise ChecksDisagree("the volumes measured on meshes give another number")
    return working.derived(answer, confirmed_by="both volumes measured on meshes of flat triangles")
