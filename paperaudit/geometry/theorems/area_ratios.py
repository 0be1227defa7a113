"""Areas compared: equal heights, one base between parallels, similar and congruent triangles, half a parallelogram."""

from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import SizeRelation, length
from paperaudit.geometry.theorems.area_polygons import Polygon, polygon, polygons
from paperaudit.geometry.theorems.areas import HALF, SKILL
from paperaudit.geometry.theorems.like_quadrilaterals import parallelograms
from paperaudit.geometry.theorems.like_triangles import CLOSE, like_triangles, pair_text, side_of
from paperaudit.geometry.theorems.right_triangles import squared
from paperaudit.geometry.theorems.theorem import (
    Equation,
    Predicate,
    Stated,
    Theorem,
    alike,
    is_shape,
    lines_parallel,
    segments_equal,
)
from paperaudit.geometry.theorems.trigonometry import times
from paperaudit.model.expression import AreaOf, LengthOf, Number, NumberForm, Quotient

HEIGHTS, BETWEEN, SIMILAR, CONGRUENT = 13, 13, 14, 12
Base = tuple[str, str]


def _pairs(arrangement: Arrangement) -> Iterator[tuple[Polygon, Polygon]]:
    triangles = [corners for corners in polygons(arrangement) if len(corners) == 3]
    yield from combinations(triangles, 2)


def _bases_in_line(arrangement: Arrangement) -> Iterator[tuple[Polygon, Polygon, str, Base, Base]]:
    """Pairs of triangles with one corner in common and the sides opposite it on one drawn line."""
    for one, two in _pairs(arrangement):
        for top in sorted(set(one) & set(two)):
            first, second = (tuple(point for point in corners if point != top) for corners in (one, two))
            if not arrangement.joined(*first) or not arrangement.joined(*second):
                continue
            line = arrangement.ray(*first).line
            if line == arrangement.ray(*second).line and top not in arrangement.lines[line]:
                yield one, two, top, (first[0], first[1]), (second[0], second[1])


def _equal_heights(arrangement: Arrangement) -> Iterator[Equation]:
    stated = list(_stated_ratios(arrangement))
    for one, two, _, first, second in _bases_in_line(arrangement):
        about = f"{_triangle(one)} and {_triangle(two)}"
        areas, bases = (AreaOf(one), AreaOf(two)), (length(*first), length(*second))
        ratio = Quotient(*areas)
        yield Equation("equal-heights-areas", (), ratio, Quotient(*bases), about, HEIGHTS)
        sizes = [arrangement.measured(base) for base in bases]
        if abs(sizes[0] - sizes[1]) < CLOSE * sizes[0]:
            yield Equation("equal-heights-areas", (segments_equal(first, second),), *areas, about, HEIGHTS - 1)
        for premise, above, below, share in stated:
            for pair, value in (((above, below), share), ((below, above), 1 / share)):
                if pair == bases:
                    number = Number(value, NumberForm.FRACTION)
                    yield Equation("equal-heights-areas", (premise,), ratio, number, about, HEIGHTS)


def _stated_ratios(arrangement: Arrangement) -> Iterator[tuple[Stated, LengthOf, LengthOf, Fraction]]:
    """What the paper says of the ratio of two lengths: the premise, the lengths, their ratio."""
    for condition in arrangement.figure.conditions:
        if not isinstance(condition, SizeRelation) or condition.form.constant or len(condition.form.terms) != 2:
            continue
        (one, share), (two, other) = condition.form.terms.items()
        if isinstance(one, LengthOf) and isinstance(two, LengthOf) and share * other < 0:
            yield Stated(condition.label), one, two, -Fraction(other) / share


def _triangle(corners: Polygon) -> str:
    return "△" + "".join(corners)


def _between_parallels(arrangement: Arrangement) -> Iterator[Equation]:
    """Triangles on one base with their other corners on a parallel to it."""
    for one, two in _pairs(arrangement):
        base = set(one) & set(two)
        if len(base) != 2 or not arrangement.joined(*sorted(base)):
            continue
        (top,), (other,) = set(one) - base, set(two) - base
        if not arrangement.joined(top, other):
            continue
        below, above = arrangement.ray(*sorted(base)).line, arrangement.ray(top, other).line
        if below != above and arrangement.parallel_way(below, above):
            about = f"{''.join(sorted(base))} ∥ {top}{other}"
            yield Equation(
                "equal-areas-between-parallels",
                (lines_parallel(below, above),),
                AreaOf(one),
                AreaOf(two),
                about,
                BETWEEN,
            )


def _half_parallelogram(arrangement: Arrangement) -> Iterator[Equation]:
    """A triangle on a side of a parallelogram with its third corner on the line of the opposite side."""
    known = set(polygons(arrangement))
    for corners in parallelograms(arrangement) if known else ():
        area = AreaOf(corners)
        named = next((shape for shape in known if len(shape) == 4 and set(shape) == set(corners)), None)
        if named is None:
            continue
        area = AreaOf(named)
        for index in range(4):
            a, b, c, d = corners[index:] + corners[:index]
            line = arrangement.lines[arrangement.ray(d, c).line]
            for triangle in known:
                if len(triangle) == 3 and {a, b} < set(triangle) and set(triangle) - {a, b} <= set(line):
                    premises: tuple[Predicate, ...] = (is_shape("parallelogram", corners),)
                    half = times(HALF, area)
                    yield Equation("half-parallelogram", premises, AreaOf(triangle), half, "".join(named), BETWEEN)


