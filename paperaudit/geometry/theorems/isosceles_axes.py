"""Isosceles triangles: altitude, median and bisector to the base are one line, whichever of them is known."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import length
from paperaudit.geometry.theorems.like_triangles import CLOSE
from paperaudit.geometry.theorems.points import difference, total
from paperaudit.geometry.theorems.theorem import AngleIs, Instance, Predicate, Theorem, angles_equal, segments_equal
from paperaudit.geometry.theorems.triangles import triangle_text
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import AngleOf

RIGHT = Fraction(90)


@dataclass(frozen=True, slots=True)
class Axis:
    """A line from the apex `a` of a triangle that is isosceles in the drawing to the middle `foot` of its base."""

    a: str
    b: str
    c: str
    foot: str
    upright: AngleOf
    halves: tuple[AngleOf, AngleOf]
    about: str

    @property
    def sides(self) -> Predicate:
        """That the legs are equal."""
        return segments_equal((self.a, self.b), (self.a, self.c))

    @property
    def middle(self) -> Predicate:
        """That the line is a median."""
        return segments_equal((self.b, self.foot), (self.foot, self.c))

    @property
    def bisects(self) -> Predicate:
        """That it bisects the apex."""
        return angles_equal(*self.halves)

    @property
    def right(self) -> Predicate:
        """That it is an altitude."""
        return AngleIs(self.upright, RIGHT)


def _axes(arrangement: Arrangement) -> Iterator[Axis]:
    for triangle in arrangement.triangles:
        for a, b, c in triangle.turned():
            legs = [arrangement.measured(length(a, end)) for end in (b, c)]
            if abs(legs[0] - legs[1]) > CLOSE * legs[0]:
                continue
            for foot in arrangement.lines[arrangement.ray(b, c).line]:
                if foot in (b, c) or not arrangement.joined(a, foot):
                    continue
                upright = arrangement.corner(a, foot, b)
                if abs(arrangement.measured(upright) - 90) < CLOSE:
                    halves = (arrangement.corner(b, a, foot), arrangement.corner(foot, a, c))
                    yield Axis(a, b, c, foot, upright, halves, triangle_text(arrangement, (a, b, c)))


def _one_line(arrangement: Arrangement) -> Iterator[Instance]:
    for axis in _axes(arrangement):
        for known in (axis.middle, axis.bisects, axis.right):
            premises = (axis.sides, known)
            if known != axis.middle:
                yield Instance("isosceles-axis", premises, LinearForm(), axis.middle, axis.about, 12)
            if known != axis.bisects:
                yield Instance("isosceles-axis", premises, difference(*axis.halves), None, axis.about, 12)
            if known != axis.right:
                yield Instance("isosceles-axis", premises, total((axis.upright,), 90), None, axis.about, 12)


def _converse(arrangement: Arrangement) -> Iterator[Instance]:
    """Where two of the three fall together the triangle is isosceles."""
    for axis in _axes(arrangement):
        for premises in ((axis.middle, axis.bisects), (axis.bisects, axis.right), (axis.middle, axis.right)):
            yield Instance("isosceles-axis-converse", premises, LinearForm(), axis.sides, axis.about, 14)


_AXIS = ("triangle ABC", "AB = AC", "D is the midpoint of BC", "segment AD")

THEOREMS = (
    Theorem(
        "isosceles-axis",
        "In an isosceles triangle the altitude, the median and the bisector from the apex are one line.",
        "isosceles triangles",
        "Euclid I.4, I.8, I.26 (congruent halves)",
        _one_line,
        fires=_AXIS,
        silent=("triangle ABC", "D is the midpoint of BC", "segment AD"),
    ),
    Theorem(
        "isosceles-axis-converse",
        "If two of the altitude, the median and the bisector from a corner are one line, its sides are equal.",
        "isosceles triangles",
        "Euclid I.4, I.26, VI.3",
        _converse,
        fires=_AXIS,
        silent=("triangle ABC", "D is the midpoint of BC", "segment AD"),
    ),
)
