"""Angles at one point: on a line, round the point, vertically opposite, adjacent, reflex."""

from collections.abc import Iterator
from itertools import combinations, pairwise

from paperaudit.geometry.coordinates.arrangement import Arrangement, Ray
from paperaudit.geometry.figure.figure import Size
from paperaudit.geometry.theorems.theorem import Instance, Theorem
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import AngleOf


def total(parts: "list[AngleOf] | tuple[AngleOf, ...]", whole: int) -> LinearForm[Size]:
    """The relation that angles add up to `whole` degrees."""
    counts: dict[Size, int] = {}
    for part in parts:
        counts[part] = counts.get(part, 0) + 1
    return LinearForm(counts, -whole)


def difference(one: Size, two: Size) -> LinearForm[Size]:
    """The relation that two sizes are equal."""
    return LinearForm({one: 1, two: -1}) if one != two else LinearForm()


def _half_turn(arrangement: Arrangement, start: Ray) -> list[Ray]:
    """The rays met when turning anticlockwise from `start` to the ray opposite to it, ends left out."""
    rays = arrangement.rays[start.vertex]
    end = arrangement.opposite(start)
    spot = rays.index(start)
    inside: list[Ray] = []
    for step in range(1, len(rays)):
        ray = rays[(spot + step) % len(rays)]
        if ray == end:
            return inside
        inside.append(ray)
    return []


def _angles_on_a_line(arrangement: Arrangement) -> Iterator[Instance]:
    for rays in arrangement.rays.values():
        for start in rays:
            end = arrangement.opposite(start)
            if end is None:
                continue
            inside = _half_turn(arrangement, start)
            for count in (1, 2, 3):
                for middle in combinations(inside, count):
                    chain = (start, *middle, end)
                    parts = [arrangement.between(a, b) for a, b in pairwise(chain)]
                    yield Instance("angles-on-a-line", (), total(parts, 180), weight=10 + 4 * (count - 1))


def _vertically_opposite(arrangement: Arrangement) -> Iterator[Instance]:
    for rays in arrangement.rays.values():
        for one, two in combinations(rays, 2):
            far_one, far_two = arrangement.opposite(one), arrangement.opposite(two)
            if one.line == two.line or far_one is None or far_two is None:
                continue
            here, there = arrangement.between(one, two), arrangement.between(far_one, far_two)
            if (here.arm, here.other) < (there.arm, there.other):
                yield Instance("vertically-opposite", (), difference(here, there))


def _gaps(arrangement: Arrangement, rays: tuple[Ray, ...]) -> list[float]:
    bearings = [arrangement.bearing(ray.vertex, ray.points[0]) for ray in rays]
    return [(after - before) % 360 for before, after in zip(bearings, bearings[1:] + bearings[:1], strict=True)]


def _round_a_point(arrangement: Arrangement) -> Iterator[Instance]:
    for rays in arrangement.rays.values():
        for count in (3, 4, 5, 6):
            for chain in combinations(rays, count):
                gaps = _gaps(arrangement, chain)
                if any(abs(gap - 180) < 1e-6 for gap in gaps):
                    continue
                parts = [
                    arrangement.between(a, b, reflex=gap > 180)
                    for a, b, gap in zip(chain, chain[1:] + chain[:1], gaps, strict=True)
                ]
                if any(part.reflex for part in parts):
                    continue
                yield Instance("angles-round-a-point", (), total(parts, 360), weight=10 + 2 * (count - 3))


def _reflex(arrangement: Arrangement) -> Iterator[Instance]:
    for rays in arrangement.rays.values():
        for one, two in combinations(rays, 2):
            if one.line != two.line:
                parts = [arrangement.between(one, two), arrangement.between(one, two, reflex=True)]
                yield Instance("reflex-angle", (), total(parts, 360), weight=11)


def _adjacent(arrangement: Arrangement) -> Iterator[Instance]:
    for rays in arrangement.rays.values():
        count = len(rays)
        for start in range(count):
            spread = 0.0
            reach = [rays[start]]
            for step in range(1, count):
                before, ray = reach[-1], rays[(start + step) % count]
                spread += _gaps(arrangement, (before, ray))[0]
                if spread > 180 - 1e-6:
                    break
                reach.append(ray)
            for first, middle, last in combinations(reach, 3):
                if first != rays[start]:
                    continue
                whole = arrangement.between(first, last)
                parts = (arrangement.between(first, middle), arrangement.between(middle, last))
                yield Instance("adjacent-angles", (), total(parts, 0) - LinearForm.of(whole), weight=8)


THEOREMS = (
    Theorem(
        "angles-on-a-line",
        "Adjacent angles on a straight line add up to 180°.",
        "angles on a straight line",
        "Euclid I.13",
        _angles_on_a_line,
        fires=("A-B-C", "segment BD"),
        silent=("triangle ABC",),
    ),
    Theorem(
        "vertically-opposite",
        "Vertically opposite angles are equal.",
        "vertically opposite angles",
        "Euclid I.15",
        _vertically_opposite,
        fires=("AB and CD intersect at E",),
        silent=("A-B-C", "segment BD"),
    ),
    Theorem(
        "angles-round-a-point",
        "Angles round a point add up to 360°.",
        "angles round a point",
        "Euclid I.13, corollary (porism to I.15)",
        _round_a_point,
        fires=("OA, OB, OC in order round O",),
        silent=("triangle ABC",),
    ),
    Theorem(
        "reflex-angle",
        "An angle and its reflex angle make a full turn.",
        "angles round a point",
        "common practice, no source",
        _reflex,
        fires=("segments AB, BC",),
        silent=("A-B-C",),
    ),
    Theorem(
        "adjacent-angles",
        "An angle is the sum of the adjacent angles that it is made of.",
        "adding angles",
        "Euclid, common notion 2",
        _adjacent,
        fires=("triangle ABC", "D lies on AC", "segment BD"),
        silent=("triangle ABC",),
    ),
)
