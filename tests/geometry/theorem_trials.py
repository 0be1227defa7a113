"""What every theorem is tried by: where it fires, that it is true of figures, that it is caught when it is made false.

`premises_are_enough` draws figures anew from an instance's premises and the order of points alone: what
a theorem concludes must hold there too, so no theorem leans on a coincidence of its drawing.
"""

import math
from collections.abc import Callable, Iterator
from dataclasses import replace
from fractions import Fraction
from functools import cache
from itertools import combinations

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.realise import realise
from paperaudit.geometry.figure.build import FigureBuilder
from paperaudit.geometry.figure.figure import length
from paperaudit.geometry.theorems.theorem import (
    AngleIs,
    AnglesEqual,
    Balanced,
    Concyclic,
    Equation,
    Greater,
    Instance,
    IsDiameter,
    IsShape,
    LinesParallel,
    LinesPerpendicular,
    OnOneLine,
    Predicate,
    Proportional,
    SegmentsEqual,
    Stated,
    Theorem,
    Touches,
    TrianglesAlike,
)
from paperaudit.marking.reasons import systems, word
from paperaudit.maths.linear import LinearForm
from paperaudit.model.derivation import Reason
from paperaudit.model.expression import AngleOf, DistanceOf, Expression, LengthOf, Number, Product, with_leaves
from paperaudit.model.fact import Given
from paperaudit.wording import read_statement
from tests.geometry.premises import redrawn

OFF = 1e-5
"""Degrees, or share of a size, from which two sizes of an exact drawing differ."""


@cache
def drawn(statements: tuple[str, ...], count: int) -> tuple[Arrangement, ...]:
    givens = tuple(read_statement(statement) for statement in statements)
    assert all(isinstance(given, Given) for given in givens), givens
    figure = FigureBuilder(givens).figure()  # type: ignore[arg-type]
    drawings = realise(figure, range(48))
    assert len(drawings) >= count, statements
    return tuple(Arrangement(figure, drawing) for drawing in drawings[:count])


def instances_of(theorem: Theorem, arrangement: Arrangement) -> list[Instance | Equation]:
    return [found for found in theorem.find(arrangement) if found.theorem == theorem.name]


def same(one: float, two: float) -> bool:
    return abs(one - two) < OFF * max(1.0, abs(one), abs(two))


def angles_at(points: tuple[str, ...]) -> list[AngleOf]:
    corners = zip(points[-1:] + points[:-1], points, points[1:] + points[:1], strict=True)
    return [AngleOf(*corner) for corner in corners]


def holds(arrangement: Arrangement, predicate: Predicate) -> bool:
    """Whether a predicate is true of a drawing; what the paper states is."""
    size = arrangement.measured
    match predicate:
        case SegmentsEqual(one, two) | AnglesEqual(one, two):
            return same(size(one), size(two))
        case AngleIs(angle, degrees):
            return same(size(angle), float(degrees))
        case LinesParallel(one, two):
            return arrangement.parallel_way(one, two) != 0
        case LinesPerpendicular(one, two):
            return same((arrangement.bearings[one] - arrangement.bearings[two]) % 180, 90)
        case Proportional((a, b, c, d)):
            return same(size(a) / size(b), size(c) / size(d))
        case TrianglesAlike(one, two, congruent):
            pairs = zip(angles_at(one), angles_at(two), strict=True)
            sides = [
                size(LengthOf(a, b)) / size(LengthOf(c, d))
                for (a, b), (c, d) in zip(combinations(one, 2), combinations(two, 2), strict=True)
            ]
            return (
                all(same(size(a), size(b)) for a, b in pairs)
                and all(same(side, sides[0]) for side in sides)
                and (not congruent or same(sides[0], 1))
            )
        case Balanced(left, right):
            return same(size(left), size(right))  # type: ignore[arg-type]
        case Greater(left, right):
            return size(left) > size(right)
        case OnOneLine((a, b, c)):
            return same(size(length(a, b)) + size(length(b, c)), size(length(a, c)))
        case IsShape(kind, points):
            return is_of_kind(arrangement, kind, points)
        case Concyclic(points):
            return are_concyclic(arrangement, points)
        case IsDiameter(centre, start, end):
            whole = size(LengthOf(start, end))
            return all(same(2 * size(LengthOf(centre, point)), whole) for point in (start, end))
        case Touches(line, at, centre):
            first, last = arrangement.lines[line][0], arrangement.lines[line][-1]
            return same(size(DistanceOf(centre, (first, last))), size(LengthOf(centre, at)))
    assert isinstance(predicate, Stated), predicate
    return True


def are_concyclic(arrangement: Arrangement, points: tuple[str, ...]) -> bool:
    """Ptolemy: four points are on one circle exactly if the product of one pair of chords is the sum of the others."""
    a, b, c, d = (arrangement.at[point] for point in points)
    one, two, three = sorted(
        (math.dist(a, b) * math.dist(c, d), math.dist(a, c) * math.dist(b, d), math.dist(a, d) * math.dist(b, c))
    )
    return same(one + two, three)


