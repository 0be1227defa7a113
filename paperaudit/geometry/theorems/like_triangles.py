"""Pairs of triangles that are similar or congruent in a drawing, found once an arrangement, and their parts."""

from functools import lru_cache
from itertools import combinations, permutations

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import length
from paperaudit.geometry.theorems.theorem import Predicate, angles_equal, proportional, segments_equal
from paperaudit.model.expression import AngleOf, LengthOf

CLOSE = 1e-6
"""Degrees, or share of a length, within which parts of an exact drawing count as equal."""
MOST_PAIRS = 400
"""Pairs of triangles that a figure is looked through for; a regular polygon with all its diagonals has more."""

Corners = tuple[str, str, str]
Pair = tuple[Corners, Corners, bool]
"""Two triangles, corresponding corners in order, and whether they are congruent."""


@lru_cache(maxsize=8)
def like_triangles(arrangement: Arrangement) -> tuple[Pair, ...]:
    """Pairs of different triangles that are similar in the drawing; those with the most in common come first.

    The drawing only says where to look: that the triangles are similar has to follow from premises.
    """
    shapes: dict[tuple[int, ...], list[tuple[Corners, tuple[float, ...]]]] = {}
    for triangle in arrangement.triangles:
        corners = triangle.corners
        angles = tuple(arrangement.measured(corner_of(arrangement, corners, place)) for place in range(3))
        shapes.setdefault(tuple(sorted(round(angle * 1e3) for angle in angles)), []).append((corners, angles))
    found: list[Pair] = []
    for group in shapes.values():
        for (one, angles), (two, others) in combinations(group, 2):
            for order in permutations(range(3)):
                if all(abs(angles[place] - others[order[place]]) < CLOSE for place in range(3)):
                    turned = (two[order[0]], two[order[1]], two[order[2]])
                    ratio = arrangement.measured(side_of(one, 0)) / arrangement.measured(side_of(turned, 0))
                    found.append((one, turned, abs(ratio - 1) < CLOSE))
    if len(found) > MOST_PAIRS:
        found.sort(key=lambda pair: -len(set(pair[0]) & set(pair[1])))
    return tuple(found[:MOST_PAIRS])


def side_of(corners: Corners, place: int) -> LengthOf:
    """The side opposite a corner."""
    return length(corners[(place + 1) % 3], corners[(place + 2) % 3])


def corner_of(arrangement: Arrangement, corners: Corners, place: int) -> AngleOf:
    """The angle at a corner, named canonically."""
    return arrangement.corner(corners[place - 1], corners[place], corners[(place + 1) % 3])


def pair_text(one: tuple[str, ...], two: tuple[str, ...], sign: str) -> str:
    """△ABC ∼ △DEF; polygons with more corners go without the sign of a triangle."""
    mark = "△" if len(one) == 3 else ""
    return f"{mark}{''.join(one)} {sign} {mark}{''.join(two)}"


def equal_corners(arrangement: Arrangement, one: Corners, two: Corners, place: int) -> Predicate:
    """That two corresponding angles are equal."""
    return angles_equal(corner_of(arrangement, one, place), corner_of(arrangement, two, place))


def equal_sides(one: Corners, two: Corners, place: int) -> Predicate:
    """That the sides opposite two corresponding corners are equal."""
    first, second = side_of(one, place), side_of(two, place)
    return segments_equal((first.start, first.end), (second.start, second.end))


def sides_in_ratio(one: Corners, two: Corners, place: int, other: int) -> Predicate:
    """That two pairs of corresponding sides are in one ratio."""
    return proportional(side_of(one, place), side_of(two, place), side_of(one, other), side_of(two, other))
