"""Turns a drawing into a fair sketch that is not to scale: form, order and turning stay, what is asked for does not."""

import math
from collections.abc import Mapping
from dataclasses import dataclass

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.realise import Drawing
from paperaudit.geometry.draw.circles import outlines
from paperaudit.geometry.draw.elements import bearing
from paperaudit.geometry.draw.marks import Marks
from paperaudit.geometry.draw.redrawn import CENTRES, SHEARS, STRETCHES, mapped, resized, shaken
from paperaudit.geometry.draw.room import is_alike, room, size_of
from paperaudit.geometry.draw.sketched import as_sketched
from paperaudit.geometry.draw.true_sizes import TrueSizes
from paperaudit.geometry.figure.figure import Balance, EqualLengths
from paperaudit.geometry.figure.plane import Spot
from paperaudit.model.expression import AngleOf

ENOUGH = 1.25
"""How far off the sizes asked for should be, in terms of what is needed; more is no better."""
AFRESH = 0.1
"""What a figure drawn afresh counts as, in terms of a shear."""
ASKED, GIVEN, ROOM, SHEARED = 8.0, 1.0, 3.0, 10.0
"""What counts for a sketch: asked and given sizes that are off, room; and against it: a shear, which tilts it."""
LOOKS_RIGHT, LOOKS_EQUAL, LOOKS_LONG = 2.0, 2.0, 0.03
"""Degrees by which a right angle or equal angles, and share by which equal sides may be off and still look so."""


def unscaled(arrangement: Arrangement, at: Mapping[str, Spot], marks: Marks, sizes: TrueSizes) -> dict[str, Spot]:
    """Other positions, near `at`, in which what is asked for is off by enough, or as far as it goes.

    Stretches of `at` keep parallels and midpoints. Where that is not enough, or marks would not look
    true or circles round, the figure is drawn afresh with its sizes left open. Only where the form of
    the figure settles what is asked for (a corner of an equilateral triangle) sides that are marked
    as equal need not look so, and at last right angles.
    """
    stretched = [_Sketch(mapped(at, stretch, shear), abs(shear)) for shear in SHEARS for stretch in STRETCHES]
    best, most = dict(at), _worth(arrangement, at, sizes, 0.0)
    for looseness in range(3):
        found = [one for one in stretched if _looks_true(arrangement, one.at, marks, looseness, sizes)]
        if not any(sizes.moved(one.at) >= 1 for one in found):
            starts = [*(one.at for one in stretched[: len(STRETCHES)]), *shaken(at)]
            afresh = [_turned(arrangement, spots, at) for spots in resized(arrangement, starts, looseness)]
            found += [
                _Sketch(spots, AFRESH) for spots in afresh if _looks_true(arrangement, spots, marks, looseness, sizes)
            ]
        for one in found:
            worth = round(_worth(arrangement, one.at, sizes, one.change), 6)
            if worth > most:
                best, most = one.at, worth
        if sizes.moved(best) >= 1:
            break
    return best


@dataclass(frozen=True, slots=True)
class _Sketch:
    """Positions, and how much they were changed."""

    at: dict[str, Spot]
    change: float


def _worth(arrangement: Arrangement, at: Mapping[str, Spot], sizes: TrueSizes, change: float) -> float:
    """What a sketch is worth; `ASKED` or more where what is asked for is off by enough."""
    score = ASKED * min(ENOUGH, sizes.moved(at)) + GIVEN * sizes.blurred(at) - SHEARED * change
    return score + ROOM * (room(arrangement, at) - room(arrangement, arrangement.at))


def _turned(arrangement: Arrangement, spots: Mapping[str, Spot], at: Mapping[str, Spot]) -> dict[str, Spot]:
    """Positions turned so that they stand as others do."""
    points, model = ({name: complex(*spot) for name, spot in one.items()} for one in (spots, at))
    return {name: (spot.real, spot.imag) for name, spot in as_sketched(arrangement, points, model).items()}


