"""Chords: equal ones and their angles, their distance from the centre, the line from the centre to their middle."""

import math
from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import HIDDEN, OnCircle
from paperaudit.geometry.figure.plane import side
from paperaudit.geometry.theorems.circles import ALIKE, SKILL, circles, is_middle, on_circle, same_side, seen
from paperaudit.geometry.theorems.points import difference, total
from paperaudit.geometry.theorems.theorem import (
    AngleIs,
    Instance,
    OnOneLine,
    Theorem,
    is_diameter,
    on_one_line,
    segments_equal,
)
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import AngleOf

RIGHT = Fraction(90)
Chord = tuple[str, str]


def chord_length(arrangement: Arrangement, chord: Chord) -> float:
    """The length of a chord in the drawing, whether or not it is drawn."""
    return math.dist(arrangement.at[chord[0]], arrangement.at[chord[1]])


def equal_chords(arrangement: Arrangement, circle: OnCircle) -> Iterator[tuple[Chord, Chord]]:
    """Pairs of chords that are equal in the drawing, drawn or not."""
    chords = sorted(
        ((chord_length(arrangement, pair), pair) for pair in combinations(circle.points, 2)), key=lambda entry: entry[0]
    )
    for index, (size, one) in enumerate(chords):
        for other, two in chords[index + 1 :]:
            if other - size > ALIKE * size:
                break
            yield (one, two) if one < two else (two, one)


def chord_text(one: Chord, two: Chord) -> str:
    """AB = CD."""
    return f"{''.join(one)} = {''.join(two)}"


def _equal_chords(arrangement: Arrangement) -> Iterator[Instance]:
    """Equal chords and equal angles go together, at the centre and at the circumference."""
    for circle in circles(arrangement):
        for one, two in equal_chords(arrangement, circle):
            equal, premises = segments_equal(one, two), on_circle(circle, *one, *two)
            here, there = (seen(arrangement, start, circle.centre, end) for start, end in (one, two))
            about = chord_text(one, two)
            if here and there:
                yield Instance("equal-chords-angles", (equal, *premises), difference(here, there), about=about)
                yield Instance("equal-chords-angles", premises, difference(here, there), equal, about)
            for (eye, first), (other, second) in _eyes(arrangement, circle, one, two):
                sides = {
                    same_side(arrangement, eye, circle.centre, *one),
                    same_side(arrangement, other, circle.centre, *two),
                }
                if len(sides) > 1:
                    continue
                why = on_circle(circle, *one, *two, eye, other)
                if first != second:
                    yield Instance("equal-chords-angles", (equal, *why), difference(first, second), None, about, 11)
                yield Instance("equal-chords-angles", why, difference(first, second), equal, about, 11)


def _eyes(
    arrangement: Arrangement, circle: OnCircle, one: Chord, two: Chord
) -> Iterator[tuple[tuple[str, AngleOf], tuple[str, AngleOf]]]:
    for eye in circle.points:
        first = None if eye in one else seen(arrangement, one[0], eye, one[1])
        for other in circle.points if first else ():
            second = None if other in two else seen(arrangement, two[0], other, two[1])
            if first and second and first != second:
                yield (eye, first), (other, second)


def _feet(arrangement: Arrangement, circle: OnCircle) -> Iterator[tuple[Chord, str, AngleOf]]:
    """Drawn chords with a labelled point between their ends that is joined to the centre, and the angle there."""
    for start, end in combinations(circle.points, 2):
        if not arrangement.joined(start, end):
            continue
        chord = arrangement.lines[arrangement.ray(start, end).line]
        low, high = sorted((chord.index(start), chord.index(end)))
        for foot in chord[low + 1 : high]:
            upright = seen(arrangement, circle.centre, foot, start)
            if upright:
                yield (start, end), foot, upright


def _chord_middle(arrangement: Arrangement) -> Iterator[Instance]:
    """The line from the centre to a chord: perpendicular to it exactly if it halves it."""
    for circle in circles(arrangement):
        for (start, end), foot, upright in _feet(arrangement, circle):
            halves, premises = segments_equal((start, foot), (foot, end)), on_circle(circle, start, end)
            about = f"chord {start}{end}"
            right = total((upright,), 90)
            yield Instance("centre-perpendicular-chord", premises, right, halves, about)
            yield Instance("centre-midpoint-chord", (halves, *premises), right, about=about)


def _distance(arrangement: Arrangement) -> Iterator[Instance]:
    """Chords are equal exactly if the perpendiculars from the centre to them are."""
    for circle in circles(arrangement):
        feet = [
            (chord, foot, AngleIs(upright, RIGHT))
            for chord, foot, upright in _feet(arrangement, circle)
            if is_middle(arrangement, foot, *chord)
        ]
        for (one, near, here), (two, far, there) in combinations(feet, 2):
            equal = segments_equal(one, two)
            away = segments_equal((circle.centre, near), (circle.centre, far))
            premises = (here, there, *on_circle(circle, *one, *two))
            about = chord_text(one, two)
            yield Instance("equal-chords-distance", (equal, *premises), LinearForm(), away, about)
            about = chord_text((circle.centre, near), (circle.centre, far))
            yield Instance("equal-chords-distance-converse", (away, *premises), LinearForm(), equal, about)


