"""The strand of the coordinate plane: which derivation takes which task."""

from collections.abc import Callable
from typing import Any, cast

from paperaudit.model.ask import Ask, Establish, Find
from paperaudit.model.coordinates_task import (
    CircleWith,
    Direction,
    Inclination,
    LineThrough,
    Meeting,
    OfCurve,
    OfPoints,
    PlanePoint,
    PlaneUnknown,
    PointWanted,
)
from paperaudit.model.derivation import Outcome
from paperaudit.model.expression import AreaOf, LengthOf, Letter, PerimeterOf, letters_of
from paperaudit.model.fact import Drawn, Fact, Shape
from paperaudit.model.reading import Reading
from paperaudit.model.topic import TopicTask
from paperaudit.strands.plane import (
    against_circle,
    claims,
    curves,
    inclination,
    lines,
    points,
    round,
    surd_points,
    unknowns,
)
from paperaudit.strands.refusals import or_not_read

_OF_POINTS: dict[str, Callable[[OfPoints, Reading], Outcome]] = {
    "gradient": points.gradient,
    "mid-point": points.midpoint,
    "collinear": points.collinear,
    "area": points.area,
    "equation": lines.through_two,
    "perpendicular bisector": lines.bisector,
}
_OF_CURVE: dict[str, Callable[[OfCurve, Reading], Outcome]] = {
    "centre": round.centre,
    "radius": round.centre,
    "centre and radius": round.centre,
    "tangent": round.tangent,
    "position": against_circle.position,
    "asymptotes": round.asymptotes,
}


def _inclination(task: Inclination, reading: Reading) -> Outcome:
    assert reading.ask is not None
    return inclination.inclination(task, reading, reading.ask)


def _of_points(task: OfPoints, reading: Reading) -> Outcome:
    assert reading.ask is not None
    if surd_points.has_roots(task, reading):
        return surd_points.of_surd_points(task, reading, reading.ask)
    if task.what == "distance":
        return points.distance(task, reading, reading.ask)
    if task.what == "perimeter":
        return points.perimeter(task, reading, reading.ask)
    return _OF_POINTS[task.what](task, reading)


DERIVATIONS: dict[type, Callable[[Any, Reading], Outcome]] = {
    OfPoints: _of_points,
    OfCurve: lambda task, reading: _OF_CURVE.get(task.what, curves.of_curve)(task, reading),
    LineThrough: lines.through_one,
    Inclination: _inclination,
    CircleWith: round.circle_with,
    Meeting: curves.meeting,
    Direction: lines.direction,
    PlaneUnknown: unknowns.unknown,
    PointWanted: unknowns.point_wanted,
}
"""By the task of the ask."""


class PlaneStrand:
    """Takes the tasks of `model/coordinates_task.py`, and sizes between points that are given by coordinates."""

    name = "coordinates"

    def recognises(self, reading: Reading) -> bool:
        """Whether the ask is one of these tasks."""
        return reading.ask is not None and _work(reading.ask, reading) is not None

    def derive(self, reading: Reading) -> Outcome:
        """The answer with its lines, or NotRead with what stopped it."""
        assert reading.ask is not None
        work = _work(reading.ask, reading)
        assert work is not None
        return or_not_read(work)


def _work(ask: Ask, reading: Reading) -> Callable[[], Outcome] | None:
    """What derives the answer: by the task, by a claim, by a letter among coordinates."""
    task = _task(ask, reading)
    if task is not None:
        return lambda: DERIVATIONS[type(task)](task, reading)
    facts = [fact for given in reading.givens for fact in given.facts]
    placed = any(isinstance(fact, PlanePoint) for fact in facts)
    match ask.task:
        case Establish((fact,)) if placed and claims.can_be_claimed(fact) and all(map(_only_names, facts)):
            return lambda: claims.claim(cast(Establish, ask.task), reading)
        case Find((Letter(name),)) if conditions := unknowns.conditions_of(reading):
            inside = [fact for fact in facts if isinstance(fact, PlanePoint)]
            inside.extend(point for condition in conditions for point in condition.points)
            if any(name in letters_of(side) for fact in inside for side in (fact.x, fact.y) if side is not None):
                return lambda: unknowns.letter_of(name, conditions, (), reading)
    return None


def _only_names(fact: Fact) -> bool:
    """Whether a given says no more than where points are, and what is drawn between them."""
    return isinstance(fact, PlanePoint | Drawn) or (
        isinstance(fact, Shape) and fact.kind in _PLAIN and not fact.qualities
    )


_PLAIN = ("triangle", "quadrilateral", "polygon")


def _task(ask: Ask, reading: Reading) -> TopicTask | None:
    """The task, that of a figure's size made one of points where the givens have coordinates."""
    if type(ask.task) in DERIVATIONS:
        return ask.task if isinstance(ask.task, TopicTask) else None
    facts = [fact for given in reading.givens for fact in given.facts]
    if not any(isinstance(fact, PlanePoint) for fact in facts) or not all(map(_only_names, facts)):
        return None
    match ask.task:
        case Find((LengthOf(start, end),)):
            return OfPoints("distance", (PlanePoint(start), PlanePoint(end)))
        case Find((AreaOf(corners),)) if corners:
            return OfPoints("area", tuple(map(PlanePoint, corners)))
        case Find((PerimeterOf(corners),)) if corners:
            return OfPoints("perimeter", tuple(map(PlanePoint, corners)))
    return None


STRAND = PlaneStrand()
