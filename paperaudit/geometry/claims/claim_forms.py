"""Claims as what the search can reach: a predicate, or a relation of sizes; and how far a drawing is from one."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from paperaudit.geometry.beyond.rows import sides_of
from paperaudit.geometry.claims.circle_claims import circle_claims, circle_gap
from paperaudit.geometry.claims.shape_claims import shape_claims, shape_gap, triangle_claims
from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.build import FigureBuilder
from paperaudit.geometry.figure.canonical import canonical
from paperaudit.geometry.figure.circle_texts import circle_text
from paperaudit.geometry.figure.figure import Size, angle, length
from paperaudit.geometry.figure.incidence import Unclear
from paperaudit.geometry.figure.plane import side
from paperaudit.geometry.figure.relations import in_figure_unit
from paperaudit.geometry.figure.sizes import NotLinear, linear_form
from paperaudit.geometry.theorems.theorem import (
    AngleIs,
    Concyclic,
    Greater,
    IsDiameter,
    IsShape,
    LinesParallel,
    LinesPerpendicular,
    OnOneLine,
    Predicate,
    Touches,
    TrianglesAlike,
    alike,
    angles_equal,
    lines_parallel,
    on_one_line,
    segments_equal,
)
from paperaudit.maths.linear import LinearForm
from paperaudit.maths.write import write
from paperaudit.model.expression import AngleOf, Expression, LengthOf, Measured, Negative, Number, Product, Sum
from paperaudit.model.fact import (
    BisectsAngle,
    BisectsSegment,
    Circle,
    Collinear,
    Congruent,
    Diameter,
    Fact,
    Holds,
    Midpoint,
    Parallel,
    Perpendicular,
    Shape,
    Similar,
    Tangent,
)


@dataclass(frozen=True, slots=True)
class Claim:
    """One thing to establish: `predicate`, or that `left` is `right`, by `form` where that is linear."""

    text: str
    predicate: Predicate | None = None
    left: Expression | None = None
    right: Expression | None = None
    form: LinearForm[Size] | None = None


def claims_of(fact: Fact, builder: FigureBuilder, arrangement: Arrangement) -> Iterator[Claim]:
    """What has to be established for a fact; raises Unclear for a kind that is not proved yet."""
    figure = arrangement.figure
    match fact:
        case Parallel(paths):
            for other in paths[1:]:
                one, two = figure.line_of(*paths[0]), figure.line_of(*other)
                yield Claim(f"{''.join(paths[0])} ∥ {''.join(other)}", lines_parallel(one, two))
        case Perpendicular(first, second):
            yield _perpendicular(first, second, arrangement)
        case BisectsAngle(path, bisected):
            whole = builder.resolved(bisected)
            assert isinstance(whole, AngleOf)
            point = path[1] if path[0] == whole.vertex else path[0]
            halves = (angle(whole.arm, whole.vertex, point), angle(point, whole.vertex, whole.other))
            yield _equal(halves[0], halves[1], builder, arrangement)
        case Midpoint(point, (start, end)):
            yield from _on_lines((start, point, end), arrangement)
            yield Claim(f"{start}{point} = {point}{end}", segments_equal((start, point), (point, end)))
        case Collinear(points):
            yield from _on_lines(points, arrangement)
        case Congruent(one_shape, two_shape) | Similar(one_shape, two_shape) if len(one_shape) == 3:
            congruent = isinstance(fact, Congruent)
            sign = "≡" if congruent else "∼"
            text = f"△{''.join(one_shape)} {sign} △{''.join(two_shape)}"
            yield Claim(text, alike(one_shape, two_shape, congruent))
        case Shape("triangle", points, qualities):
            for text, predicate in triangle_claims(points, qualities, arrangement):
                yield Claim(text, predicate)
        case Shape(kind, points, qualities) if len(points) == 4:
            for text, predicate in shape_claims(kind, points, qualities, arrangement):
                yield Claim(text, predicate)
        case Holds(relation) if relation.sign == "=":
            yield _equal(builder.resolved(relation.left), builder.resolved(relation.right), builder, arrangement)
        case Holds(relation) if relation.sign in ("<", ">"):
            sides = [builder.resolved(relation.left), builder.resolved(relation.right)]
            large, small = (canonical(side, arrangement) for side in (sides if relation.sign == ">" else sides[::-1]))
            text = f" {relation.sign} ".join(_named(side, arrangement) for side in sides)
            yield Claim(text, Greater(large, small))
        case BisectsSegment(path, segment, perpendicular):
            yield from _bisects(path, segment, perpendicular, arrangement)
        case Circle() | Diameter() | Tangent():
            for predicate in circle_claims(fact, arrangement):
                named = fact.points if isinstance(fact, Circle) else ()
                yield Claim(circle_text(arrangement, predicate, named), predicate)
        case _:
            raise Unclear(f"a claim of this kind ({type(fact).__name__.lower()}) is not proved yet")


def _equal(left: Expression, right: Expression, builder: FigureBuilder, arrangement: Arrangement) -> Claim:
    """A relation; two angles, two segments, or an angle and its size are a predicate too."""
    text = f"{_named(left, arrangement)} = {_named(right, arrangement)}"
    left, right = in_figure_unit(left, builder.unit), in_figure_unit(right, builder.unit)
    predicate: Predicate | None = None
    if isinstance(left, LengthOf) and isinstance(right, LengthOf):
        predicate = segments_equal((left.start, left.end), (right.start, right.end))
    elif isinstance(left, AngleOf) and not arrangement.is_straight(left):
        if isinstance(right, AngleOf) and not arrangement.is_straight(right):
            predicate = angles_equal(arrangement.canonical(left), arrangement.canonical(right))
        elif isinstance(right, Measured) and right.unit == "°" and isinstance(right.amount, Number):
            predicate = AngleIs(arrangement.canonical(left), right.amount.value)
    try:
        form = linear_form(left, builder.unit) - linear_form(right, builder.unit)
    except NotLinear:
        return Claim(text, predicate, left, right)
    return Claim(text, predicate, left, right, form)


def _named(expression: Expression, arrangement: Arrangement) -> str:
    if isinstance(expression, AngleOf) and not arrangement.is_straight(expression):
        return write(arrangement.name(arrangement.canonical(expression)))
    return write(expression)


def _perpendicular(first: tuple[str, str], second: tuple[str, str], arrangement: Arrangement) -> Claim:
    one, two = arrangement.figure.line_of(*first), arrangement.figure.line_of(*second)
    vertex = arrangement.meet(one, two)
    if vertex is None:
        upright = LinesPerpendicular(min(one, two), max(one, two))
        return Claim(f"{''.join(first)} ⊥ {''.join(second)}", upright)
    rays = [next(ray for ray in arrangement.rays[vertex] if ray.line == line) for line in (one, two)]
    right = arrangement.between(rays[0], rays[1])
    form: LinearForm[Size] = LinearForm.of(right)
    form = form - LinearForm.number(90)
    return Claim(f"{''.join(first)} ⊥ {''.join(second)}", AngleIs(right, Fraction(-form.constant)), None, None, form)


def _bisects(
    path: tuple[str, str], segment: tuple[str, str], perpendicular: bool, arrangement: Arrangement
) -> Iterator[Claim]:
    """That a line goes through the middle of a segment, where they meet in a named point."""
    lines = [arrangement.figure.line_of(*ends) for ends in (path, segment)]
    middle = arrangement.meet(*lines)
    if middle is None or middle in segment:
        raise Unclear("a line that bisects a segment in a point without a name is not proved yet")
    start, end = segment
    yield Claim(f"{start}{middle} = {middle}{end}", segments_equal((start, middle), (middle, end)))
    if perpendicular:
        yield _perpendicular(path, segment, arrangement)


def _on_lines(points: tuple[str, ...], arrangement: Arrangement) -> Iterator[Claim]:
    """That points are on one straight line, in triples, where no line is drawn through them."""
    if any(set(points) <= set(line) for line in arrangement.figure.lines):
        return
    for triple in zip(points, points[1:], points[2:], strict=False):
        yield Claim(f"{', '.join(triple)} are on one straight line", on_one_line(_in_order(triple, arrangement)))


def _in_order(points: tuple[str, str, str], arrangement: Arrangement) -> tuple[str, str, str]:
    """Three points with the one in the middle that is there in the drawing, in whatever order they are named."""
    a, b, c = points
    orders = ((a, b, c), (b, c, a), (c, a, b))
    return max(orders, key=lambda order: math.dist(arrangement.at[order[0]], arrangement.at[order[2]]))


def gap(claim: Claim, arrangement: Arrangement) -> float:
    """How far a drawing is from a claim, as a share of the sizes in it; 0 where the claim holds."""
    if claim.left is not None and claim.right is not None:
        return _share(arrangement, claim.left, claim.right)
    match claim.predicate:
        case LinesPerpendicular(one, two):
            return abs(math.cos(math.radians(arrangement.bearings[one] - arrangement.bearings[two])))
        case LinesParallel(one, two):
            return abs(math.sin(math.radians(arrangement.bearings[one] - arrangement.bearings[two])))
        case TrianglesAlike(first, second, congruent):
            sides = [
                arrangement.measured(length(a, b)) / arrangement.measured(length(c, d))
                for (a, b), (c, d) in zip(_around(first), _around(second), strict=True)
            ]
            return max(abs(ratio / (1.0 if congruent else sides[0]) - 1) for ratio in sides)
        case IsShape(kind, points):
            return shape_gap(kind, [arrangement.at[point] for point in points])
        case Greater(left, right):
            large, small = arrangement.measured(left), arrangement.measured(right)
            return 0.0 if large - small > 1e-6 * (abs(large) + abs(small)) else 1.0
        case OnOneLine((a, b, c)):
            at = arrangement.at
            # Points are in line in whatever order they are named.
            whole = max(math.dist(at[p], at[q]) for p, q in ((a, b), (b, c), (a, c)))
            return abs(side(at[b], at[a], at[c])) / whole**2
        case Concyclic() | IsDiameter() | Touches():
            return circle_gap(claim.predicate, arrangement)
    sides_named = sides_of(claim.predicate) if claim.predicate is not None else None
    assert sides_named is not None
    return _share(arrangement, *sides_named)


def _around(points: tuple[str, ...]) -> Iterator[tuple[str, str]]:
    yield from zip(points, points[1:] + points[:1], strict=True)


def _share(arrangement: Arrangement, left: Expression, right: Expression) -> float:
    apart = abs(arrangement.measured(left) - arrangement.measured(right))
    return apart / (_magnitude(arrangement, left) + _magnitude(arrangement, right) or 1.0)


def _magnitude(arrangement: Arrangement, expression: Expression) -> float:
    """The size of an expression's terms added up, whatever their signs: x² − 2x − 3 is 0 where x is 3."""
    match expression:
        case Sum(terms):
            return sum(_magnitude(arrangement, term) for term in terms)
        case Negative(operand) | Measured(operand):
            return _magnitude(arrangement, operand)
        case Product(factors):
            return math.prod(_magnitude(arrangement, factor) for factor in factors)
    return abs(arrangement.measured(expression))
