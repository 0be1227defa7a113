"""What the linear theory adds to the search beyond it, and what it makes of what that search has reached."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from paperaudit.geometry.beyond.reach import Reach
from paperaudit.geometry.beyond.reached import Fact
from paperaudit.geometry.beyond.rows import Row
from paperaudit.geometry.budget import Budget
from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.linear.derive import Node, Search
from paperaudit.geometry.linear.introduce import fresh_letters
from paperaudit.geometry.linear.introduce import search as linear_search
from paperaudit.geometry.linear.theory import Theory, close
from paperaudit.geometry.theorems.theorem import (
    AnglesEqual,
    Instance,
    LinesParallel,
    Predicate,
    SegmentsEqual,
    Stated,
)
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import AngleOf

MOST_LINEAR = 12
"""Sizes that the linear search is asked for when the plain search has come to its end."""
MOST_PARALLEL = 3
FORMED = 30
"""Weight of an equality of two angles that is shown by calling one of them by a letter."""


@dataclass(frozen=True, slots=True)
class _Grown:
    """The linear theory with what a search has reached beyond it, and the facts behind each new instance."""

    theory: Theory
    found: tuple[Instance, ...]
    behind: dict[int, tuple[Fact, ...]]

    def fact(self, subject: object, node: Node, weight: int = 0) -> Fact:
        """A fact of the linear search, after the facts that its lines rest on."""
        inputs = tuple(dict.fromkeys(fact for used in _instances(node) for fact in self.behind.get(id(used), ())))
        cost = weight + node.cost + sum(fact.cost for fact in inputs)
        return Fact("linear", subject, {}, None, inputs, cost, node)  # type: ignore[arg-type]


def _instances(node: Node) -> Iterator[Instance]:
    seen: set[int] = set()
    pending = [node]
    while pending:
        one = pending.pop()
        if id(one) not in seen:
            seen.add(id(one))
            pending.extend(one.inputs)
            if one.instance is not None:
                yield one.instance


@dataclass(slots=True)
class LinearFacts:
    """The linear theory of an arrangement beside the rows of the search that is not linear."""

    arrangement: Arrangement
    theory: Theory
    found: tuple[Instance, ...]
    rows: Sequence[Row]
    budget: Budget
    _last: _Grown | None = None

    def beyond(self, reached: Reach) -> Iterable[Fact]:
        """Sizes, equal angles and parallels that the theory settles, with what is reached, and the search missed."""
        grown = self._grown(reached)
        letters = self.arrangement.figure.letters
        asked = 0
        for size in dict.fromkeys(size for row in self.rows for size in row.terms):
            if reached.reached(size) or grown.theory.value(LinearForm.of(size)) is None:
                continue
            asked += 1
            if asked > MOST_LINEAR:
                break
            node = linear_search(grown.found, (size,), letters, budget=self.budget).reached(size)
            if node is not None:
                yield grown.fact(size, node)
        wanted = dict.fromkeys(premise for row in self.rows for premise in row.premises if premise not in reached.facts)
        yield from self._equal_angles(grown, [one for one in wanted if isinstance(one, AnglesEqual)])
        yield from self._parallels(grown, [one for one in wanted if isinstance(one, LinesParallel)])

    def _grown(self, reached: Reach) -> _Grown:
        behind: dict[int, tuple[Fact, ...]] = {}
        new: list[Instance] = []
        known = {id(instance) for instance in self.found}
        for row in self.rows:
            source = row.source
            if not isinstance(source, Instance) or row.conclusion is not None or id(source) in known:
                continue
            facts = _settled(reached, row.premises)
            if facts is not None and source.relation.terms and self.theory.value(source.relation) != 0:
                instance = Instance(
                    source.theorem, (), source.relation, None, source.about, source.weight, source.skill
                )
                behind[id(instance)] = facts
                new.append(instance)
        for predicate, fact in reached.facts.items():
            if isinstance(predicate, LinesParallel | SegmentsEqual) and not self._has(predicate):
                about = fact.source.about if fact.source is not None else ""
                instance = Instance("given", (), LinearForm(), predicate, about, 1)
                behind[id(instance)] = (fact,)
                new.append(instance)
        if not new:
            return _Grown(self.theory, self.found, {})
        if self._last is None or len(self._last.behind) != len(new):
            found = (*self.found, *new)
            self._last = _Grown(close(self.arrangement, found), found, behind)
        return self._last

    def _has(self, predicate: Predicate) -> bool:
        if predicate in self.theory.predicates:
            return True
        return isinstance(predicate, SegmentsEqual) and predicate.first == predicate.second

    def _equal_angles(self, grown: _Grown, wanted: list[AnglesEqual]) -> Iterable[Fact]:
        """By calling one of the two a letter and finding that the other is that letter too."""
        searches: dict[AngleOf, Search] = {}
        (letter, *_) = fresh_letters(self.arrangement.figure.letters)
        called = LinearForm.of(letter)
        for equal in wanted:
            difference = LinearForm.of(equal.first) - LinearForm.of(equal.second)
            if equal.first == equal.second or grown.theory.value(difference) != Fraction(0):  # type: ignore[arg-type]
                continue
            if equal.first not in searches:
                searches[equal.first] = Search(grown.found, budget=self.budget)
                searches[equal.first].run((), ((equal.first, called),))
            node = searches[equal.first].known.get(equal.second)
            if node is not None and node.form == called:
                yield grown.fact(equal, node, FORMED)

    def _parallels(self, grown: _Grown, wanted: list[LinesParallel]) -> Iterable[Fact]:
        """Lines whose parallelism takes a letter to show, as by co-interior angles without a value."""
        asked = 0
        for parallel in wanted:
            if parallel not in grown.theory.predicates or asked >= MOST_PARALLEL:
                continue
            asked += 1
            node = linear_search(grown.found, (parallel,), self.arrangement.figure.letters).reached(parallel)
            if node is not None:
                yield grown.fact(parallel, node)


def _settled(reached: Reach, premises: Sequence[Predicate]) -> tuple[Fact, ...] | None:
    """The facts of some premises, None where one is not settled."""
    facts = []
    for premise in premises:
        if isinstance(premise, Stated):
            continue
        fact = reached.facts.get(premise)
        if fact is None:
            return None
        facts.append(fact)
    return tuple(facts)
