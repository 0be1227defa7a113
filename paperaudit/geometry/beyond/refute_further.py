"""Proves with z3 that no lengths meet the givens: theorems that hold in the figure, as equations of real numbers."""

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from paperaudit.geometry.beyond.amounts import Value, form_expression, fraction_of, whole_amount
from paperaudit.geometry.beyond.further import Further
from paperaudit.geometry.beyond.further_texts import Texts
from paperaudit.geometry.beyond.reach import Reach
from paperaudit.geometry.beyond.reached import Fact
from paperaudit.geometry.beyond.real_equations import Problem
from paperaudit.geometry.beyond.rows import Row
from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.explore import arrangements
from paperaudit.geometry.coordinates.realise import realise
from paperaudit.geometry.figure.canonical import canonical
from paperaudit.geometry.figure.figure import Balance, Figure, Size, SizeRelation
from paperaudit.geometry.figure.loosened import without_lengths
from paperaudit.geometry.figure.notation import Notation
from paperaudit.geometry.linear.theory import Labels, close
from paperaudit.geometry.theorems import ALL, instances
from paperaudit.geometry.theorems.further import FURTHER
from paperaudit.geometry.theorems.theorem import Equation, Instance, Stated
from paperaudit.maths.write import write
from paperaudit.model.derivation import Impossible
from paperaudit.model.expression import (
    AngleOf,
    ArcOf,
    AreaOf,
    Expression,
    Letter,
    Number,
    leaves,
)
from paperaudit.model.fact import Given

SKELETON_SEEDS = range(12)
MOST_ROWS = 400

SAYS = {theorem.name: theorem.says for theorem in reversed((*ALL, *FURTHER)) if theorem.name != "given"}


@dataclass(frozen=True, slots=True)
class Unsolvable:
    """Givens whose lengths cannot be met, the theorems that show it, and the arrangement in which they hold."""

    clash: tuple[int, ...]
    equations: tuple[Equation, ...]
    arrangement: Arrangement
    stated: tuple[SizeRelation | Balance, ...]


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
    problem = Problem(arrangement, further.theory)
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
    return Unsolvable(tuple(sorted(label for label in labels if label >= 0)), equations, arrangement, tuple(stated))


def _thinned(problem: "Problem", core: frozenset[str]) -> frozenset[str]:
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


def no_lengths_outcome(found: Unsolvable, givens: tuple[Given, ...], notation: Notation) -> Impossible:
    """The clash as the texts of its givens, and the theorems with the given values put in."""
    texts = Texts(found.arrangement, notation)
    stated = _stated_values(found)
    lines = []
    for equation in found.equations:
        names = f"{write(texts.named(equation.left))} = {write(texts.named(equation.right))}"
        put = f"{write(texts.put_in(equation.left, stated))} = {write(texts.put_in(equation.right, stated))}"
        says = SAYS.get(equation.theorem, "")
        lines.append(f"{names}: {says[0].lower()}{says[1:]}" if says else names)
        if put != names:
            lines.append(f"With the sizes given this is {put}.")
    lines.append("No lengths meet all of this at once.")
    clash = tuple(dict.fromkeys(givens[label].text for label in found.clash))
    return Impossible(clash, tuple(lines))


def _leaves_open(expression: Expression) -> bool:
    """Whether anything but numbers stands in an expression."""
    return any(not isinstance(leaf, Number) for leaf in leaves(expression))


def _stated_values(found: Unsolvable) -> dict[Size, Value]:
    """The sizes to which the paper gives a number: by the figure's own conditions of one size."""
    values: dict[Size, Value] = {}
    for condition in (*found.arrangement.figure.conditions, *found.stated):
        if isinstance(condition, SizeRelation) and len(condition.form.terms) == 1:
            form = found.arrangement.canonical_form(condition.form)
            for size, share in form.terms.items():
                if not isinstance(size, Letter):
                    values[size] = whole_amount(-Fraction(form.constant) / share)
        elif isinstance(condition, Balance) and not _leaves_open(condition.right):
            area = canonical(condition.left, found.arrangement)
            if isinstance(area, AreaOf):
                values[area] = fraction_of(condition.right, {})
    return values
