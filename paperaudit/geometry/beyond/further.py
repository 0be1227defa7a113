"""Searches beyond linear relations, widened step by step: linear results, letters, lines drawn in."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from typing import get_args

from paperaudit.geometry.beyond.combining import equal_ratios
from paperaudit.geometry.beyond.linear_facts import LinearFacts
from paperaudit.geometry.beyond.reach import Reach
from paperaudit.geometry.beyond.reached import Assumed, Fact
from paperaudit.geometry.beyond.reuse import with_lines_reused
from paperaudit.geometry.beyond.rows import Row, Source, rows_of
from paperaudit.geometry.beyond.slopes import value_and_slopes
from paperaudit.geometry.budget import Budget
from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.canonical import canonical
from paperaudit.geometry.figure.figure import Size
from paperaudit.geometry.linear.introduce import fresh_letters
from paperaudit.geometry.linear.theory import Theory
from paperaudit.geometry.theorems.further import further_instances
from paperaudit.geometry.theorems.theorem import Claimed, Equation, Instance, Predicate, Proportional, SegmentsEqual
from paperaudit.model.expression import AngleOf, ArcOf, AreaOf, Expression, LengthOf, Letter, Number, Power, Quotient

MOST_ROUNDS = 3
"""Times that the linear theory is asked what it makes of what was reached beyond it."""
MOST_TRIED = 40
"""Sizes that are tried as the one to call by a letter."""
MOST_INTRODUCED = 2


@dataclass(frozen=True, slots=True)
class Path:
    """The facts that settle the targets, in their order, and the letters introduced on the way."""

    facts: tuple[Fact, ...]
    reach: Reach
    introduced: tuple[tuple[Size, Letter], ...] = ()


@dataclass(slots=True)
class Further:
    """One arrangement, its theory, and the rows of every theorem there."""

    arrangement: Arrangement
    theory: Theory
    found: tuple[Instance, ...]
    extra: tuple[Source, ...] = ()
    budget: Budget = field(default_factory=Budget)
    rows: list[Row] = field(default_factory=list)

    def __post_init__(self) -> None:
        sources = (*self.found, *further_instances(self.arrangement), *self.extra)
        self.rows = rows_of(self.arrangement, sources)

    def paths(
        self,
        targets: Sequence[Size | Predicate | Expression],
        leave_out: frozenset[int] = frozenset(),
        with_letters: bool = True,
        without: frozenset[Source] = frozenset(),
        by_inverse: bool = True,
    ) -> Iterator[Path]:
        """Derivations of all targets, the plain one, then those `with_letters` introduced, cheapest first.

        A path may turn out not to be one that a pupil can work out; the next is then for the taking.
        `without` are theorem instances not to be used, `by_inverse` as for Reach. Raises BudgetExceeded.
        """
        rows, wanted = self._aims(targets)
        if without:
            rows = [row for row in rows if row.source not in without]
        plain = Reach(rows, self.budget, leave_out, by_inverse)
        plain.start()
        if plain.run(wanted) or (not leave_out and self._widened(plain, rows, wanted)):
            yield _path(plain if without else with_lines_reused(plain, wanted), wanted)
        if with_letters:
            yield from self._with_letters(plain, rows, wanted)

    def exhausted(self) -> Reach:
        """The plain search, with what the linear theory adds to it, run to its end."""
        reach = Reach(self.rows, self.budget)
        reach.start()
        reach.run(())
        self._widened(reach, self.rows, ())
        return reach

    def _widened(self, reach: Reach, rows: Sequence[Row], wanted: tuple[Size | Predicate, ...]) -> bool:
        """Go on with what the linear theory makes of what is reached, as often as that leads on."""
        with self.budget.part() as budget:
            linear = LinearFacts(self.arrangement, self.theory, self.found, rows, budget)
            for _ in range(MOST_ROUNDS):
                new = [*linear.beyond(reach), *equal_ratios(reach, _wanted_ratios(reach))]
                for fact in new:
                    reach.add(fact)
                if reach.run(wanted) and wanted:
                    return True
                if not new:
                    break
        return False

    def _aims(self, targets: Sequence[Size | Predicate | Expression]) -> tuple[list[Row], tuple[Size | Predicate, ...]]:
        """The rows with one more for each target that is no single size, and what is to be reached."""
        rows = list(self.rows)
        wanted: list[Size | Predicate] = []
        for number, target in enumerate(targets):
            if isinstance(target, Predicate):
                wanted.append(target)
                continue
            expression = canonical(target, self.arrangement)
            if isinstance(expression, get_args(Size)):
                wanted.append(expression)
            else:
                _, slopes = value_and_slopes(expression, self.arrangement.measured)
                wanted.append(Claimed(number))
                rows.append(Row(None, slopes, (), Claimed(number), 2))
                rows += self._as_ratio(expression, Claimed(number))
        return rows, tuple(wanted)

    def _as_ratio(self, asked: Expression, claim: Claimed) -> Iterator[Row]:
        """Rows by which a theorem says what a ratio asked for is, without the two sizes themselves."""
        for row in self.rows:
            source = row.source
            said = isinstance(source, Equation) and isinstance(asked, Quotient) and ratio_said(source, asked)
            if said and row.conclusion is None:
                _, slopes = value_and_slopes(said.right, self.arrangement.measured)
                yield Row(said, slopes, said.premises, claim, said.weight)

    def _with_letters(self, plain: Reach, rows: list[Row], wanted: tuple[Size | Predicate, ...]) -> Iterator[Path]:
        """Searches in which one or two unknown sizes are called by a letter."""
        assumed: Assumed = ()
        best = plain
        linear = [fact for fact in (*plain.facts.values(), *plain.numeric.values()) if fact.kind == "linear"]
        for letter in fresh_letters(self.arrangement.figure.letters)[:MOST_INTRODUCED]:
            reached: list[tuple[int, int, Assumed, Reach]] = []
            missed: list[tuple[int, int, Assumed, Reach]] = []
            for number, size in enumerate(self._candidates(best, plain.by_inverse)[:MOST_TRIED]):
                attempt = (*assumed, (size, letter))
                search = Reach(rows, self.budget, plain.leave_out, plain.by_inverse)
                search.start(attempt, linear)
                if search.run(wanted):
                    cost = sum(fact.cost for target in wanted if (fact := search.reached(target)))
                    reached.append((cost, number, attempt, search))
                else:
                    missed.append((-len(search.known) - 3 * len(search.equations), number, attempt, search))
            for _, _, attempt, search in sorted(reached, key=lambda row: row[:2]):
                yield _path(search, wanted, attempt)
            if not missed:
                return
            _, _, assumed, best = min(missed, key=lambda row: row[:2])

    def _candidates(self, reached: Reach, angles: bool) -> list[Size]:
        """Unknown lengths and areas, and `angles`, in the order of how many rows they stand in."""
        counts: dict[Size, int] = {}
        kinds = (AngleOf, ArcOf, AreaOf, LengthOf) if angles else (AreaOf, LengthOf)
        for row in self.rows:
            for size in row.terms:
                if isinstance(size, kinds) and size not in reached.known:
                    counts[size] = counts.get(size, 0) + 1
        return sorted(counts, key=lambda size: -counts[size])


def ratio_said(source: Equation, asked: Quotient) -> Equation | None:
    """The equation with the ratio asked for on its left, where it has that ratio or its inverse there."""
    left, right = source.left, source.right
    if not isinstance(left, Quotient):
        return None
    sizes = (asked.numerator, asked.denominator)
    if (left.numerator, left.denominator) == sizes:
        return replace(source, left=asked)
    turned = _inverse(right) if (left.denominator, left.numerator) == sizes else None
    return None if turned is None else replace(source, left=asked, right=turned)


def _inverse(ratio: Expression) -> Expression | None:
    match ratio:
        case Quotient(above, below):
            return Quotient(below, above)
        case Power(Quotient(above, below), exponent):
            return Power(Quotient(below, above), exponent)
        case Number(value, form) if value:
            return Number(1 / value, form)
    return None


def _wanted_ratios(reach: Reach) -> list[Proportional | SegmentsEqual]:
    """Equal ratios and segments that theorems ask for and that were not reached."""
    premises = dict.fromkeys(premise for row in reach.rows for premise in row.premises)
    return [
        premise
        for premise in premises
        if isinstance(premise, Proportional | SegmentsEqual) and premise not in reach.facts
    ]


def _path(reach: Reach, wanted: tuple[Size | Predicate, ...], introduced: Assumed = ()) -> Path:
    facts = tuple(fact for target in wanted if (fact := reach.reached(target)))
    return Path(facts, reach, introduced)
