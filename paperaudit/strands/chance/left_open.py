"""A probability that what is given leaves open: two ways to share out the whole that meet it and differ."""

from fractions import Fraction
from itertools import combinations
from math import lcm

from paperaudit.model.derivation import Answer, Case, NotDetermined, NotRead
from paperaudit.strands.chance.regions import BOTH, FIRST, SECOND, WHOLE, Conditional, Region, Search
from paperaudit.strands.numbers.working import require

Parts = dict[int, Fraction]


def left_open(search: Search, wanted: Region | Conditional) -> NotDetermined | NotRead:
    """Two ways to share out the whole in which what is wanted differs; NotRead where none was found."""
    given = [one for one, (how, _) in search.how.items() if not how]
    if search.independent:
        return NotRead("what is given does not settle this probability")
    found: dict[Fraction, Parts] = {}
    for parts in _corners(_rows(given, search)):
        value = _weight(wanted, parts)
        if value is not None:
            found.setdefault(value, parts)
    if len(found) < 2:
        return NotRead("what is given does not settle this probability")
    for parts in found.values():
        _meets(given, parts, search)
    cases = tuple(Case(_described(search, parts, wanted), (Answer(f"{search.lines.shown(value)}"),))
                  for value, parts in (min(found.items()), max(found.items())))  # fmt: skip
    one, other = search.names
    settling = {FIRST, SECOND} <= set(search.known) and BOTH not in search.known
    return NotDetermined(cases, f"whether {one} and {other} are independent" if settling else "")


def _rows(given: list[Region | Conditional], search: Search) -> list[list[Fraction]]:
    """A row of coefficients of the four parts for each given, and that they make up 1."""
    rows = [[Fraction(1)] * 4 + [Fraction(1)]]
    for one in given:
        value = search.known[one]
        if isinstance(one, tuple):
            shared, under = one[0] & one[1], one[1]
            rows.append([(at in shared) - value * (at in under) for at in (1, 2, 3, 4)] + [Fraction(0)])
        else:
            rows.append([Fraction(at in one) for at in (1, 2, 3, 4)] + [value])
    return rows


def _corners(rows: list[list[Fraction]]) -> list[Parts]:
    """The extreme ways to share out the whole: as many parts are 0 as the rows leave open."""
    corners = []
    for count in range(1, 4):
        for zeros in combinations(range(4), count):
            fixed = [[Fraction(at == zero) for at in range(4)] + [Fraction(0)] for zero in zeros]
            solution = _solved([*rows, *fixed])
            if solution is not None and min(solution) >= 0:
                corners.append(dict(enumerate(solution, 1)))
    return corners


def _solved(rows: list[list[Fraction]]) -> list[Fraction] | None:
    """The only solution for the four parts, or None."""
    left, done = [list(row) for row in rows], list[list[Fraction]]()
    for at in range(4):
        pivot = next((row for row in left if row[at]), None)
        if pivot is None:
            return None
        left.remove(pivot)
        pivot = [one / pivot[at] for one in pivot]
        left, done = (
            [[one - row[at] * own for one, own in zip(row, pivot, strict=True)] for row in rows_]
            for rows_ in (left, done)
        )
        done.append(pivot)
    return None if any(row[4] for row in left) else [row[4] for row in done]


def _meets(given: list[Region | Conditional], parts: Parts, search: Search) -> None:
    """Every given, counted over as many things in each part as make all numbers whole."""
    whole = lcm(*(value.denominator for value in parts.values()))
    things = {at: int(value * whole) for at, value in parts.items()}
    require(sum(things.values()) == whole, "the parts make up the whole")
    for one in given:
        inside, among = (one, WHOLE) if isinstance(one, frozenset) else one
        under = sum(count for at, count in things.items() if at in among)
        counted = sum(count for at, count in things.items() if at in among and at in inside)
        require(not under or Fraction(counted, under) == search.known[one], f"{search.text(one)} in a case")


def _weight(of: Region | Conditional, parts: Parts) -> Fraction | None:
    if isinstance(of, tuple):
        below = sum((parts[at] for at in of[1]), Fraction(0))
        return sum((parts[at] for at in of[0] & of[1]), Fraction(0)) / below if below else None
    return sum((parts[at] for at in of & WHOLE), Fraction(0))


def _described(search: Search, parts: Parts, wanted: Region | Conditional) -> str:
    shares = ", ".join(f"{search.text(frozenset((at,)))} = {search.lines.shown(value)}" for at, value in parts.items())
    value = _weight(wanted, parts)
    assert value is not None
    return f"{shares} gives {search.text(wanted)} = {search.lines.shown(value)}"
