"""Which letters the sizes of plane figures get: what each named size of a shape is in a figure ABCD of our own."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from paperaudit.wording.scene import NotUnderstood

Sizes = dict[str, list[str]]


@dataclass(frozen=True, slots=True)
class Lettered:
    """A figure in letters: statements of the paper's language and what is wanted."""

    statements: tuple[str, ...]
    wanted: str


@dataclass(frozen=True, slots=True)
class Shape:
    """A shape: the figure, what its named sizes are, and what has to be drawn for some of them.

    A name with several values has one place for each. `sizes` can be told and asked for; `only_told` and
    `only_asked` are the rest; `drawn` is what a name needs besides; `needs` is what has
    to be named beside a size so that it is clear which one is meant, `apart` what leaves this open.
    """

    figure: tuple[str, ...]
    sizes: Mapping[str, tuple[str, ...]]
    only_told: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    only_asked: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    drawn: Mapping[str, str] = field(default_factory=dict)
    needs: Mapping[str, frozenset[str]] = field(default_factory=dict)
    apart: tuple[frozenset[str], ...] = ()


_FOUR = {"perimeter": ("perimeter of ABCD",), "area": ("area of ABCD",)}
_THREE = {"perimeter": ("perimeter of △ABC",), "area": ("area of △ABC",)}
_TO_BASE = {"height": "D is the foot of the perpendicular from A to BC"}
_RIGHT = ("triangle ABC", "∠ABC = 90°")

SHAPES: Mapping[str, Shape] = {
    "rectangle": Shape(
        ("rectangle ABCD",),
        {"length": ("AB",), "width": ("BC",), "diagonal": ("AC",), **_FOUR},
        only_told={"side": ("AB", "BC")},
        needs={"length": frozenset({"width"}), "width": frozenset({"length"})},
    ),
    "square": Shape(("square ABCD",), {"side": ("AB",), "length": ("AB",), "diagonal": ("AC",), **_FOUR}),
    "rhombus": Shape(
        ("rhombus ABCD",), {"side": ("AB",), **_FOUR}, only_told={"diagonal": ("AC", "BD"), "angle": ("∠DAB",)}
    ),
    "kite": Shape(("kite ABCD",), _FOUR, only_told={"diagonal": ("AC", "BD")}),
    "parallelogram": Shape(
        ("parallelogram ABCD",),
        {"base": ("AB",), "height": ("DE",), **_FOUR},
        only_told={"side": ("AB", "BC")},
        drawn={"height": "E is the foot of the perpendicular from D to AB"},
    ),
    "trapezium": Shape(
        ("trapezium ABCD", "AB ∥ CD"),
        {"distance between": ("DE",), "height": ("DE",), "area": ("area of ABCD",)},
        only_told={"parallel side": ("AB", "CD")},
        drawn={"height": "E is the foot of the perpendicular from D to AB",
               "distance between": "E is the foot of the perpendicular from D to AB"},
    ),
    "circle": Shape(
        ("circle with centre O",),
        {name: (f"{name} of circle O",) for name in ("radius", "diameter", "circumference", "area")},
        only_asked={"perimeter": ("circumference of circle O",)},
    ),
    "triangle": Shape(
        ("triangle ABC",),
        {"base": ("BC",), "height": ("AD",), "area": ("area of △ABC",)},
        only_told={"side": ("AB", "AC", "BC"), "angle": ("∠ABC", "∠ACB"), "included angle": ("∠BAC",),
                   "angle ratio": ("∠BAC : ∠ABC : ∠ACB",), "exterior angle": ("∠ACD",),
                   "opposite angle": ("∠BAC",), "interior opposite angle": ("∠BAC",)},
        only_asked={"third angle": ("∠BAC",), "third side": ("BC",), "perimeter": ("perimeter of △ABC",),
                    "angle": ("∠BAC and ∠ABC and ∠ACB",), "other": ("∠ABC",)},
        drawn={**_TO_BASE, "exterior angle": "BC is produced to D"},
        needs={"other": frozenset({"exterior angle"})},
        apart=(frozenset({"side", "base"}), frozenset({"side", "height"}), frozenset({"exterior angle", "height"}),
               frozenset({"angle", "side"}), frozenset({"angle", "base"}), frozenset({"angle", "exterior angle"})),
    ),
    "isosceles triangle": Shape(
        ("triangle ABC", "AB = AC"),
        {"base": ("BC",), "equal side": ("AB",), "height": ("AD",), "base angle": ("∠ABC",),
         "vertex angle": ("∠BAC",), **_THREE},
        only_asked={"third angle": ("∠BAC",)},
        drawn=_TO_BASE,
        needs={"third angle": frozenset({"base angle"})},
    ),
    "equilateral triangle": Shape(
        ("equilateral triangle ABC",), {"side": ("AB",), "height": ("AD",), **_THREE}, drawn=_TO_BASE
    ),
    "right-angled triangle": Shape(
        _RIGHT,
        {"hypotenuse": ("AC",), **_THREE},
        only_told={"shorter side": ("BC", "AB"), "side": ("BC",), "third side": ("BC",)},
        only_asked={"third side": ("AB",), "longest side": ("AC",)},
        needs={"third side": frozenset({"hypotenuse"}), "side": frozenset({"hypotenuse"})},
    ),
}  # fmt: skip


