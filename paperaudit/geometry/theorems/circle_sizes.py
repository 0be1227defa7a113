"""Radius and diameter, circumference and area of a circle, lengths of arcs, sectors and segments."""

from collections.abc import Iterator
from itertools import combinations

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.canonical import canonical
from paperaudit.geometry.figure.figure import HIDDEN, OnCircle, length
from paperaudit.geometry.theorems.circles import circles, diameters, on_circle, together
from paperaudit.geometry.theorems.right_triangles import squared
from paperaudit.geometry.theorems.theorem import Equation, Predicate, Theorem
from paperaudit.geometry.theorems.trigonometry import times, whole
from paperaudit.model.expression import (
    ArcLengthOf,
    ArcOf,
    CircleSize,
    Expression,
    Letter,
    Product,
    SectorOf,
    SegmentOf,
)
from paperaudit.model.quantity import AMONG

SKILL = "circles"
PI = Letter("π")
TWO_PI = Product((whole(2), PI))
MOST_RADII = 4
"""Radii of a circle by which its sizes are found."""
RADIUS, ROUND, SAME = 6, 10, 3


def _about(centre: str) -> str:
    middle, _, which = centre.partition(AMONG)
    return f"{which} circle" if which else "" if middle.startswith(HIDDEN) else f"circle {middle}"


def named_of(arrangement: Arrangement, centre: str) -> list[Expression]:
    """The sizes of one circle that the paper names, under their canonical names."""
    named = [canonical(size, arrangement) for size in arrangement.figure.named_sizes]
    return [size for size in named if _centre_of(size) == centre]


def _centre_of(size: Expression) -> str:
    match size:
        case CircleSize(_, centre) | ArcOf(centre=centre):
            return centre
        case ArcLengthOf(arc) | SectorOf(arc=arc) | SegmentOf(arc=arc):
            return arc.centre
    return ""


def radii(arrangement: Arrangement, circle: OnCircle, *first: str) -> list[tuple[Expression, tuple[Predicate, ...]]]:
    """What stands for the radius, each with its premises.

    Segments from the centre to points of the circle, those of `first` before the others; its name where there are none.
    """
    centre = circle.centre
    points = [point for point in dict.fromkeys((*first, *circle.points)) if not point.startswith(HIDDEN)]
    drawn = [point for point in points if arrangement.joined(centre, point)]
    if centre.startswith(HIDDEN) or not points:
        return [(CircleSize("radius", circle.key), ())]
    return [(length(centre, point), on_circle(circle, point)) for point in (drawn or points[:1])[:MOST_RADII]]


def _radius(arrangement: Arrangement) -> Iterator[Equation]:
    """The radius by its name, as a segment and as half a diameter."""
    for circle in circles(arrangement):
        centre, about = circle.key, _about(circle.key)
        by_name, across = CircleSize("radius", centre), CircleSize("diameter", centre)
        named = named_of(arrangement, centre)
        for one, on in radii(arrangement, circle):
            if one != by_name and by_name in named:
                yield Equation("radii", on, by_name, one, about, SAME)
            if across in named:
                yield Equation("diameter", on, across, times(whole(2), one), about, RADIUS)
        for start, end, premises in diameters(arrangement, circle):
            if HIDDEN in start + end or not arrangement.joined(start, end):
                continue
            for one, on in radii(arrangement, circle, start, end)[:2]:
                twice = times(whole(2), one)
                yield Equation("diameter", together(premises, on), length(start, end), twice, about, RADIUS)
        for (one, on), (two, also) in combinations(radii(arrangement, circle), 2):
            if {CircleSize("circumference", centre), CircleSize("area", centre)} & set(named):
                yield Equation("radii", together(on, also), one, two, about, SAME)


def _round(arrangement: Arrangement) -> Iterator[Equation]:
    for circle in circles(arrangement):
        centre, about = circle.key, _about(circle.key)
        named = named_of(arrangement, centre)
        around, inside = CircleSize("circumference", centre), CircleSize("area", centre)
        for one, on in radii(arrangement, circle):
            if around in named:
                yield Equation("circumference", on, around, times(TWO_PI, one), about, ROUND)
            if inside in named:
                yield Equation("circle-area", on, inside, times(PI, squared(one)), about, ROUND)


_CIRCLE = ("circle with centre O through A and B", "segments OA, OB")

THEOREMS = (
    Theorem(
        "diameter",
        "A diameter is twice the radius.",
        SKILL,
        "Euclid I, definition 17",
        _radius,
        fires=("circle with centre O", "AB is a diameter"),
        silent=_CIRCLE,
    ),
    Theorem(
        "radii",
        "The radius of a circle is the length from its centre to any of its points.",
        SKILL,
        "Euclid I, definition 15",
        _radius,
        fires=(*_CIRCLE, "area of circle O = 50"),
        silent=_CIRCLE,
    ),
    Theorem(
        "circumference",
        "The circumference of a circle is 2π times the radius.",
        SKILL,
        "Archimedes, Measurement of a Circle 3",
        _round,
        fires=(*_CIRCLE, "circumference of circle O = 50"),
        silent=_CIRCLE,
    ),
    Theorem(
        "circle-area",
        "The area of a circle is π times the square of the radius.",
        SKILL,
        "Archimedes, Measurement of a Circle 1",
        _round,
        fires=(*_CIRCLE, "area of circle O = 50"),
        silent=_CIRCLE,
    ),
)
