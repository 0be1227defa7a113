"""Derivations that use again what they have written: an equal side, not the same working a second time.

The search weighs each way to a size by itself, so that the way over a line that is there already looks as
long as the line itself. Here what the first parts of an answer rest on costs nothing for the parts after it.
"""

from collections.abc import Iterable
from dataclasses import replace

from paperaudit.geometry.beyond.reach import Reach
from paperaudit.geometry.beyond.reached import Fact
from paperaudit.geometry.figure.figure import Size
from paperaudit.geometry.theorems.theorem import Predicate


def with_lines_reused(search: Reach, wanted: tuple[Size | Predicate, ...]) -> Reach:
    """The search, or another with the same result that writes fewer lines."""
    best, least = search, len(_behind(_reached(search, wanted)))
    parts = _parts(search, wanted)
    linear = [fact for fact in (*search.facts.values(), *search.numeric.values()) if fact.kind == "linear"]
    written: list[Fact] = []
    for part in parts[:-1]:
        written.append(part)
        again = Reach(search.rows, search.budget, search.leave_out, search.by_inverse)
        again.start((), (*_for_nothing(written), *linear))
        if not again.run(wanted):
            return best
        lines = len(_behind(_reached(again, wanted)))
        if lines < least:
            best, least = again, lines
    return best


def _parts(search: Reach, wanted: tuple[Size | Predicate, ...]) -> list[Fact]:
    """The facts that the answer is put together from, the cheapest first."""
    facts = _reached(search, wanted)
    parts = list(facts[0].inputs) if len(facts) == 1 else facts
    return sorted(parts, key=lambda fact: fact.cost)


def _reached(search: Reach, wanted: tuple[Size | Predicate, ...]) -> list[Fact]:
    return [fact for target in wanted if (fact := search.reached(target)) is not None]


def _behind(facts: Iterable[Fact]) -> dict[int, Fact]:
    """Some facts and all that they rest on, inputs before what rests on them."""
    found: dict[int, Fact] = {}

    def take(fact: Fact) -> None:
        if id(fact) not in found:
            for before in fact.inputs:
                take(before)
            found[id(fact)] = fact

    for fact in facts:
        take(fact)
    return found


def _for_nothing(facts: Iterable[Fact]) -> list[Fact]:
    """Copies of some facts, and of all that they rest on, that cost nothing."""
    copies: dict[int, Fact] = {}
    for number, fact in _behind(facts).items():
        copies[number] = replace(fact, cost=0, inputs=tuple(copies[id(before)] for before in fact.inputs))
    return list(copies.values())
