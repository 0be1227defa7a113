"""Frustums of square pyramids, solids with a hole through them, and nets."""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.measure import UnitClash
from paperaudit.maths.units import conversion
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Derived
from paperaudit.model.expression import Expression, Measured, Negative, Number, Product, Sum
from paperaudit.model.reading import Reading
from paperaudit.model.reckoning import Reckoning
from paperaudit.strands.finishing import ChecksDisagree
from paperaudit.strands.numbers.working import Working
from paperaudit.strands.ratios.amounts_worked import PI, simplest, size_of, worked
from paperaudit.strands.ratios.ending import ended
from paperaudit.strands.ratios.lawful import Kind, Units, in_unit
from paperaudit.strands.ratios.laws import Law
from paperaudit.strands.ratios.meshes import mesh_of
from paperaudit.strands.ratios.plain_amounts import working_of

_SMALL = 3e-3


def _units_of_frustum(task: Reckoning, ask: Ask) -> Units:
    unit = _length_unit(task)
    return {**dict.fromkeys("abhL", unit), "V": f"{unit}³", "S": f"{unit}²", "C": f"{unit}²"}


def _length_unit(task: Reckoning) -> str:
    unit = next((one.value.unit for one in task.amounts if isinstance(one.value, Measured)), "")
    if conversion(unit, "m") is None:
        raise UnitClash(f"{unit or 'a bare number'} is no unit of length")
    return unit


def _frustum_on_mesh(sizes: Mapping[str, Fraction]) -> None:
    plain = {letter: float(size) for letter, size in sizes.items()}
    if not {"a", "b"} <= plain.keys():
        return
    if "h" not in plain and "L" in plain:
        plain["h"] = float(plain["L"] ** 2 - ((plain["a"] - plain["b"]) / 2) ** 2) ** 0.5
    mesh = mesh_of("square frustum", plain)
    measured = {"V": mesh.volume, "C": mesh.sides, "S": mesh.sides + mesh.bottom + mesh.top}
    for letter, found in measured.items():
        if letter in plain and abs(plain[letter] - found) > _SMALL * found:
            raise ChecksDisagree(f"{letter} measures about {found:.4g} on a mesh")


