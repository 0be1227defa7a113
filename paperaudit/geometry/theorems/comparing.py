"""Sides and angles of a triangle compared: used for claims that one size is greater than another."""

from collections.abc import Iterator

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import length
from paperaudit.geometry.theorems.theorem import Greater, Instance, Theorem
from paperaudit.geometry.theorems.triangles import exterior_angles, triangle_text
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import Expression, Sum

CLEARLY = 1e-6
"""Share by which one size is greater than another in a drawing."""


def _is_greater(arrangement: Arrangement, one: Expression, two: Expression) -> bool:
    first, second = arrangement.measured(one), arrangement.measured(two)
    return first - second > CLEARLY * first


def _opposite(arrangement: Arrangement) -> Iterator[Instance]:
    """The longer of two sides is opposite the larger angle, and the other way about."""
    for triangle in arrangement.triangles:
        about = triangle_text(arrangement, triangle.corners)
        for a, b, c in triangle.turned():
            sides = [(length(a, b), arrangement.corner(b, c, a)), (length(a, c), arrangement.corner(a, b, c))]
            sides.sort(key=lambda pair: -arrangement.measured(pair[0]))
            (long, wide), (short, narrow) = sides
            if _is_greater(arrangement, long, short):
                by_sides, by_angles = Greater(long, short), Greater(wide, narrow)
                yield Instance("longer-side-larger-angle", (by_sides,), LinearForm(), by_angles, about, 12)
                yield Instance("longer-side-larger-angle", (by_angles,), LinearForm(), by_sides, about, 12)


def _two_sides(arrangement: Arrangement) -> Iterator[Instance]:
    for triangle in arrangement.triangles:
        about = triangle_text(arrangement, triangle.corners)
        for a, b, c in triangle.turned():
            for sides in ((length(a, b), length(a, c)), (length(a, c), length(a, b))):
                together = Greater(Sum(sides), length(b, c))
                yield Instance("triangle-inequality", (), LinearForm(), together, about, 12)


def _exterior(arrangement: Arrangement) -> Iterator[Instance]:
    """An exterior angle is larger than either interior opposite angle."""
    for triangle in arrangement.triangles:
        about = triangle_text(arrangement, triangle.corners)
        for a, b, c in triangle.turned():
            for outside in exterior_angles(arrangement, a, b, c):
                for inside in (arrangement.corner(a, b, c), arrangement.corner(b, c, a)):
                    yield Instance("exterior-angle-triangle", (), LinearForm(), Greater(outside, inside), about, 12)


def _chained(arrangement: Arrangement) -> Iterator[Instance]:
    """A whole is greater than a part of it."""
    for line in arrangement.lines:
        for start in range(len(line)):
            for end in range(start + 2, len(line)):
                whole = length(line[start], line[end])
                for a, b in ((start, end - 1), (start + 1, end)):
                    part = length(line[a], line[b])
                    yield Instance("whole-and-part", (), LinearForm(), Greater(whole, part), "", 8)


THEOREMS = (
    Theorem(
        "longer-side-larger-angle",
        "In a triangle the longer side is opposite the larger angle.",
        "inequalities in triangles",
        "Euclid I.18, I.19",
        _opposite,
        fires=("triangle ABC", "∠A = 40°", "∠B = 60°"),
        silent=("A-B-C", "segment BD"),
    ),
    Theorem(
        "triangle-inequality",
        "Two sides of a triangle are together longer than the third.",
        "inequalities in triangles",
        "Euclid I.20",
        _two_sides,
        fires=("triangle ABC",),
        silent=("A-B-C", "segment BD"),
    ),
    Theorem(
        "exterior-angle-triangle",
        "An exterior angle of a triangle is larger than either interior opposite angle.",
        "exterior angle of a triangle",
        "Euclid I.16",
        _exterior,
        fires=("triangle ABC", "BC is produced to D"),
        silent=("triangle ABC",),
    ),
    Theorem(
        "whole-and-part",
        "The whole is greater than the part.",
        "inequalities in triangles",
        "Euclid, common notion 5",
        _chained,
        fires=("A-B-C",),
        silent=("triangle ABC",),
    ),
)
