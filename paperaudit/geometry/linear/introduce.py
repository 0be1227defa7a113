"""Searches that may call an unknown angle by a letter of their own, where the plain search does not get through."""

from collections.abc import Iterable
from math import lcm

from paperaudit.geometry.budget import Budget
from paperaudit.geometry.figure.figure import Size
from paperaudit.geometry.linear.derive import Assumptions, Node, Search
from paperaudit.geometry.theorems.theorem import Instance, Predicate
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import AngleOf, ArcOf, LengthOf, Letter

FRACTION = 25
"""What fractions of a letter add to the weight of a derivation, in tenths of a line."""
MOST_MULTIPLE = 12


def fresh_letters(taken: Iterable[str]) -> list[Letter]:
    """Letters that a pupil would introduce and the paper does not use, in order of choice."""
    used = set(taken)
    return [Letter(name) for name in ("t", "a", "b", "p", "q", "r", "s", "u", "v", "w") if name not in used]


def search(
    instances: tuple[Instance, ...],
    targets: tuple[Size | Predicate, ...],
    letters: Iterable[str],
    leave_out: frozenset[int] = frozenset(),
    most_introduced: int = 3,
    budget: Budget | None = None,
) -> Search:
    """A search that reached the targets if any did; introduces letters one by one where it must.

    Each introduced letter stands for the unknown size that opens up most; ties go to the cheapest.
    """
    plain = Search(instances, leave_out, budget)
    if plain.run(targets) or not most_introduced:
        return plain
    assumed: Assumptions = ()
    best = plain
    for letter in fresh_letters(letters)[:most_introduced]:
        tried: list[tuple[bool, int, int, int, Assumptions, Search]] = []
        for number, size in enumerate(_candidates(instances, best)):
            attempt = (*assumed, (size, LinearForm[Letter].of(letter)))
            found = Search(instances, leave_out, budget)
            reached = found.run(targets, attempt)
            nodes = [node for target in targets if (node := found.reached(target))]
            cost = sum(node.cost for node in nodes) + (FRACTION if denominator_behind(nodes) > 1 else 0)
            tried.append((not reached, cost, -len(found.known) - 3 * len(found.equations), number, attempt, found))
        if not tried:
            return plain
        missed, _, _, _, assumed, best = min(tried, key=lambda row: row[:4])
        if not missed:
            return _without_fractions(instances, targets, leave_out, assumed, best)
    return plain


def _without_fractions(
    instances: tuple[Instance, ...],
    targets: tuple[Size | Predicate, ...],
    leave_out: frozenset[int],
    assumed: Assumptions,
    found: Search,
) -> Search:
    """The same search with the last letter's size called 2t, 3t and so on, if that keeps fractions out of the lines."""
    multiple = denominator_behind([node for target in targets if (node := found.reached(target))])
    if not 1 < multiple <= MOST_MULTIPLE:
        return found
    *rest, (size, form) = assumed
    again = Search(instances, leave_out)
    reached = again.run(targets, (*rest, (size, form.times(multiple))))
    whole = denominator_behind([node for target in targets if (node := again.reached(target))]) == 1
    return again if reached and whole else found


def denominator_behind(nodes: Iterable[Node]) -> int:
    """The least common denominator of the multiples of letters in the lines behind some nodes."""
    found, pending, seen = 1, list(nodes), set()
    while pending:
        node = pending.pop()
        if id(node) not in seen:
            seen.add(id(node))
            pending.extend(node.inputs)
            found = lcm(found, *(value.denominator for value in node.form.terms.values()))
    return found


def contradicting(instances: tuple[Instance, ...], letters: Iterable[str], leave_out: frozenset[int]) -> Search:
    """A search through everything that follows, with one letter introduced where that brings out a contradiction."""
    plain = Search(instances, leave_out)
    plain.run()
    if plain.clash is None and not plain.impossible_sizes():
        for size in _candidates(instances, plain):
            found = Search(instances, leave_out)
            found.run((), ((size, LinearForm[Letter].of(fresh_letters(letters)[0])),))
            if found.clash is not None or found.impossible_sizes():
                return found
    return plain


def _candidates(instances: tuple[Instance, ...], reached: Search) -> list[Size]:
    sizes = dict.fromkeys(
        size
        for instance in instances
        for size in instance.relation.terms
        if isinstance(size, AngleOf | ArcOf | LengthOf) and size not in reached.known
    )
    return [
        size
        for size in sizes
        if not ((isinstance(size, AngleOf) and size.reflex) or (isinstance(size, ArcOf) and size.major))
    ]
