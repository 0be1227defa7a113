"""Stretches a drawing into a fair sketch that is not to scale: order and turning stay, the sizes asked for do not."""

from collections.abc import Mapping, Sequence
from itertools import pairwise

from paperaudit.geometry.arrangement import Arrangement
from paperaudit.geometry.draw.elements import bearing
from paperaudit.geometry.draw.marks import AngleMark, Marks
from paperaudit.geometry.plane import Spot
from paperaudit.model.expression import AngleOf

STRETCHES = (1.3, 0.75, 1.5, 0.65, 1.75, 0.55)
SHEARS = (0.0, 0.18, -0.18, 0.35, -0.35)
"""What is tried: breadth times, and height pushed to the side."""
CLEARLY_OTHER = 10.0
"""Degrees by which the size asked for is to be off; more is no better."""
NARROW = 20.0
"""Degrees below which an angle of the sketch is hard to letter."""
BROKEN = 6.0
SHEARED = 3.0
"""What a mark that no longer looks true costs, and a shear, which tilts what stands upright."""


def unscaled(
    arrangement: Arrangement, at: Mapping[str, Spot], marks: Marks, answers: Sequence[AngleOf]
) -> dict[str, Spot]:
    """The points after the stretch under which the angles in `answers` look least like themselves.

    Such a map keeps the order on every line, the turning at every point, parallels and midpoints.
    """
    given = [mark.angle for mark in marks.angles if mark.label and not mark.is_asked]
    before = {size: size_of(at, size) for size in (*answers, *given)}

    def worth(points: Mapping[str, Spot], shear: float) -> float:
        score = -SHEARED * abs(shear) * 5
        for size in dict.fromkeys(answers):
            score += 2 * min(CLEARLY_OTHER, abs(size_of(points, size) - before[size]))
        for size in given:
            score += min(CLEARLY_OTHER, abs(size_of(points, size) - before[size])) / len(given)
        score -= BROKEN * sum(_is_off(points, mark) for mark in marks.angles)
        return score - sum(
            max(0.0, min(NARROW, size_of(at, one)) - size_of(points, one)) for one in corners_of(arrangement)
        )

    tried = [(stretch, shear, _mapped(at, stretch, shear)) for shear in SHEARS for stretch in STRETCHES]
    return max(tried, key=lambda one: round(worth(one[2], one[1]), 6))[2]


def opened(arrangement: Arrangement, at: Mapping[str, Spot]) -> dict[str, Spot]:
    """The points after the stretch that leaves the narrowest angle widest; for a figure that has no true sizes."""
    corners = corners_of(arrangement)
    tried = [_mapped(at, stretch, shear) for shear in SHEARS for stretch in (1.0, *STRETCHES, 2.5, 0.4)]
    return max(tried, key=lambda one: round(min((size_of(one, corner) for corner in corners), default=0.0), 6))


def stretches(at: Mapping[str, Spot]) -> list[dict[str, Spot]]:
    """Every stretch of the points that is tried for a sketch."""
    return [_mapped(at, stretch, shear) for shear in SHEARS for stretch in STRETCHES]


def _mapped(at: Mapping[str, Spot], stretch: float, shear: float) -> dict[str, Spot]:
    return {name: (stretch * x + shear * y, y) for name, (x, y) in at.items()}


def size_of(at: Mapping[str, Spot], size: AngleOf) -> float:
    """The degrees of an angle between points as they are placed."""
    turn = abs((bearing(at[size.vertex], at[size.other]) - bearing(at[size.vertex], at[size.arm]) + 180) % 360 - 180)
    return 360 - turn if size.reflex else turn


def _is_off(at: Mapping[str, Spot], mark: AngleMark) -> bool:
    """Whether a right angle no longer looks right."""
    return mark.is_right and abs(size_of(at, mark.angle) - 90) > 3


def corners_of(arrangement: Arrangement) -> list[AngleOf]:
    """The angles between neighbouring rays."""
    return [
        arrangement.between(one, other)
        for rays in arrangement.rays.values()
        for one, other in pairwise(rays)
        if one.line != other.line
    ]
