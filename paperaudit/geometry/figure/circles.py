"""Facts about circles turned into conditions: equal radii, tangents at right angles to them, diameters, touching."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import combinations, pairwise

from paperaudit.geometry.figure.figure import (
    HIDDEN,
    Balance,
    Condition,
    EqualLengths,
    InLine,
    OnCircle,
    Ordered,
    SameWay,
    SideOfLine,
    Size,
    SizeRelation,
    TangentAt,
    length,
)
from paperaudit.geometry.figure.incidence import Unclear
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import (
    ArcLengthOf,
    ArcOf,
    CircleSize,
    Expression,
    Negative,
    Number,
    Power,
    SectorOf,
    SegmentOf,
    Sum,
    leaves,
)
from paperaudit.model.fact import Circle, CirclesTouch, Diameter, Fact, Given, Holds, Incircle, OnArc, Path, Tangent
from paperaudit.model.quantity import centre_of_circle

Members = dict[str, dict[str, int]]
"""Every circle's points by its centre, each with the label of the given that puts it there."""

_TWO = Number(Fraction(2))


@dataclass(frozen=True, slots=True)
class KnownCircles:
    """The circles of a question. `unnamed` is the centre of the one that is spoken of without naming it.

    That is the only circle with a letter for its centre, where there is just one; else a hidden name.
    """

    unnamed: str
    members: Members

    def arc(self, arc: ArcOf) -> ArcOf:
        """The arc with its centre named; raises Unclear where its circle is not the only one through its ends."""
        if arc.centre:
            return arc
        ends = {point for point in (arc.start, arc.end, arc.through) if point}
        through = [centre for centre, points in self.members.items() if ends <= points.keys()]
        if len(through) > 1 or (not through and len(self.members) > 1):
            raise Unclear(f"arc {arc.start}{arc.end} could be of more than one circle")
        return replace(arc, centre=through[0] if through else self.unnamed)

    def named(self, size: Expression) -> Expression:
        """A size of a circle with its centre named; other expressions as they are. Raises Unclear."""
        match size:
            case ArcOf():
                return self.arc(size)
            case ArcLengthOf(arc):
                return ArcLengthOf(self.arc(arc))
            case SectorOf(kind, arc):
                return SectorOf(kind, self.arc(arc))
            case SegmentOf(kind, arc):
                return SegmentOf(kind, self.arc(arc))
            case CircleSize(kind, centre):
                if not centre and len(self.members) > 1:
                    raise Unclear(f"the {kind} could be of more than one circle")
                return CircleSize(kind, centre or self.unnamed)
        return size

    def rim(self, centre: str) -> str:
        """A point on a circle from which its radius is measured; a hidden one where none is named."""
        return next(iter(self.members.get(centre, ())), HIDDEN + (centre or HIDDEN))


def known_circles(givens: tuple[Given, ...], asked: tuple[Expression, ...] = ()) -> KnownCircles:
    """The circles that the givens and the ask are about, with every point that is said to be on one."""
    facts = [(fact, label) for label, given in enumerate(givens) for fact in given.facts]
    named = {centre for fact, _ in facts for centre in _centres(fact)}
    sizes = [leaf for fact, _ in facts if isinstance(fact, Holds) for leaf in _sizes(fact)]
    sizes += _of_circles(asked)
    named |= {centre for size in sizes if (centre := _centre_of(size))}
    lettered = {centre for centre in named if not centre.startswith(HIDDEN)}
    unnamed = next(iter(lettered)) if len(lettered) == 1 else HIDDEN
    members: Members = {}
    for fact, label in facts:
        if isinstance(fact, Circle | Incircle):
            on = members.setdefault(fact.centre or unnamed, {})
            for point in fact.points if isinstance(fact, Circle) else ():
                on.setdefault(point, label)
        elif isinstance(fact, CirclesTouch) and fact.at:
            for centre in (fact.first, fact.second):
                members.setdefault(centre, {}).setdefault(fact.at, label)
    known = KnownCircles(unnamed, members)
    for fact, label in facts:
        if isinstance(fact, OnArc | Holds):
            for arc, further in _arcs(fact):
                on = members.setdefault(known.arc(arc).centre, {})
                for point in (arc.start, arc.end, arc.through, *further):
                    if point:
                        on.setdefault(point, label)
    measured = [size.centre or unnamed for size in sizes if isinstance(size, CircleSize)]
    measured += [name for fact, _ in facts if isinstance(fact, CirclesTouch) for name in (fact.first, fact.second)]
    for centre in measured:
        on = members.setdefault(centre, {})
        if not on:
            on[known.rim(centre)] = 0
    return known


