"""Puts a centroid on the medians that a question names: where D is the midpoint of BC, G lies on AD."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from paperaudit.model.fact import Centre, Collinear, Crossing, Fact, Given, Midpoint


def with_centroids(givens: Sequence[Given]) -> list[Given]:
    """The givens, each statement on a centroid followed by the medians that go through it.

    >>> centre = Given("G is the centroid of △ABC", (Centre("centroid", "G", ("A", "B", "C")),))
    >>> with_centroids([centre, Given("D is the midpoint of BC", (Midpoint("D", ("B", "C")),))])[0].facts[1]
    Collinear(points=('A', 'G', 'D'), ordered=True)
    """
    facts = [fact for given in givens for fact in given.facts]
    return [
        replace(given, facts=given.facts + added) if (added := tuple(_medians(given.facts, facts))) else given
        for given in givens
    ]


def _medians(stated: Sequence[Fact], facts: Sequence[Fact]) -> Iterator[Fact]:
    for centre in stated:
        if not isinstance(centre, Centre) or centre.kind != "centroid":
            continue
        for middle in facts:
            if not isinstance(middle, Midpoint) or not set(middle.path) < set(centre.polygon):
                continue
            (apex,) = set(centre.polygon) - set(middle.path)
            if not any(_says(fact, {apex, centre.point, middle.point}) for fact in facts):
                yield Collinear((apex, centre.point, middle.point))


def _says(fact: Fact, points: set[str]) -> bool:
    """Whether a fact puts three points on one line already."""
    match fact:
        case Collinear(on):
            return points <= set(on)
        case Crossing(first, second, point):
            return any(points <= {*path, point} for path in (first, second))
    return False
