"""Segments between parallels: the mid-line of a trapezium, equal heights, equal intercepts, what a leg reaches over."""

from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import Size, length
from paperaudit.geometry.theorems.like_quadrilaterals import isosceles_trapeziums, same_length
from paperaudit.geometry.theorems.like_triangles import CLOSE
from paperaudit.geometry.theorems.parallels import parallel_text
from paperaudit.geometry.theorems.proportion import cut_pairs
from paperaudit.geometry.theorems.theorem import (
    AngleIs,
    Instance,
    Predicate,
    Theorem,
    is_shape,
    lines_parallel,
    segments_equal,
)
from paperaudit.maths.linear import LinearForm

RIGHT = Fraction(90)
Legs = tuple[tuple[str, str, str], tuple[str, str, str], int, int, int]
"""On each leg its ends with the middle between them; the parallel lines, and which way they run."""


def _legs(arrangement: Arrangement) -> Iterator[Legs]:
    """Lines between two parallels that both have a point half way, in the drawing."""
    for first, second, way, third in cut_pairs(arrangement):
        halved = []
        for line in third:
            start, end = arrangement.meet(first, line) or "", arrangement.meet(second, line) or ""
            for point in arrangement.lines[line]:
                if point not in (start, end) and same_length(arrangement, (start, point), (point, end)):
                    halved.append((start, point, end))
        for one, two in combinations(halved, 2):
            if one[1] != two[1] and arrangement.joined(one[1], two[1]):
                yield one, two, first, second, way


def _midline(arrangement: Arrangement) -> Iterator[Instance]:
    """Parallel to the parallel sides and half their sum, where the legs do not cross."""
    for (a, m, d), (b, n, c), first, second, _ in _legs(arrangement):
        middle = arrangement.ray(m, n).line
        if a == b or c == d or middle in (first, second) or not _same_way(arrangement, (a, b), (d, c)):
            continue
        premises = (
            segments_equal((a, m), (m, d)),
            segments_equal((b, n), (n, c)),
            lines_parallel(first, second),
        )
        for line in (first, second):
            low, high = sorted((middle, line))
            about = parallel_text(arrangement, low, high, arrangement.parallel_way(low, high) or 1)
            yield Instance("trapezium-midline", premises, LinearForm(), lines_parallel(low, high), about, 12)
        relation: LinearForm[Size] = LinearForm({length(m, n): 2, length(a, b): -1, length(d, c): -1})
        yield Instance("trapezium-midline", premises, relation, None, "".join((a, b, c, d)), 12)


def _same_way(arrangement: Arrangement, one: tuple[str, str], two: tuple[str, str]) -> bool:
    """Whether two parallel segments are named in the same direction."""
    return abs((arrangement.bearing(*one) - arrangement.bearing(*two) + 180) % 360 - 180) < 90


def _equal_intercepts(arrangement: Arrangement) -> Iterator[Instance]:
    """Three parallels that cut equal parts on one line cut equal parts on another."""
    for (a, m, d), (b, n, c), first, second, way in _legs(arrangement):
        middle = arrangement.ray(m, n).line
        if middle in (first, second) or not arrangement.parallel_way(middle, first):
            continue
        premises: tuple[Predicate, ...] = (lines_parallel(first, second), lines_parallel(first, middle))
        equal = (segments_equal((a, m), (m, d)), segments_equal((b, n), (n, c)))
        about = parallel_text(arrangement, first, second, way)
        for one, two in (equal, equal[::-1]):
            yield Instance("equal-intercepts", (*premises, one), LinearForm(), two, about, 12)


def _heights(arrangement: Arrangement) -> Iterator[Instance]:
    """Parallels are equally far apart everywhere."""
    for first, second, way, third in cut_pairs(arrangement):
        upright: list[tuple[tuple[str, str], tuple[AngleIs, AngleIs]]] = []
        for line in third:
            start, end = arrangement.meet(first, line) or "", arrangement.meet(second, line) or ""
            beside = next(ray for ray in arrangement.rays[start] if ray.line == first)
            angle = arrangement.between(arrangement.ray(start, end), beside)
            if abs(arrangement.measured(angle) - 90) < CLOSE:
                other = next(ray for ray in arrangement.rays[end] if ray.line == second)
                at_end = arrangement.between(arrangement.ray(end, start), other)
                upright.append(((start, end), (AngleIs(angle, RIGHT), AngleIs(at_end, RIGHT))))
        about = parallel_text(arrangement, first, second, way)
        for (one, angles), (two, others) in combinations(upright, 2):
            for here in angles:
                for there in others:
                    premises = (lines_parallel(first, second), here, there)
                    yield Instance("distance-of-parallels", premises, LinearForm(), segments_equal(one, two), about, 12)


def _overhang(arrangement: Arrangement) -> Iterator[Instance]:
    """The foot of a height of an isosceles trapezium is half the difference of the parallel sides from the corner."""
    for corners, _ in isosceles_trapeziums(arrangement):
        a, b, c, d = corners
        for near, far, top, other in ((a, b, d, c), (b, a, c, d), (d, c, a, b), (c, d, b, a)):
            for foot in arrangement.lines[arrangement.ray(near, far).line]:
                if foot in (near, far) or not arrangement.joined(top, foot):
                    continue
                upright = arrangement.corner(top, foot, near)
                inside = arrangement.ray(near, far) == arrangement.ray(near, foot)
                if abs(arrangement.measured(upright) - 90) > CLOSE or not inside:
                    continue
                relation: LinearForm[Size] = LinearForm(
                    {length(near, foot): 2, length(near, far): -1, length(top, other): 1}
                )
                premises = (is_shape("isosceles trapezium", corners), AngleIs(upright, RIGHT))
                yield Instance("isosceles-trapezium-overhang", premises, relation, None, "".join(corners), 14)


_TRAPEZIUM = (
    "trapezium ABCD",
    "AB ∥ DC",
    "M is the midpoint of AD",
    "N is the midpoint of BC",
    "segment MN",
)
_HEIGHTS = ("quadrilateral ABCD", "AB ∥ DC", "E lies on AB", "F lies on AB", "DE ⊥ AB", "CF ⊥ AB")

THEOREMS = (
    Theorem(
        "trapezium-midline",
        "The mid-line of a trapezium is parallel to its parallel sides and half their sum.",
        "midpoints",
        "Euclid VI.2, corollary",
        _midline,
        fires=_TRAPEZIUM,
        silent=_HEIGHTS,
    ),
    Theorem(
        "equal-intercepts",
        "Parallels that cut equal parts on one line cut equal parts on every other.",
        "proportion in triangles",
        "Euclid I.34 with I.26",
        _equal_intercepts,
        fires=_TRAPEZIUM,
        silent=_HEIGHTS,
    ),
    Theorem(
        "distance-of-parallels",
        "Parallel lines are equally far apart everywhere.",
        "parallelograms",
        "Euclid I.34",
        _heights,
        fires=_HEIGHTS,
        silent=_TRAPEZIUM,
    ),
    Theorem(
        "isosceles-trapezium-overhang",
        "A height of an isosceles trapezium cuts off half the difference of the parallel sides.",
        "trapeziums",
        "common practice, no source",
        _overhang,
        fires=("isosceles trapezium ABCD", "AB ∥ DC", "E lies on AB", "DE ⊥ AB"),
        silent=_HEIGHTS,
    ),
)
