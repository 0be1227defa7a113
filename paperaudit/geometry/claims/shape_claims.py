"""Claims that a triangle or a quadrilateral is of a kind, as predicates."""

import math
from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import pairwise

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import length
from paperaudit.geometry.figure.incidence import Unclear
from paperaudit.geometry.figure.plane import Spot
from paperaudit.geometry.theorems.like_quadrilaterals import kind_text
from paperaudit.geometry.theorems.theorem import AngleIs, Predicate, is_shape, lines_parallel, segments_equal
from paperaudit.maths.write import write

Claimed = tuple[str, Predicate]
_KINDS = ("parallelogram", "rectangle", "rhombus", "square")


def triangle_claims(points: tuple[str, ...], qualities: tuple[str, ...], arrangement: Arrangement) -> Iterator[Claimed]:
    """Equal sides, or a right angle: those that come nearest in the drawing where the claim does not say which."""
    a, b, c = points
    pairs = [((x, y), (x, z)) for x, y, z in ((a, b, c), (b, c, a), (c, a, b))]
    if not {"equilateral", "isosceles", "right-angled"} & set(qualities):
        raise Unclear("this claim about a triangle is not proved yet")
    if "equilateral" in qualities:
        for one, two in pairs[:2]:
            yield _equal_text(one, two), segments_equal(one, two)
    elif "isosceles" in qualities:
        gaps = [abs(arrangement.measured(length(*one)) - arrangement.measured(length(*two))) for one, two in pairs]
        one, two = pairs[gaps.index(min(gaps))]
        yield _equal_text(one, two), segments_equal(one, two)
    if "right-angled" in qualities:
        corners = [arrangement.corner(y, x, z) for x, y, z in ((a, b, c), (b, c, a), (c, a, b))]
        corner = min(corners, key=lambda size: abs(arrangement.measured(size) - 90))
        yield f"{write(arrangement.name(corner))} = 90°", AngleIs(corner, Fraction(90))


def shape_claims(
    kind: str, points: tuple[str, ...], qualities: tuple[str, ...], arrangement: Arrangement
) -> Iterator[Claimed]:
    """A kind of quadrilateral; of a kite and a trapezium with the sides that come nearest in the drawing."""
    a, b, c, d = points
    if kind in _KINDS:
        yield kind_text(kind, (a, b, c, d)), is_shape(kind, points)
        return
    turned = ((a, b, c, d), (b, c, d, a))
    if kind == "kite":
        best = min(turned, key=lambda corners: shape_gap("kite", [arrangement.at[point] for point in corners]))
        yield f"{''.join(points)} is a kite", is_shape("kite", best)
    elif kind == "trapezium":
        best = min(turned, key=lambda corners: _slant(arrangement, corners))
        name = "isosceles trapezium" if "isosceles" in qualities else "trapezium"
        if _slant(arrangement, turned[1 - turned.index(best)]) < 1e-6:
            raise Unclear(
                "both pairs of sides are parallel in the figure: whether it counts as a trapezium is a matter of words"
            )
        if "isosceles" in qualities:
            yield f"{''.join(points)} is an {name}", is_shape(name, best)
        else:
            one, two = (arrangement.ray(*pair).line for pair in ((best[0], best[1]), (best[2], best[3])))
            yield f"{best[0]}{best[1]} ∥ {best[3]}{best[2]}", lines_parallel(one, two)
    else:
        raise Unclear(f"a claim that a figure is a {kind} is not proved yet")


def _equal_text(one: tuple[str, str], two: tuple[str, str]) -> str:
    return f"{one[0]}{one[1]} = {two[0]}{two[1]}"


def _slant(arrangement: Arrangement, corners: tuple[str, str, str, str]) -> float:
    a, b, c, d = corners
    return abs(math.sin(math.radians(arrangement.bearing(a, b) - arrangement.bearing(d, c))))


def shape_gap(kind: str, spots: Sequence[Spot]) -> float:
    """How far four points are from a shape of a kind, as a share of its sides; the corners as in `IsShape`."""
    sides = [math.dist(one, two) for one, two in pairwise((*spots, spots[0]))]
    scale = max(sides)
    a, b, c, d = spots
    if kind == "kite":
        return max(abs(sides[0] - sides[3]), abs(sides[1] - sides[2])) / scale
    if kind == "isosceles trapezium":
        cross = (b[0] - a[0]) * (c[1] - d[1]) - (b[1] - a[1]) * (c[0] - d[0])
        slant = abs(cross) / (sides[0] * sides[2])
        return max(abs(sides[1] - sides[3]), abs(math.dist(a, c) - math.dist(b, d))) / scale + slant
    gaps = [math.dist((a[0] + c[0], a[1] + c[1]), (b[0] + d[0], b[1] + d[1]))]
    if kind in ("rectangle", "square"):
        gaps.append(abs(math.dist(a, c) - math.dist(b, d)))
    if kind in ("rhombus", "square"):
        gaps.append(abs(sides[0] - sides[1]))
    return max(gaps) / scale
