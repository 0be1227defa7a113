"""Letters and functions that the givens settle one after the other, put into what is asked for."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.algebra.terms import NotTerms
from paperaudit.maths.exact import NotSurd
from paperaudit.maths.linear_terms import NotLinear
from paperaudit.maths.measure import UnitClash
from paperaudit.maths.write import write
from paperaudit.model.ask import Establish, Find, Rounded, Solve, Task, Transform, WriteAs
from paperaudit.model.derivation import Derivation, Derived, NotRead, Outcome, Step, StepKind
from paperaudit.model.expression import Expression, Letter, Negative, Number, Relation, letters_of
from paperaudit.model.fact import Given, Holds
from paperaudit.model.paper import Line
from paperaudit.model.reading import Reading
from paperaudit.model.topic import TopicTask
from paperaudit.strands.equation_checks import letters_in
from paperaudit.strands.finishing import ChecksDisagree
from paperaudit.strands.functions_given import Formula, NotApplied, equations_and_functions
from paperaudit.strands.putting_in import (
    is_about_functions,
    is_about_numbers,
    put_into,
)
from paperaudit.strands.reached import expressions_asked, names_asked, needed
from paperaudit.strands.settling import Settling
from paperaudit.strands.substitution import is_substitution, numbers_given
from paperaudit.strands.unknowns import Stated

_LONGEST = 20
_SHORT = 3
_FAULTS = (NotLinear, NoValue, NotSurd, NotTerms, NotApplied, UnitClash, BudgetExceeded)


@dataclass(frozen=True, slots=True)
class Chained:
    """A reading in which the letters and functions of the ask are explicit, and the lines that led there.

    `kind` is the kind of the answer where the new ask would have another one.
    """

    reading: Reading
    steps: tuple[Step, ...]
    used: tuple[str, ...]
    kind: str = ""


class ChainedStrand:
    """Takes what rests on letters that the givens settle in some steps, or on functions made of other functions."""

    name = "equations"

    def __init__(self, derive: Callable[[Reading], tuple[str, Outcome]]) -> None:
        self.derive_further = derive

    def recognises(self, reading: Reading) -> bool:
        """Whether the ask has letters or functions that the givens settle, and no other strand puts them in itself."""
        try:
            return _chained(reading) is not None
        except _FAULTS:
            return False
        except ChecksDisagree:
            return True

    def derive(self, reading: Reading) -> Outcome:
        """The answer behind the lines that settle the letters and functions."""
        try:
            found = _chained(reading)
        except (*_FAULTS, ChecksDisagree) as fault:
            return NotRead(f"the letters that are given were not worked out: {fault}")
        assert found is not None
        _, outcome = self.derive_further(found.reading)
        if not isinstance(outcome, Derived):
            return outcome
        answers = tuple(replace(one, kind=found.kind) if found.kind else one for one in outcome.answers)
        return replace(outcome, answers=answers, derivations=tuple(_behind(found, one) for one in outcome.derivations))


def _behind(found: Chained, derivation: Derivation) -> Derivation:
    last = (found.steps[-1].statement,) if found.steps else ()
    first, *rest = derivation.steps
    steps = (*found.steps, replace(first, uses=last or first.uses), *rest)
    used = tuple(dict.fromkeys((*found.used, *derivation.givens_used)))
    return replace(derivation, steps=steps, givens_used=used)


def _chained(reading: Reading) -> Chained | None:
    """The reading with everything put in; None where there is nothing to put in, or other strands do it."""
    reading = _with_conditions(reading)
    task = reading.ask.task if reading.ask is not None else None
    if not isinstance(task, Solve | Transform | Find | Establish | Rounded | WriteAs | TopicTask) or not reading.givens:
        return None
    stated = equations_and_functions(reading.givens, _wanted(task))
    if stated is None or not 0 < len(stated[0]) + len(stated[1]) <= _LONGEST:
        return None
    names = names_asked(task, stated[1])
    if names is None or _others_do_it(reading, task, names, *stated):
        return None
    equations, functions = needed(names, *stated)
    whole = Settling.of(equations, functions)
    if not _has_work(task, names, whole):
        return None
    return _with_task(reading, task, whole)


def _with_conditions(reading: Reading) -> Reading:
    """An ask whose own sentence states a function with the statements as givens: if f(x) = 3x + 2 and f(k) = 11."""
    task = reading.ask.task if reading.ask is not None else None
    line = reading.part.ask or reading.part.text or reading.question.text
    if reading.ask is None or not isinstance(task, Solve) or reading.givens or line is None or not task.letters:
        return reading
    givens = (Given(line.text, tuple(map(Holds, task.relations))),)
    stated = equations_and_functions(givens, _wanted(task))
    if stated is None or not stated[1]:
        return reading
    return replace(reading, givens=givens, ask=replace(reading.ask, task=Find(tuple(map(Letter, task.letters)))))


def _wanted(task: Task | None) -> frozenset[str]:
    """The letters that are asked for."""
    match task:
        case Solve(_, letters):
            return frozenset(letters)
        case Find(wanted):
            return frozenset(one.name for one in wanted if isinstance(one, Letter))
    return frozenset()


def _others_do_it(
    reading: Reading,
    task: Task,
    names: Sequence[str],
    equations: Sequence[Stated],
    functions: Mapping[str, Formula],
) -> bool:
    """Whether another strand puts in what is given: plain numbers, or functions as they stand."""
    known = numbers_given(reading.givens)
    match task:
        case Solve(_, letters):
            others = {*names} - {*letters}
            if others & {*functions}:
                return False
            if not letters:
                others &= {name for one in equations for name in letters_in(one.relation)}
            if not others:
                return True
            return known is not None and others <= known.keys() and all(_is_plain(known[name][0]) for name in others)
        case Transform() | Rounded() | WriteAs():
            return is_substitution(reading)
        case Find(wanted):
            if functions:
                return False
            single = len(wanted) == 1 and isinstance(wanted[0], Letter)
            return not single or sum(1 for one in equations if not _gives_number(one.relation)) < 2
        case Establish():
            return not {*names} & {*functions}
        case TopicTask():
            return is_about_numbers(task) and known is not None and {*names} <= known.keys()
    return False


def _gives_number(relation: Relation) -> bool:
    sides = (relation.left, relation.right)
    return any(isinstance(side, Letter) for side in sides) and any(not letters_of(side) for side in sides)


def _is_plain(value: Expression) -> bool:
    return isinstance(value.operand if isinstance(value, Negative) else value, Number)


def _has_work(task: Task, names: Sequence[str], whole: Settling) -> bool:
    """Whether something is put in that the strand of the task does not put in by itself."""
    settled = {*whole.values} - {*(task.letters if isinstance(task, Solve) else ())}
    if isinstance(task, TopicTask):
        calls = {name for one in expressions_asked(task) or () for name in letters_of(one)} & {*whole.stated}
        return bool(settled or calls) or any({*one.others} & {*whole.stated} for one in whole.stated.values())
    if isinstance(task, Find) and not whole.stated:
        return bool(settled) and (not {*names} <= settled or whole.linked)
    return bool(settled & {*names}) or bool(whole.stated)


def _with_task(reading: Reading, task: Task, whole: Settling) -> Chained | None:
    """The reading of the ask with everything put in; None where something of it is left open."""
    if whole.open:
        return None
    steps, kind = list(whole.steps), ""
    givens: tuple[Given, ...] = ()
    changed: Task
    match task:
        case Solve(relations, letters):
            relations = tuple(whole.relation(one, letters) for one in relations)
            left = {name for one in relations for name in letters_in(one)}
            changed = Solve(relations, letters or (tuple(left) if len(left) == 1 else ()))
        case Transform(command, expression):
            changed = Transform(command, whole.put_in(expression))
            _say_put_in(expression, changed.expression, whole, steps)
        case Rounded(expression) | WriteAs(expression):
            changed = replace(task, expression=whole.put_in(expression))
            _say_put_in(expression, changed.expression, whole, steps)
        case Establish(claims):
            held = tuple(Holds(whole.relation(one.relation)) for one in claims if isinstance(one, Holds))
            changed = replace(task, claims=held)
        case Find(wanted) if all(isinstance(one, Letter) for one in wanted):
            return _letters_wanted(reading, tuple(letters_of(one)[0] for one in wanted), whole)
        case Find((expression,)):
            value = whole.put_in(expression)
            _say_put_in(expression, value, whole, steps)
            changed = Transform("expand" if letters_of(value) else "evaluate", value)
            kind = "function" if letters_of(value) else ""
        case TopicTask():
            changed = put_into(task, whole.put_in)
            if is_about_functions(task):
                givens = tuple(_explicit(name, one) for name, one in whole.functions.items())
        case _:
            return None
    pending = {name for one in whole.waiting for name in letters_in(one.relation)} - {*whole.values, *whole.stated}
    if pending & {name for one in expressions_asked(changed) or () for name in letters_of(one)}:
        return None
    called = (
        whole.stated[name].text
        for one in expressions_asked(task) or ()
        for name in letters_of(one)
        if name in whole.stated
    )
    return Chained(_of_ask(reading, changed, givens), tuple(steps), tuple(dict.fromkeys((*whole.used, *called))), kind)


def _letters_wanted(reading: Reading, wanted: Sequence[str], whole: Settling) -> Chained | None:
    """Letters that are settled, or one that a single equation is left for."""
    used = list(whole.used)
    if {*wanted} <= whole.values.keys():
        relations = tuple(Relation(Letter(name), "=", whole.values[name]) for name in wanted)
    elif len(wanted) == 1:
        left = [one for one in whole.waiting if wanted[0] in letters_in(one.relation)]
        relations = tuple(whole.relation(one.relation) for one in left)
        if len(relations) != 1 or letters_in(relations[0]) != (wanted[0],):
            return None
        used.extend(one.text for one in left)
    else:
        return None
    changed = Solve(relations, tuple(wanted))
    return Chained(_of_ask(reading, changed, ()), tuple(whole.steps), tuple(dict.fromkeys(used)))


def _say_put_in(before: Expression, after: Expression, whole: Settling, steps: list[Step]) -> None:
    """The line from 3 × u(j) to 3 × (2j + 1)."""
    if before != after:
        uses = (steps[-1].statement,) if steps else tuple(one.text for one in whole.stated.values())
        statement = f"{whole.printed(before)} = {write(after)}"
        steps.append(Step(statement, StepKind.ALGEBRA, None, uses, write(after), "substitution"))


def _explicit(name: str, one: Formula) -> Given:
    from paperaudit.model.function_task import Function

    return Given(one.text, (Function(name, one.letter, one.formula),))


def _of_ask(reading: Reading, task: Task, givens: tuple[Given, ...]) -> Reading:
    """The reading with the new ask, and of its text only what stands in no given and not in the ask."""
    assert reading.ask is not None
    known = [given.text for given in reading.givens]
    if len(reading.ask.text) > _SHORT:
        known.append(reading.ask.text)

    def rest(line: Line | None) -> Line | None:
        if line is None:
            return None
        text = line.text
        for said in known:
            text = text.replace(said, " ")
        return replace(line, text=text)

    question = replace(reading.question, text=rest(reading.question.text), given=())
    part = replace(reading.part, text=rest(reading.part.text), given=())
    return replace(reading, question=question, part=part, givens=givens, ask=replace(reading.ask, task=task))
