"""Claims about circles: that points are on one, that a line is a tangent, that a chord is a diameter."""

import math
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from itertools import combinations

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import HIDDEN, OnCircle
from paperaudit.geometry.figure.incidence import Unclear
from paperaudit.geometry.figure.plane import circumcentre, side
from paperaudit.geometry.theorems.circles import circles, over_chord, seen
from paperaudit.geometry.theorems.tangents import TangentLine, alternate, line_name
from paperaudit.geometry.theorems.theorem import (
    Concyclic,
    IsDiameter,
    Predicate,
    Touches,
    concyclic,
    is_diameter,
    segments_equal,
)
from paperaudit.model.expression import Expression, Number, Sum
from paperaudit.model.fact import Circle, Diameter, Fact, Given, Origin, Tangent
from paperaudit.model.quantity import centre_of_circle

CirclePredicate = Concyclic | IsDiameter | Touches
Pair = tuple[Expression, Expression]

_RIGHT, _HALF_TURN = Number(Fraction(90)), Number(Fraction(180))


def circle_claims(fact: Circle | Diameter | Tangent, arrangement: Arrangement) -> Iterator[Predicate]:
    """What has to be shown for a fact about a circle; raises Unclear where it is not said which circle."""
    match fact:
        case Circle(centre, points):
            yield from _on_circle(centre, points, arrangement)
        case Diameter((start, end), centre):
            yield is_diameter(_circle(arrangement, centre, (start, end)).centre, start, end)
        case Tangent(path, at, centre):
            line = arrangement.figure.line_of(*path)
            yield Touches(line, at, _circle(arrangement, centre, (at,)).key)


def _on_circle(centre: str, points: tuple[str, ...], arrangement: Arrangement) -> Iterator[Predicate]:
    """The points that are not known to be on a circle yet are as far from its centre, or on one with three others."""
    known = [circle for circle in circles(arrangement) if not centre or centre in (circle.centre, circle.key)]
    if centre:
        middle = centre_of_circle(centre)
        on = next((circle.points for circle in known), points[:1])
        yield from (segments_equal((middle, point), (middle, on[0])) for point in points if point not in on)
        return
    if any(set(points) <= set(circle.points) for circle in known):
        return
    fitting = max(known, key=lambda circle: len(set(circle.points) & set(points)), default=None)
    shared = [point for point in points if fitting and point in fitting.points]
    three = tuple(shared[:3])
    if len(three) < 3 and len(points) > 3:
        three = points[:3]
    elif len(three) < 3 and fitting and len(known) == 1:
        three = fitting.points[:3]
    if len(three) < 3:
        return
    yield from (concyclic((*three, point)) for point in points if point not in three)


def _circle(arrangement: Arrangement, centre: str, points: tuple[str, ...]) -> OnCircle:
    known = [circle for circle in circles(arrangement) if not centre or centre in (circle.centre, circle.key)]
    through = [circle for circle in known if set(points) <= set(circle.points)]
    if len(through) != 1:
        raise Unclear("the claim does not say of which circle")
    return through[0]


def with_claimed_circle(
    givens: tuple[Given, ...], claims: tuple[Fact, ...]
) -> tuple[tuple[Given, ...], tuple[Fact, ...]]:
    """The givens with the circle through three points that a claim of a tangent is the first to speak of, named."""
    known = [fact for given in givens for fact in given.facts if isinstance(fact, Circle)]
    spoken = next((fact for fact in claims if isinstance(fact, Circle) and len(fact.points) == 3), None)
    if spoken is None or spoken.centre or any(set(spoken.points) <= set(fact.points) for fact in known):
        return givens, claims
    circle = Circle(HIDDEN + "".join(spoken.points), spoken.points)
    about = [
        replace(fact, centre=circle.centre) if isinstance(fact, Tangent | Diameter) else fact
        for fact in claims
        if fact != spoken
    ]
    given = Given(f"circle through {', '.join(circle.points)}", (circle,), Origin.CONVENTION)
    return ((*givens, given), tuple(about)) if about else (givens, claims)


def circle_gap(predicate: CirclePredicate, arrangement: Arrangement) -> float:
    """How far a drawing is from a claim about a circle, as a share of its radius or of a right angle."""
    at = arrangement.at
    match predicate:
        case Concyclic(points):
            trio = max(combinations(points, 3), key=lambda three: abs(side(*(at[point] for point in three))))
            (fourth,) = set(points) - set(trio)
            middle = circumcentre(*(at[point] for point in trio))
            radius = math.dist(middle, at[trio[0]])
            return abs(math.dist(middle, at[fourth]) - radius) / radius
        case IsDiameter(centre, start, end):
            (x, y), (p, q), (r, s) = at[centre], at[start], at[end]
            return math.hypot(2 * x - p - r, 2 * y - q - s) / math.dist(at[start], at[end])
        case Touches(line, point, centre):
            turn = arrangement.bearings[line] - arrangement.bearing(centre, point)
            return abs(math.cos(math.radians(turn)))


def circle_pairs(predicate: object, arrangement: Arrangement) -> Iterator[Pair]:
    """Sizes that are equal where a claim about a circle holds, those with drawn arms only."""
    match predicate:
        case Concyclic(points):
            for start, end in combinations(points, 2):
                eyes = tuple(point for point in points if point not in (start, end))
                for (_, here), (_, there), same in over_chord(arrangement, start, end, eyes):
                    yield (here, there) if same else (Sum((here, there)), _HALF_TURN)
        case IsDiameter(centre, start, end):
            around = (one for name, one in arrangement.rounds.items() if centre_of_circle(name) == centre)
            for eye in next(one for one in around if start in one.labels).points:
                angle = None if eye in (start, end) else seen(arrangement, start, eye, end)
                if angle:
                    yield angle, _RIGHT
        case Touches(line, at, centre):
            ray = next(ray for ray in arrangement.rays[at] if ray.line == line)
            upright = seen(arrangement, ray.points[0], at, centre_of_circle(centre))
            if upright:
                yield upright, _RIGHT
            circle = _circle(arrangement, centre, (at,))
            tangent = TangentLine(line, at, predicate, line_name(arrangement, line, at))
            for relation, _, _ in alternate(arrangement, circle, tangent, ray):
                outside, inside = relation.terms
                yield outside, inside


def off_circle(predicate: CirclePredicate, arrangement: Arrangement) -> list[Expression]:
    """The angles that show best that a claim about a circle fails in a drawing; empty where none is drawn."""
    pairs = list(circle_pairs(predicate, arrangement))
    if not pairs:
        return []
    worst = max(pairs, key=lambda pair: abs(arrangement.measured(pair[0]) - arrangement.measured(pair[1])))
    return [size for size in worst if not isinstance(size, Number)]
