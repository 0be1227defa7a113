"""Points that are shown to lie on one circle, and what then follows for their angles."""

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import combinations

import numpy as np

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import OnCircle
from paperaudit.geometry.figure.plane import circumcentre, side
from paperaudit.geometry.theorems.circles import (
    ALIKE,
    SKILL,
    beside,
    circles,
    circumference,
    on_circle,
    over_chord,
    round_text,
)
from paperaudit.geometry.theorems.points import difference, total
from paperaudit.geometry.theorems.theorem import Concyclic, Instance, Theorem, concyclic, segments_equal
from paperaudit.maths.linear import LinearForm

Four = tuple[str, str, str, str]

FLAT = 1e-3
"""Triangles flatter than this, as a share of the square of their longest side, settle no circle."""
MOST_CHAINED = 6
"""Largest set of points on one circle in which circles with three points in common are counted as one."""


def on_one_circle(arrangement: Arrangement) -> list[tuple[str, ...]]:
    """The largest sets of four points and more that are on one circle in the drawing, each in order round it.

    Only circles that something could be said about: through a point and two that it is joined to, or through
    three that are joined to one centre.
    """
    at = arrangement.at
    named = sorted(point for point, rays in arrangement.rays.items() if rays)
    middles: dict[tuple[str, ...], tuple[float, float]] = {}
    for trio in sorted(_trios(arrangement, named)):
        middle = _middle(arrangement, trio)
        if middle is not None:
            middles[trio] = middle
    found: dict[tuple[str, ...], tuple[str, ...]] = {}
    for trio, on in _points_on(arrangement, named, middles):
        if len(on) > 3 and on not in found:
            x, y = middles[trio]
            found[on] = tuple(sorted(on, key=lambda p, x=x, y=y: math.atan2(at[p][1] - y, at[p][0] - x)))  # type: ignore[misc]
    largest = [on for on in found if not any(len(on) < len(other) and set(on) <= set(other) for other in found)]
    return [found[on] for on in sorted(largest)]


def _trios(arrangement: Arrangement, named: Sequence[str]) -> Iterator[tuple[str, ...]]:
    """Three points of which one is joined to the two others, or that one further point is joined to, once each."""
    seen = set()
    for point in named:
        joined = sorted({other for ray in arrangement.rays[point] for other in ray.points})
        around: Iterable[tuple[str, ...]] = combinations(joined, 2)
        for trio in (
            *(tuple(sorted((point, *pair))) for pair in around),
            *_at_one_distance(arrangement, point, joined),
        ):
            if trio not in seen:
                seen.add(trio)
                yield trio


def _at_one_distance(arrangement: Arrangement, centre: str, joined: Sequence[str]) -> Iterator[tuple[str, ...]]:
    """Threes of points that are as far from a centre as one another."""
    away = {point: math.dist(arrangement.at[centre], arrangement.at[point]) for point in joined}
    for first, second, third in combinations(joined, 3):
        reach = away[first]
        if abs(away[second] - reach) < ALIKE * reach and abs(away[third] - reach) < ALIKE * reach:
            yield first, second, third


def _points_on(
    arrangement: Arrangement, named: Sequence[str], middles: Mapping[tuple[str, ...], tuple[float, float]]
) -> Iterator[tuple[tuple[str, ...], tuple[str, ...]]]:
    """For the circle of each trio the points of the drawing that are on it, all at once."""
    if not middles:
        return
    spots = np.array([arrangement.at[point] for point in named])
    centres = np.array(list(middles.values()))
    first = np.array([arrangement.at[trio[0]] for trio in middles])
    radii = np.hypot(*(first - centres).T)
    away = np.hypot(spots[None, :, 0] - centres[:, None, 0], spots[None, :, 1] - centres[:, None, 1])
    near = np.abs(away - radii[:, None]) < ALIKE * radii[:, None]
    enough = near.sum(axis=1) > 3
    for number, trio in enumerate(middles):
        if enough[number]:
            yield trio, tuple(named[int(index)] for index in np.flatnonzero(near[number]))


def _middle(arrangement: Arrangement, trio: tuple[str, ...]) -> tuple[float, float] | None:
    a, b, c = (arrangement.at[point] for point in trio)
    longest = max(math.dist(a, b), math.dist(b, c), math.dist(c, a))
    return circumcentre(a, b, c) if abs(side(c, a, b)) > FLAT * longest**2 else None


def _spoken(arrangement: Arrangement, points: tuple[str, ...]) -> OnCircle | None:
    """The circle of the paper that all of some points are stated to be on."""
    return next((circle for circle in circles(arrangement) if set(points) <= set(circle.points)), None)


