"""Letters that the givens settle one after the other, worked out before what is asked for them is derived."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.exact import NotSurd, rational_value
from paperaudit.maths.linear_terms import NotLinear
from paperaudit.maths.measure import UnitClash
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.write import write
from paperaudit.model.ask import Solve
from paperaudit.model.derivation import Derivation, Derived, NotRead, Outcome, Step, StepKind
from paperaudit.model.expression import Expression, Letter, Negative, Number, Relation, letters_of
from paperaudit.model.reading import Reading
from paperaudit.strands.calculating import calculated, calculation_steps, continued_steps, skill_of
from paperaudit.strands.equation_checks import letters_in
from paperaudit.strands.finishing import ChecksDisagree
from paperaudit.strands.functions_given import equations_with_functions
from paperaudit.strands.solving_steps import solved
from paperaudit.strands.substitution import numbers_given, with_numbers
from paperaudit.strands.unknowns import Stated, equations_given

_LONGEST = 20
_FAULTS = (NotLinear, NoValue, NotSurd, UnitClash, BudgetExceeded, ChecksDisagree)


@dataclass(slots=True)
class Settled:
    """Numbers found so far with the lines to them and the texts of the givens that these rest on."""

    values: dict[str, Expression] = field(default_factory=dict)
    steps: list[Step] = field(default_factory=list)
    used: list[str] = field(default_factory=list)


class ChainedStrand:
    """Takes equations to solve whose other letters the givens settle in some steps."""

    name = "equations"

    def __init__(self, derive: Callable[[Reading], tuple[str, Outcome]]) -> None:
        self.derive_further = derive

    def recognises(self, reading: Reading) -> bool:
        """Whether the equations have letters besides those asked for, and the givens are equations in letters."""
        if reading.ask is None or not isinstance(reading.ask.task, Solve):
            return False
        task = reading.ask.task
        others = {name for relation in task.relations for name in letters_in(relation)} - set(task.letters)
        try:
            given, _ = _equations(reading)
        except _FAULTS:
            return False
        if not task.letters or not others or not given or len(given) > _LONGEST or _plain(reading, others):
            return False
        try:
            return bool(others & {*settled(given).values})
        except _FAULTS:
            return False

    def derive(self, reading: Reading) -> Outcome:
        """The answer behind the lines that settle the other letters."""
        assert reading.ask is not None and isinstance(reading.ask.task, Solve)
        task = reading.ask.task
        try:
            given, functions = _equations(reading)
            found = settled(given)
            found.used.extend(functions)
        except _FAULTS as fault:
            return NotRead(f"the letters that are given were not worked out: {fault}")
        values = {name: value for name, value in found.values.items() if name not in task.letters}
        relations = tuple(with_numbers(relation, values) for relation in task.relations)
        ask = replace(reading.ask, task=Solve(relations, task.letters))
        _, outcome = self.derive_further(replace(reading, givens=(), ask=ask))
        if not isinstance(outcome, Derived):
            return outcome
        derivations = tuple(_behind(found, one) for one in outcome.derivations)
        return replace(outcome, derivations=derivations)


def _equations(reading: Reading) -> tuple[tuple[Stated, ...], tuple[str, ...]]:
    """The equations that the givens state, and the texts of the functions that are worked into them."""
    plain = equations_given(reading.givens)
    if plain is not None:
        return plain, ()
    return equations_with_functions(reading.givens) or ((), ())


def _plain(reading: Reading, others: set[str]) -> bool:
    """Whether the givens are plain numbers for these letters, which every strand puts in itself."""
    known = numbers_given(reading.givens)
    if known is None:
        return False
    return others <= known.keys() and all(isinstance(_unsigned(known[name][0]), Number) for name in others)


def _unsigned(value: Expression) -> Expression:
    return value.operand if isinstance(value, Negative) else value


def _behind(found: Settled, derivation: Derivation) -> Derivation:
    last = (found.steps[-1].statement,) if found.steps else ()
    first, *rest = derivation.steps
    steps = (*found.steps, replace(first, uses=last), *rest)
    return replace(derivation, steps=steps, givens_used=tuple(dict.fromkeys(found.used)))


def settled(given: Sequence[Stated]) -> Settled:
    """Every letter that the equations settle one after the other, singly or two at a time."""
    found = Settled()
    waiting = list(given)
    progress = True
    while waiting and progress:
        progress = False
        for stated in list(waiting):
            if stated in waiting and _settle(stated, waiting, found):
                progress = True
    return found


def _settle(stated: Stated, waiting: list[Stated], found: Settled) -> bool:
    """One equation, or two in the same letters, worked out; whether something was settled."""
    relation = with_numbers(stated.relation, found.values)
    names = letters_in(relation)
    if relation.sign != "=":
        raise NotLinear(write(relation))
    if len(names) == 1 and (value := _beside(relation, names[0])) is not None:
        lines = calculated(value)
        if stated.changed:
            put_in = Step(f"{names[0]} = {write(value)}", StepKind.ALGEBRA, None, (stated.text,), "", "substitution")
            found.steps.extend((put_in, *continued_steps(lines, skill_of(value), put_in.statement)))
        else:
            found.steps.extend(calculation_steps(lines, skill_of(value), (stated.text,), names[0]))
        _record(found, {names[0]: _exact(lines[-1])}, (stated,), waiting)
        return True
    together = [one for one in waiting if set(letters_in(with_numbers(one.relation, found.values))) <= set(names)]
    if not names or len(together) < len(names) or len(names) > 3:
        return False
    chosen = together[: len(names)]
    solution = solved([with_numbers(one.relation, found.values) for one in chosen], names, [one.text for one in chosen])
    if isinstance(solution.values, str):
        raise NoValue("equations without a single solution among the givens")
    found.steps.extend(solution.steps)
    _record(found, dict(solution.values), chosen, waiting)
    return True


def _beside(relation: Relation, name: str) -> Expression | None:
    """What a letter alone on one side is equal to."""
    for one, other in ((relation.left, relation.right), (relation.right, relation.left)):
        if one == Letter(name) and not letters_of(other):
            return other
    return None


def _exact(value: Expression) -> Fraction:
    exact = rational_value(value)
    if exact is None:
        raise NoValue(f"{write(value)} is irrational")
    return exact


def _record(found: Settled, values: dict[str, Fraction], chosen: Sequence[Stated], waiting: list[Stated]) -> None:
    for name, value in values.items():
        found.values[name] = whole_or_fraction(value)
    for one in chosen:
        found.used.append(one.text)
        waiting.remove(one)