def lettered(shape: Shape, told: Sizes, wanted: Sequence[str]) -> Lettered:
    """A figure with its sizes in letters; raises NotUnderstood for a size that the shape has no place for.

    >>> lettered(SHAPES["square"], {"side": ["5 cm"]}, ["diagonal"]).statements
    ('square ABCD', 'AB = 5 cm')
    """
    places = {**shape.sizes, **shape.only_told}
    asked = {**shape.sizes, **shape.only_asked}
    wanted = [_extreme(name, told, asked) for name in wanted]
    twice = {*wanted} & {*told} - {*shape.only_asked} or len({*wanted}) < len(wanted)
    if not wanted or twice or any(name not in asked and name not in _ENDS for name in wanted):
        raise NotUnderstood("sizes to be found", 0)
    if any(pair <= {*told, *wanted} for pair in shape.apart):
        raise NotUnderstood("which side or angle is meant", 0)
    statements = list(shape.figure)
    for name in dict.fromkeys((*told, *wanted)):
        if name in shape.drawn:
            statements.append(shape.drawn[name])
        if not shape.needs.get(name, frozenset()) <= {*told, *wanted}:
            raise NotUnderstood("which side is meant", 0)
    for name, values in told.items():
        if name not in places or len(values) > len(places[name]):
            raise NotUnderstood(name, 0)
        _fits(name, values)
        statements += [f"{place} = {value}" for place, value in zip(places[name], values, strict=False)]
    if len(dict.fromkeys(statements)) != len(statements):
        raise NotUnderstood("one size twice", 0)
    return Lettered(tuple(statements), " and ".join(name if name in _ENDS else asked[name][0] for name in wanted))


_ENDS = ("∠BAC", "∠ABC", "∠ACB")


def _extreme(name: str, told: Sizes, asked: Mapping[str, tuple[str, ...]]) -> str:
    """The angle that is the largest or the smallest of a ratio; any other name as it is."""
    read = re.fullmatch(r"(largest|smallest) angle", name)
    if read is None or name in asked or "angle ratio" not in told:
        return name
    shares = [Fraction(one) for one in told["angle ratio"][0].split(" : ")]
    end = max(shares) if read[1] == "largest" else min(shares)
    if shares.count(end) != 1 or len(shares) != len(_ENDS):
        raise NotUnderstood("which angle is meant", 0)
    return _ENDS[shares.index(end)]


def _fits(name: str, values: Sequence[str]) -> None:
    """Angles are in degrees, sizes are not, and a ratio has neither."""
    for value in values:
        turned = re.search("°|degrees", value) is not None
        if turned != ("angle" in name and "ratio" not in name) or (("ratio" in name) != (":" in value)):
            raise NotUnderstood("a size of another kind", 0)