def is_of_kind(arrangement: Arrangement, kind: str, points: tuple[str, ...]) -> bool:
    a, b, c, d = points
    side = [arrangement.measured(length(*pair)) for pair in ((a, b), (b, c), (c, d), (d, a))]
    corner = [arrangement.measured(angle) for angle in angles_at(points)]
    opposite = same(side[0], side[2]) and same(side[1], side[3]) and same(corner[0], corner[2])
    match kind:
        case "kite":
            return same(side[0], side[3]) and same(side[1], side[2])
        case "isosceles trapezium":
            return same(side[1], side[3]) and same(corner[0], corner[1]) and same(corner[2], corner[3])
    right = kind in ("parallelogram", "rhombus") or all(same(size, 90) for size in corner)
    return opposite and right and (kind in ("parallelogram", "rectangle") or same(side[0], side[1]))


def is_true(arrangement: Arrangement, found: Instance | Equation) -> bool:
    """Whether an instance says nothing false of a drawing: a premise fails, or what it says holds."""
    if not all(holds(arrangement, premise) for premise in found.premises):
        return True
    if isinstance(found, Equation):
        return same(arrangement.measured(found.left), arrangement.measured(found.right))  # type: ignore[arg-type]
    off = float(found.relation.constant) + sum(
        float(v) * arrangement.measured(s) for s, v in found.relation.terms.items()
    )
    if found.conclusion is None:
        return same(off, 0)
    return not same(off, 0) or holds(arrangement, found.conclusion)


def mutations(arrangement: Arrangement, found: Instance | Equation) -> Iterator[Instance | Equation]:
    """The instance with one size, or one corner, of what it says changed for another one of the figure."""
    segments = [length(a, b) for a, b in combinations(arrangement.figure.points, 2)]
    if isinstance(found, Equation):
        for old, new in ((a, b) for a in segments for b in segments if a != b):
            changed = _swapped(found.right, old, new)
            if changed != found.right:
                yield replace(found, right=changed)
        yield replace(found, right=Product((Number(Fraction(11, 10)), found.right)))
        return
    match found.conclusion:
        case None:
            yield replace(found, relation=found.relation + LinearForm.number(7))
        case SegmentsEqual(one, _):
            yield from (replace(found, conclusion=SegmentsEqual(one, other)) for other in segments)
        case AnglesEqual(one, _):
            yield from (replace(found, conclusion=AnglesEqual(one, size)) for size in corners(arrangement))
        case TrianglesAlike(one, (a, b, c), congruent):
            yield replace(found, conclusion=TrianglesAlike(one, (b, a, c), congruent))
        case Greater(left, right):
            yield replace(found, conclusion=Greater(right, left))
        case OnOneLine((a, b, c)):
            yield replace(found, conclusion=OnOneLine((b, a, c)))
        case IsShape(kind, (a, b, c, d)):
            yield replace(found, conclusion=IsShape(kind, (a, c, b, d)))
        case LinesPerpendicular(one, _):
            others = (other for other in range(len(arrangement.lines)) if other != one)
            yield from (replace(found, conclusion=LinesPerpendicular(one, other)) for other in others)
        case LinesParallel(one, _):
            others = (other for other in range(len(arrangement.lines)) if other != one)
            yield from (replace(found, conclusion=LinesParallel(one, other)) for other in others)


def _swapped(side: Expression, old: LengthOf, new: LengthOf) -> Expression:
    return with_leaves(side, lambda leaf: new if leaf == old else leaf)


def corners(arrangement: Arrangement) -> list[AngleOf]:
    return [
        arrangement.between(one, two)
        for rays in arrangement.rays.values()
        for one, two in combinations(rays, 2)
        if one.line != two.line
    ]


def fires_and_is_silent(theorem: Theorem) -> None:
    """It has an instance in the one figure and none in the other."""
    assert instances_of(theorem, drawn(theorem.fires, 1)[0])
    assert not instances_of(theorem, drawn(theorem.silent, 1)[0])


def true_of_unlike_figures(theorem: Theorem) -> None:
    """Its instances say nothing false of three figures, and some of their premises hold there."""
    for arrangement in drawn(theorem.fires, 3):
        fired = instances_of(theorem, arrangement)
        assert any(all(holds(arrangement, premise) for premise in found.premises) for found in fired)
        assert all(is_true(arrangement, found) for found in fired)


def caught_when_wrong(theorem: Theorem) -> None:
    """What measures true after a change is true: the change came to the same size; the rest is caught."""
    caught = 0
    for arrangement in drawn(theorem.fires, 3):
        fired = instances_of(theorem, arrangement)
        sound = [found for found in fired if all(holds(arrangement, premise) for premise in found.premises)]
        for found in sound[:6]:
            caught += sum(not is_true(arrangement, changed) for changed in mutations(arrangement, found))
    assert caught


def premises_are_enough(theorem: Theorem) -> None:
    """Where only the premises hold, and the order of points, what the theorem concludes holds too."""
    drawn_anew = 0
    for arrangement in drawn(theorem.fires, 1):
        for found in instances_of(theorem, arrangement)[:8]:
            for loose in redrawn(arrangement, found.premises, range(6)):
                drawn_anew += 1
                assert is_true(loose, found), (found, loose.at)
    assert drawn_anew


def worded_and_sourced(theorem: Theorem) -> None:
    """Its reason has a wording in every system, and it names its source and its skill."""
    assert all(word(Reason(theorem.name), system) for system in systems())
    assert theorem.source and theorem.skill and theorem.says.endswith(".")


Trial = Callable[[Theorem], None]
TRIALS = (fires_and_is_silent, true_of_unlike_figures, caught_when_wrong, premises_are_enough, worded_and_sourced)
