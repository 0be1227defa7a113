"""Proves with z3 that no lengths meet the givens: theorems that hold in the figure, as equations of real numbers."""

import math
from collections.abc import Iterable
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any

from paperaudit.geometry.amounts import form_expression
from paperaudit.geometry.arrangement import Arrangement
from paperaudit.geometry.canonical import canonical
from paperaudit.geometry.explore import arrangements
from paperaudit.geometry.figure import Balance, Figure, Size, SizeRelation
from paperaudit.geometry.further import Further
from paperaudit.geometry.loosened import without_lengths
from paperaudit.geometry.reach import Fact, Reach
from paperaudit.geometry.realise import realise
from paperaudit.geometry.rows import Row
from paperaudit.geometry.theorems import instances
from paperaudit.geometry.theorems.theorem import Equation, Instance, Stated
from paperaudit.geometry.theory import Labels, Theory, close
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import (
    AngleOf,
    ArcOf,
    Expression,
    Function,
    Letter,
    Measured,
    Negative,
    Number,
    Power,
    Product,
    Quotient,
    Root,
    Sum,
    leaves,
)

SKELETON_SEEDS = range(12)
MILLISECONDS = 400
"""What one question to z3 may take."""
ENCLOSED = 10**12
"""A sine that is no fraction is enclosed between two with this denominator."""
MOST_ROWS = 400


@dataclass(frozen=True, slots=True)
class Unsolvable:
    """Givens whose lengths cannot be met, the theorems that show it, and the arrangement in which they hold."""

    clash: tuple[int, ...]
    equations: tuple[Equation, ...]
    arrangement: Arrangement


def refute_lengths(figure: Figure) -> Unsolvable | None:
    """The shortest refutation if every arrangement of the figure without its lengths has one; None proves nothing."""
    bare = without_lengths(figure)
    if bare == figure:
        return None
    drawings = realise(bare, SKELETON_SEEDS)
    shortest: Unsolvable | None = None
    for one in arrangements(bare, drawings) if drawings else ():
        found = _refuted(figure, Arrangement(bare, one.drawing))
        if found is None:
            return None
        if shortest is None or len(found.clash) < len(shortest.clash):
            shortest = found
    return shortest


def _refuted(figure: Figure, arrangement: Arrangement) -> Unsolvable | None:
    found = tuple(instances(arrangement))
    further = Further(arrangement, close(arrangement, found), found)
    reach = Reach(further.rows, further.budget)
    reach.start()
    reach.run(())
    rows = _holding(further.rows, reach)[:MOST_ROWS]
    stated = [
        condition
        for condition in figure.conditions
        if condition not in arrangement.figure.conditions and isinstance(condition, SizeRelation | Balance)
    ]
    problem = _Problem(arrangement, further.theory)
    for number, (row, labels) in enumerate(rows):
        problem.state(f"row{number}", *_sides(row), labels)
    for number, condition in enumerate(stated):
        problem.state(f"given{number}", *_stated_sides(condition, arrangement), frozenset((condition.label,)))
    core = problem.core()
    if core is None:
        return None
    core = _thinned(problem, core)
    labels = frozenset(label for name in core for label in problem.labels[name])
    used = tuple(row.source for number, (row, _) in enumerate(rows) if f"row{number}" in core)
    equations = tuple(source for source in used if isinstance(source, Equation))
    return Unsolvable(tuple(sorted(label for label in labels if label >= 0)), equations, arrangement)


def _thinned(problem: "_Problem", core: frozenset[str]) -> frozenset[str]:
    """The core without members that it does not need."""
    for name in sorted(core):
        smaller = problem.core(core - {name})
        if smaller is not None:
            core = smaller
    return core


def _holding(rows: Iterable[Row], reach: Reach) -> list[tuple[Row, Labels]]:
    """The equations whose premises follow from the figure without its lengths, with the givens behind them."""
    memo: dict[int, Labels] = {}
    found = []
    for row in rows:
        if row.conclusion is not None or row.source is None or not any(_is_length(size) for size in row.terms):
            continue
        labels: set[int] = set()
        for premise in row.premises:
            if isinstance(premise, Stated):
                labels.add(premise.label)
            elif premise in reach.facts:
                labels |= _support(reach.facts[premise], memo)
            else:
                break
        else:
            found.append((row, frozenset(labels)))
    return sorted(found, key=lambda pair: pair[0].weight)


def _is_length(size: Size) -> bool:
    return not isinstance(size, AngleOf | ArcOf | Letter)


def _support(fact: Fact, memo: dict[int, Labels]) -> Labels:
    if id(fact) not in memo:
        own = (
            {premise.label for premise in fact.source.premises if isinstance(premise, Stated)} if fact.source else set()
        )
        memo[id(fact)] = frozenset(own.union(*(_support(before, memo) for before in fact.inputs)))
    return memo[id(fact)]


def _sides(row: Row) -> tuple[Expression, Expression]:
    if isinstance(row.source, Equation):
        return row.source.left, row.source.right
    assert isinstance(row.source, Instance)
    return form_expression(row.source.relation), Number(Fraction(0))


