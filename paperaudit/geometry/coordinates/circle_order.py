"""Points in their order round a circle of a drawing, which arc is which, and chords and tangents as directions.

A point of a circle has a position: the direction from the centre to it. An arc is a difference of two
positions, a chord runs at right angles to the mean of two, a tangent to one. So arcs that add, angles
at the centre and at the circumference and angles between tangent and chord hold by themselves in the
exact theory, and a contradiction names givens.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from paperaudit.geometry.figure.figure import (
    Balance,
    Compared,
    Condition,
    EqualLengths,
    Figure,
    OnCircle,
    Ordered,
    SizeRelation,
    TangentAt,
    arc,
)
from paperaudit.geometry.figure.plane import Spot
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import ArcOf, leaves
from paperaudit.model.quantity import centre_of_circle

ROUND = 1e-6
"""Share of the radius by which points of a drawn circle may differ in their distance from the centre."""
HALF = 1e-6
"""Degrees by which an arc of a drawing may differ from 180° and count as half the circle."""
SETTLED = 1e-3
"""Degrees by which a chord of a drawing may differ from where the circle has it."""


@dataclass(frozen=True, slots=True)
class Position:
    """Where a point stands on a circle, as an unknown of the exact theory: the direction from the centre to it."""

    centre: str
    point: str


@dataclass(frozen=True, slots=True)
class Round:
    """A circle of a drawing by its `centre` or own name: points anticlockwise, directions in degrees, who puts each."""

    centre: str
    points: tuple[str, ...]
    bearings: dict[str, float]
    labels: dict[str, int]

    def turn(self, start: str, end: str) -> float:
        """The arc from one point anticlockwise to another, from 0° up to 360°."""
        return (self.bearings[end] - self.bearings[start]) % 360

    def inside(self, start: str, end: str) -> tuple[str, ...]:
        """The named points that one passes on the way anticlockwise from `start` to `end`, ends left out."""
        whole = self.turn(start, end)
        first = self.points.index(start)
        turned = self.points[first + 1 :] + self.points[:first]
        return tuple(point for point in turned if point != end and self.turn(start, point) < whole)

    def arc(self, start: str, end: str) -> ArcOf:
        """The arc from `start` anticlockwise to `end` under its one name: minor, major, or half by a point on it."""
        whole = self.turn(start, end)
        if abs(whole - 180) < HALF:
            return arc(start, end, self.centre, min(self.inside(start, end), default=""))
        return arc(start, end, self.centre, "", whole > 180)

    def ends(self, size: ArcOf) -> tuple[str, str]:
        """The ends of an arc in the order in which one passes them anticlockwise along it."""
        one, two = size.start, size.end
        whole = self.turn(one, two)
        if size.through:
            along = self.turn(one, size.through) <= whole
        elif abs(whole - 180) < HALF:
            along = not self.inside(one, two)
        else:
            along = (whole > 180) == size.major
        return (one, two) if along else (two, one)

    def canonical(self, size: ArcOf) -> ArcOf:
        """The same arc under its one name, so that equal arcs are one value."""
        return self.arc(*self.ends(size))

    def form(self, size: ArcOf) -> LinearForm[object]:
        """The arc as a difference of positions, a full turn added where the drawing's directions ask for it."""
        start, end = self.ends(size)
        turns = round((self.turn(start, end) - (self.bearings[end] - self.bearings[start])) / 360)
        terms: dict[object, Fraction] = {
            Position(self.centre, end): Fraction(1),
            Position(self.centre, start): Fraction(-1),
        }
        return LinearForm(terms, Fraction(360 * turns))


def rounds_of(figure: Figure, at: dict[str, Spot]) -> dict[str, Round]:
    """The circles of a figure by their centres, those left out that the drawing does not show round."""
    found = {}
    for circle in circles_of(figure):
        one = _round(circle, at) if circle.centre in at else None
        if one:
            found[circle.key] = one
    return found


def circles_of(figure: Figure) -> tuple[OnCircle, ...]:
    """The circles that a figure speaks of, and those about a point that it says to be a circumcentre."""
    spoken = [condition for condition in figure.conditions if isinstance(condition, OnCircle)]
    centres = {circle.centre for circle in spoken}
    equal: dict[str, list[tuple[str, str, int]]] = {}
    for condition in figure.conditions:
        if isinstance(condition, EqualLengths) and condition.reason == "perpendicular-bisector":
            one, two = ({size.start, size.end} for size in (condition.first, condition.second))
            for centre in sorted(one & two - centres) if one != two else ():
                first, second = sorted(one ^ two)
                equal.setdefault(centre, []).append((first, second, condition.label))
    around = ((centre, _connected(pairs)) for centre, pairs in equal.items())
    return (
        *spoken,
        *(OnCircle(centre, tuple(on), tuple(on.values()), min(on.values())) for centre, on in around if len(on) > 2),
    )