def _similar(arrangement: Arrangement) -> Iterator[Equation]:
    """Areas of similar figures are as the squares of corresponding sides, those of congruent ones are equal."""
    yield from _similar_polygons(arrangement)
    known = {frozenset(corners): AreaOf(corners) for corners in polygons(arrangement) if len(corners) == 3}
    if not known:
        return
    for one, two, congruent in like_triangles(arrangement):
        first, second = known.get(frozenset(one)), known.get(frozenset(two))
        if first is None or second is None:
            continue
        if congruent:
            about = pair_text(one, two, "≡")
            yield Equation("congruent-areas", (alike(one, two, True),), first, second, about, CONGRUENT)
            continue
        for place in range(3):
            ratio = Quotient(side_of(one, place), side_of(two, place))
            about = pair_text(one, two, "∼")
            premises = (alike(one, two),)
            yield Equation("similar-areas", premises, Quotient(first, second), squared(ratio), about, SIMILAR)


def _similar_polygons(arrangement: Arrangement) -> Iterator[Equation]:
    """Quadrilaterals and other polygons that the paper says to be similar or congruent."""
    known = set(polygons(arrangement))
    for one, two, congruent, label in arrangement.figure.alike:
        first, second = polygon(arrangement, one), polygon(arrangement, two)
        if len(one) < 4 or first not in known or second not in known:
            continue
        text = f"{''.join(one)} {'≡' if congruent else '∼'} {''.join(two)}"
        if congruent:
            yield Equation("congruent-areas", (Stated(label),), AreaOf(first), AreaOf(second), text, CONGRUENT)
            continue
        for place in range(len(one)):
            ratio = Quotient(length(one[place - 1], one[place]), length(two[place - 1], two[place]))
            areas = Quotient(AreaOf(first), AreaOf(second))
            yield Equation("similar-areas", (Stated(label),), areas, squared(ratio), text, SIMILAR)


def _mid_segment(arrangement: Arrangement) -> Iterator[Equation]:
    """The triangle that the segment through two mid-points cuts off is a quarter of the whole."""
    known = {frozenset(corners): AreaOf(corners) for corners in polygons(arrangement) if len(corners) == 3}
    for one, two in _pairs(arrangement):
        for small, large in ((one, two), (two, one)):
            common = set(small) & set(large)
            if len(common) != 1:
                continue
            (top,) = common
            ends = [(point, far) for point in small for far in large if top not in (point, far)]
            middles = [(point, far) for point, far in ends if _is_middle(arrangement, top, point, far)]
            if len(middles) == 2 and len({far for _, far in middles}) == 2 and len({p for p, _ in middles}) == 2:
                premises = tuple(segments_equal((top, point), (point, far)) for point, far in middles)
                quarter = times(Number(Fraction(1, 4), NumberForm.FRACTION), known[frozenset(large)])
                about = f"{_triangle(small)} and {_triangle(large)}"
                yield Equation("mid-segment-area", premises, known[frozenset(small)], quarter, about, SIMILAR)


def _is_middle(arrangement: Arrangement, start: str, point: str, end: str) -> bool:
    if not arrangement.joined(start, end) or point not in arrangement.lines[arrangement.ray(start, end).line]:
        return False
    one, whole = arrangement.measured(length(start, point)), arrangement.measured(length(start, end))
    return abs(2 * one - whole) < CLOSE * whole and abs(arrangement.measured(length(point, end)) - one) < CLOSE * whole


_CUT = ("triangle ABC", "D lies on BC", "segment AD", "area of △ABC = 24")
_PARALLEL = ("triangle ABC", "D lies on AB", "E lies on AC", "DE ∥ BC", "area of △ABC = 24", "area of △ADE = 6")

THEOREMS = (
    Theorem(
        "equal-heights-areas",
        "The areas of triangles of equal height are as their bases.",
        SKILL,
        "Euclid VI.1",
        _equal_heights,
        fires=_CUT,
        silent=("triangle ABC", "area of △ABC = 24"),
    ),
    Theorem(
        "equal-areas-between-parallels",
        "Triangles on one base and between the same parallels have equal areas.",
        SKILL,
        "Euclid I.37",
        _between_parallels,
        fires=("trapezium ABCD with AB ∥ DC", "segments AC, BD", "area of △ABC = 24"),
        silent=_CUT,
    ),
    Theorem(
        "half-parallelogram",
        "A triangle on a side of a parallelogram, between the same parallels, is half of it.",
        SKILL,
        "Euclid I.41",
        _half_parallelogram,
        fires=("parallelogram ABCD", "E lies on DC", "segments AE, BE", "area of ABCD = 24"),
        silent=_CUT,
    ),
    Theorem(
        "similar-areas",
        "The areas of similar triangles are as the squares of corresponding sides.",
        SKILL,
        "Euclid VI.19",
        _similar,
        fires=_PARALLEL,
        silent=_CUT,
    ),
    Theorem(
        "congruent-areas",
        "Congruent triangles have equal areas.",
        SKILL,
        "Euclid I, common notion 4",
        _similar,
        fires=("parallelogram ABCD", "segment AC", "area of ABCD = 24"),
        silent=_CUT,
    ),
    Theorem(
        "mid-segment-area",
        "The segment between the mid-points of two sides cuts off a quarter of a triangle.",
        SKILL,
        "Euclid VI.19 with VI.2",
        _mid_segment,
        fires=(
            "triangle ABC",
            "D is the midpoint of AB",
            "E is the midpoint of AC",
            "segment DE",
            "area of △ABC = 24",
        ),
        silent=_CUT,
    ),
)