def _concyclic(arrangement: Arrangement) -> Iterator[Instance]:
    for group in on_one_circle(arrangement):
        if _spoken(arrangement, group):
            continue
        for four in combinations(group, 4):
            circle = _spoken(arrangement, four)
            if circle:
                yield Instance("given", on_circle(circle, *four), LinearForm(), concyclic(four), round_text(four), 1)
                continue
            yield from _converses(arrangement, four)
            yield from _uses(arrangement, four)
        if 4 < len(group) <= MOST_CHAINED:
            yield from _chained(group)


def _converses(arrangement: Arrangement, four: Four) -> Iterator[Instance]:
    """By equal angles over a side, opposite angles, an exterior angle, equal distances from a point."""
    conclusion, about = concyclic(four), round_text(four)
    for start, end in combinations(four, 2):
        eyes = tuple(point for point in four if point not in (start, end))
        for (_, here), (_, there), same in over_chord(arrangement, start, end, eyes):
            if same:
                equal = difference(here, there)
                yield Instance("same-segment-converse", (), equal, conclusion, f"{about}, over {start}{end}", 14)
                continue
            yield Instance("cyclic-quadrilateral-converse", (), total((here, there), 180), conclusion, about, 14)
            for inner, opposite in ((here, there), (there, here)):
                for outside in beside(arrangement, inner):
                    equal = difference(outside, opposite)
                    yield Instance("cyclic-quadrilateral-exterior-converse", (), equal, conclusion, about, 14)
    a, b, c, d = four
    for centre in arrangement.figure.points:
        away = [math.dist(arrangement.at[centre], arrangement.at[point]) for point in four]
        if centre not in four and max(away) - min(away) < ALIKE * max(away):
            premises = tuple(segments_equal((centre, one), (centre, two)) for one, two in ((a, b), (b, c), (c, d)))
            yield Instance("concyclic-equal-distances", premises, LinearForm(), conclusion, f"centre {centre}", 14)


def _uses(arrangement: Arrangement, four: Four) -> Iterator[Instance]:
    """Angles over each chord, once four points are shown to be on one circle; a fourth radius."""
    premises = (concyclic(four),)
    for start, end in combinations(four, 2):
        eyes = tuple(point for point in four if point not in (start, end))
        yield from circumference(arrangement, start, end, eyes, premises)
    for circle in circles(arrangement):
        on = [point for point in four if point in circle.points]
        if len(on) == 3:
            (new,) = set(four) - set(on)
            equal = segments_equal((circle.centre, new), (circle.centre, on[0]))
            yield Instance("radii", (*premises, *on_circle(circle, *on)), LinearForm(), equal, "", 2)


def _chained(group: tuple[str, ...]) -> Iterator[Instance]:
    """Circles with three points in common are one circle."""
    for five in combinations(group, 5):
        fours = [concyclic(point for point in five if point != left_out) for left_out in five]
        for target in fours:
            for pair in combinations([four for four in fours if four != target], 2):
                about = "".join(_common(*pair))
                yield Instance("circles-in-three-points", pair, LinearForm(), target, about, 8)


def _common(one: Concyclic, two: Concyclic) -> list[str]:
    return [point for point in one.points if point in two.points]


_SEEN = ("segments AC, AD, BC, BD, AB", "∠ACB = 40°", "∠ADB = 40°", "C and D lie on the same side of AB")
_OPPOSITE = ("quadrilateral ABCD", "∠ABC = 100°", "∠ADC = 80°")
_PLAIN = ("quadrilateral ABCD",)

THEOREMS = (
    Theorem(
        "same-segment-converse",
        "Points that see a segment under equal angles from one side are on one circle with its ends.",
        SKILL,
        "Euclid III.21, converse",
        _concyclic,
        fires=_SEEN,
        silent=_PLAIN,
    ),
    Theorem(
        "cyclic-quadrilateral-converse",
        "A quadrilateral whose opposite angles add up to 180° is cyclic.",
        SKILL,
        "Euclid III.22, converse",
        _concyclic,
        fires=_OPPOSITE,
        silent=_PLAIN,
    ),
    Theorem(
        "cyclic-quadrilateral-exterior-converse",
        "A quadrilateral with an exterior angle equal to the interior opposite angle is cyclic.",
        SKILL,
        "Euclid III.22 with I.13, converse",
        _concyclic,
        fires=(*_OPPOSITE, "AB is produced to E"),
        silent=_PLAIN,
    ),
    Theorem(
        "concyclic-equal-distances",
        "Points as far from one point as from each other's are on one circle.",
        SKILL,
        "Euclid I, definition 15",
        _concyclic,
        fires=("quadrilateral ABCD", "OA = OB", "OB = OC", "OC = OD"),
        silent=_PLAIN,
    ),
    Theorem(
        "circles-in-three-points",
        "Circles with three points in common are one circle.",
        SKILL,
        "Euclid III.10",
        _concyclic,
        fires=("pentagon ABCDE", "OA = OB", "OB = OC", "OC = OD", "OD = OE"),
        silent=_PLAIN,
    ),
)