def _looks_true(
    arrangement: Arrangement, at: Mapping[str, Spot], marks: Marks, looseness: int, sizes: TrueSizes | None = None
) -> bool:
    """Whether circles are round, and right angles, equal angles and equal sides still look so.

    A rectangle looks like one unless `sizes` ask for an angle, which may be its own corner.
    """
    if len(outlines(arrangement.figure, at)) < len(outlines(arrangement.figure, arrangement.at)):
        return False
    if not _centres_stay(arrangement, at):
        return False
    asks_for_angles = sizes is not None and any(one.dimension == 0 for one in sizes.asked)
    if not asks_for_angles and not _rectangles_stay(arrangement, at):
        return False
    if looseness < 2 and not _right_angles_look_right(at, marks):
        return False
    if looseness < 1 and not _equals_look_equal(arrangement, at, marks):
        return False
    return is_alike(arrangement, at)


def _centres_stay(arrangement: Arrangement, at: Mapping[str, Spot]) -> bool:
    """Whether a circle in a figure still touches its sides, and other centres are where they belong."""
    binding = [one for one in arrangement.figure.conditions if isinstance(one, Balance) and one.reason in CENTRES]
    if not binding:
        return True
    drawn = Arrangement(arrangement.figure, Drawing(dict(at), arrangement.drawing.letters))
    sizes = [(drawn.measured(one.left), drawn.measured(one.right)) for one in binding]
    return all(abs(one - other) < LOOKS_LONG * max(abs(one), abs(other)) for one, other in sizes)


def _rectangles_stay(arrangement: Arrangement, at: Mapping[str, Spot]) -> bool:
    """Whether what the paper calls a square or a rectangle still looks like a rectangle."""
    named = [shape.points for shape, _ in arrangement.figure.shapes if shape.kind in ("square", "rectangle")]
    corners = [(points[i - 1], points[i], points[(i + 1) % 4]) for points in named for i in range(4)]
    return all(abs(size_of(at, AngleOf(*corner)) - 90) < LOOKS_RIGHT for corner in corners)


def _right_angles_look_right(at: Mapping[str, Spot], marks: Marks) -> bool:
    leans = [
        (bearing(at[first[0]], at[first[1]]) - bearing(at[second[0]], at[second[1]])) % 180
        for first, second in marks.squares
    ]
    leans += [size_of(at, mark.angle) for mark in marks.angles if mark.is_right]
    return all(abs(lean - 90) < LOOKS_RIGHT for lean in leans)


def _equals_look_equal(arrangement: Arrangement, at: Mapping[str, Spot], marks: Marks) -> bool:
    classes: dict[int, list[float]] = {}
    for mark in marks.angles:
        if mark.strokes:
            classes.setdefault(mark.strokes, []).append(size_of(at, mark.angle))
    if any(max(sizes) - min(sizes) > LOOKS_EQUAL for sizes in classes.values()):
        return False
    sides = [(one.first, one.second) for one in arrangement.figure.conditions if isinstance(one, EqualLengths)]
    lengths = [tuple(math.dist(at[side.start], at[side.end]) for side in pair) for pair in sides]
    return all(abs(one - other) < LOOKS_LONG * max(one, other) for one, other in lengths)


def opened(arrangement: Arrangement, at: Mapping[str, Spot], marks: Marks) -> dict[str, Spot]:
    """Positions of the same form with as much room as can be, for a figure that has no true sizes.

    Its right angles and equal sides look so where they can.
    """
    stretched = [dict(at), *(mapped(at, stretch, shear) for shear in SHEARS for stretch in (*STRETCHES, 2.5, 0.4))]
    for looseness in range(3):
        afresh = [
            _turned(arrangement, spots, at) for spots in resized(arrangement, [*stretched, *shaken(at)], looseness)
        ]
        found = [spots for spots in (*stretched, *afresh) if _looks_true(arrangement, spots, marks, looseness)]
        if found:
            return max(found, key=lambda spots: room(arrangement, spots))
    return dict(at)
