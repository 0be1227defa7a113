"""Brings statements about "the circle" together: all of a question's mean one circle."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from paperaudit.maths.round_sizes import CIRCLE_IN, CIRCLE_ROUND, LARGER, SMALLER
from paperaudit.model.expression import CircleSize, Expression, leaves
from paperaudit.model.fact import Centre, Circle, CirclesTouch, Diameter, Fact, Holds, Incircle, Tangent
from paperaudit.model.quantity import AMONG
from paperaudit.wording.circle_sizes import HIDDEN_CENTRE, leaves_open, ring_names, sized
from paperaudit.wording.contacts import Contact, contact_of, is_open

THE_CIRCLE = "the circle"
"""Stands for the centre while statements are read; `Known.settled` puts the letter there, or ""."""
UNLETTERED = "⊙"
"""Begins the name of a centre that no letter of the paper stands for, where a question has other circles too."""

_Of = Circle | Tangent | Diameter | Incircle
"""The facts that are about one circle, named by its centre."""


def circle_in(polygon: Sequence[str]) -> str:
    """Stands for the centre of a polygon's incircle while statements are read."""
    return CIRCLE_IN + " ".join(polygon)


def circle_round(polygon: Sequence[str]) -> str:
    """Stands for the centre of a polygon's circumcircle while statements are read."""
    return CIRCLE_ROUND + " ".join(polygon)


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
    and no corner is a centre or the outer end of a tangent; each other one is a circle of its own.
    """

    def __init__(self, facts: Iterable[Fact], used: str | None = None) -> None:
        facts = list(facts)
        round_facts = [fact for fact in facts if isinstance(fact, _Of)]
        named = [fact.centre for fact in round_facts]
        for touching in facts:
            if isinstance(touching, CirclesTouch):
                named += [touching.first, touching.second]
        named += [
            leaf.centre
            for fact in facts
            if isinstance(fact, Holds)
            for side in (fact.relation.left, fact.relation.right)
            for leaf in leaves(side)
            if isinstance(leaf, CircleSize)
        ]
        self.centres = tuple(dict.fromkeys(name for name in named if name.isupper()))
        self.centre = self.centres[0] if len(self.centres) == 1 else ""
        off = {end for fact in round_facts if isinstance(fact, Tangent) for end in fact.path if end != fact.at}
        self._alone = [fact for fact in round_facts if isinstance(fact, Circle) and not fact.centre]
        self._first = next(iter(self._alone), None)
        if self._first is not None and not off.union(self.centres).isdisjoint(self._first.points):
            self._first = None
        self._named: list[str] = []
        self._rings = ring_names(facts, self.centres, used)
        self._others = self._unlettered(named, facts) | self._rings
        self._contacts = self._touched(facts, used)

    def _unlettered(self, named: list[str], facts: list[Fact]) -> dict[str, str]:
        """The centre of each incircle and circumcircle that is named by its polygon: a letter, "", or a name for it."""
        wanted = list(dict.fromkeys(name for name in named if name.startswith((CIRCLE_IN, CIRCLE_ROUND))))
        found = {name: _letter_of(name, facts) for name in wanted}
        alone = len(wanted) == 1 and not self.centres and not self._alone
        for name, letter in found.items():
            if not letter and not alone:
                found[name] = UNLETTERED + ("I" if name.startswith(CIRCLE_IN) else "") + "".join(name.split()[1:])
        return found

    def _touched(self, facts: list[Fact], used: str | None) -> dict[Fact, Contact]:
        """Where tangents touch that are named without it, where the rest of the question settles that."""
        tangents = [fact for fact in facts if is_open(fact)]
        if not tangents:
            return {}
        on: dict[str, set[str]] = {}
        for fact in facts:
            if isinstance(fact, Circle):
                on.setdefault(self._name_of(fact.centre), set()).update(fact.points)
        found: dict[Fact, Contact] = {}
        for fact in dict.fromkeys(tangents):
            assert isinstance(fact, Tangent)
            letters = (used or "") + "".join(contact.at for contact in found.values())
            contact = contact_of(replace(fact, centre=self._name_of(fact.centre)), facts, on, letters)
            if contact is not None:
                found[fact] = contact
        return found

    def _name_of(self, centre: str) -> str:
        """The letter of "the circle", the name of one of several."""
        return self._others.get(centre, self.centre if centre in (THE_CIRCLE, "") else centre)

    @property
    def new_letters(self) -> tuple[str, ...]:
        """What is to be said of points that have their letters from here: T is the point where AB touches."""
        new = {name.partition(AMONG)[0] for name in self._rings.values()} - {*self.centres, HIDDEN_CENTRE}
        return *(f"{centre} is the centre of both circles" for centre in new), *(
            f"{contact.at} is the point where {''.join(fact.path)} touches the circle"
            for fact, contact in self._contacts.items()
            if contact.is_new and isinstance(fact, Tangent)
        )

    @property
    def _several(self) -> bool:
        """Whether "the circle" could be one of several."""
        return len({*self.centres, *self._others.values()}) > 1

    def leaves_open(self, facts: Sequence[Fact]) -> bool:
        """Whether facts are about "the circle" of a question that has several, or its centre that has no letter."""
        round_facts = (fact for fact in facts if isinstance(fact, _Of))
        if any(map(self.is_untouched, facts)):
            return True
        meant = [fact.centre for fact in round_facts if not isinstance(fact, Circle) or fact.points]
        if self._several and THE_CIRCLE in meant:
            return True
        if any(self._is_unsettled(centre) for centre in meant):
            return True
        relations = (fact.relation for fact in facts if isinstance(fact, Holds))
        return any(self.leaves_size_open(side) for relation in relations for side in (relation.left, relation.right))

    def is_untouched(self, fact: Fact) -> bool:
        """Whether a fact is a tangent of which nothing says where it touches."""
        return is_open(fact) and fact not in self._contacts

    def leaves_size_open(self, expression: Expression) -> bool:
        """Whether a size is that of "the circle", or taken from its centre, and it is not clear which is meant."""
        sizes = [leaf.centre for leaf in leaves(expression) if isinstance(leaf, CircleSize)]
        return any(map(self._is_unsettled, sizes)) or leaves_open(expression, self.centres, self._several)

    def _is_unsettled(self, centre: str) -> bool:
        """Whether a circle is one of two about a centre, or "the larger circle", and not known by that."""
        shared = {name.partition(AMONG)[0] for name in self._rings.values()}
        return centre in shared or (centre in (LARGER, SMALLER) and centre not in self._rings)

    def size(self, expression: Expression) -> Expression:
        """The expression with the letter of the centre of each circle and sector."""
        return sized(expression, self.centres, self._others)

    def settled(self, facts: Sequence[Fact]) -> tuple[Fact, ...]:
        """The facts of the next statement with the letter of the centre, where there is one.

        Without one, each statement about the circle tells of the points that were put on it before and
        of its own, so that it stands alone; one that adds no point is left out.
        """
        return tuple(dict.fromkeys(self._settled(facts, self._first)))

    def claimed(self, facts: Sequence[Fact]) -> tuple[Fact, ...]:
        """The facts of a claim: concyclic points are the claim's own circle."""
        return tuple(dict.fromkeys(self._settled(facts, None, claim=True)))

    def _settled(self, facts: Sequence[Fact], same: Circle | None, claim: bool = False) -> Iterator[Fact]:
        for fact in facts:
            if isinstance(fact, Holds):
                relation = fact.relation
                yield Holds(replace(relation, left=self.size(relation.left), right=self.size(relation.right)))
            elif not isinstance(fact, _Of):
                yield fact
            elif isinstance(fact, Tangent) and fact in self._contacts:
                known = replace(fact, centre=self._name_of(fact.centre))
                yield from self._settled(tuple(self._contacts[fact].facts(known)), same, claim)
            elif fact.centre in self._others:
                yield replace(fact, centre=self._others[fact.centre])
            elif fact.centre != THE_CIRCLE and fact != same:
                yield fact if claim or fact.centre or not isinstance(fact, Circle) else self._own(fact)
            elif not isinstance(fact, Circle) or self.centre:
                yield replace(fact, centre=self.centre)
            elif new := [point for point in fact.points if point not in self._named]:
                self._named.extend(new)
                yield Circle("", tuple(self._named))

    def _own(self, fact: Circle) -> Circle:
        """A circle without a letter, apart from the question's other circles unless they share three points."""
        for other in self._alone:
            if len(set(other.points) & set(fact.points)) > 2:
                alone = len(self._alone) == 1 and not self.centres and not self._others and not self._named
                first = other is self._first or alone
                return replace(fact, centre=self.centre if first else UNLETTERED + "".join(other.points))
        return fact


def _letter_of(name: str, facts: list[Fact]) -> str:
    """The letter of the centre of an incircle or a circumcircle, "" where no statement gives one."""
    corners, inside = set(name.split()[1:]), name.startswith(CIRCLE_IN)
    for fact in facts:
        match fact:
            case Centre("incentre", point, polygon) if inside and set(polygon) == corners:
                return point
            case Incircle(centre, polygon) if inside and centre.isupper() and set(polygon) == corners:
                return centre
            case Centre("circumcentre", point, polygon) if not inside and set(polygon) == corners:
                return point
            case Circle(centre, points) if not inside and centre.isupper() and len(corners & set(points)) > 2:
                return centre
    return ""
