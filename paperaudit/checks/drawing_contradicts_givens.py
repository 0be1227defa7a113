"""The sketch shows points in another order, or lines that meet elsewhere, than the givens say."""

from collections.abc import Iterator, Mapping
from itertools import groupby, pairwise
from math import dist
from typing import TypeAlias

from paperaudit.checks.check import Check
from paperaudit.model.audited import AuditedPaper, AuditedPart
from paperaudit.model.fact import Collinear, Crossing, Fact, Given, Origin, Path
from paperaudit.model.finding import Finding, Severity

_Point: TypeAlias = tuple[float, float]
_Drawn: TypeAlias = Mapping[str, _Point]

CLEARLY = 0.05
"""How far past another point a point must be drawn, as a share of the drawing's size, to count as out of order.
A sketch is rough: sizes and angles are never measured on it, and a slip of the pen is no contradiction."""


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a given that the sketch contradicts; none where the figure is marked not to scale."""
    for question, grouped in groupby(audited.parts, key=lambda part: part.question):
        if question.not_to_scale:
            continue
        for given, shown in _contradictions(list(grouped)):
            yield CHECK.found(
                f"Question {question.number}: the drawing contradicts “{given.text}”.",
                part=question.number,
                places=(given.place, question.place),
                because=(shown,),
                suggestion="Draw the figure again, or mark it “not to scale” if the order is not meant.",
            )


def _contradictions(parts: list[AuditedPart]) -> Iterator[tuple[Given, str]]:
    """Each given of the question that the sketch contradicts, once, with what the sketch shows."""
    givens = {
        given.text: (given, {name: (x, y) for name, x, y in part.reading.sketch})
        for part in parts
        for given in part.reading.givens
        if given.origin not in (Origin.CONVENTION, Origin.DRAWING)
    }
    for given, drawn in givens.values():
        shown = next((told for fact in given.facts if (told := _shown_instead(fact, drawn))), "")
        if shown:
            yield given, shown


def _shown_instead(fact: Fact, drawn: _Drawn) -> str:
    """What the sketch shows in place of a fact, "" where the two are at peace or the sketch lacks its points."""
    match fact:
        case Collinear(points, ordered=True) if all(point in drawn for point in points):
            order = _order_along(points, drawn)
            return f"in the drawing the order is {', '.join(order)}" if order else ""
        case Crossing(first, second, point, within=True) if all(name in drawn for name in (*first, *second)):
            apart = next(
                ((path, line) for path, line in ((first, second), (second, first)) if _misses(path, line, drawn)), None
            )
            return f"in the drawing {''.join(apart[0])} does not reach {''.join(apart[1])} at {point}" if apart else ""
        case _:
            return ""


def _order_along(points: tuple[str, ...], drawn: _Drawn) -> tuple[str, ...]:
    """The points in the order drawn, where that is clearly another one than stated; else none.

    Positions are taken along the line through the two that are drawn farthest apart.
    """
    start, end = max(
        ((one, other) for one in points for other in points), key=lambda two: dist(drawn[two[0]], drawn[two[1]])
    )
    length = dist(drawn[start], drawn[end])
    if not length:
        return ()
    along = {name: _along(drawn[start], drawn[end], drawn[name]) / length for name in points}
    if along[points[0]] > along[points[-1]]:
        along = {name: -place for name, place in along.items()}
    out_of_order = any(along[later] < along[earlier] - CLEARLY for earlier, later in pairwise(points))
    return tuple(sorted(points, key=lambda name: along[name])) if out_of_order else ()


def _misses(path: Path, line: Path, drawn: _Drawn) -> bool:
    """Whether both ends of a segment are drawn clearly on one side of a line."""
    start, end = drawn[line[0]], drawn[line[1]]
    length = dist(start, end)
    if not length:
        return False
    sides = [_across(start, end, drawn[name]) / length / length for name in path]
    return all(side > CLEARLY for side in sides) or all(side < -CLEARLY for side in sides)


def _along(start: _Point, end: _Point, point: _Point) -> float:
    """How far a point lies along the way from start to end, in units of the drawing."""
    way = dist(start, end)
    return ((end[0] - start[0]) * (point[0] - start[0]) + (end[1] - start[1]) * (point[1] - start[1])) / way


def _across(start: _Point, end: _Point, point: _Point) -> float:
    """Twice the area of the triangle of three points, positive to the left of the way from start to end."""
    return (end[0] - start[0]) * (point[1] - start[1]) - (end[1] - start[1]) * (point[0] - start[0])


CHECK = Check(
    name="drawing-contradicts-givens",
    severity=Severity.WARNING,
    title="The drawing contradicts the givens",
    meaning="The drawing shows points of a line in another order than stated, or segments that are said to cross and "
    "do not. Only order and sides are looked at: sizes in a sketch are rough, and nothing is measured on it.",
    matters="Learners trust the drawing. They work with the figure that they see, and the key with the one that is "
    "stated.",
    mend="Draw the figure again from the givens. Where it is only meant as a rough sketch, print “not to scale” "
    "beside it.",
    faulty="""
questions:
  - number: 1
    figure: [triangle ABC, BC is produced to D]
    given: ∠ACD = 112°
    sketch: {A: [2, 3], B: [0, 0], C: [6, 0], D: [4, 0]}
    ask: ∠ACB
    answer: 68°
    marks: 1
""",
    clean="""
questions:
  - number: 1
    figure: [triangle ABC, BC is produced to D]
    given: ∠ACD = 112°
    sketch: {A: [2, 3], B: [0, 0], C: [4, 0], D: [6, 0]}
    ask: ∠ACB
    answer: 68°
    marks: 1
""",
    find=find,
    alongside=("impossible-givens", "not-read"),
)