def _perpendicular_bisector(arrangement: Arrangement) -> Iterator[Instance]:
    """A line at right angles to a chord through its middle goes through the centre."""
    for circle in circles(arrangement):
        for start, end in combinations(circle.points, 2):
            if not arrangement.joined(start, end):
                continue
            chord = arrangement.lines[arrangement.ray(start, end).line]
            for foot in chord:
                if not is_middle(arrangement, foot, start, end):
                    continue
                for far, near in across(arrangement, circle, foot):
                    upright = seen(arrangement, far, foot, start)
                    if upright is None or not is_middle(arrangement, circle.centre, far, near):
                        continue
                    halves = segments_equal((start, foot), (foot, end))
                    premises = (halves, AngleIs(upright, RIGHT), *on_circle(circle, start, end, far, near))
                    diameter = is_diameter(circle.centre, far, near)
                    about = f"chord {start}{end}"
                    yield Instance("chord-perpendicular-bisector", premises, LinearForm(), diameter, about, 12)
    yield from _through_centre(arrangement)


def _through_centre(arrangement: Arrangement) -> Iterator[Instance]:
    """The centre lies on a line drawn at right angles to a chord through its middle."""
    for circle in circles(arrangement):
        for start, end in combinations(circle.points, 2):
            if not arrangement.joined(start, end) or circle.centre.startswith(HIDDEN):
                continue
            for foot in arrangement.lines[arrangement.ray(start, end).line]:
                if not is_middle(arrangement, foot, start, end) or foot == circle.centre:
                    continue
                halves = segments_equal((start, foot), (foot, end))
                for ray in arrangement.rays[foot]:
                    for far in ray.points:
                        triple = _in_line(arrangement, circle.centre, foot, far)
                        upright = seen(arrangement, far, foot, start) if triple else None
                        if triple and upright:
                            premises = (halves, AngleIs(upright, RIGHT), *on_circle(circle, start, end))
                            about = f"chord {start}{end}"
                            yield Instance("chord-perpendicular-bisector", premises, LinearForm(), triple, about, 12)


def _in_line(arrangement: Arrangement, centre: str, foot: str, far: str) -> OnOneLine | None:
    """That a centre is in line with two points of a drawn line on which it is not, where the drawing has it so."""
    if centre == far or any({centre, foot, far} <= set(line) for line in arrangement.lines):
        return None
    at = arrangement.at
    orders = ((centre, foot, far), (foot, far, centre), (far, centre, foot))
    a, b, c = max(orders, key=lambda order: math.dist(at[order[0]], at[order[2]]))
    whole = math.dist(at[a], at[c])
    if abs(side(at[b], at[a], at[c])) > ALIKE * whole**2:
        return None
    return on_one_line((a, b, c))


def across(arrangement: Arrangement, circle: OnCircle, foot: str) -> Iterator[Chord]:
    """Pairs of points of a circle on one drawn line through a point."""
    for line in arrangement.lines:
        if foot in line:
            yield from combinations([point for point in line if point in circle.points], 2)


_THROUGH = ("circle with centre O through A, B, C and D",)
_PLAIN = ("circle with centre O through A, B and C", "triangle ABC")
_FEET = ("M lies on AB", "OM ⊥ AB", "N lies on CD", "ON ⊥ CD")

THEOREMS = (
    Theorem(
        "equal-chords-angles",
        "Equal chords subtend equal angles.",
        SKILL,
        "Euclid III.26 to III.29",
        _equal_chords,
        fires=(*_THROUGH, "segments OA, OB, OC, OD", "AB = CD"),
        silent=_PLAIN,
    ),
    Theorem(
        "centre-perpendicular-chord",
        "The perpendicular from the centre bisects the chord.",
        SKILL,
        "Euclid III.3",
        _chord_middle,
        fires=("circle with centre O through A and B", "M lies on AB", "OM ⊥ AB"),
        silent=_PLAIN,
    ),
    Theorem(
        "centre-midpoint-chord",
        "The line from the centre to the mid-point of a chord is perpendicular to it.",
        SKILL,
        "Euclid III.3",
        _chord_middle,
        fires=("circle with centre O through A and B", "M is the midpoint of AB", "segment OM"),
        silent=_PLAIN,
    ),
    Theorem(
        "equal-chords-distance",
        "Equal chords are equally far from the centre.",
        SKILL,
        "Euclid III.14",
        _distance,
        fires=(*_THROUGH, *_FEET, "AB = CD"),
        silent=_PLAIN,
    ),
    Theorem(
        "equal-chords-distance-converse",
        "Chords that are equally far from the centre are equal.",
        SKILL,
        "Euclid III.14",
        _distance,
        fires=(*_THROUGH, *_FEET, "OM = ON"),
        silent=_PLAIN,
    ),
    Theorem(
        "chord-perpendicular-bisector",
        "The perpendicular bisector of a chord goes through the centre.",
        SKILL,
        "Euclid III.1, porism",
        _perpendicular_bisector,
        fires=(
            "circle through A, B, C and D",
            "AB and CD intersect at M",
            "M is the midpoint of AB",
            "CD ⊥ AB",
        ),
        silent=_PLAIN,
    ),
)
