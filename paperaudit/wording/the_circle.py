"""Brings statements about "the circle" together: all of a question's mean one circle."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from paperaudit.model.fact import Circle, Diameter, Fact, Tangent

THE_CIRCLE = "the circle"
"""Stands for the centre while statements are read; `Known.settled` puts the letter there, or ""."""


def together(facts: Sequence[Fact]) -> tuple[Fact, ...]:
    """The facts of one clause, each once, and one fact for all points that it puts on the same circle."""
    points: dict[str, dict[str, None]] = {}
    for fact in facts:
        if isinstance(fact, Circle):
            points.setdefault(fact.centre, {}).update(dict.fromkeys(fact.points))
    whole = (
        replace(fact, points=tuple(points[fact.centre])) if isinstance(fact, Circle) and fact.centre else fact
        for fact in facts
    )
    return tuple(dict.fromkeys(whole))


class Known:
    """What the statements of a question say of its circles, taken together.

    "O is the centre of the circle" gives a centre to every other statement about the circle. A circle
    that a cyclic quadrilateral or concyclic points lie on is the question's circle if it is the first one
    and no corner is a centre or the outer end of a tangent.
    """

    def __init__(self, facts: Iterable[Fact]) -> None:
        round_facts = [fact for fact in facts if isinstance(fact, Circle | Tangent | Diameter)]
        self.centres = tuple(dict.fromkeys(fact.centre for fact in round_facts if fact.centre not in ("", THE_CIRCLE)))
        self.centre = self.centres[0] if len(self.centres) == 1 else ""
        off = {end for fact in round_facts if isinstance(fact, Tangent) for end in fact.path if end != fact.at}
        alone = [fact for fact in round_facts if isinstance(fact, Circle) and not fact.centre]
        self._first = next(iter(alone), None)
        if self._first is not None and not off.union(self.centres).isdisjoint(self._first.points):
            self._first = None
        self._named: list[str] = []

    def leaves_open(self, facts: Sequence[Fact]) -> bool:
        """Whether facts are about "the circle" of a question that has several."""
        round_facts = (fact for fact in facts if isinstance(fact, Circle | Tangent | Diameter))
        return len(self.centres) > 1 and any(fact.centre == THE_CIRCLE for fact in round_facts)

    def settled(self, facts: Sequence[Fact]) -> tuple[Fact, ...]:
        """The facts of the next statement with the letter of the centre, where there is one.

        Without one, each statement about the circle tells of the points that were put on it before and
        of its own, so that it stands alone; one that adds no point is left out.
        """
        return tuple(dict.fromkeys(self._settled(facts, self._first)))

    def claimed(self, facts: Sequence[Fact]) -> tuple[Fact, ...]:
        """The facts of a claim: concyclic points are the claim's own circle."""
        return tuple(dict.fromkeys(self._settled(facts, None)))

    def _settled(self, facts: Sequence[Fact], same: Circle | None) -> Iterator[Fact]:
        for fact in facts:
            if not isinstance(fact, Circle | Tangent | Diameter) or (fact.centre != THE_CIRCLE and fact != same):
                yield fact
            elif not isinstance(fact, Circle) or self.centre:
                yield replace(fact, centre=self.centre)
            elif new := [point for point in fact.points if point not in self._named]:
                self._named.extend(new)
                yield Circle("", tuple(self._named))
