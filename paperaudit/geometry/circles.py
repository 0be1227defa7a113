"""Facts about circles turned into conditions: equal radii, tangents at right angles to them, diameters."""

from collections.abc import Iterator
from itertools import combinations

from paperaudit.geometry.figure import HIDDEN, Condition, EqualLengths, InLine, OnCircle, Ordered, TangentAt, length
from paperaudit.model.fact import Circle, Diameter, Given, Path, Tangent


def circle_conditions(givens: tuple[Given, ...]) -> Iterator[Condition]:
    """The conditions of every circle of a question, those of one circle together.

    A circle whose centre has no letter is the only one that has, where there is just one; else its
    centre gets a hidden name.
    """
    facts = [(fact, label) for label, given in enumerate(givens) for fact in given.facts]
    named = {fact.centre for fact, _ in facts if isinstance(fact, Circle | Tangent | Diameter) and fact.centre}
    unnamed = next(iter(named)) if len(named) == 1 else HIDDEN
    members: dict[str, dict[str, int]] = {}
    for fact, label in facts:
        if isinstance(fact, Circle):
            on = members.setdefault(fact.centre or unnamed, {})
            for point in fact.points:
                on.setdefault(point, label)
    for centre, on in members.items():
        yield from _radii(centre, on)
    for fact, label in facts:
        if isinstance(fact, Tangent):
            yield TangentAt(fact.path, fact.at, fact.centre or unnamed, label)
        elif isinstance(fact, Diameter):
            yield from _diameter(fact.path, fact.centre or unnamed, label)


def _radii(centre: str, on: dict[str, int]) -> Iterator[Condition]:
    if on:
        yield OnCircle(centre, tuple(on), tuple(on.values()), min(on.values()))
    for (one, first), (two, second) in combinations(on.items(), 2):
        yield EqualLengths(length(centre, one), length(centre, two), max(first, second), "radii")


def _diameter(path: Path, centre: str, label: int) -> Iterator[Condition]:
    yield InLine((path[0], centre, path[1]), label)
    yield Ordered(path[0], centre, path[1], label)
