"""Turns a true figure so that it stands as its question's sketch does."""

import cmath
import math

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.draw.pieces import Turned

LEVEL = 3.0
"""Degrees within which a line of a sketch is meant to be level (or upright)."""
NEARLY = 30.0
"""Degrees by which a drawing may be turned away from its sketch to bring such a line level again."""


def as_sketched(arrangement: Arrangement, points: Turned, sketch: Turned) -> Turned:
    """The rotation (after a reflection, if that fits better) with the least squares off the sketch: Procrustes."""
    middle = sum(points[name] for name in sketch) / len(sketch)
    centre = sum(sketch.values()) / len(sketch)

    def fit(mirrored: bool) -> complex:
        return sum(
            ((flipped(points[name] - middle, mirrored)).conjugate() * (spot - centre) for name, spot in sketch.items()),
            0j,
        )

    mirrored = abs(fit(True)) > abs(fit(False)) * (1 + 1e-9)
    way = fit(mirrored)
    turn = way / abs(way) if abs(way) > 1e-12 else 1 + 0j
    turned = {name: flipped(spot - middle, mirrored) * turn for name, spot in points.items()}
    return _levelled(arrangement, turned, sketch)


def flipped(spot: complex, mirrored: bool) -> complex:
    """The mirror image of a point in the level axis, or the point itself."""
    return spot.conjugate() if mirrored else spot


def _levelled(arrangement: Arrangement, turned: Turned, sketch: Turned) -> Turned:
    """Turned a little further, so that what the sketch draws level (or upright) is so."""
    best: tuple[float, float] = (0.0, 0.0)
    for line in arrangement.lines:
        ends = [point for point in line if point in sketch]
        if len(ends) < 2:
            continue
        drawn, true = sketch[ends[-1]] - sketch[ends[0]], turned[ends[-1]] - turned[ends[0]]
        for aim in (0.0, 90.0):
            lean = _lean(true, aim)
            if abs(_lean(drawn, aim)) < LEVEL and abs(lean) < NEARLY:
                best = max(best, (abs(drawn) * (1.0 if aim == 0 else 0.5), lean), key=lambda pair: pair[0])
    return {name: spot * cmath.rect(1, -math.radians(best[1])) for name, spot in turned.items()}


def _lean(way: complex, aim: float) -> float:
    """How far a line leans from the direction `aim`, in degrees, −90 to 90."""
    return (math.degrees(cmath.phase(way)) - aim + 90) % 180 - 90
