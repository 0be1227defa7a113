"""Similar triangles: how they are recognised, and what follows for their parts."""

from collections.abc import Iterator
from itertools import combinations, pairwise

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import length
from paperaudit.geometry.theorems.like_triangles import (
    corner_of,
    equal_corners,
    like_triangles,
    pair_text,
    side_of,
    sides_in_ratio,
)
from paperaudit.geometry.theorems.points import difference
from paperaudit.geometry.theorems.theorem import NO_RELATION, Equation, Instance, Stated, Theorem, alike
from paperaudit.model.expression import Quotient


def _similar(arrangement: Arrangement) -> Iterator[Instance]:
    """Two angles; or two pairs of sides in one ratio and the angle between them; or three pairs of sides."""
    for one, two, _ in like_triangles(arrangement):
        conclusion, about = alike(one, two), pair_text(one, two, "∼")
        for first, second in combinations(range(3), 2):
            angles = tuple(equal_corners(arrangement, one, two, place) for place in (first, second))
            yield Instance("similar-equal-angles", angles, NO_RELATION, conclusion, about, 14)
            between = equal_corners(arrangement, one, two, 3 - first - second)
            beside = (sides_in_ratio(one, two, first, second), between)
            yield Instance("similar-sas", beside, NO_RELATION, conclusion, about, 16)
        ratios = (sides_in_ratio(one, two, 0, 1), sides_in_ratio(one, two, 1, 2))
        yield Instance("similar-proportional-sides", ratios, NO_RELATION, conclusion, about, 16)


def _said(arrangement: Arrangement) -> Iterator[Instance]:
    """Figures that the paper says to be similar or congruent; congruent triangles are similar too."""
    for first, second, congruent, label in arrangement.figure.alike:
        about = pair_text(first, second, "≡" if congruent else "∼")
        said = alike(first, second, congruent)
        yield Instance("given", (Stated(label),), NO_RELATION, said, about, 1)


def _polygons(arrangement: Arrangement) -> Iterator[Equation]:
    """Corresponding sides of similar figures with four corners and more."""
    for first, second, congruent, label in arrangement.figure.alike:
        if congruent or len(first) == 3:
            continue
        sides = [
            (length(*one), length(*two))
            for one, two in zip(pairwise((*first, first[0])), pairwise((*second, second[0])), strict=True)
        ]
        about = pair_text(first, second, "∼")
        for (a, b), (c, d) in combinations(sides, 2):
            left, right = Quotient(a, b), Quotient(c, d)
            yield Equation("similar-triangles-sides", (Stated(label),), left, right, about, 14)


def _parts(arrangement: Arrangement) -> Iterator[Instance | Equation]:
    """What follows: equal angles, sides in one ratio."""
    for one, two, _ in like_triangles(arrangement):
        similar, about = (alike(one, two),), pair_text(one, two, "∼")
        for place in range(3):
            first, second = corner_of(arrangement, one, place), corner_of(arrangement, two, place)
            if first != second:
                yield Instance("similar-triangles-angles", similar, difference(first, second), about=about)
        for before, after in combinations(range(3), 2):
            if any(side_of(one, place) == side_of(two, place) for place in (before, after)):
                # With a side in common the triangles are congruent, and that is what a pupil says.
                continue
            left = Quotient(side_of(one, before), side_of(two, before))
            right = Quotient(side_of(one, after), side_of(two, after))
            yield Equation("similar-triangles-sides", similar, left, right, about, 14)


_CUT = ("triangle ABC", "D lies on AB", "E lies on AC", "DE ∥ BC")

THEOREMS = (
    Theorem(
        "given",
        "Figures that the paper says to be similar or congruent are.",
        "similar triangles",
        "the paper itself",
        _said,
        fires=("△ABC ∼ △DEF",),
        silent=("triangle ABC",),
    ),
    Theorem(
        "similar-triangles-sides",
        "Corresponding sides of similar figures are in one ratio.",
        "similar triangles",
        "Euclid VI, definition 1",
        _polygons,
        fires=("quadrilateral ABCD is similar to quadrilateral EFGH",),
        silent=("△ABC ∼ △DEF",),
    ),
    Theorem(
        "similar-equal-angles",
        "Triangles with two pairs of equal angles are similar.",
        "similar triangles",
        "Euclid VI.4",
        _similar,
        fires=_CUT,
        silent=("triangle ABC",),
    ),
    Theorem(
        "similar-sas",
        "Triangles with two pairs of sides in one ratio and the angles between them equal are similar.",
        "similar triangles",
        "Euclid VI.6",
        _similar,
        fires=_CUT,
        silent=("triangle ABC",),
    ),
    Theorem(
        "similar-proportional-sides",
        "Triangles with their sides in one ratio are similar.",
        "similar triangles",
        "Euclid VI.5",
        _similar,
        fires=_CUT,
        silent=("triangle ABC",),
    ),
    Theorem(
        "similar-triangles-angles",
        "Similar triangles have equal angles.",
        "similar triangles",
        "Euclid VI, definition 1",
        _parts,
        fires=_CUT,
        silent=("triangle ABC",),
    ),
    Theorem(
        "similar-triangles-sides",
        "Corresponding sides of similar triangles are in one ratio.",
        "similar triangles",
        "Euclid VI.4",
        _parts,
        fires=_CUT,
        silent=("triangle ABC",),
    ),
)