def circle_conditions(givens: tuple[Given, ...], known: KnownCircles) -> Iterator[Condition]:
    """The conditions of every circle of a question, those of one circle together."""
    for centre, on in known.members.items():
        yield from _radii(centre, on)
    halved = [set(fact.path) for given in givens for fact in given.facts if isinstance(fact, Diameter)]
    for label, given in enumerate(givens):
        for fact in given.facts:
            match fact:
                case Tangent(path, at, centre):
                    circle = centre or known.unnamed
                    yield TangentAt(path, at, centre_of_circle(circle), label, _own_name(circle))
                case Diameter(path, centre):
                    yield from _diameter(path, centre_of_circle(centre or known.unnamed), label)
                case CirclesTouch():
                    yield from _touching(fact, known, label)
                case OnArc(points, arc) if {arc.start, arc.end} in halved and not arc.through:
                    # Either half of the circle is an arc over its diameter.
                    for pair in pairwise(points):
                        yield SideOfLine(*pair, (arc.start, arc.end), True, label)
                case OnArc(points, arc):
                    for point in points:
                        around = known.arc(arc)
                        yield from _on_arc(point, replace(around, centre=centre_of_circle(around.centre)), label)


def _centres(fact: Fact) -> tuple[str, ...]:
    match fact:
        case Circle(centre) | Tangent(centre=centre) | Diameter(centre=centre) | Incircle(centre):
            return (centre,) if centre else ()
        case CirclesTouch(first, second):
            return first, second
        case OnArc(arc=arc):
            return (arc.centre,) if arc.centre else ()
    return ()


def _sizes(fact: Holds) -> list[Expression]:
    return _of_circles((fact.relation.left, fact.relation.right))


def _of_circles(expressions: tuple[Expression, ...]) -> list[Expression]:
    return [
        leaf
        for side in expressions
        for leaf in leaves(side)
        if isinstance(leaf, ArcOf | ArcLengthOf | SectorOf | SegmentOf | CircleSize)
    ]


def _arc_of(size: Expression) -> ArcOf | None:
    match size:
        case ArcOf():
            return size
        case ArcLengthOf(arc) | SectorOf(arc=arc) | SegmentOf(arc=arc):
            return arc
    return None


def _centre_of(size: Expression) -> str:
    arc = _arc_of(size)
    return arc.centre if arc else size.centre if isinstance(size, CircleSize) else ""


def _arcs(fact: OnArc | Holds) -> list[tuple[ArcOf, tuple[str, ...]]]:
    """The arcs that a fact is about, each with the points that it puts on it."""
    if isinstance(fact, OnArc):
        return [(fact.arc, fact.points)]
    return [(arc, ()) for size in _sizes(fact) if (arc := _arc_of(size))]


def _radii(centre: str, on: dict[str, int]) -> Iterator[Condition]:
    middle = centre_of_circle(centre)
    if on:
        yield OnCircle(middle, tuple(on), tuple(on.values()), min(on.values()), _own_name(centre))
    for (one, first), (two, second) in combinations(on.items(), 2):
        yield EqualLengths(length(middle, one), length(middle, two), max(first, second), "radii")


def _own_name(circle: str) -> str:
    """The name of a circle that is one of several about its centre, "" for another one."""
    return circle if centre_of_circle(circle) != circle else ""


def _diameter(path: Path, centre: str, label: int) -> Iterator[Condition]:
    yield InLine((path[0], centre, path[1]), label)
    yield Ordered(path[0], centre, path[1], label)


def _touching(fact: CirclesTouch, known: KnownCircles, label: int) -> Iterator[Condition]:
    """Centres and the point of touching in line: between them from outside, beyond both from inside."""
    one, two = fact.first, fact.second
    radii = (length(one, known.rim(one)), length(two, known.rim(two)))
    if fact.at and not fact.inside:
        yield Ordered(one, fact.at, two, label)
    elif fact.at and fact.inside == "second in first":
        yield Ordered(one, two, fact.at, label)
    elif fact.at:
        yield InLine((one, two, fact.at), label)
        yield SameWay((fact.at, one), (fact.at, two), label)
    elif not fact.inside:
        yield _linear({length(one, two): 1, radii[0]: -1, radii[1]: -1}, label)
    elif fact.inside == "second in first":
        yield _linear({length(one, two): 1, radii[0]: -1, radii[1]: 1}, label)
    else:
        apart = Sum((radii[0], Negative(radii[1])))
        yield Balance(Power(length(one, two), _TWO), Power(apart, _TWO), label)


def _linear(terms: dict[Size, int], label: int) -> SizeRelation:
    return SizeRelation(LinearForm({size: Fraction(value) for size, value in terms.items()}), "length", label)


def _on_arc(point: str, arc: ArcOf, label: int) -> Iterator[Condition]:
    """A point of an arc lies beyond its chord from the centre, of the major arc on the centre's own side."""
    chord = (arc.start, arc.end)
    if arc.through and arc.through != point:
        yield SideOfLine(point, arc.through, chord, True, label)
    elif not arc.through:
        yield SideOfLine(point, arc.centre, chord, arc.major, label, convention=not arc.major)
