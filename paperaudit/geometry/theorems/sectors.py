"""Lengths of arcs, sectors and segments of a circle."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.canonical import area_named
from paperaudit.geometry.figure.figure import OnCircle, length
from paperaudit.geometry.theorems.circle_sizes import PI, ROUND, SKILL, TWO_PI, named_of, radii
from paperaudit.geometry.theorems.circles import circles, diameters, on_circle, seen, together
from paperaudit.geometry.theorems.right_triangles import squared
from paperaudit.geometry.theorems.theorem import Equation, Predicate, Theorem
from paperaudit.geometry.theorems.trigonometry import times, whole
from paperaudit.model.expression import (
    AngleOf,
    ArcLengthOf,
    ArcOf,
    Expression,
    Measured,
    Negative,
    Quotient,
    SectorOf,
    SegmentOf,
    Sum,
)

FULL = whole(360)
HALF_TURN = Measured(whole(180), "°")
SECTOR, RATIO, BY_ARC = 12, 14, 12


@dataclass(frozen=True, slots=True)
class Turn:
    """How far an arc turns, as an angle, an arc or half a turn, with what that needs and costs besides."""

    degrees: Expression
    premises: tuple[Predicate, ...] = ()
    cost: int = 0


def arcs_of(arrangement: Arrangement, circle: OnCircle) -> dict[ArcOf, frozenset[str]]:
    """The arcs of a circle that have a length, a sector or a segment, and which of these the paper names."""
    found: dict[ArcOf, frozenset[str]] = {}
    for size in named_of(arrangement, circle.key):
        match size:
            case ArcLengthOf(arc):
                wanted = ["length"]
            case SectorOf(kind, arc):
                wanted = ["sector"] if kind == "area" else ["length", "sector perimeter"]
            case SegmentOf(kind, arc):
                wanted = ["sector", "segment"] if kind == "area" else ["length", "segment perimeter"]
            case _:
                continue
        found[arc] = found.get(arc, frozenset()) | set(wanted)
    return found


def turns(arrangement: Arrangement, circle: OnCircle, arc: ArcOf) -> Iterator[Turn]:
    """How far an arc turns: the angle at the centre where it is drawn, half a turn, the arc in degrees."""
    start, end = arc.start, arc.end
    for one, two, premises in diameters(arrangement, circle):
        if {one, two} == {start, end}:
            yield Turn(HALF_TURN, premises)
    middle = seen(arrangement, start, circle.centre, end)
    if middle is not None:
        yield Turn(AngleOf(middle.arm, middle.vertex, middle.other, arc.major), on_circle(circle, start, end))
    if arrangement.figure.arcs:
        yield Turn(arc, on_circle(circle, start, end), 0 if middle is None else BY_ARC)


def _arcs(arrangement: Arrangement) -> Iterator[Equation]:
    """Length of an arc and area of a sector as shares of the circle, from how far the arc turns."""
    for circle in circles(arrangement):
        for arc, wanted in arcs_of(arrangement, circle).items():
            for turn in turns(arrangement, circle, arc):
                share = Quotient(turn.degrees, FULL)
                for one, on in radii(arrangement, circle, arc.start, arc.end)[:2]:
                    premises, weight = together(turn.premises, on), SECTOR + turn.cost
                    if "length" in wanted:
                        along = times(share, TWO_PI, one)
                        yield Equation("arc-length", premises, ArcLengthOf(arc), along, "", weight)
                    if "sector" in wanted:
                        inside = times(share, PI, squared(one))
                        yield Equation("sector-area", premises, SectorOf("area", arc), inside, "", weight)


def _around_parts(arrangement: Arrangement) -> Iterator[Equation]:
    """Perimeters of sectors and segments, and the area of a segment by its sector and triangle."""
    for circle in circles(arrangement):
        for arc, wanted in arcs_of(arrangement, circle).items():
            (first, on), *_ = radii(arrangement, circle, arc.start, arc.end)
            along: Expression = ArcLengthOf(arc)
            if "sector perimeter" in wanted:
                around = Sum((along, times(whole(2), first)))
                yield Equation("sector-perimeter", on, SectorOf("perimeter", arc), around, "", ROUND)
            if "segment perimeter" in wanted:
                chord = length(arc.start, arc.end)
                yield Equation("segment-perimeter", (), SegmentOf("perimeter", arc), Sum((along, chord)), "", ROUND)
            if "segment" in wanted:
                yield _segment(arrangement, circle, arc)


def _segment(arrangement: Arrangement, circle: OnCircle, arc: ArcOf) -> Equation:
    """A minor segment is its sector without the triangle, a major one has the triangle besides."""
    sector, segment = SectorOf("area", arc), SegmentOf("area", arc)
    for start, end, premises in diameters(arrangement, circle):
        if {start, end} == {arc.start, arc.end}:
            return Equation("segment-area", premises, segment, sector, "", ROUND)
    triangle = area_named(arrangement, (circle.centre, arc.start, arc.end))
    whole_area = Sum((sector, triangle if arc.major else Negative(triangle)))
    return Equation("segment-area", on_circle(circle, arc.start, arc.end), segment, whole_area, "", ROUND)


def _shares(arrangement: Arrangement) -> Iterator[Equation]:
    """Lengths of arcs and areas of sectors of one circle are as the angles at the centre."""
    for circle in circles(arrangement):
        arcs = arcs_of(arrangement, circle)
        for (one, first), (two, second) in combinations(arcs.items(), 2):
            for turn in turns(arrangement, circle, one):
                for other in turns(arrangement, circle, two):
                    premises = together(turn.premises, other.premises)
                    angles = Quotient(turn.degrees, other.degrees)
                    if "length" in first & second:
                        ratio = Quotient(ArcLengthOf(one), ArcLengthOf(two))
                        yield Equation("arcs-as-angles", premises, ratio, angles, "", RATIO + turn.cost + other.cost)
                    if "sector" in first & second:
                        sectors = Quotient(SectorOf("area", one), SectorOf("area", two))
                        yield Equation("arcs-as-angles", premises, sectors, angles, "", RATIO + turn.cost + other.cost)


_CIRCLE = ("circle with centre O through A and B", "segments OA, OB")
_THROUGH = (*_CIRCLE, "OA = 6")

THEOREMS = (
    Theorem(
        "arc-length",
        "An arc is the share of the circumference that its angle at the centre is of 360°.",
        SKILL,
        "Euclid VI.33",
        _arcs,
        fires=(*_CIRCLE, "length of arc AB = 5"),
        silent=_CIRCLE,
    ),
    Theorem(
        "sector-area",
        "A sector is the share of the circle that its angle at the centre is of 360°.",
        SKILL,
        "Euclid VI.33, for sectors (from memory)",
        _arcs,
        fires=(*_CIRCLE, "area of sector OAB = 5"),
        silent=_CIRCLE,
    ),
    Theorem(
        "sector-perimeter",
        "The perimeter of a sector is its arc and two radii.",
        SKILL,
        "common practice, no source",
        _around_parts,
        fires=(*_CIRCLE, "perimeter of sector OAB = 12"),
        silent=_CIRCLE,
    ),
    Theorem(
        "segment-perimeter",
        "The perimeter of a segment of a circle is its arc and its chord.",
        SKILL,
        "common practice, no source",
        _around_parts,
        fires=(*_CIRCLE, "segment AB", "perimeter of minor segment AB = 12"),
        silent=_CIRCLE,
    ),
    Theorem(
        "segment-area",
        "A segment of a circle is its sector without the triangle, a major one with it.",
        SKILL,
        "Heron, Metrica I.32 to I.39 (from memory)",
        _around_parts,
        fires=(*_CIRCLE, "segment AB", "area of minor segment AB = 3"),
        silent=_CIRCLE,
    ),
    Theorem(
        "arcs-as-angles",
        "Arcs and sectors of one circle are as their angles at the centre.",
        SKILL,
        "Euclid VI.33",
        _shares,
        fires=(
            "circle with centre O through A, B, C and D",
            "segments OA, OB, OC, OD",
            "length of arc AB = 5",
            "length of arc CD = 3",
        ),
        silent=_THROUGH,
    ),
)
