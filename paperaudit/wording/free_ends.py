"""Puts the free end of a bisector or a perpendicular from a corner of a triangle on the opposite side.

"AD bisects ∠BAC" and "AD ⊥ BC" name D where nothing else says where it is: in triangle ABC it is the point of BC.
A sketch that shows it clearly elsewhere is left as it is.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from math import dist

from paperaudit.model.expression import AngleAt, AngleOf
from paperaudit.model.fact import BisectsAngle, Collinear, Drawn, Fact, Given, Holds, Path, Perpendicular, Shape

Sketch = tuple[tuple[str, float, float], ...]
_OFF = 0.1
"""How far a sketched point is from a side at most that it is taken to lie on, as a share of that side."""


def with_free_ends(givens: Sequence[Given], sketch: Sketch) -> list[Given]:
    """The givens, each bisector or perpendicular whose other end is free followed by the side where that end is.

    >>> triangle = Given("triangle ABC", (Shape("triangle", ("A", "B", "C")),))
    >>> with_free_ends([triangle, Given("AD ⊥ BC", (Perpendicular(("A", "D"), ("B", "C")),))], ())[1].facts[1]
    Collinear(points=('B', 'D', 'C'), ordered=False)
    """
    facts = [fact for given in givens for fact in given.facts]
    triangles = [fact.points for fact in facts if isinstance(fact, Shape) and len(fact.points) == 3]
    return [
        replace(given, facts=given.facts + added)
        if (added := tuple(_ends(given.facts, triangles, facts, sketch)))
        else given
        for given in givens
    ]


def _ends(
    stated: Sequence[Fact], triangles: Sequence[tuple[str, ...]], facts: Sequence[Fact], sketch: Sketch
) -> Iterator[Fact]:
    for fact in stated:
        for corner, end, side, ordered in _cevians(fact, triangles):
            if _is_free(end, facts, fact, {corner, end}) and _may_lie_on(end, side, sketch):
                yield Collinear((side[0], end, side[1]), ordered)


def _cevians(fact: Fact, triangles: Sequence[tuple[str, ...]]) -> Iterator[tuple[str, str, Path, bool]]:
    """The corner that a line comes from, its other end, the opposite side, and whether it meets that inside."""
    match fact:
        case BisectsAngle((corner, end), halved):
            arms = {halved.arm, halved.other} if isinstance(halved, AngleOf) else set()
            for points in triangles:
                one, two = (point for point in points if point != corner) if corner in points else ("", "")
                if end not in points and one and (arms == {one, two} or isinstance(halved, AngleAt)):
                    yield corner, end, (one, two), True
        case Perpendicular(first, second):
            for line, side in ((first, second), (second, first)):
                for points in triangles:
                    corners = set(points) - set(side)
                    if set(side) < set(points) and len(corners & set(line)) == 1 and not set(line) & set(side):
                        (corner,) = corners
                        yield corner, next(point for point in line if point != corner), side, False


def _is_free(end: str, facts: Sequence[Fact], line: Fact, path: set[str]) -> bool:
    """Whether nothing but sizes and the line itself names the point."""
    for fact in facts:
        if fact == line or isinstance(fact, Holds) or (isinstance(fact, Drawn) and set(fact.path) == path):
            continue
        if end in _points_of(fact):
            return False
    return True


def _points_of(fact: object) -> set[str]:
    """Every point that a fact names."""
    if isinstance(fact, str):
        return {fact}
    if isinstance(fact, tuple):
        return {point for piece in fact for point in _points_of(piece)}
    names = getattr(fact, "__dataclass_fields__", {})
    return {point for name in names for point in _points_of(getattr(fact, name))}


def _may_lie_on(point: str, side: Path, sketch: Sketch) -> bool:
    """Whether a sketch, where there is one of these points, shows the point on the line of a side."""
    at = {name: (x, y) for name, x, y in sketch}
    if not {point, *side} <= set(at):
        return True
    (x, y), (ax, ay), (bx, by) = at[point], at[side[0]], at[side[1]]
    length = dist((ax, ay), (bx, by)) or 1.0
    return abs((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / length <= _OFF * length
