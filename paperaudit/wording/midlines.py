"""Settles which two sides a midline joins, from the other statements, from a sketch or by how it is named."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from itertools import permutations
from math import dist

from paperaudit.model.fact import Collinear, Fact, Given, Midline, Midpoint, Parallel, Path

Sketch = tuple[tuple[str, float, float], ...]
_CLEARLY = 0.5
"""The sides that a sketch means are at most so far from their rivals' misfit, as a share of it."""


def with_midlines(givens: Sequence[Given], sketch: Sketch) -> list[Given]:
    """The givens, with the two midpoints in place of each midline whose sides are known.

    Points that another statement puts on a side come first, then the sketch. A midline of a trapezium is
    named in the direction of its parallel sides, as parallel lines are. One of which nothing says so stays.
    """
    facts = [fact for given in givens for fact in given.facts]
    return [
        replace(given, facts=tuple(new for fact in given.facts for new in _settled(fact, facts, sketch)))
        for given in givens
    ]


def _settled(fact: Fact, facts: Sequence[Fact], sketch: Sketch) -> Iterator[Fact]:
    sides = _joined(fact, facts, sketch) if isinstance(fact, Midline) else None
    if sides is None or not isinstance(fact, Midline):
        yield fact
        return
    for point, side in zip(fact.path, sides, strict=True):
        yield Midpoint(point, side)


def _joined(midline: Midline, facts: Sequence[Fact], sketch: Sketch) -> tuple[Path, Path] | None:
    """The side of the first end and that of the second."""
    pairs = list(_possible(midline, facts))
    stated = [
        pair for pair in pairs if all(_said(end, side, facts) for end, side in zip(midline.path, pair, strict=True))
    ]
    if len(stated) == 1:
        return stated[0]
    at = {name: (x, y) for name, x, y in sketch}
    if {*midline.path, *midline.polygon} <= set(at):
        return _drawn(midline, pairs, at)
    along = [fact for fact in facts if isinstance(fact, Parallel) and len(midline.polygon) == 4]
    return next((pair for fact in along for pair in pairs if set(pair[0]) == {path[0] for path in fact.paths}), None)


def _possible(midline: Midline, facts: Iterable[Fact]) -> Iterator[tuple[Path, Path]]:
    """Two sides of a triangle, or the two legs of a trapezium whose parallel sides are known, in either order."""
    polygon = midline.polygon
    sides: list[Path] = list(zip(polygon, polygon[1:] + polygon[:1], strict=True))
    if len(polygon) == 4:
        parallel = [set(path) for fact in facts if isinstance(fact, Parallel) for path in fact.paths]
        sides = [side for side in sides if set(side) not in parallel]
        if len(sides) != 2 or set(sides[0]) & set(sides[1]):
            return
    yield from permutations(sides, 2)


def _said(point: str, side: Path, facts: Iterable[Fact]) -> bool:
    return any(
        (isinstance(fact, Collinear) and {point, *side} <= set(fact.points))
        or (isinstance(fact, Midpoint) and fact.point == point and set(fact.path) == set(side))
        for fact in facts
    )


def _drawn(
    midline: Midline, pairs: Sequence[tuple[Path, Path]], at: dict[str, tuple[float, float]]
) -> tuple[Path, Path] | None:
    """The sides whose middles are nearest to the ends as drawn, where no other pair comes near."""

    def misfit(pair: tuple[Path, Path]) -> float:
        return sum(_gap(at[end], at[side[0]], at[side[1]]) for end, side in zip(midline.path, pair, strict=True))

    nearest = sorted(pairs, key=misfit)
    if not nearest or (len(nearest) > 1 and misfit(nearest[0]) > _CLEARLY * misfit(nearest[1])):
        return None
    return nearest[0]


def _gap(point: tuple[float, float], start: tuple[float, float], end: tuple[float, float]) -> float:
    """How far a point is from the middle of a segment."""
    return dist(point, ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2))
