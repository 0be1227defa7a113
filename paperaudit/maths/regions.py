"""The regions of a Venn diagram: which of them make up a set, and what follows from how many are in some sets."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import product
from typing import TypeAlias

from paperaudit.model.set_task import Combined, Complement, NamedSet, SetExpression

Region: TypeAlias = tuple[bool, ...]
"""For each set, in the order of their names, whether the region lies inside it."""


def regions(names: Sequence[str]) -> tuple[Region, ...]:
    """All regions of a diagram of these sets, the one inside all of them first.

    >>> regions(("A",))
    ((True,), (False,))
    """
    return tuple(product((True, False), repeat=len(names)))


def within(expression: SetExpression, region: Region, names: Sequence[str]) -> bool:
    """Whether a region is part of a set."""
    match expression:
        case NamedSet("ξ"):
            return True
        case NamedSet("∅"):
            return False
        case NamedSet(name):
            return region[names.index(name)]
        case Complement(inner):
            return not within(inner, region, names)
        case Combined(left, sign, right):
            one, other = within(left, region, names), within(right, region, names)
            return (one or other) if sign == "∪" else (one and other) if sign == "∩" else (one and not other)


@dataclass(frozen=True, slots=True)
class Row:
    """What some regions hold together."""

    held: frozenset[Region]
    total: Fraction
    text: str = ""


def row_of(expression: SetExpression, total: int, names: Sequence[str], text: str = "") -> Row:
    """The regions of a set with the number of its members."""
    held = frozenset(region for region in regions(names) if within(expression, region, names))
    return Row(held, Fraction(total), text)


def settled(rows: Iterable[Row], wanted: frozenset[Region]) -> Fraction | None:
    """What the rows settle for the sum of the wanted regions, by elimination; None where it stays open.

    >>> one, other = (True,), (False,)
    >>> settled([Row(frozenset({one, other}), Fraction(30)), Row(frozenset({one}), Fraction(18))], frozenset({other}))
    Fraction(12, 1)
    """
    reduced: list[tuple[dict[Region, Fraction], Fraction]] = []
    for row in rows:
        shares = {region: Fraction(1) for region in row.held}
        shares, total = _reduced(shares, row.total, reduced)
        if shares:
            reduced.append((shares, total))
    shares, total = _reduced({region: Fraction(1) for region in wanted}, Fraction(0), reduced)
    return None if shares else -total


def _reduced(
    shares: dict[Region, Fraction], total: Fraction, rows: Sequence[tuple[dict[Region, Fraction], Fraction]]
) -> tuple[dict[Region, Fraction], Fraction]:
    """A row less multiples of the others, each of which clears its first region."""
    for other, amount in rows:
        pivot = min(other)
        factor = shares.get(pivot, Fraction(0)) / other[pivot]
        if factor:
            total -= factor * amount
            for region, share in other.items():
                shares[region] = shares.get(region, Fraction(0)) - factor * share
            shares = {region: share for region, share in shares.items() if share}
    return shares, total
