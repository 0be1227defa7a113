"""Figures drawn from the premises of a theorem alone, in the order of points that a drawing shows."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations, pairwise

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.realise import realise
from paperaudit.geometry.figure.figure import (
    Balance,
    Condition,
    DrawnTurn,
    EqualLengths,
    Ordered,
    ParallelPair,
    SizeRelation,
    length,
)
from paperaudit.geometry.figure.shapes import shape_conditions
from paperaudit.geometry.theorems.theorem import (
    AngleIs,
    AnglesEqual,
    Balanced,
    IsShape,
    LinesParallel,
    Predicate,
    Proportional,
    SegmentsEqual,
    Stated,
    TrianglesAlike,
)
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import Quotient
from paperaudit.model.fact import Shape

LABEL = 99


def redrawn(arrangement: Arrangement, premises: tuple[Predicate, ...], seeds: range) -> list[Arrangement]:
    """Figures with the same lines in which only the premises hold, and what the drawing shows of order."""
    figure = arrangement.figure
    stated = {premise.label for premise in premises if isinstance(premise, Stated)}
    kept = [condition for condition in figure.conditions if condition.label in stated]
    said = [condition for premise in premises for condition in conditions_of(arrangement, premise)]
    shown = [*orders(arrangement), *turns(arrangement)]
    loose = replace(figure, conditions=(*kept, *said, *shown), sketch=(), fixed_names=())
    return [Arrangement(loose, drawing) for drawing in realise(loose, seeds)]


def orders(arrangement: Arrangement) -> Iterator[Condition]:
    for line in arrangement.lines:
        for triple in zip(line, line[1:], line[2:], strict=False):
            yield Ordered(*triple, LABEL)


def turns(arrangement: Arrangement) -> Iterator[Condition]:
    for triangle in arrangement.triangles:
        a, b, c = triangle.corners
        yield DrawnTurn(b, a, c, 1 if arrangement.turn(b, a, c) > 0 else -1, LABEL)


def conditions_of(arrangement: Arrangement, premise: Predicate) -> Iterator[Condition]:
    match premise:
        case SegmentsEqual(one, two) if one != two:
            yield EqualLengths(one, two, LABEL)
        case AnglesEqual(one, two) if one != two:
            yield SizeRelation(LinearForm.of(one) - LinearForm.of(two), "angle", LABEL)  # type: ignore[arg-type]
        case AngleIs(angle, degrees):
            yield SizeRelation(LinearForm.of(angle) - LinearForm.number(degrees), "angle", LABEL)  # type: ignore[arg-type]
        case LinesParallel(first, second):
            one, two = arrangement.lines[first], arrangement.lines[second][:: arrangement.parallel_way(first, second)]
            yield ParallelPair((one[0], one[-1]), (two[0], two[-1]), LABEL)
        case Proportional((a, b, c, d)):
            yield Balance(Quotient(a, b), Quotient(c, d), LABEL)
        case Balanced(left, right):
            yield Balance(left, right, LABEL)
        case TrianglesAlike(first_corners, second_corners, congruent):
            pairs = [
                (length(*one), length(*two))
                for one, two in zip(combinations(first_corners, 2), combinations(second_corners, 2), strict=True)
            ]
            if congruent:
                yield from (EqualLengths(one, two, LABEL) for one, two in pairs if one != two)
            else:
                yield from (Balance(Quotient(*one), Quotient(*two), LABEL) for one, two in pairwise(pairs))
        case IsShape("isosceles trapezium", (a, b, c, d)):
            yield ParallelPair((a, b), (d, c), LABEL)
            yield EqualLengths(length(a, c), length(b, d), LABEL)
        case IsShape(kind, points):
            yield from shape_conditions(Shape(kind, points), LABEL, [])  # type: ignore[arg-type]
