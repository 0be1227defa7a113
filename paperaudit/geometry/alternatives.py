"""Other derivations of the same answer: one theorem that was used is left out, and the search made again."""

from collections.abc import Iterator, Sequence
from contextlib import suppress

from paperaudit.errors import BudgetExceeded
from paperaudit.geometry.beyond.amounts import NoExactValue
from paperaudit.geometry.beyond.find_further import worked_out
from paperaudit.geometry.beyond.further import Further, Path
from paperaudit.geometry.beyond.reached import Fact
from paperaudit.geometry.beyond.rows import Source
from paperaudit.geometry.budget import Budget
from paperaudit.geometry.figure.notation import Notation
from paperaudit.geometry.linear.examine import Settled
from paperaudit.geometry.linear.line_writer import SILENT
from paperaudit.model.derivation import Derivation
from paperaudit.model.expression import Expression
from paperaudit.model.fact import Given

MOST_TRIED = 24
"""Searches with something left out."""
TRIALS = 60_000
"""Rows that all of these searches may look at."""


def alternatives(
    one: Settled,
    asked: Sequence[Expression],
    givens: tuple[Given, ...],
    notation: Notation,
    first: Derivation,
    most: int = 5,
) -> tuple[Derivation, ...]:
    """Up to `most` really different derivations in all, `first` among them, the shortest first.

    Two are really different if they do not use the same theorems. Every one is worked out and
    measured as the first is.
    """
    found: dict[frozenset[str], tuple[int, Derivation]] = {_theorems(first): (0, first)}
    with suppress(BudgetExceeded):
        for path, derivation in _others(one, asked, givens, notation):
            key = _theorems(derivation)
            if key not in found and not any(key > other for other in found):
                found[key] = (sum(fact.cost for fact in path.facts), derivation)
            if len(found) == most:
                break
    _, *others = found.values()
    return (first, *(derivation for _, derivation in sorted(others, key=lambda pair: pair[0])))


def _others(
    one: Settled, asked: Sequence[Expression], givens: tuple[Given, ...], notation: Notation
) -> Iterator[tuple[Path, Derivation]]:
    further = Further(one.arrangement, one.theory, one.found, (), Budget(TRIALS))
    waiting: list[frozenset[Source]] = [frozenset()]
    seen = set(waiting)
    for _ in range(MOST_TRIED):
        if not waiting:
            return
        without = waiting.pop(0)
        path = next(further.paths(asked, with_letters=False, without=without), None)
        if path is None:
            continue
        with suppress(NoExactValue):
            yield path, worked_out(further.arrangement, path, asked, givens, notation, one.words).derivation
        for source in _used(path):
            more = without | {source}
            if more not in seen:
                seen.add(more)
                waiting.append(more)


def _used(path: Path) -> list[Source]:
    """The theorem instances behind a path, but what the paper itself states, the last line's first."""
    found: dict[Source, None] = {}
    pending: list[Fact] = list(path.facts)
    seen: set[int] = set()
    while pending:
        fact = pending.pop(0)
        if id(fact) in seen:
            continue
        seen.add(id(fact))
        pending.extend(fact.inputs)
        if fact.source is not None and fact.source.theorem not in SILENT:
            found.setdefault(fact.source)
    return list(found)


def _theorems(derivation: Derivation) -> frozenset[str]:
    return frozenset(step.reason.name for step in derivation.steps if step.reason)
