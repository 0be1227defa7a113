"""Similar and congruent triangles: how they are recognised, and what follows for their parts."""

from collections.abc import Iterator
from itertools import combinations, permutations

from paperaudit.geometry.arrangement import Arrangement
from paperaudit.geometry.figure import length
from paperaudit.geometry.theorems.points import difference
from paperaudit.geometry.theorems.theorem import (
    Equation,
    Instance,
    Predicate,
    Theorem,
    TrianglesAlike,
    alike,
    angles_equal,
    proportional,
    segments_equal,
)
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import AngleOf, LengthOf, Quotient

CLOSE = 1e-6
"""Degrees, or share of a length, within which parts of an exact drawing count as equal."""

Corners = tuple[str, str, str]


def like_triangles(arrangement: Arrangement) -> Iterator[tuple[Corners, Corners, bool]]:
    """Pairs of different triangles that are similar in the drawing, corners in order, and whether congruent."""
    shapes: dict[tuple[int, ...], list[tuple[Corners, tuple[float, float, float]]]] = {}
    for triangle in arrangement.triangles:
        corners = triangle.corners
        angles = tuple(arrangement.measured(_corner(arrangement, corners, place)) for place in range(3))
        key = tuple(sorted(round(angle * 1e3) for angle in angles))
        shapes.setdefault(key, []).append((corners, angles))  # type: ignore[arg-type]
    for group in shapes.values():
        for (one, angles), (two, others) in combinations(group, 2):
            for order in permutations(range(3)):
                if all(abs(angles[place] - others[order[place]]) < CLOSE for place in range(3)):
                    turned = (two[order[0]], two[order[1]], two[order[2]])
                    ratio = _side(arrangement, one, 0) / _side(arrangement, turned, 0)
                    yield one, turned, abs(ratio - 1) < CLOSE


def _side(arrangement: Arrangement, corners: Corners, place: int) -> float:
    return arrangement.measured(side_of(corners, place))


def side_of(corners: Corners, place: int) -> LengthOf:
    """The side opposite a corner."""
    return length(corners[(place + 1) % 3], corners[(place + 2) % 3])


def _corner(arrangement: Arrangement, corners: Corners, place: int) -> AngleOf:
    return arrangement.corner(corners[place - 1], corners[place], corners[(place + 1) % 3])


def _text(one: Corners, two: Corners, sign: str) -> str:
    return f"△{''.join(one)} {sign} △{''.join(two)}"


def _angles(arrangement: Arrangement, one: Corners, two: Corners, place: int) -> Predicate:
    return angles_equal(_corner(arrangement, one, place), _corner(arrangement, two, place))


def _sides(one: Corners, two: Corners, place: int) -> Predicate:
    first, second = side_of(one, place), side_of(two, place)
    return segments_equal((first.start, first.end), (second.start, second.end))


def _ratio(one: Corners, two: Corners, place: int, other: int) -> Predicate:
    return proportional(side_of(one, place), side_of(two, place), side_of(one, other), side_of(two, other))


def _similar(arrangement: Arrangement) -> Iterator[Instance]:
    """Two angles; or two pairs of sides in one ratio and the angle between them; or three pairs of sides."""
    for one, two, _ in like_triangles(arrangement):
        conclusion, about = alike(one, two), _text(one, two, "∼")
        for first, second in combinations(range(3), 2):
            angles = tuple(_angles(arrangement, one, two, place) for place in (first, second))
            yield Instance("similar-equal-angles", angles, LinearForm(), conclusion, about, 14)
            between = 3 - first - second
            beside = (_ratio(one, two, first, second), _angles(arrangement, one, two, between))
            yield Instance("similar-sas", beside, LinearForm(), conclusion, about, 16)
        ratios = (_ratio(one, two, 0, 1), _ratio(one, two, 1, 2))
        yield Instance("similar-proportional-sides", ratios, LinearForm(), conclusion, about, 16)


def _congruent(arrangement: Arrangement) -> Iterator[Instance]:
    for one, two, same in like_triangles(arrangement):
        if not same:
            continue
        conclusion, about = alike(one, two, congruent=True), _text(one, two, "≡")
        sides = tuple(_sides(one, two, place) for place in range(3))
        angles = tuple(_angles(arrangement, one, two, place) for place in range(3))
        yield Instance("congruent-sss", sides, LinearForm(), conclusion, about, 14)
        for place in range(3):
            beside = (place + 1) % 3, (place + 2) % 3
            yield Instance(
                "congruent-sas",
                (sides[beside[0]], angles[place], sides[beside[1]]),
                LinearForm(),
                conclusion,
                about,
                14,
            )
            for first, second in combinations(range(3), 2):
                premises = (angles[first], angles[second], sides[place])
                yield Instance("congruent-asa", premises, LinearForm(), conclusion, about, 14)


