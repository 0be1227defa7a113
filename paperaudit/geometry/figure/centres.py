"""Centres of polygons, incircles, midlines and bisectors of segments turned into conditions."""

from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations, pairwise

from paperaudit.geometry.figure.circles import KnownCircles
from paperaudit.geometry.figure.figure import (
    Balance,
    Condition,
    EqualLengths,
    InsidePolygon,
    Ordered,
    RayBetween,
    RightAngle,
    SideOfLine,
    Size,
    SizeRelation,
    angle,
    length,
)
from paperaudit.geometry.figure.incidence import Unclear
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import AreaOf, DistanceOf, Expression, Number, Power, Sum
from paperaudit.model.fact import BisectsSegment, Centre, Incircle, Midline, Path

Lines = tuple[tuple[str, ...], ...]

_TWO = Number(Fraction(2))


def centre_conditions(fact: Centre, label: int, lines: Lines) -> Iterator[Condition]:
    """What a point's name (circumcentre, incentre, centroid, orthocentre, centre) says of its lengths and angles."""
    point, polygon = fact.point, fact.polygon
    match fact.kind:
        case "incentre":
            yield from _equally_far_from_sides(point, polygon, label, lines)
        case "centroid":
            yield from _centroid(point, polygon, label, lines)
        case "orthocentre":
            yield from _orthocentre(point, polygon, label, lines)
        case "centre" if len(polygon) == 4:
            for start, end in (polygon[::2], polygon[1::2]):
                yield Ordered(start, point, end, label)
                yield EqualLengths(length(start, point), length(point, end), label, "parallelogram-diagonals")
        case _:
            for one, two in combinations(polygon, 2):
                yield EqualLengths(length(point, one), length(point, two), label, "perpendicular-bisector")


def _equally_far_from_sides(point: str, polygon: tuple[str, ...], label: int, lines: Lines) -> Iterator[Condition]:
    yield InsidePolygon(point, polygon, label)
    for first, second in pairwise(_sides(polygon)):
        yield Balance(DistanceOf(point, first), DistanceOf(point, second), label, "incentre")
    for before, corner, after in zip(polygon[-1:] + polygon[:-1], polygon, polygon[1:] + polygon[:1], strict=True):
        if _joined(lines, corner, point):
            yield RayBetween(corner, before, point, after, label, halves=True)
            one, two = angle(before, corner, point), angle(point, corner, after)
            halves: LinearForm[Size] = LinearForm({one: 1, two: -1})
            yield SizeRelation(halves, "angle", label, "angle-bisector")


def _centroid(point: str, polygon: tuple[str, ...], label: int, lines: Lines) -> Iterator[Condition]:
    """The medians halve each other's triangles: the three triangles about the centroid have one area."""
    a, b, c = polygon
    yield InsidePolygon(point, polygon, label)
    for one, two in pairwise(_sides(polygon)):
        yield Balance(AreaOf((point, *one)), AreaOf((point, *two)), label, "centroid")
    for corner, start, end in ((a, b, c), (b, c, a), (c, a, b)):
        for foot in _crossings(lines, (corner, point), (start, end)):
            yield EqualLengths(length(start, foot), length(foot, end), label, "midpoint")
            near, far = length(point, foot), length(corner, point)
            shares: LinearForm[Size] = LinearForm({far: 1, near: -2})
            yield SizeRelation(shares, "length", label, "centroid")


def _orthocentre(point: str, polygon: tuple[str, ...], label: int, lines: Lines) -> Iterator[Condition]:
    a, b, c = polygon
    for corner, start, end in ((a, b, c), (b, c, a), (c, a, b)):
        if _joined(lines, corner, point):
            yield RightAngle((corner, point), (start, end), label, "orthocentre")
        else:
            left = Sum((_square(corner, start), _square(point, end)))
            yield Balance(left, Sum((_square(corner, end), _square(point, start))), label, "orthocentre")


def _square(start: str, end: str) -> Expression:
    return Power(length(start, end), _TWO)


def incircle_conditions(fact: Incircle, known: KnownCircles, label: int, lines: Lines) -> Iterator[Condition]:
    """The centre is as far from every side as from the points of the circle."""
    centre = fact.centre or known.unnamed
    yield from _equally_far_from_sides(centre, fact.polygon, label, lines)
    touching = next(iter(known.members.get(centre, ())), None)
    if touching:
        yield Balance(length(centre, touching), DistanceOf(centre, _sides(fact.polygon)[0]), label, "incentre")


def bisecting_conditions(fact: BisectsSegment, label: int, lines: Lines) -> Iterator[Condition]:
    """A line through the middle of a segment: by their crossing if it has a letter, else by equal distances."""
    start, end = fact.segment
    for middle in _crossings(lines, fact.path, fact.segment):
        yield Ordered(start, middle, end, label)
        yield EqualLengths(length(start, middle), length(middle, end), label, "midpoint")
    if fact.perpendicular:
        yield RightAngle(fact.path, fact.segment, label)
        for point in fact.path:
            if not _on(lines, point, fact.segment):
                yield EqualLengths(length(point, start), length(point, end), label, "perpendicular-bisector")
    elif not _crossings(lines, fact.path, fact.segment):
        yield SideOfLine(start, end, fact.path, False, label)
        yield Balance(DistanceOf(start, fact.path), DistanceOf(end, fact.path), label)


def midline_conditions(fact: Midline, label: int, lines: Lines, parallel: frozenset[Path]) -> Iterator[Condition]:
    """Each end is half way along the side that it lies on; raises Unclear where a statement has not put it on one."""
    for point in fact.path:
        on = [side for side in _sides(fact.polygon) if _on(lines, point, side) and side not in parallel]
        if len(on) != 1:
            raise Unclear(f"the statements do not say on which side of {''.join(fact.polygon)} {point} lies")
        start, end = on[0]
        yield Ordered(start, point, end, label)
        yield EqualLengths(length(start, point), length(point, end), label, "midpoint")


def _sides(polygon: tuple[str, ...]) -> list[Path]:
    return list(zip(polygon, polygon[1:] + polygon[:1], strict=True))


def _joined(lines: Lines, start: str, end: str) -> bool:
    return any(start in line and end in line for line in lines)


def _on(lines: Lines, point: str, path: Path) -> bool:
    return any({point, *path} <= set(line) for line in lines)


def _crossings(lines: Lines, one: Path, two: Path) -> list[str]:
    """The lettered point in which two drawn lines cross, in a list; empty where it has no letter."""
    first = {point for line in lines if set(one) <= set(line) for point in line}
    second = {point for line in lines if set(two) <= set(line) for point in line}
    return sorted(first & second) if len(first & second) == 1 else []
