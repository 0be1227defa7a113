"""Centres of a triangle: through the point where two medians, bisectors or altitudes meet goes the third."""

from collections.abc import Iterator
from fractions import Fraction
from itertools import permutations

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import Size, length
from paperaudit.geometry.theorems.like_triangles import CLOSE
from paperaudit.geometry.theorems.points import difference, total
from paperaudit.geometry.theorems.theorem import (
    AngleIs,
    Instance,
    Predicate,
    Theorem,
    angles_equal,
    segments_equal,
)
from paperaudit.geometry.theorems.triangles import triangle_text
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import AngleOf

RIGHT = Fraction(90)
Corner = tuple[str, str, str]
"""A corner of a triangle and the two others."""


def _centres(arrangement: Arrangement) -> Iterator[tuple[str, tuple[Corner, Corner, Corner], str]]:
    """Labelled points with lines to at least two corners of a triangle, its corners in turn, and its text."""
    for triangle in arrangement.triangles:
        corners = (turned[0], turned[1], turned[2]) if len(turned := tuple(triangle.turned())) == 3 else None
        assert corners
        about = triangle_text(arrangement, triangle.corners)
        for point in arrangement.figure.points:
            if point not in triangle.corners and sum(arrangement.joined(point, a) for a, _, _ in corners) > 1:
                yield point, corners, about


def _foot(arrangement: Arrangement, point: str, corner: Corner) -> str | None:
    """The labelled point in which the line from a corner through a point meets the opposite side, inside it."""
    a, b, c = corner
    if not arrangement.joined(a, point) or arrangement.ray(a, point).line in (
        arrangement.ray(a, b).line,
        arrangement.ray(a, c).line,
    ):
        return None
    return arrangement.meet(arrangement.ray(a, point).line, arrangement.ray(b, c).line)


def _is_middle(arrangement: Arrangement, foot: str, corner: Corner) -> bool:
    one, two = (arrangement.measured(length(foot, end)) for end in corner[1:])
    whole = arrangement.measured(length(*corner[1:]))
    return abs(one - two) < CLOSE * whole and abs(one + two - whole) < CLOSE * whole


def _medians(arrangement: Arrangement) -> Iterator[tuple[str, list[tuple[Corner, str, Predicate]], str]]:
    for point, corners, about in _centres(arrangement):
        found: list[tuple[Corner, str, Predicate]] = []
        for corner in corners:
            foot = _foot(arrangement, point, corner)
            if foot and foot != point and _is_middle(arrangement, foot, corner):
                found.append((corner, foot, segments_equal((corner[1], foot), (foot, corner[2]))))
        if len(found) > 1:
            yield point, found, about


def _centroid(arrangement: Arrangement) -> Iterator[Instance]:
    """The parts of a median, and that the third line through the centroid is a median too."""
    for point, medians, about in _medians(arrangement):
        for (corner, foot, one), (_, _, two) in permutations(medians, 2):
            premises = (one, two)
            near, far, whole = length(point, foot), length(corner[0], point), length(corner[0], foot)
            for terms in ({far: 1, near: -2}, {whole: 1, near: -3}, {whole: 2, far: -3}):
                relation: LinearForm[Size] = LinearForm({size: Fraction(share) for size, share in terms.items()})
                yield Instance("centroid", premises, relation, None, about, 12)
        if len(medians) == 3:
            for first, second, third in ((0, 1, 2), (1, 2, 0), (2, 0, 1)):
                premises = (medians[first][2], medians[second][2])
                yield Instance("centroid", premises, LinearForm(), medians[third][2], about, 14)


def _incentre(arrangement: Arrangement) -> Iterator[Instance]:
    """Two bisectors meet on the third."""
    for point, corners, about in _centres(arrangement):
        halves: list[tuple[AngleOf, AngleOf]] = []
        for a, b, c in corners:
            if arrangement.joined(a, point):
                pair = (arrangement.corner(b, a, point), arrangement.corner(point, a, c))
                one, two = (arrangement.measured(size) for size in pair)
                if abs(one - two) < CLOSE and one < 90:
                    halves.append(pair)
        if len(halves) == 3 and len(set(halves)) == 3:
            for first, second, third in ((0, 1, 2), (1, 2, 0), (2, 0, 1)):
                premises = (angles_equal(*halves[first]), angles_equal(*halves[second]))
                yield Instance("incentre", premises, difference(*halves[third]), None, about, 14)


def _orthocentre(arrangement: Arrangement) -> Iterator[Instance]:
    """Two altitudes meet on the third."""
    for point, corners, about in _centres(arrangement):
        uprights = []
        for corner in corners:
            foot = _foot(arrangement, point, corner)
            if foot and foot not in corner:
                angle = arrangement.corner(corner[0], foot, corner[1])
                if abs(arrangement.measured(angle) - 90) < CLOSE:
                    uprights.append(angle)
        if len(uprights) == 3:
            for first, second, third in ((0, 1, 2), (1, 2, 0), (2, 0, 1)):
                premises = (AngleIs(uprights[first], RIGHT), AngleIs(uprights[second], RIGHT))
                yield Instance("orthocentre", premises, total((uprights[third],), 90), None, about, 14)


_MEDIANS = (
    "triangle ABC",
    "D is the midpoint of BC",
    "E is the midpoint of AC",
    "AD and BE intersect at G",
    "F lies on AB",
    "CF and AD intersect at G",
)
_CEVIANS = ("triangle ABC", "D lies on BC", "E lies on AC", "AD and BE intersect at G")

THEOREMS = (
    Theorem(
        "centroid",
        "The medians of a triangle meet in one point, which cuts each of them in the ratio 2 : 1.",
        "medians and centroid",
        "Archimedes, On the equilibrium of planes I.13–14 (from memory)",
        _centroid,
        fires=_MEDIANS,
        silent=_CEVIANS,
    ),
    Theorem(
        "incentre",
        "The bisectors of the angles of a triangle meet in one point.",
        "angle bisectors",
        "Euclid IV.4",
        _incentre,
        fires=("triangle ABC", "I lies inside ABC", "AI bisects ∠BAC", "BI bisects ∠ABC", "segment CI"),
        silent=_CEVIANS,
    ),
    Theorem(
        "orthocentre",
        "The altitudes of a triangle meet in one point.",
        "altitudes",
        "common practice, no source (not in Euclid)",
        _orthocentre,
        fires=(
            "triangle ABC",
            "D lies on BC",
            "E lies on AC",
            "F lies on AB",
            "AD ⊥ BC",
            "BE ⊥ AC",
            "AD and BE intersect at H",
            "CF and AD intersect at H",
        ),
        silent=_CEVIANS,
    ),
)