SQUARE_FRUSTUM = Kind(
    "volume",
    {"bottom edge": "a", "top edge": "b", "height": "h", "slant height": "L", "volume": "V", "surface area": "S",
     "lateral area": "C"},
    (Law("V = (1/3)h × (a² + ab + b²)"), Law("L² = h² + ((a − b)/2)²"), Law("C = 2 × (a + b) × L"),
     Law("S = a² + b² + 2 × (a + b) × L")),
    _units_of_frustum,
    _frustum_on_mesh,
    "measured again on a mesh of flat triangles",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class _Holed:
    """A block, its hole and how deep it is; areas and volumes as products."""

    whole: Expression
    ends: Expression
    walls: Expression
    volume: Expression
    hole: Expression


def with_hole(task: Reckoning, reading: Reading) -> Derived:
    """The surface (the holes in the faces off, the walls of the hole on) or what is left of the volume."""
    assert reading.ask is not None
    unit = _length_unit(task)
    working = working_of("surface area" if task.wanted[0] == "surface area" else "volume", reading)
    sizes = {amount.name: in_unit(amount.value, unit, working) for amount in task.amounts}
    for name in ("diameter", "hole diameter"):
        if name in sizes:
            sizes[name.replace("diameter", "radius")] = simplest(
                Product((sizes.pop(name), Number(Fraction(1, 2))), "×")
            )
    _fits(task.kind, sizes)
    parts = _parts(task.kind, sizes, reading.ask.pi or PI)
    if task.wanted[0] == "surface area":
        named = (("whole surface", parts.whole), ("holes in the faces", parts.ends), ("walls of the hole", parts.walls))
        values = [_said(name, value, working) for name, value in named]
        row = Sum((values[0], Negative(values[1]), values[2]))
        letter, power = "S", "²"
    else:
        values = [_said(name, value, working) for name, value in (("whole block", parts.volume), ("hole", parts.hole))]
        row = Sum((values[0], Negative(values[1])))
        letter, power = "V", "³"
    working.say(f"{letter} = {write(row)}", write(row))
    total = worked(row)[-1]
    answer = ended(Measured(total, unit + power), reading.ask, working, letter)
    _on_meshes(task.kind, {name: float(size_of(value)) for name, value in sizes.items()}, float(size_of(total)), letter)
    return working.derived(answer, confirmed_by="measured again on meshes of flat triangles")


def _said(name: str, value: Expression, working: Working) -> Expression:
    done = simplest(value)
    shown = write(value)
    working.say(f"{name} = {shown}" + (f" = {write(done)}" if write(done) != shown else ""), write(done), working.used)
    return done


def _fits(kind: str, sizes: Mapping[str, Expression]) -> None:
    """Raises NoValue where the hole is wider than the block."""
    across = "hole edge" if "hole edge" in sizes else "hole radius"
    width = size_of(sizes[across]) * (1 if across == "hole edge" else 2)
    faces = {"cube": ("edge",), "cuboid": ("length", "width"), "round": ("radius",)}[kind.split(" ")[0]]
    if any(width >= size_of(sizes[face]) * (2 if face == "radius" else 1) for face in faces):
        raise NoValue("the hole is wider than the solid")


def _parts(kind: str, sizes: Mapping[str, Expression], pi: Expression) -> _Holed:
    two, four = Number(Fraction(2)), Number(Fraction(4))
    match kind.split(" ")[0]:
        case "cube":
            edge = sizes["edge"]
            whole: Expression = Product((Number(Fraction(6)), edge, edge), "×")
            volume: Expression = Product((edge, edge, edge), "×")
            depth = edge
        case "cuboid":
            one, other, depth = sizes["length"], sizes["width"], sizes["depth"]
            pairs = ((one, other), (one, depth), (other, depth))
            whole = Sum(tuple(Product((two, *pair), "×") for pair in pairs))
            volume = Product((one, other, depth), "×")
        case _:
            radius, depth = sizes["radius"], sizes["height"]
            whole = Sum((Product((two, pi, radius, radius), "×"), Product((two, pi, radius, depth), "×")))
            volume = Product((pi, radius, radius, depth), "×")
    if "hole edge" in sizes:
        side = sizes["hole edge"]
        return _Holed(whole, Product((two, side, side), "×"), Product((four, side, depth), "×"), volume,
                      Product((side, side, depth), "×"))  # fmt: skip
    bore = sizes["hole radius"]
    return _Holed(whole, Product((two, pi, bore, bore), "×"), Product((two, pi, bore, depth), "×"), volume,
                  Product((pi, bore, bore, depth), "×"))  # fmt: skip


def _on_meshes(kind: str, sizes: Mapping[str, float], total: float, letter: str) -> None:
    match kind.split(" ")[0]:
        case "cube":
            block, depth = mesh_of("cube", {"a": sizes["edge"]}), sizes["edge"]
        case "cuboid":
            depth = sizes["depth"]
            block = mesh_of("cuboid", {"l": sizes["length"], "b": sizes["width"], "h": depth})
        case _:
            depth = sizes["height"]
            block = mesh_of("cylinder", {"r": sizes["radius"], "h": depth})
    if "hole edge" in sizes:
        hole = mesh_of("cuboid", {"l": sizes["hole edge"], "b": sizes["hole edge"], "h": depth})
    else:
        hole = mesh_of("cylinder", {"r": sizes["hole radius"], "h": depth})
    found = block.volume - hole.volume
    if letter == "S":
        found = block.sides + block.bottom + block.top - hole.bottom - hole.top + hole.sides
    if abs(total - found) > _SMALL * found:
        raise ChecksDisagree(f"{letter} measures about {found:.4g} on meshes")


def net(task: Reckoning, reading: Reading) -> Derived:
    """The area of a net: its pieces one by one, then all of them; measured again by the corners of each piece."""
    assert reading.ask is not None
    unit = _length_unit(task)
    working = working_of("surface area", reading)
    amounts = [(one.name, in_unit(one.value, unit, working)) for one in task.amounts]
    areas: list[Expression] = []
    again = 0.0
    while amounts:
        (name, count), kind = amounts.pop(0), ""
        kind = name.removeprefix("number of ").removesuffix("s")
        sizes = []
        while amounts and amounts[0][0] == kind:
            sizes.append(amounts.pop(0)[1])
        factors = {"square": (*sizes, *sizes), "circle": (reading.ask.pi or PI, *sizes, *sizes)}.get(kind, tuple(sizes))
        half = (Number(Fraction(1, 2)),) if kind == "triangle" else ()
        number = (count,) if size_of(count) != 1 else ()
        area = Product((*number, *half, *factors), "×")
        areas.append(_said(f"{kind}s" if number else kind, area, working))
        again += float(size_of(count)) * _piece(kind, [float(size_of(size)) for size in sizes])
    row = Sum(tuple(areas)) if len(areas) > 1 else areas[0]
    working.say(f"area = {write(row)}", write(row))
    total = worked(row)[-1] if isinstance(row, Sum) else row
    answer = ended(Measured(total, f"{unit}²"), reading.ask, working, "area")
    if abs(float(size_of(total)) - again) > _SMALL * again:
        raise ChecksDisagree(f"the pieces measure about {again:.4g}")
    return working.derived(answer, confirmed_by="every piece measured again by its corners")


def _piece(kind: str, sizes: list[float]) -> float:
    """The area of a piece as the end of a solid that stands on it."""
    match kind:
        case "square":
            return mesh_of("cube", {"a": sizes[0]}).bottom
        case "rectangle":
            return mesh_of("cuboid", {"l": sizes[0], "b": sizes[1], "h": 1.0}).bottom
        case "circle":
            return mesh_of("cylinder", {"r": sizes[0], "h": 1.0}).bottom
    return mesh_of("cuboid", {"l": sizes[0], "b": sizes[1], "h": 1.0}).bottom / 2
