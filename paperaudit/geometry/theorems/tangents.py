"""Tangents: at right angles to the radius, equal from one point, and the angle that they make with a chord."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations

from paperaudit.geometry.coordinates.arrangement import Arrangement, Ray
from paperaudit.geometry.figure.figure import OnCircle, Size, TangentAt
from paperaudit.geometry.theorems.circles import SKILL, circles, on_circle, same_side, seen, together
from paperaudit.geometry.theorems.points import difference, total
from paperaudit.geometry.theorems.theorem import (
    Instance,
    Predicate,
    Stated,
    Theorem,
    Touches,
    segments_equal,
)
from paperaudit.maths.linear import LinearForm

RIGHT_ANGLE = 1e-6
"""Degrees by which a tangent of a drawing may differ from the perpendicular to its radius."""


@dataclass(frozen=True, slots=True)
class TangentLine:
    """A drawn line that touches a circle at a point, by what that is known, and the name of the line."""

    line: int
    at: str
    premise: Predicate
    name: str


def tangents(arrangement: Arrangement, circle: OnCircle) -> Iterator[TangentLine]:
    """The tangents of a circle: those that the paper states, and lines that touch it in the drawing."""
    figure = arrangement.figure
    stated = {}
    for condition in figure.conditions:
        if isinstance(condition, TangentAt) and condition.key == circle.key:
            line = figure.line_of(*condition.path)
            stated[line, condition.at] = TangentLine(
                line, condition.at, Stated(condition.label), "".join(condition.path)
            )
    yield from stated.values()
    for at in circle.points:
        for line in dict.fromkeys(ray.line for ray in arrangement.rays[at]):
            if (line, at) not in stated and touching(arrangement, circle, line, at):
                yield TangentLine(line, at, Touches(line, at, circle.key), line_name(arrangement, line, at))


def touching(arrangement: Arrangement, circle: OnCircle, line: int, at: str) -> bool:
    """Whether a line through a point of a circle touches it there in the drawing."""
    turn = arrangement.bearings[line] - arrangement.bearing(circle.centre, at)
    return abs(turn % 180 - 90) < RIGHT_ANGLE


def line_name(arrangement: Arrangement, line: int, at: str) -> str:
    """A line by the point `at` and its furthest other point."""
    points = arrangement.lines[line]
    return (points[0] if points[-1] == at else points[-1]) + at


def tangent_rays(arrangement: Arrangement, tangent: TangentLine) -> list[Ray]:
    """The two halves of a tangent, as far as they are drawn."""
    return [ray for ray in arrangement.rays[tangent.at] if ray.line == tangent.line]


def _tangent_radius(arrangement: Arrangement) -> Iterator[Instance]:
    for circle in circles(arrangement):
        for tangent in tangents(arrangement, circle):
            for ray in tangent_rays(arrangement, tangent):
                angle = seen(arrangement, ray.points[0], tangent.at, circle.centre)
                if angle:
                    about = f"{circle.centre}{tangent.at} ⊥ {tangent.name}"
                    yield Instance("tangent-radius", (tangent.premise,), total((angle,), 90), about=about)


def _tangent_chord(arrangement: Arrangement) -> Iterator[Instance]:
    for circle in circles(arrangement):
        for tangent in tangents(arrangement, circle):
            for ray in tangent_rays(arrangement, tangent):
                for relation, points, about in alternate(arrangement, circle, tangent, ray):
                    premises = together((tangent.premise,), on_circle(circle, *points))
                    yield Instance("tangent-chord", premises, relation, about=about)


def alternate(
    arrangement: Arrangement, circle: OnCircle, tangent: TangentLine, ray: Ray
) -> Iterator[tuple[LinearForm[Size], tuple[str, str], str]]:
    """That the angles between a tangent and its chords are those in the alternate segments, by which points."""
    for far in circle.points:
        outside = None if far == tangent.at else seen(arrangement, ray.points[0], tangent.at, far)
        if outside is None:
            continue
        for eye in circle.points:
            inside = None if eye in (far, tangent.at) else seen(arrangement, tangent.at, eye, far)
            if inside and not same_side(arrangement, eye, ray.points[0], tangent.at, far):
                yield difference(outside, inside), (far, eye), f"tangent {tangent.name}, chord {tangent.at}{far}"


def pairs(arrangement: Arrangement, circle: OnCircle) -> Iterator[tuple[str, TangentLine, TangentLine]]:
    """Pairs of tangents with the labelled point in which they meet."""
    for one, two in combinations(tangents(arrangement, circle), 2):
        meet = arrangement.meet(one.line, two.line) if one.line != two.line else None
        if meet and meet not in (one.at, two.at):
            yield meet, one, two


def _two_tangents(arrangement: Arrangement) -> Iterator[Instance]:
    for circle in circles(arrangement):
        for meet, one, two in pairs(arrangement, circle):
            equal = segments_equal((meet, one.at), (meet, two.at))
            yield Instance("tangents-from-point", (one.premise, two.premise), LinearForm(), equal, f"from {meet}")


def _axis(arrangement: Arrangement) -> Iterator[Instance]:
    """The line from the centre to where tangents meet halves the angles of the tangents and of the radii."""
    for circle in circles(arrangement):
        for meet, one, two in pairs(arrangement, circle):
            premises = (one.premise, two.premise)
            for vertex, other in ((meet, circle.centre), (circle.centre, meet)):
                halves = [seen(arrangement, end.at, vertex, other) for end in (one, two)]
                if halves[0] and halves[1]:
                    about = f"from {meet}"
                    yield Instance("tangents-axis", premises, difference(halves[0], halves[1]), None, about, 11)


_PAIR = ("PA and PB are tangents to the circle with centre O at A and B",)

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
    Theorem(
        "tangents-axis",
        "The line from the centre to the point where two tangents meet bisects the angles between tangents and radii.",
        SKILL,
        "Euclid IV.4 (the bisectors of a circumscribed figure meet in the centre)",
        _axis,
        fires=(*_PAIR, "segment PO"),
        silent=_PAIR,
    ),
)