def _parts(arrangement: Arrangement) -> Iterator[Instance | Equation]:
    """What follows: equal angles, sides in one ratio; of congruent triangles equal sides."""
    for one, two, same in like_triangles(arrangement):
        similar, about = alike(one, two), _text(one, two, "∼")
        yield from _equal_angles(arrangement, one, two, similar, "similar-triangles-angles", about)
        for first, second in combinations(range(3), 2):
            left = Quotient(side_of(one, first), side_of(two, first))
            right = Quotient(side_of(one, second), side_of(two, second))
            yield Equation("similar-triangles-sides", (similar,), left, right, about, 14)
        if same:
            congruent, about = alike(one, two, congruent=True), _text(one, two, "≡")
            yield from _equal_angles(arrangement, one, two, congruent, "congruent-triangles-parts", about)
            for place in range(3):
                first_side, second_side = side_of(one, place), side_of(two, place)
                equal = segments_equal((first_side.start, first_side.end), (second_side.start, second_side.end))
                if first_side != second_side:
                    yield Instance("congruent-triangles-parts", (congruent,), LinearForm(), equal, about)


def _equal_angles(
    arrangement: Arrangement, one: Corners, two: Corners, premise: TrianglesAlike, reason: str, about: str
) -> Iterator[Instance]:
    for place in range(3):
        first, second = _corner(arrangement, one, place), _corner(arrangement, two, place)
        if first != second:
            yield Instance(reason, (premise,), difference(first, second), about=about)


THEOREMS = (
    Theorem(
        "similar-equal-angles",
        "Triangles with two pairs of equal angles are similar.",
        "similar triangles",
        "Euclid VI.4",
        _similar,
        fires=("triangle ABC", "D lies on AB", "E lies on AC", "DE ∥ BC"),
        silent=("triangle ABC",),
    ),
    Theorem(
        "similar-sas",
        "Triangles with two pairs of sides in one ratio and the angles between them equal are similar.",
        "similar triangles",
        "Euclid VI.6",
        _similar,
        fires=("triangle ABC", "D lies on AB", "E lies on AC", "DE ∥ BC"),
        silent=("triangle ABC",),
    ),
    Theorem(
        "similar-proportional-sides",
        "Triangles with their sides in one ratio are similar.",
        "similar triangles",
        "Euclid VI.5",
        _similar,
        fires=("triangle ABC", "D lies on AB", "E lies on AC", "DE ∥ BC"),
        silent=("triangle ABC",),
    ),
    Theorem(
        "congruent-sss",
        "Triangles with three pairs of equal sides are congruent.",
        "congruent triangles",
        "Euclid I.8",
        _congruent,
        fires=("parallelogram ABCD", "segment AC"),
        silent=("triangle ABC",),
    ),
    Theorem(
        "congruent-sas",
        "Triangles with two pairs of equal sides and the angles between them equal are congruent.",
        "congruent triangles",
        "Euclid I.4",
        _congruent,
        fires=("parallelogram ABCD", "segment AC"),
        silent=("triangle ABC",),
    ),
    Theorem(
        "congruent-asa",
        "Triangles with two pairs of equal angles and a pair of corresponding sides equal are congruent.",
        "congruent triangles",
        "Euclid I.26",
        _congruent,
        fires=("parallelogram ABCD", "segment AC"),
        silent=("triangle ABC",),
    ),
    Theorem(
        "similar-triangles-angles",
        "Similar triangles have equal angles.",
        "similar triangles",
        "Euclid VI, definition 1",
        _parts,
        fires=("triangle ABC", "D lies on AB", "E lies on AC", "DE ∥ BC"),
        silent=("triangle ABC",),
    ),
    Theorem(
        "similar-triangles-sides",
        "Corresponding sides of similar triangles are in one ratio.",
        "similar triangles",
        "Euclid VI.4",
        _parts,
        fires=("triangle ABC", "D lies on AB", "E lies on AC", "DE ∥ BC"),
        silent=("triangle ABC",),
    ),
    Theorem(
        "congruent-triangles-parts",
        "Corresponding parts of congruent triangles are equal.",
        "congruent triangles",
        "Euclid I.4",
        _parts,
        fires=("parallelogram ABCD", "segment AC"),
        silent=("triangle ABC",),
    ),
)
