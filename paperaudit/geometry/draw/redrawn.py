"""Draws a figure once more, better spaced: with the same sizes, order and turning, or with all sizes left open."""

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from paperaudit.geometry.arrangement import Arrangement
from paperaudit.geometry.draw.room import is_alike, room
from paperaudit.geometry.draw.true_sizes import TrueSizes
from paperaudit.geometry.figure import (
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
from paperaudit.geometry.plane import Spot
from paperaudit.geometry.realise import Drawing, realise
from paperaudit.model.expression import AngleOf, Letter

FURTHER_SEEDS = range(24)
"""The starts of further drawings."""
ROOMY = 2.4
"""A drawing with this much room (3 is ample) is not drawn again."""
_OF_FORM = (
    Ordered | InLine | ParallelPair | Convex | RoundOrder | RayBetween | InsidePolygon | SideOfLine | DrawnTurn
    | SameWay | OnCircle | TangentAt | OutsidePolygon
)  # fmt: skip
"""What a figure keeps, whatever of its sizes is left open."""


def well_spaced(arrangement: Arrangement, sizes: TrueSizes) -> dict[str, Spot]:
    """The positions of the drawing with most room that has the same order, turning and sizes.

    A figure that has a sketch stays as it is, and so does one that has room.
    """
    at = dict(arrangement.at)
    if arrangement.figure.sketch or room(arrangement, at) > ROOMY:
        return at
    drawings = realise(arrangement.figure, FURTHER_SEEDS)
    found = [points for points in _alike(arrangement, drawings) if sizes.kept_by(points)]
    return max([at, *found], key=lambda points: room(arrangement, points))


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
