"""Draws a figure once more, better spaced: with the same sizes, order and turning, or with all sizes left open."""

import math
import random
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.margins import LETTER_SCALE
from paperaudit.geometry.coordinates.realise import Drawing, realise
from paperaudit.geometry.draw.proportions import well_proportioned
from paperaudit.geometry.draw.room import is_alike, room
from paperaudit.geometry.draw.true_sizes import TrueSizes
from paperaudit.geometry.figure.figure import (
    Balance,
    Condition,
    Convex,
    DrawnTurn,
    EqualLengths,
    InLine,
    InsidePolygon,
    OnCircle,
    Ordered,
    OutsidePolygon,
    ParallelPair,
    RayBetween,
    RightAngle,
    RoundOrder,
    SameWay,
    SideOfLine,
    SizeRelation,
    TangentAt,
)
from paperaudit.geometry.figure.plane import Spot
from paperaudit.model.expression import AngleOf, Letter

FURTHER_SEEDS = range(24)
"""The starts of further drawings."""
STRETCHES = (1.3, 0.75, 1.5, 0.65, 1.75, 0.55)
SHEARS = (0.0, 0.18, -0.18, 0.35, -0.35)
"""What is tried: breadth times, and height pushed to the side."""
SHAKES = (0.06, 0.1, 0.15, 0.2, 0.25) * 4
"""By how much of the figure's size points are moved."""
ROOMY = 2.4
"""A drawing with this much room (3 is ample) is not drawn again."""
_OF_FORM = (
    Ordered | InLine | ParallelPair | Convex | RoundOrder | RayBetween | InsidePolygon | SideOfLine | DrawnTurn
    | SameWay | OnCircle | TangentAt | OutsidePolygon
)  # fmt: skip
"""What a figure keeps, whatever of its sizes is left open."""


CENTRES = ("incentre", "centroid", "orthocentre")
"""Reasons of relations that make a point a centre of its figure, and a circle one that touches the sides."""


def well_spaced(arrangement: Arrangement, sizes: TrueSizes) -> dict[str, Spot]:
    """The positions with most room that have the arrangement's order and turning, and its sizes.

    Lengths that are free are settled first. A figure that has a sketch, or room enough, is not drawn
    again; else it is from several starts, by chance and near its own.
    """
    first = _settled(arrangement, dict(arrangement.at), sizes)
    if arrangement.figure.sketch or room(arrangement, first) > ROOMY:
        return first
    letters = dict.fromkeys(arrangement.figure.letters, LETTER_SCALE / 2)
    near = [Drawing(spots, letters) for spots in (*stretches(first), *shaken(first))]
    drawings = realise(arrangement.figure, FURTHER_SEEDS, near)
    found = [spots for spots in _alike(arrangement, drawings) if sizes.kept_by(spots)]
    settled = [_settled(arrangement, spots, sizes) for spots in found]
    return max([first, *found, *settled], key=lambda spots: room(arrangement, spots))


def _settled(arrangement: Arrangement, at: dict[str, Spot], sizes: TrueSizes) -> dict[str, Spot]:
    """Positions with their free lengths well proportioned, where that changes nothing else."""
    moved = well_proportioned(Arrangement(arrangement.figure, Drawing(at, {})))
    return moved if sizes.kept_by(moved) and is_alike(arrangement, moved) else at


def stretches(at: Mapping[str, Spot]) -> list[dict[str, Spot]]:
    """The positions made broader and narrower, upright and pushed to the side; true to scale none of them."""
    return [mapped(at, stretch, shear) for shear in SHEARS for stretch in STRETCHES]


def mapped(at: Mapping[str, Spot], stretch: float, shear: float) -> dict[str, Spot]:
    """The positions, `stretch` times as broad and pushed to the side by `shear` times the height."""
    return {name: (stretch * x + shear * y, y) for name, (x, y) in at.items()}


def shaken(at: Mapping[str, Spot]) -> list[dict[str, Spot]]:
    """The positions with every point moved a little, by chance; the same every time."""
    chance = random.Random(len(at))
    size = max(math.dist(one, other) for one in at.values() for other in at.values())
    return [
        {
            name: (x + size * step * chance.uniform(-1, 1), y + size * step * chance.uniform(-1, 1))
            for name, (x, y) in at.items()
        }
        for step in SHAKES
    ]


def resized(arrangement: Arrangement, starts: Sequence[Mapping[str, Spot]], looseness: int) -> list[dict[str, Spot]]:
    """The positions of drawings near given ones, of the same form and with all sizes left open.

    With no `looseness` equal sizes stay equal and right angles right, for their marks are shown; 1 leaves
    equal sizes open, 2 right angles too. Circles stay round and parallels parallel.
    """
    kept = tuple(one for one in arrangement.figure.conditions if _is_of_form(one, looseness))
    form = replace(arrangement.figure, conditions=kept, letters=(), sketch=(), fixed_names=())
    return _alike(arrangement, realise(form, range(0), [Drawing(_unit_size(start), {}) for start in starts]))


def _unit_size(at: Mapping[str, Spot]) -> dict[str, Spot]:
    """Positions as large as the starts of drawings are."""
    x, y = (sum(part) / len(at) for part in zip(*at.values(), strict=True))
    size = max(math.dist(spot, (x, y)) for spot in at.values()) or 1.0
    return {name: ((p - x) / size, (q - y) / size) for name, (p, q) in at.items()}


def _alike(arrangement: Arrangement, drawings: Iterable[Drawing]) -> list[dict[str, Spot]]:
    """The positions of the drawings that look like the arrangement."""
    return [dict(drawing.at) for drawing in drawings if is_alike(arrangement, drawing.at)]


def _is_of_form(condition: Condition, looseness: int) -> bool:
    """Whether a condition stays where sizes are left open."""
    match condition:
        case EqualLengths(reason=reason):
            return looseness < 1 or reason == "radii"
        case RightAngle():
            return looseness < 2
        case Balance(reason=reason):
            return reason in CENTRES
        case SizeRelation(form):
            if len(form.terms) == 1:
                return looseness < 2 and is_right(condition)
            is_equality = len(form.terms) == 2 and not form.constant and sum(form.terms.values()) == 0
            return looseness < 1 and is_equality and not any(isinstance(size, Letter) for size in form.terms)
    return isinstance(condition, _OF_FORM)


def is_right(condition: SizeRelation) -> bool:
    """Whether a relation says no more than that an angle is a right one."""
    if len(condition.form.terms) != 1:
        return False
    ((size, share),) = condition.form.terms.items()
    return isinstance(size, AngleOf) and condition.form.constant == -90 * share