def _connected(pairs: list[tuple[str, str, int]]) -> dict[str, int]:
    """The points as far from a centre as the first one, each with the given that says so."""
    on = {pairs[0][0]: pairs[0][2]}
    while True:
        more = {two if one in on else one: label for one, two, label in pairs if (one in on) != (two in on)}
        if not more:
            return on
        on |= more


def arcs_of(condition: Condition) -> tuple[ArcOf, ...]:
    """The arcs whose degrees a condition is about."""
    match condition:
        case SizeRelation(form):
            return tuple(size for size in form.terms if isinstance(size, ArcOf))
        case Balance(left, right) | Compared(left, _, right):
            return tuple(leaf for side in (left, right) for leaf in leaves(side) if isinstance(leaf, ArcOf))
    return ()


def _round(circle: OnCircle, at: dict[str, Spot]) -> Round | None:
    middle = at[circle.centre]
    spots = {point: at[point] for point in circle.points}
    radii = [math.dist(middle, spot) for spot in spots.values()]
    if max(radii) - min(radii) > ROUND * max(radii):
        return None
    bearings = {
        point: math.degrees(math.atan2(spot[1] - middle[1], spot[0] - middle[0])) for point, spot in spots.items()
    }
    labels = dict(zip(circle.points, circle.labels, strict=True))
    return Round(circle.key, tuple(sorted(bearings, key=bearings.__getitem__)), bearings, labels)


def circle_rows(
    figure: Figure, lines: tuple[tuple[str, ...], ...], bearings: tuple[float, ...], rounds: dict[str, Round]
) -> Iterator[tuple[LinearForm[object], frozenset[int]]]:
    """What circles say of the directions of lines, as forms that are 0, each with the givens that it rests on."""
    for number, line in enumerate(lines):
        for name, circle in rounds.items():
            on = [point for point in line if point in circle.labels]
            if centre_of_circle(name) in line:
                for point in on:
                    yield from _row(number, bearings, circle, (point,), 0, {circle.labels[point]})
            for one, two in pairwise(on):
                labels = {circle.labels[one], circle.labels[two]}
                yield from _row(number, bearings, circle, (one, two), 90, labels)
    for condition in figure.conditions:
        match condition:
            case TangentAt(path, at, _, label) if condition.key in rounds and at in rounds[condition.key].labels:
                yield from _row(figure.line_of(*path), bearings, rounds[condition.key], (at,), 90, {label})
            case Ordered(one, centre, two, label):
                for name, circle in rounds.items():
                    if centre_of_circle(name) == centre and {one, two} <= circle.labels.keys():
                        yield _across(circle, one, two, label)


def _across(circle: Round, one: str, two: str, label: int) -> tuple[LinearForm[object], frozenset[int]]:
    """The ends of a diameter stand half a turn apart."""
    labels = {label, circle.labels[one], circle.labels[two]}
    places = [LinearForm[object].of(Position(circle.centre, point)) for point in (one, two)]
    half_turns = round((circle.bearings[one] - circle.bearings[two]) / 180)
    return places[0] - places[1] - LinearForm[object].number(180 * half_turns), frozenset(labels)


def _row(
    line: int, bearings: tuple[float, ...], circle: Round, points: tuple[str, ...], more: int, labels: set[int]
) -> Iterator[tuple[LinearForm[object], frozenset[int]]]:
    """The direction of a line is the mean position of some points, `more` degrees on, and half turns."""
    mean = sum(circle.bearings[point] for point in points) / len(points)
    half_turns = round((bearings[line] - mean - more) / 180)
    if abs(bearings[line] - mean - more - 180 * half_turns) > SETTLED:
        return
    form: LinearForm[object] = LinearForm({line: Fraction(1)}, Fraction(-more - 180 * half_turns))
    for point in points:
        form = form.plus(LinearForm.of(Position(circle.centre, point)), Fraction(-1, len(points)))
    yield form, frozenset(labels)
