"""A second way to the sizes of a solid: flat triangles all over it, measured by their corners."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import cos, dist, pi, sin, sqrt

from paperaudit.errors import NoValue

_ROUND = 240
_STACKED = 120
Corner = tuple[float, float, float]
Ring = tuple[Corner, ...]


@dataclass(frozen=True, slots=True)
class Mesh:
    """What a closed mesh measures: `sides` between its rings, the areas of its ends, its volume.

    `tolerance` is the share by which round solids differ from their mesh and by which 3.14 and 22/7 differ from π.
    """

    volume: float
    sides: float
    bottom: float
    top: float
    tolerance: float = 2e-3

    def surface(self, details: Sequence[str]) -> float:
        """The surface, without the ends that are open."""
        if "open at both ends" in details:
            return self.sides
        if "open at the top" in details:
            return self.sides + min(self.bottom, self.top) if min(self.bottom, self.top) else self.sides
        return self.sides + self.bottom + self.top


def mesh_of(kind: str, sizes: Mapping[str, float]) -> Mesh:
    """The mesh of a solid with these lengths; raises NoValue where they do not fix it."""
    try:
        return _mesh(_rings(kind, sizes))
    except KeyError as missing:
        raise NoValue(f"{missing} is not known for a mesh") from None


def _rings(kind: str, sizes: Mapping[str, float]) -> list[Ring]:
    match kind:
        case "cylinder":
            return [_circle(sizes["r"], 0), _circle(sizes["r"], sizes["h"])]
        case "cone":
            height = sizes["h"] if "h" in sizes else sqrt(sizes["L"] ** 2 - sizes["r"] ** 2)
            return [_circle(sizes["r"], 0), _circle(0, height)]
        case "frustum":
            return [_circle(sizes["a"], 0), _circle(sizes["b"], sizes["h"])]
        case "sphere" | "hemisphere":
            start = -_STACKED if kind == "sphere" else 0
            turns = [step * pi / 2 / _STACKED for step in range(start, _STACKED + 1)]
            return [_circle(sizes["r"] * cos(turn), sizes["r"] * sin(turn)) for turn in turns]
        case "cube":
            return [_rectangle(sizes["a"], sizes["a"], 0), _rectangle(sizes["a"], sizes["a"], sizes["a"])]
        case "cuboid":
            return [_rectangle(sizes["l"], sizes["b"], 0), _rectangle(sizes["l"], sizes["b"], sizes["h"])]
        case "square frustum":
            return [_rectangle(sizes["a"], sizes["a"], 0), _rectangle(sizes["b"], sizes["b"], sizes["h"])]
        case "square pyramid":
            height = sizes["h"] if "h" in sizes else sqrt(sizes["L"] ** 2 - sizes["a"] ** 2 / 4)
            return [_rectangle(sizes["a"], sizes["a"], 0), _rectangle(0, 0, height)]
    section = _section(kind, sizes)
    return [tuple((x, y, 0.0) for x, y in section), tuple((x, y, sizes["l"]) for x, y in section)]


def _section(kind: str, sizes: Mapping[str, float]) -> tuple[tuple[float, float], ...]:
    """The cross-section of a prism with a corner at the origin."""
    match kind:
        case "triangular prism":
            return (0.0, 0.0), (sizes["b"], 0.0), (0.0, sizes["h"])
        case "right-angled triangular prism":
            return (0.0, 0.0), (sizes["a"], 0.0), (0.0, sizes["b"])
        case "prism on a trapezium":
            return (0.0, 0.0), (sizes["a"], 0.0), (sizes["b"], sizes["h"]), (0.0, sizes["h"])
    raise NoValue(f"no mesh of a {kind}")


def _circle(radius: float, height: float) -> Ring:
    turns = [2 * pi * step / _ROUND for step in range(_ROUND)]
    return tuple((radius * cos(turn), radius * sin(turn), height) for turn in turns)


def _rectangle(length: float, width: float, height: float) -> Ring:
    x, y = length / 2, width / 2
    return (x, y, height), (-x, y, height), (-x, -y, height), (x, -y, height)


def _mesh(rings: Sequence[Ring]) -> Mesh:
    sides = volume = 0.0
    for lower, upper in pairwise(rings):
        for here in range(len(lower)):
            after = (here + 1) % len(lower)
            for corners in ((lower[here], lower[after], upper[after]), (lower[here], upper[after], upper[here])):
                sides += _area(*corners)
                volume += _signed(*corners)
    ends = []
    for ring, turned in ((rings[0], True), (rings[-1], False)):
        centre = (0.0, 0.0, ring[0][2])
        area = 0.0
        for here in range(len(ring)):
            one, other = ring[here], ring[(here + 1) % len(ring)]
            area += _area(centre, one, other)
            volume += _signed(centre, other, one) if turned else _signed(centre, one, other)
        ends.append(area)
    return Mesh(volume, sides, *(0.0 if end < 1e-9 * sides else end for end in ends))


def _area(one: Corner, two: Corner, three: Corner) -> float:
    """By Heron's formula, from the three sides alone."""
    a, b, c = sorted((dist(one, two), dist(two, three), dist(three, one)))
    inside = (c + (b + a)) * (a - (c - b)) * (a + (c - b)) * (c + (b - a))
    return sqrt(max(0.0, inside)) / 4


def _signed(one: Corner, two: Corner, three: Corner) -> float:
    """The volume of the tetrahedron with the origin, negative where the corners turn the other way."""
    (a, b, c), (d, e, f), (g, h, i) = one, two, three
    return (a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)) / 6
