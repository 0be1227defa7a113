"""Angles of lines that cut or touch a circle, by the arcs that they cut off: crossing inside, meeting outside."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations

from paperaudit.geometry.coordinates.arrangement import Arrangement, Ray
from paperaudit.geometry.coordinates.circle_order import Round
from paperaudit.geometry.figure.figure import OnCircle
from paperaudit.geometry.theorems.arcs import SKILL, arc_text, half_of, with_arcs
from paperaudit.geometry.theorems.circles import on_circle, together
from paperaudit.geometry.theorems.tangents import tangent_rays, tangents
from paperaudit.geometry.theorems.theorem import Instance, Predicate, Theorem
from paperaudit.model.expression import ArcOf


def _tangent_chord(arrangement: Arrangement) -> Iterator[Instance]:
    """The angle between a tangent and a chord is half the arc inside it."""
    for circle, order in with_arcs(arrangement):
        for tangent in tangents(arrangement, circle):
            for ray in tangent_rays(arrangement, tangent) if tangent.at in order.points else ():
                for far in order.points:
                    if far == tangent.at or not arrangement.joined(tangent.at, far):
                        continue
                    chord = arrangement.ray(tangent.at, far)
                    left = arrangement.turn(tangent.at, far, ray.points[0]) > 0
                    size = order.arc(far, tangent.at) if left else order.arc(tangent.at, far)
                    angle = arrangement.between(chord, ray)
                    premises = together((tangent.premise,), on_circle(circle, far))
                    about = arc_text(arrangement, size)
                    yield Instance("tangent-chord-arc", premises, half_of(angle, (size, 1)), None, about)


@dataclass(frozen=True, slots=True)
class _Leg:
    """A ray that reaches a circle: where first and where last, the same point for a tangent."""

    ray: Ray
    near: str
    far: str
    premises: tuple[Predicate, ...]


def _inside(arrangement: Arrangement) -> Iterator[Instance]:
    """Two chords that cross make an angle of half the sum of the arcs that it and its opposite angle cut off."""
    for circle, order in with_arcs(arrangement):
        chords = [pair for pair in combinations(order.points, 2) if arrangement.joined(*pair)]
        for (a, b), (c, d) in combinations(chords, 2):
            if {a, b} & {c, d} or (c in order.inside(a, b)) == (d in order.inside(a, b)):
                continue
            meet = arrangement.meet(arrangement.ray(a, b).line, arrangement.ray(c, d).line)
            if meet is None or meet in (a, b, c, d):
                continue
            premises = on_circle(circle, a, b, c, d)
            for one, two, three, four in ((a, c, b, d), (c, b, d, a)):
                ends = (one, two, three, four) if two in order.inside(one, three) else (two, one, four, three)
                arcs = (order.arc(ends[0], ends[1]), order.arc(ends[2], ends[3]))
                angle = arrangement.corner(one, meet, two)
                about = _about(arrangement, *arcs)
                relation = half_of(angle, (arcs[0], 1), (arcs[1], 1))
                yield Instance("chords-angle", premises, relation, None, about, 12)


def _legs(arrangement: Arrangement, circle: OnCircle, order: Round, point: str) -> Iterator[_Leg]:
    """The rays from a point outside that cut the circle twice in named points, or touch it."""
    touching = {tangent.line: tangent for tangent in tangents(arrangement, circle)}
    for ray in arrangement.rays[point]:
        on = [other for other in ray.points if other in order.points]
        tangent = touching.get(ray.line)
        if len(on) == 2 and tangent is None:
            yield _Leg(ray, on[0], on[1], on_circle(circle, *on))
        elif tangent and tangent.at in on:
            yield _Leg(ray, tangent.at, tangent.at, (tangent.premise,))


def _outside(arrangement: Arrangement) -> Iterator[Instance]:
    """Two secants or tangents that meet outside make an angle of half the difference of the arcs between them."""
    for circle, order in with_arcs(arrangement):
        for point in arrangement.figure.points:
            if point in order.points or point == circle.centre:
                continue
            for one, two in combinations(_legs(arrangement, circle, order, point), 2):
                first, last = (one, two) if arrangement.turn(point, one.far, two.far) > 0 else (two, one)
                far, near = order.arc(first.far, last.far), order.arc(last.near, first.near)
                angle = arrangement.between(one.ray, two.ray)
                premises = together(one.premises, two.premises)
                about = _about(arrangement, far, near)
                yield Instance(_name(one, two), premises, half_of(angle, (far, 1), (near, -1)), None, about, 12)


def _name(one: _Leg, two: _Leg) -> str:
    touching = (one.near == one.far) + (two.near == two.far)
    return ("secants-angle", "secant-tangent-angle", "tangents-angle")[touching]


def _about(arrangement: Arrangement, *arcs: ArcOf) -> str:
    return " and ".join(arc_text(arrangement, size) for size in arcs)


_TOUCHED = ("circle with centre O through T, A and B", "PT is a tangent to the circle at T", "arc TA = 80°")
_CROSSED = ("circle through A, B, C and D", "AC and BD intersect at E", "arc AB = 80°")
_PLAIN = ("circle through A, B, C and D", "AC and BD intersect at E")
_SECANTS = ("circle through A, B, C and D", "P-A-B", "P-C-D")
_TANGENT = ("circle through T, A and B", "PT is a tangent to the circle at T", "P-A-B")
_TANGENTS = ("circle through A, B and C", "PA and PB are tangents to the circle at A and B")

THEOREMS = (
    Theorem(
        "tangent-chord-arc",
        "The angle between a tangent and a chord is half the arc inside it.",
        SKILL,
        "Euclid III.32 with III.20",
        _tangent_chord,
        fires=(*_TOUCHED, "segment TA"),
        silent=_TOUCHED,
    ),
    Theorem(
        "chords-angle",
        "The angle of two crossing chords is half the sum of the arcs that it and its opposite angle cut off.",
        SKILL,
        "Euclid I.32 with III.20",
        _inside,
        fires=_CROSSED,
        silent=_PLAIN,
    ),
    Theorem(
        "secants-angle",
        "The angle of two secants that meet outside a circle is half the difference of the arcs between them.",
        SKILL,
        "Euclid I.32 with III.20",
        _outside,
        fires=(*_SECANTS, "arc BD = 100°"),
        silent=_SECANTS,
    ),
    Theorem(
        "secant-tangent-angle",
        "The angle of a secant and a tangent is half the difference of the arcs between them.",
        SKILL,
        "Euclid I.32 with III.32",
        _outside,
        fires=(*_TANGENT, "arc TB = 150°"),
        silent=_TANGENT,
    ),
    Theorem(
        "tangents-angle",
        "The angle of two tangents is half the difference of the arcs between their points of contact.",
        SKILL,
        "Euclid I.32 with III.32",
        _outside,
        fires=(*_TANGENTS, "arc AB = 100°"),
        silent=_TANGENTS,
    ),
)
