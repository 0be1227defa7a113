"""Equals added to equals, taken from equals, halved: angles and segments that are put together alike."""

from collections.abc import Iterator
from itertools import combinations

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import length
from paperaudit.geometry.theorems.like_triangles import CLOSE
from paperaudit.geometry.theorems.points import difference
from paperaudit.geometry.theorems.theorem import NO_RELATION, Instance, Predicate, Theorem, angles_equal, segments_equal
from paperaudit.model.expression import AngleOf, LengthOf

MOST_PAIRS = 400
"""Pairs of wholes that a figure is looked through for."""
Whole = tuple[AngleOf, AngleOf, AngleOf] | tuple[LengthOf, LengthOf, LengthOf]
"""A size and the two parts that it is made of."""


def _wholes(arrangement: Arrangement) -> Iterator[Whole]:
    """Angles cut by a ray inside them, segments cut by a point."""
    for rays in arrangement.rays.values():
        for first, last in combinations(rays, 2):
            turn = arrangement.turn(first.vertex, first.points[0], last.points[0])
            start, end = (first, last) if turn > 0 else (last, first)
            if abs(turn) > 180 - CLOSE:
                continue
            for middle in rays:
                if CLOSE < arrangement.turn(first.vertex, start.points[0], middle.points[0]) < abs(turn) - CLOSE:
                    whole = arrangement.between(start, end)
                    yield whole, arrangement.between(start, middle), arrangement.between(middle, end)
    for line in arrangement.lines:
        for a, b, c in combinations(line, 3):
            yield length(a, c), length(a, b), length(b, c)


def _pairs(arrangement: Arrangement) -> Iterator[tuple[Whole, Whole]]:
    """Wholes whose parts measure the same in the drawing, the parts in the order in which they do."""
    groups: dict[tuple[bool, int, int], list[Whole]] = {}
    reach = max((arrangement.measured(length(line[0], line[-1])) for line in arrangement.lines), default=1.0)
    for whole, one, two in _wholes(arrangement):
        for parts in ((one, two), (two, one)):
            sizes = [arrangement.measured(part) for part in parts]
            scale = 1e3 if isinstance(whole, AngleOf) else 1e5 / reach
            key = (isinstance(whole, AngleOf), round(sizes[0] * scale), round(sizes[1] * scale))
            groups.setdefault(key, []).append((whole, *parts))  # type: ignore[arg-type]
    count = 0
    for group in groups.values():
        for one_whole, two_whole in combinations(group, 2):
            if one_whole[0] != two_whole[0] and count < MOST_PAIRS:
                count += 1
                yield one_whole, two_whole


def _equal(one: AngleOf | LengthOf, two: AngleOf | LengthOf) -> Predicate:
    if isinstance(one, AngleOf) and isinstance(two, AngleOf):
        return angles_equal(one, two)
    assert isinstance(one, LengthOf) and isinstance(two, LengthOf)
    return segments_equal((one.start, one.end), (two.start, two.end))


def _says(reason: str, premises: tuple[Predicate, ...], one: AngleOf | LengthOf, two: AngleOf | LengthOf) -> Instance:
    if isinstance(one, AngleOf):
        return Instance(reason, premises, difference(one, two), weight=8)
    return Instance(reason, premises, NO_RELATION, _equal(one, two), weight=8)


def _added(arrangement: Arrangement) -> Iterator[Instance]:
    for (whole, p, q), (other, r, s) in _pairs(arrangement):
        yield _says("equals-added", (_equal(p, r), _equal(q, s)), whole, other)


def _subtracted(arrangement: Arrangement) -> Iterator[Instance]:
    for (whole, p, q), (other, r, s) in _pairs(arrangement):
        if q != s:
            yield _says("equals-subtracted", (_equal(whole, other), _equal(p, r)), q, s)


def _halves(arrangement: Arrangement) -> Iterator[Instance]:
    for (whole, p, q), (other, r, s) in _pairs(arrangement):
        if p != r and abs(arrangement.measured(p) - arrangement.measured(q)) < CLOSE * arrangement.measured(p):
            yield _says("halves-of-equals", (_equal(whole, other), _equal(p, q), _equal(r, s)), p, r)


def _supplements(arrangement: Arrangement) -> Iterator[Instance]:
    """Angles beside equal angles on straight lines."""
    beside: dict[int, list[tuple[AngleOf, AngleOf]]] = {}
    for rays in arrangement.rays.values():
        for start in rays:
            end = arrangement.opposite(start)
            if end is None or start.way < 0:
                continue
            for middle in rays:
                if middle.line != start.line:
                    pair = (arrangement.between(start, middle), arrangement.between(middle, end))
                    for one, two in (pair, pair[::-1]):
                        beside.setdefault(round(arrangement.measured(one) * 1e3), []).append((one, two))
    count = 0
    for group in beside.values():
        for (one, two), (other, another) in combinations(group, 2):
            if one != other and two != another and count < MOST_PAIRS:
                count += 1
                yield _says("supplements-of-equals", (_equal(one, other),), two, another)


THEOREMS = (
    Theorem(
        "equals-added",
        "Equals added to equals are equal.",
        "adding angles",
        "Euclid, common notion 2",
        _added,
        fires=("A-B-C-D", "AB = CD"),
        silent=("triangle ABC",),
    ),
    Theorem(
        "equals-subtracted",
        "Equals taken from equals leave equals.",
        "adding angles",
        "Euclid, common notion 3",
        _subtracted,
        fires=("A-B-C-D", "AB = CD"),
        silent=("triangle ABC",),
    ),
    Theorem(
        "halves-of-equals",
        "Halves of equals are equal.",
        "adding angles",
        "Euclid, common notion 6 in old editions",
        _halves,
        fires=("triangle ABC", "AB = AC", "D is the midpoint of AB", "E is the midpoint of AC"),
        silent=("triangle ABC",),
    ),
    Theorem(
        "supplements-of-equals",
        "Angles beside equal angles on straight lines are equal.",
        "angles on a straight line",
        "Euclid I.13 with common notion 3",
        _supplements,
        fires=("triangle ABC", "AB = AC", "B-C-D", "C-B-E"),
        silent=("triangle ABC",),
    ),
)
