"""Which one statement would settle a claim that the givens leave open."""

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import combinations

from paperaudit.geometry.claims.claim_cases import FAILS_FROM, gaps
from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.drawn import FIRST_SEEDS
from paperaudit.geometry.coordinates.realise import realise
from paperaudit.geometry.figure.build import FigureBuilder
from paperaudit.geometry.figure.figure import length
from paperaudit.geometry.figure.incidence import Unclear
from paperaudit.maths.write import write
from paperaudit.model.expression import LengthOf, Measured, Number, Relation
from paperaudit.model.fact import Fact, Given, Holds, Parallel

MOST_TRIED = 6
"""Statements that are tried on figures of their own."""
CLOSE = 1e-7

Sketch = tuple[tuple[str, float, float], ...]


def missing_fact(
    givens: tuple[Given, ...],
    claim: Fact,
    sketch: Sketch,
    failing: Sequence[Arrangement],
    holding: Sequence[Arrangement],
) -> str:
    """A statement other than the claim that holds where the claim does, fails where it fails, and settles it; or ""."""
    tried = 0
    for text, fact in _statements(failing[0], holding):
        if fact == claim or _same_relation(fact, claim):
            continue
        tried += 1
        if tried > MOST_TRIED:
            return ""
        if _settles(givens, Given(text, (fact,)), claim, sketch):
            return text
    return ""


def _settles(givens: tuple[Given, ...], more: Given, claim: Fact, sketch: Sketch) -> bool:
    try:
        builder = FigureBuilder((*givens, more), (claim,))
        figure = builder.figure(sketch)
        drawn = [Arrangement(figure, drawing) for drawing in realise(figure, FIRST_SEEDS)]
        return len(drawn) > 1 and max(gaps(claim, builder, drawn)) < FAILS_FROM
    except (Unclear, KeyError):
        return False


def _same_relation(fact: Fact, claim: Fact) -> bool:
    if not isinstance(fact, Holds) or not isinstance(claim, Holds):
        return False
    one, two = fact.relation, claim.relation
    sides = [
        {length(side.start, side.end) if isinstance(side, LengthOf) else side for side in (r.left, r.right)}
        for r in (one, two)
    ]
    return sides[0] == sides[1]


def _statements(failing: Arrangement, holding: Sequence[Arrangement]) -> Iterator[tuple[str, Fact]]:
    """Equal segments, right angles and parallels that hold in every figure with the claim and not in the other."""
    segments = [
        length(a, b)
        for a, b in combinations(failing.figure.points, 2)
        if failing.joined(a, b) and all(one.joined(a, b) for one in holding)
    ]
    drawn = [*holding[:3]]
    for one, two in combinations(segments, 2):
        if all(_equal(figure, one, two) for figure in drawn) and not _equal(failing, one, two):
            yield f"{write(one)} = {write(two)}", Holds(Relation(one, "=", two))
    right = Measured(Number(Fraction(90)), "°")
    for before, vertex, after in _corners(failing):
        try:
            sizes = [figure.measured(figure.corner(before, vertex, after)) for figure in (failing, *drawn)]
        except KeyError:
            continue
        if abs(sizes[0] - 90) > CLOSE and all(abs(size - 90) < CLOSE for size in sizes[1:]):
            corner = failing.corner(before, vertex, after)
            yield f"{write(failing.name(corner))} = 90°", Holds(Relation(corner, "=", right))
    for one, two in combinations(segments, 2):
        if not {one.start, one.end} & {two.start, two.end} and _become_parallel(failing, drawn, one, two):
            yield f"{write(one)} ∥ {write(two)}", Parallel(((one.start, one.end), (two.start, two.end)))


def _corners(figure: Arrangement) -> Iterator[tuple[str, str, str]]:
    """The corners of named shapes, then of triangles."""
    for shape, _ in figure.figure.shapes:
        points = shape.points
        yield from zip(points[-1:] + points[:-1], points, points[1:] + points[:1], strict=True)
    for triangle in figure.triangles:
        yield from ((b, a, c) for a, b, c in triangle.turned())


def _equal(figure: Arrangement, one: LengthOf, two: LengthOf) -> bool:
    first, second = figure.measured(one), figure.measured(two)
    return abs(first - second) < CLOSE * first


def _become_parallel(failing: Arrangement, drawn: Sequence[Arrangement], one: LengthOf, two: LengthOf) -> bool:
    ways = [
        figure.parallel_way(figure.figure.line_of(one.start, one.end), figure.figure.line_of(two.start, two.end))
        for figure in (failing, *drawn)
    ]
    return ways[0] == 0 and all(ways[1:])
