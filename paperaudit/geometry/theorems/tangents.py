"""Tangents: at right angles to the radius, equal from one point, and the angle that they make with a chord."""

from collections.abc import Iterator
from itertools import combinations

from paperaudit.geometry.arrangement import Arrangement
from paperaudit.geometry.figure import OnCircle, TangentAt
from paperaudit.geometry.theorems.circles import SKILL, circles, on_circle, same_side, seen
from paperaudit.geometry.theorems.points import difference, total
from paperaudit.geometry.theorems.theorem import Instance, Stated, Theorem, segments_equal
from paperaudit.maths.linear import LinearForm


def tangents(arrangement: Arrangement, circle: OnCircle) -> Iterator[TangentAt]:
    """The tangents of a circle."""
    for condition in arrangement.figure.conditions:
        if isinstance(condition, TangentAt) and condition.centre == circle.centre:
            yield condition


def _tangent_rays(arrangement: Arrangement, tangent: TangentAt) -> list[str]:
    """The nearest point on each side of the point of contact along the tangent."""
    line = arrangement.figure.line_of(*tangent.path)
    return [ray.points[0] for ray in arrangement.rays[tangent.at] if ray.line == line]


def _tangent_radius(arrangement: Arrangement) -> Iterator[Instance]:
    for circle in circles(arrangement):
        for tangent in tangents(arrangement, circle):
            for point in _tangent_rays(arrangement, tangent):
                angle = seen(arrangement, point, tangent.at, circle.centre)
                if angle:
                    stated = (Stated(tangent.label),)
                    about = f"{circle.centre}{tangent.at} ⊥ {''.join(tangent.path)}"
                    yield Instance("tangent-radius", stated, total((angle,), 90), about=about)


def _tangent_chord(arrangement: Arrangement) -> Iterator[Instance]:
    for circle in circles(arrangement):
        for tangent in tangents(arrangement, circle):
            for point in _tangent_rays(arrangement, tangent):
                for far in circle.points:
                    outside = None if far == tangent.at else seen(arrangement, point, tangent.at, far)
                    if outside is None:
                        continue
                    for eye in circle.points:
                        inside = None if eye in (far, tangent.at) else seen(arrangement, tangent.at, eye, far)
                        if inside is None or same_side(arrangement, eye, point, tangent.at, far):
                            continue
                        premises = tuple(dict.fromkeys((Stated(tangent.label), *on_circle(circle, far, eye))))
                        about = f"tangent {''.join(tangent.path)}, chord {tangent.at}{far}"
                        yield Instance("tangent-chord", premises, difference(outside, inside), about=about)


def _two_tangents(arrangement: Arrangement) -> Iterator[Instance]:
    for circle in circles(arrangement):
        for one, two in combinations(tangents(arrangement, circle), 2):
            lines = (arrangement.figure.line_of(*one.path), arrangement.figure.line_of(*two.path))
            meet = arrangement.meet(*lines) if lines[0] != lines[1] else None
            if meet is None or meet in (one.at, two.at):
                continue
            premises = (Stated(one.label), Stated(two.label))
            equal = segments_equal((meet, one.at), (meet, two.at))
            yield Instance("tangents-from-point", premises, LinearForm(), equal, f"from {meet}")


THEOREMS = (
    Theorem(
        "tangent-radius",
        "A tangent meets the radius at 90°.",
        SKILL,
        "Euclid III.18",
        _tangent_radius,
        fires=("circle with centre O through T", "PT is a tangent to the circle at T", "segment OT"),
        silent=("triangle ABC",),
    ),
    Theorem(
        "tangent-chord",
        "The angle between a tangent and a chord equals the angle in the alternate segment.",
        SKILL,
        "Euclid III.32",
        _tangent_chord,
        fires=("circle with centre O through T, A and B", "PT is a tangent to the circle at T", "triangle TAB"),
        silent=("triangle ABC",),
    ),
    Theorem(
        "tangents-from-point",
        "Tangents from a point to a circle are equal.",
        SKILL,
        "Euclid III.36, corollary",
        _two_tangents,
        fires=("PA and PB are tangents to the circle at A and B",),
        silent=("triangle ABC",),
    ),
)
