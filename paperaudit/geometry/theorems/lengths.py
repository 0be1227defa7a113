"""Lengths along a line, equal segments and the relation that they amount to."""

from collections.abc import Iterator, Sequence
from itertools import combinations

from paperaudit.geometry.coordinates.arrangement import ALIKE, Arrangement
from paperaudit.geometry.figure.figure import EqualLengths, Size, SizeRelation, length
from paperaudit.geometry.theorems.points import difference
from paperaudit.geometry.theorems.theorem import Instance, SegmentsEqual, Theorem, segments_equal
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import LengthOf

MOST_PAIRED = 60
"""Segments of which every pair may turn out equal; in a figure with more, those that measure the same may."""


def named_segments(arrangement: Arrangement) -> tuple[LengthOf, ...]:
    """Every segment that can matter: sides of triangles and shapes, and segments that conditions name."""
    found: dict[LengthOf, None] = {}
    for condition in arrangement.figure.conditions:
        if isinstance(condition, EqualLengths) and condition.reason != "radii":
            found.update({condition.first: None, condition.second: None})
        elif isinstance(condition, SizeRelation):
            found.update({size: None for size in condition.form.terms if isinstance(size, LengthOf)})
    for triangle in arrangement.triangles:
        found.update({length(a, b): None for a, b in combinations(triangle.corners, 2)})
    for shape, _ in arrangement.figure.shapes:
        sides = zip(shape.points, shape.points[1:] + shape.points[:1], strict=True)
        found.update({length(a, b): None for a, b in sides})
    return tuple(found)


def _addition(arrangement: Arrangement) -> Iterator[Instance]:
    for line in arrangement.lines:
        for first, middle, last in combinations(line, 3):
            whole: LinearForm[Size] = LinearForm.of(length(first, last))
            relation: LinearForm[Size] = LinearForm({length(first, middle): 1, length(middle, last): 1})
            yield Instance("segment-addition", (), relation - whole, weight=8)


def _halves(arrangement: Arrangement) -> Iterator[Instance]:
    """A point half way along a segment: each half is half of the whole."""
    for line in arrangement.lines:
        for first, middle, last in combinations(line, 3):
            equal = (segments_equal((first, middle), (middle, last)),)
            for half in (length(first, middle), length(middle, last)):
                relation: LinearForm[Size] = LinearForm({half: 2, length(first, last): -1})
                about = f"{first}{middle} = {middle}{last}"
                yield Instance("midpoint", equal, relation, about=about, weight=10, skill="adding lengths")


def _equal_means_same_length(arrangement: Arrangement) -> Iterator[Instance]:
    segments = named_segments(arrangement)
    every = len(segments) <= MOST_PAIRED and not arrangement.complete
    for one, two in combinations(segments, 2) if every else _measured_alike(arrangement, segments):
        equal = segments_equal((one.start, one.end), (two.start, two.end))
        yield Instance("equal-sides", (equal,), difference(one, two), weight=3)


def _measured_alike(arrangement: Arrangement, segments: Sequence[LengthOf]) -> Iterator[tuple[LengthOf, LengthOf]]:
    """The pairs of segments that have the same length in the drawing, in the order of `combinations`."""
    by_length = sorted((arrangement.measured(segment), rank) for rank, segment in enumerate(segments))
    pairs = []
    for place, (measure, rank) in enumerate(by_length):
        for other_measure, other in by_length[place + 1 :]:
            if other_measure - measure > ALIKE * other_measure:
                break
            pairs.append((min(rank, other), max(rank, other)))
    yield from ((segments[one], segments[two]) for one, two in sorted(pairs))


def _same_length_means_equal(arrangement: Arrangement) -> Iterator[Instance]:
    for _, (a, b, c) in arrangement.apexes:
        conclusion = segments_equal((a, b), (a, c))
        yield Instance("equal-sides", (), difference(length(a, b), length(a, c)), conclusion, weight=3)


def _chain(arrangement: Arrangement) -> Iterator[Instance]:
    """AB = BC and BC = CD give AB = CD; only among segments that conditions or shapes make equal."""
    linked: dict[LengthOf, None] = {}
    for condition in arrangement.figure.conditions:
        if isinstance(condition, EqualLengths):
            linked.update({condition.first: None, condition.second: None})
    sides = [size for size in named_segments(arrangement) if _near(arrangement, size, linked)]
    for one, two, three in combinations(sides, 3):
        if not (_alike(arrangement, one, two) and _alike(arrangement, one, three)):
            continue
        pairs = {
            frozenset(pair): SegmentsEqual(*sorted(pair, key=lambda s: (s.start, s.end)))
            for pair in combinations((one, two, three), 2)
        }
        for pair, conclusion in pairs.items():
            premises = tuple(other for name, other in pairs.items() if name != pair)
            yield Instance("equal-sides", premises, LinearForm(), conclusion, weight=2)


def _near(arrangement: Arrangement, size: LengthOf, linked: dict[LengthOf, None]) -> bool:
    measured = arrangement.measured(size)
    return any(abs(arrangement.measured(other) - measured) < ALIKE * measured for other in linked) or size in linked


def _alike(arrangement: Arrangement, one: LengthOf, two: LengthOf) -> bool:
    return abs(arrangement.measured(one) - arrangement.measured(two)) < ALIKE * arrangement.measured(one)


THEOREMS = (
    Theorem(
        "segment-addition",
        "The parts of a segment add up to the whole.",
        "adding lengths",
        "Euclid, common notion 2",
        _addition,
        fires=("A-B-C",),
        silent=("segment AB",),
    ),
    Theorem(
        "midpoint",
        "Half a segment is half as long.",
        "adding lengths",
        "Euclid, common notion 2",
        _halves,
        fires=("A-B-C",),
        silent=("segment AB",),
    ),
    Theorem(
        "equal-sides",
        "Equal segments have the same length.",
        "adding lengths",
        "common practice, no source",
        _equal_means_same_length,
        fires=("triangle ABC", "AB = AC"),
        silent=("segment AB",),
    ),
    Theorem(
        "equal-sides",
        "Sides of the same length are equal.",
        "isosceles triangles",
        "common practice, no source",
        _same_length_means_equal,
        fires=("triangle ABC", "AB = AC"),
        silent=("segment AB",),
    ),
    Theorem(
        "equal-sides",
        "Segments equal to one segment are equal to each other.",
        "isosceles triangles",
        "Euclid, common notion 1",
        _chain,
        fires=("triangle ABC", "AB = AC", "AC = BC"),
        silent=("segment AB",),
    ),
)
