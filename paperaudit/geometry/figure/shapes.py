"""What the name of a shape says about its sides and angles."""

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import combinations

from paperaudit.geometry.figure.figure import (
    Compared,
    Condition,
    Convex,
    EqualLengths,
    ParallelPair,
    RightAngle,
    SizeRelation,
    angle,
    length,
)
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import Function, LengthOf, Number, Power, Sum
from paperaudit.model.fact import Fact, Holds, Parallel, Shape


def shape_conditions(shape: Shape, label: int, facts: Sequence[tuple[Fact, ...]]) -> Iterator[Condition]:
    """The conditions of a named shape; `facts` of the whole question settle a kite's or trapezium's pairs."""
    points = shape.points
    if len(points) > 3:
        yield Convex(points, label)
    if "regular" in shape.qualities or "equilateral" in shape.qualities:
        yield from _all_sides_equal(points, label, "regular-polygon" if len(points) > 3 else "equilateral-sides")
    if "regular" in shape.qualities and len(points) > 3:
        yield from _all_angles(points, label)
    if len(points) == 3:
        yield from _by_angles(shape, label)
    if len(points) != 4:
        return
    a, b, c, d = points
    if shape.kind in ("parallelogram", "rectangle", "rhombus", "square"):
        yield ParallelPair((a, b), (d, c), label, reason="parallelogram-definition")
        yield ParallelPair((a, d), (b, c), label, reason="parallelogram-definition")
    if shape.kind in ("rectangle", "square"):
        for first, second in zip(_sides(points), _sides(points)[1:] + _sides(points)[:1], strict=True):
            yield RightAngle(first, second, label, "rectangle-angles")
    if shape.kind in ("rhombus", "square"):
        yield from _all_sides_equal(points, label, "rhombus-sides")
    if shape.kind == "kite":
        yield from _kite(kite_axis(shape, facts), label)
    if shape.kind == "trapezium":
        yield from _trapezium(shape, label, facts)


def _by_angles(shape: Shape, label: int) -> Iterator[Condition]:
    """All angles of an acute triangle are below 90°; cos² A + cos² B + cos² C is 1 − 2 cos A cos B cos C."""
    a, b, c = shape.points
    corners = (angle(c, a, b), angle(a, b, c), angle(b, c, a))
    if "acute-angled" in shape.qualities:
        for corner in corners:
            yield Compared(corner, "<", Number(Fraction(90)), label)
    if "obtuse-angled" in shape.qualities:
        squares = tuple(Power(Function("cos", corner), Number(Fraction(2))) for corner in corners)
        yield Compared(Sum(squares), ">", Number(Fraction(1)), label)


def kite_axis(shape: Shape, facts: Sequence[tuple[Fact, ...]]) -> tuple[str, str, str, str]:
    """The corners of a kite, those on its axis first and third: A and C unless equal sides say otherwise."""
    a, b, c, d = shape.points
    other_pairs = {frozenset((frozenset(one), frozenset(two))) for one, two in (((a, b), (b, c)), ((c, d), (d, a)))}
    for group in facts:
        for fact in group:
            if isinstance(fact, Holds):
                left, right = fact.relation.left, fact.relation.right
                if isinstance(left, LengthOf) and isinstance(right, LengthOf):
                    pair = frozenset((frozenset((left.start, left.end)), frozenset((right.start, right.end))))
                    if pair in other_pairs:
                        return b, c, d, a
    return a, b, c, d


def _kite(corners: tuple[str, str, str, str], label: int) -> Iterator[Condition]:
    a, b, c, d = corners
    yield EqualLengths(length(a, b), length(a, d), label, "kite-sides")
    yield EqualLengths(length(c, b), length(c, d), label, "kite-sides")


def _trapezium(shape: Shape, label: int, facts: Sequence[tuple[Fact, ...]]) -> Iterator[Condition]:
    a, b, c, d = shape.points
    sides = {frozenset(side) for side in _sides(shape.points)}
    stated = [
        fact
        for group in facts
        for fact in group
        if isinstance(fact, Parallel) and sum(frozenset(path) in sides for path in fact.paths) >= 2
    ]
    if stated:
        upright = any(frozenset((a, d)) in {frozenset(path) for path in fact.paths} for fact in stated)
    else:
        upright = False
        yield ParallelPair((a, b), (d, c), label, reason="trapezium-parallel-sides")
    if "isosceles" in shape.qualities:
        legs = ((a, b), (d, c)) if upright else ((a, d), (b, c))
        yield EqualLengths(length(*legs[0]), length(*legs[1]), label, "isosceles-trapezium-legs")
        yield EqualLengths(length(a, c), length(b, d), label, "isosceles-trapezium-legs")


def _sides(points: tuple[str, ...]) -> list[tuple[str, str]]:
    return list(zip(points, points[1:] + points[:1], strict=True))


def _all_sides_equal(points: tuple[str, ...], label: int, reason: str) -> Iterator[Condition]:
    sides = _sides(points)
    for one, two in combinations(sides, 2):
        yield EqualLengths(length(*one), length(*two), label, reason)


def _all_angles(points: tuple[str, ...], label: int) -> Iterator[Condition]:
    count = len(points)
    size = Fraction(180 * (count - 2), count)
    for index in range(count):
        corner = angle(points[index - 1], points[index], points[(index + 1) % count])
        yield SizeRelation(LinearForm({corner: Fraction(1)}, -size), "angle", label, "regular-polygon")
