"""Perimeters of figures with equal sides: each side is the same share of it."""

from collections.abc import Iterator
from fractions import Fraction
from itertools import product

from paperaudit.geometry.coordinates.arrangement import ALIKE, Arrangement
from paperaudit.geometry.figure.figure import Size, SizeRelation
from paperaudit.geometry.theorems.theorem import Instance, Stated, Theorem, segments_equal
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import LengthOf

MOST_SIDES = 6


def _equal_shares(arrangement: Arrangement) -> Iterator[Instance]:
    for condition in arrangement.figure.conditions:
        if not isinstance(condition, SizeRelation) or len(condition.form.terms) < 3:
            continue
        sides = [size for size in condition.form.terms if isinstance(size, LengthOf)]
        shares = set(condition.form.terms.values())
        if len(sides) < len(condition.form.terms) or len(shares) > 1 or not _alike(arrangement, sides):
            continue
        whole = shares.pop() * len(sides)
        for side in sides:
            ends = (side.start, side.end)
            equal = [segments_equal(ends, (other.start, other.end)) for other in sides if other != side]
            relation: LinearForm[Size] = LinearForm({side: whole}, condition.form.constant)
            yield Instance("perimeter", (Stated(condition.label), *equal), relation, weight=10, skill="perimeter")


def _equal_pairs(arrangement: Arrangement) -> Iterator[Instance]:
    """A sum of sides with one side of each length: 2(AB + BC) of a rectangle, 2AB + BC of an isosceles triangle."""
    for condition in arrangement.figure.conditions:
        if not isinstance(condition, SizeRelation) or len(condition.form.terms) < 3:
            continue
        shares = {size: share for size, share in condition.form.terms.items() if isinstance(size, LengthOf)}
        groups = _by_length(arrangement, list(shares))
        if len(set(shares.values())) > 1 or not 1 < len(groups) < len(shares) <= MOST_SIDES:
            continue
        others = {size: share for size, share in condition.form.terms.items() if size not in shares}
        share = next(iter(shares.values()))
        for chosen in product(*groups):
            equal = [
                segments_equal((side.start, side.end), (other.start, other.end))
                for side, group in zip(chosen, groups, strict=True)
                for other in group
                if other != side
            ]
            sums: dict[Size, Fraction | int] = {
                side: share * len(group) for side, group in zip(chosen, groups, strict=True)
            }
            relation: LinearForm[Size] = LinearForm({**others, **sums}, condition.form.constant)
            yield Instance("perimeter", (Stated(condition.label), *equal), relation, weight=10, skill="perimeter")


def _by_length(arrangement: Arrangement, sides: list[LengthOf]) -> list[list[LengthOf]]:
    """The sides that measure the same, together."""
    groups: list[list[LengthOf]] = []
    for side in sides:
        group = next((group for group in groups if _alike(arrangement, [group[0], side])), None)
        if group is None:
            groups.append([side])
        else:
            group.append(side)
    return groups


def _perimeters(arrangement: Arrangement) -> Iterator[Instance]:
    yield from _equal_shares(arrangement)
    yield from _equal_pairs(arrangement)


def _alike(arrangement: Arrangement, sides: list[LengthOf]) -> bool:
    lengths = [arrangement.measured(side) for side in sides]
    return max(lengths) - min(lengths) < ALIKE * max(lengths)


THEOREMS = (
    Theorem(
        "perimeter",
        "Each of n equal sides is the n-th part of their sum; of sides that are equal in pairs one each will do.",
        "perimeter",
        "common practice, no source",
        _perimeters,
        fires=("rhombus ABCD", "perimeter of ABCD = 52"),
        silent=("rhombus ABCD", "AB = 13"),
    ),
)
