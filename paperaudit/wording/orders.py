"""Settles the order of points along a line that several statements, the text or a sketch speak of."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from paperaudit.model.fact import Circle, Collinear, Crossing, Fact, Given, Midpoint, Path, Shape

Sketch = tuple[tuple[str, float, float], ...]


def in_named_order(givens: Sequence[Given], sketch: Sketch) -> list[Given]:
    """The givens, with the order of points where different lines cross one line added to the later statement.

    A convention of the printed page: AB and EF intersect at G, CD and EF at H, and the order is E, G, H, F.
    A stated order and a sketch come before it. Diagonals and chords are named in no order along each other.
    """
    stated = [fact.points for fact in _facts(givens) if isinstance(fact, Collinear) and fact.ordered]
    round_it = [set(fact.points) for fact in _facts(givens) if isinstance(fact, Shape | Circle)]
    at = {name: (x, y) for name, x, y in sketch}
    on: dict[frozenset[str], tuple[Path, list[str]]] = {}
    found: list[Given] = []
    for given in givens:
        added: list[Fact] = []
        for path, point in _met(given.facts, round_it):
            (start, end), points = on.setdefault(frozenset(path), (path, []))
            if point in points:
                continue
            points.append(point)
            order = (start, *_as_drawn(points, (start, end), at), end)
            if len(points) > 1 and not any(_settles(known, order, points) for known in stated):
                added.append(Collinear(order))
        found.append(replace(given, facts=tuple(dict.fromkeys((*given.facts, *added)))))
    return found


def _met(facts: Iterable[Fact], round_it: Sequence[set[str]]) -> Iterator[tuple[Path, str]]:
    """The lines that a statement puts a crossing on, each with the point."""
    for fact in facts:
        if not isinstance(fact, Crossing) or not fact.within:
            continue
        if any({*fact.first, *fact.second} <= corners for corners in round_it):
            continue
        for path in (fact.first, fact.second):
            if fact.point not in path:
                yield path, fact.point


def _settles(known: tuple[str, ...], order: tuple[str, ...], points: Sequence[str]) -> bool:
    """Whether a stated order already says how two of the crossings follow each other."""
    return len(set(known) & set(points)) > 1 and len(set(known) & set(order)) > 2


def _as_drawn(points: Sequence[str], path: Path, at: dict[str, tuple[float, float]]) -> list[str]:
    """The points in the order of the sketch along the path, else as they are named."""
    if not {*points, *path} <= set(at):
        return list(points)
    (left, low), (right, high) = (at[end] for end in path)
    across, up = right - left, high - low
    return sorted(points, key=lambda point: across * at[point][0] + up * at[point][1])


def orders_of(told: Iterable[Given], stated: Sequence[Given]) -> Iterator[Given]:
    """What a text adds to statements: the order of points that these put on one line, never a size or a new line."""
    lines = _lines(stated)
    orders = [order for fact in _facts(stated) for order in _orders(fact)]
    for given in told:
        facts = tuple(
            fact
            for fact in given.facts
            if isinstance(fact, Collinear)
            and fact.ordered
            and any(set(fact.points) <= line for line in lines)
            and not any(set(fact.points) <= set(order) or _contradicts(order, fact.points) for order in orders)
        )
        if facts:
            yield replace(given, facts=facts)


def _contradicts(order: tuple[str, ...], other: tuple[str, ...]) -> bool:
    one, two = ([point for point in run if point in rest] for run, rest in ((order, other), (other, order)))
    return len(one) > 2 and one not in (two, two[::-1])


def _orders(fact: Fact) -> tuple[tuple[str, ...], ...]:
    """The runs of points that a fact puts in order."""
    match fact:
        case Collinear(points, True):
            return (points,)
        case Crossing((a, b), (c, d), point, True):
            return (a, point, b), (c, point, d)
        case Midpoint(point, (start, end)):
            return ((start, point, end),)
        case _:
            return ()


def _lines(givens: Sequence[Given]) -> list[set[str]]:
    """The sets of points that lie on one line; two lines with two points in common are one."""
    runs = [set(run) for fact in _facts(givens) for run in _orders(fact)]
    runs += [set(fact.points) for fact in _facts(givens) if isinstance(fact, Collinear)]
    lines: list[set[str]] = []
    for run in runs:
        while same := [line for line in lines if len(line & run) > 1]:
            run = run.union(*same)
            lines = [line for line in lines if line not in same]
        lines.append(run)
    return lines


def _facts(givens: Iterable[Given]) -> Iterator[Fact]:
    return (fact for given in givens for fact in given.facts)