def _stated_sides(condition: SizeRelation | Balance, arrangement: Arrangement) -> tuple[Expression, Expression]:
    if isinstance(condition, Balance):
        return canonical(condition.left, arrangement), canonical(condition.right, arrangement)
    return form_expression(arrangement.canonical_form(condition.form)), Number(Fraction(0))


@dataclass(slots=True)
class _Problem:
    """Equations over positive real sizes, each named so that a core can be read off."""

    arrangement: Arrangement
    theory: Theory
    labels: dict[str, Labels] = field(default_factory=dict)
    _names: dict[Expression, Any] = field(default_factory=dict)
    _always: list[Any] = field(default_factory=list)
    _stated: dict[str, Any] = field(default_factory=dict)

    def state(self, name: str, left: Expression, right: Expression, labels: Labels) -> None:
        """Add an equation; what z3 is not told of only makes the proof harder to find."""
        try:
            behind: set[int] = set()
            one, below = self._term(left, behind)
            two, other = self._term(right, behind)
        except _NotTold:
            return
        self._stated[name] = one * other == two * below
        self.labels[name] = labels | behind

    def core(self, names: frozenset[str] | None = None) -> frozenset[str] | None:
        """The names of equations that cannot hold together, None where z3 finds none in its time."""
        import z3

        solver = z3.Solver()
        solver.set("timeout", MILLISECONDS)
        for always in self._always:
            solver.add(always)
        for name, equation in self._stated.items():
            if names is None or name in names:
                solver.assert_and_track(equation, name)
        if solver.check() != z3.unsat:
            return None
        return frozenset(str(name) for name in solver.unsat_core())

    def _term(self, expression: Expression, behind: set[int]) -> tuple[Any, Any]:
        """Numerator and denominator of an expression, all denominators positive."""
        import z3

        one = z3.Q(1, 1)
        match expression:
            case Number(value):
                return z3.Q(value.numerator, value.denominator), one
            case Measured(amount):
                return self._term(amount, behind)
            case Negative(operand):
                above, below = self._term(operand, behind)
                return -above, below
            case Sum(terms):
                total, under = z3.Q(0, 1), one
                for term in terms:
                    above, below = self._term(term, behind)
                    total, under = total * below + above * under, under * below
                return total, under
            case Product(factors):
                product, under = one, one
                for factor in factors:
                    above, below = self._term(factor, behind)
                    product, under = product * above, under * below
                return product, under
            case Quotient(numerator, denominator):
                above, below = self._term(numerator, behind)
                other, over = self._term(denominator, behind)
                return above * over, below * other
            case Power(base, Number(exponent)) if exponent in (2, 3):
                above, below = self._term(base, behind)
                return (above * above, below * below) if exponent == 2 else (above**3, below**3)
            case Root(radicand, 2):
                return self._root(expression, radicand, behind), one
            case Function(name, argument):
                return self._function(name, argument, behind), one
        if leaves(expression) == (expression,) and not isinstance(expression, AngleOf | ArcOf):
            return self._size(expression), one
        raise _NotTold

    def _size(self, size: Expression) -> Any:
        import z3

        if size not in self._names:
            variable = z3.Real(f"v{len(self._names)}")
            self._names[size] = variable
            if size == Letter("π"):
                self._enclose(variable, math.pi)
            elif not isinstance(size, Letter):
                self._always.append(variable > 0)
        return self._names[size]

    def _enclose(self, variable: Any, value: float) -> None:
        import z3

        low = math.floor(value * ENCLOSED) - 1
        self._always += [variable >= z3.Q(low, ENCLOSED), variable <= z3.Q(low + 3, ENCLOSED)]

    def _root(self, expression: Expression, radicand: Expression, behind: set[int]) -> Any:
        import z3

        if expression not in self._names:
            above, below = self._term(radicand, behind)
            variable = z3.Real(f"v{len(self._names)}")
            self._names[expression] = variable
            self._always += [variable >= 0, variable * variable * below == above]
        return self._names[expression]

    def _function(self, name: str, argument: Expression, behind: set[int]) -> Any:
        """The sine, cosine or tangent of an angle that the angles alone settle, between two fractions."""
        import z3

        inside = argument.amount if isinstance(argument, Measured) else argument
        if isinstance(inside, AngleOf):
            form: LinearForm[Size] = LinearForm.of(inside)
            degrees = self.theory.value(form)
            if degrees is None:
                raise _NotTold
            behind |= self.theory.support(form)
        elif isinstance(inside, Number):
            degrees = inside.value
        else:
            raise _NotTold
        key = Function(name, Number(degrees))  # type: ignore[arg-type]
        if key not in self._names:
            variable = z3.Real(f"v{len(self._names)}")
            self._names[key] = variable
            self._enclose(
                variable, {"sin": math.sin, "cos": math.cos, "tan": math.tan}[name](math.radians(float(degrees)))
            )
        return self._names[key]


class _NotTold(Exception):
    """An expression that z3 is not told of; caught where equations are stated."""
