"""Which letters the sizes of ladders, shadows, kites, ramps and lines of sight get in a figure of our own."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.figure_letters import Lettered, Sizes

_UPRIGHT = ("triangle ABC", "∠ABC = 90°")
"""A stands upright over B, C is on the ground: A the top, B the foot."""

MOST_POINTS = 6


@dataclass(frozen=True, slots=True)
class Kind:
    """What a scene is drawn as: its figure, its sizes by the names of plain_scenes.peg, what can be asked for."""

    figure: tuple[str, ...]
    sizes: Mapping[str, str]
    asked: Mapping[str, str]


KINDS: Mapping[str, Kind] = {
    "ladder": Kind(
        _UPRIGHT,
        {"ladder_long": "AC", "ladder_foot": "BC", "ladder_reach": "AB", "ladder_ground": "∠ACB",
         "ladder_wall": "∠BAC"},
        {"long_asked": "AC", "foot_asked": "BC", "reach_asked": "AB", "ground_asked": "∠ACB", "wall_asked": "∠BAC"},
    ),
    "shadow": Kind(
        _UPRIGHT,
        {"shadow_height": "AB", "shadow_long": "BC", "sun_angle": "∠ACB"},
        {"height_asked": "AB", "shade_asked": "BC", "sun_asked": "∠ACB"},
    ),
    "sight": Kind(
        _UPRIGHT,
        {"sight_high": "AB", "sight_far": "BC", "sight_angle": "∠ACB"},
        {"height_asked": "AB", "sight_far_asked": "BC"},
    ),
    "closer": Kind(
        ("D, C, B are collinear", "segments AC, AD", "AB ⊥ DB"),
        {"closer_first": "∠ADB", "closer_second": "∠ACB", "closer_by": "DC"},
        {"height_asked": "AB"},
    ),
    "string": Kind(_UPRIGHT, {"string_long": "AC", "string_angle": "∠ACB"}, {"kite_asked": "AB"}),
    "ramp": Kind(
        _UPRIGHT,
        {"ramp_long": "AC", "ramp_high": "AB", "ramp_angle": "∠ACB"},
        {"slope_asked": "∠ACB", "rise_asked": "AB"},
    ),
}  # fmt: skip


def scene_in_letters(name: str, told: Sizes, wanted: Sequence[str]) -> Lettered:
    """A scene in letters; raises NotUnderstood where a size is told twice, or nothing or too much is asked.

    >>> scene_in_letters("ramp", {"ramp_long": ["4 m"], "ramp_high": ["2 m"]}, ["slope_asked"]).wanted
    '∠ACB'
    """
    kind = KINDS[name]
    if len(wanted) != 1 or any(len(values) != 1 for values in told.values()):
        raise NotUnderstood("one size to be found", 0)
    asked = kind.asked[wanted[0]]
    statements = [f"{kind.sizes[size]} = {values[0]}" for size, values in told.items()]
    if any(one.startswith(f"{asked} =") for one in statements):
        raise NotUnderstood("a size that is told", 0)
    return Lettered((*kind.figure, *statements), asked)


def two_shadows(heights: Sequence[str], shadows: Sequence[str]) -> Lettered:
    """Two upright things at one time: the second height from the first and both shadows."""
    (height,), (shadow, other) = heights, shadows
    figure = ("△ABC ||| △DEF", "∠ABC = 90°", f"AB = {height}", f"BC = {shadow}", f"EF = {other}")
    return Lettered(figure, "DE")


def walk_in_letters(legs: Sequence[tuple[str, str]], points: str = "ABCDEF", wanted: str = "") -> Lettered:
    """A walk from A over B, C, …: each leg with its length, and how the next point lies; how far it led, by default.

    >>> walk_in_letters([("8 km", "due north"), ("6 km", "due east")]).statements[0]
    'B is due north of A'
    """
    if not 1 < len(legs) < MOST_POINTS:
        raise NotUnderstood("two or more legs", 0)
    statements: list[str] = []
    for (length, way), here, there in zip(legs, points, points[1:], strict=False):
        lies = f"the bearing of {there} from {here} is {way}" if way[0].isdigit() else f"{there} is {way} of {here}"
        statements += [lies, f"{here}{there} = {length}"]
    way_back = f"{points[0]}{points[len(legs)]}"
    if wanted.startswith("the bearing"):
        statements.append(f"segment {way_back}")
    return Lettered(tuple(statements), wanted or way_back)
