"""Labels that give the size of an arc of a circle, beside it or beside an arc drawn outside it from point to point."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from paperaudit.readers.draft.drawing.label_kinds import LabelKind
from paperaudit.readers.draft.drawing.lettering import Run
from paperaudit.readers.draft.drawing.plane import apart, towards
from paperaudit.readers.draft.drawing.rounds import Bow
from paperaudit.readers.draft.drawing.spots import Skeleton

BESIDE_CIRCLE = 24.0
"""Points between a circle and an arc outside it that gives the size of an arc, at most."""
TURNED = 9.0
"""Degrees between an end of such an arc and its point."""
REACH = 2.4
"""Sizes of print between the middle of a label and its arc, at most."""
MIDDLE = 0.18
"""A label stands off the middle of its arc by this share of it, at most."""


@dataclass(frozen=True, slots=True)
class ArcLabel:
    """The label of the arc from one point of a circle to another, through a third where it is the longer one."""

    run: Run
    points: tuple[str, ...]


def is_arc_dimension(bow: Bow, circles: Sequence[Bow]) -> bool:
    """Whether an arc runs outside one of the circles about its centre."""
    return not bow.whole and any(
        math.dist(bow.centre, circle.centre) <= 2.5 and 2 < bow.radius - circle.radius <= BESIDE_CIRCLE
        for circle in circles
    )


def arc_labels(skeleton: Skeleton, bows: Sequence[Bow], runs: Sequence[Run]) -> tuple[list[ArcLabel], list[Run]]:
    """The labels of arcs drawn outside circles, and the other runs."""
    found: list[ArcLabel] = []
    left = list(runs)
    for bow in bows:
        points = _ends_on_circle(bow, skeleton)
        near = [
            (math.dist(run.middle, bow.middle), at)
            for at, run in enumerate(left)
            if run.kind is not LabelKind.POINT
            and math.dist(run.middle, bow.middle) <= REACH * run.size + run.half_width
        ]
        if points and near:
            found.append(ArcLabel(left.pop(min(near)[1]), points))
    return found, left


def _ends_on_circle(bow: Bow, skeleton: Skeleton) -> tuple[str, ...]:
    for number, circle in enumerate(skeleton.circles):
        if not is_arc_dimension(bow, [circle]):
            continue
        on = [
            (towards(circle.centre, spot.at), spot.name)
            for spot in skeleton.spots
            if number in spot.circles and spot.name
        ]
        names = []
        for end in bow.ends:
            way = towards(circle.centre, end)
            near = [(apart(at, way), name) for at, name in on]
            if near and min(near)[0] <= TURNED:
                names.append(min(near)[1])
        if len(names) == 2 and names[0] != names[1]:
            inner = [(at, name) for at, name in on if TURNED < (at - bow.start) % 360 < bow.sweep - TURNED]
            return _named(names[0], names[1], bow.sweep, [name for _, name in sorted(inner)])
    return ()


def _named(start: str, end: str, sweep: float, inner: Sequence[str]) -> tuple[str, ...]:
    """The letters that name an arc: its ends, and a point between them where it is no minor arc."""
    first, last = sorted((start, end))
    if sweep < 178:
        return first, last
    return (first, inner[len(inner) // 2], last) if inner else ()


def plain_arc_labels(skeleton: Skeleton, runs: Sequence[Run]) -> tuple[list[ArcLabel], list[Run]]:
    """Sizes in degrees that stand outside a circle at the middle of an arc between two of its points, and the rest."""
    found: list[ArcLabel] = []
    left: list[Run] = []
    for run in runs:
        points = _arc_beside(run, skeleton) if run.kind is LabelKind.ANGLE else ()
        if points:
            found.append(ArcLabel(run, points))
        else:
            left.append(run)
    return found, left


def _arc_beside(run: Run, skeleton: Skeleton) -> tuple[str, ...]:
    for number, circle in enumerate(skeleton.circles):
        away = math.dist(run.middle, circle.centre) - circle.radius
        if not 0 < away <= REACH * run.size + run.half_width:
            continue
        way = towards(circle.centre, run.middle)
        on = sorted(
            (towards(circle.centre, spot.at), spot.name)
            for spot in skeleton.spots
            if number in spot.circles and spot.name
        )
        for at, (start, name) in enumerate(on):
            end, other = on[(at + 1) % len(on)]
            sweep = (end - start) % 360
            if sweep and abs((way - start) % 360 / sweep - 0.5) <= MIDDLE:
                return _named(name, other, sweep, [])
    return ()
