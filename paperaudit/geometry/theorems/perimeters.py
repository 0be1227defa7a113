"""Perimeters of figures with equal sides: each side is the same share of it."""

from collections.abc import Iterator

from paperaudit.geometry.coordinates.arrangement import ALIKE, Arrangement
from paperaudit.geometry.figure.figure import Size, SizeRelation
from paperaudit.geometry.theorems.theorem import Instance, Stated, Theorem, segments_equal
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import LengthOf


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


def _alike(arrangement: Arrangement, sides: list[LengthOf]) -> bool:
    lengths = [arrangement.measured(side) for side in sides]
    return max(lengths) - min(lengths) < ALIKE * max(lengths)


THEOREMS = (
    Theorem(
        "perimeter",
        "Each of n equal sides is the n-th part of their sum.",
        "perimeter",
        "common practice, no source",
        _equal_shares,
        fires=("rhombus ABCD", "perimeter of ABCD = 52"),
        silent=("rhombus ABCD", "AB = 13"),
    ),
)
