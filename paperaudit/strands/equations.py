"""Linear equations, one or several together, and expressions to expand, simplify or factorise."""

from collections.abc import Iterator
from dataclasses import replace

from paperaudit.errors import BudgetExceeded, ExpressionNotRead, NoValue
from paperaudit.maths.linear_terms import NotLinear
from paperaudit.maths.measure import UnitClash, unit_of, without_units
from paperaudit.maths.rewriting import rewritten_lines
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask, Find, Solve, Transform
from paperaudit.model.derivation import Answer, Derivation, Derived, NotRead, Outcome, Step, StepKind
from paperaudit.model.expression import Letter, letters_of
from paperaudit.model.reading import Reading
from paperaudit.strands.equation_checks import EVALUATED, SUBSTITUTED, confirm_same, letters_in
from paperaudit.strands.equation_kinds import refusal_of_expression, refusal_of_relation
from paperaudit.strands.finishing import ChecksDisagree, answer_of, finished
from paperaudit.strands.solving_steps import closing_step, solved
from paperaudit.strands.substitution import is_substitution, numbers_given, with_numbers
from paperaudit.strands.unknowns import Stated, equations_given, find_outcome, is_algebraic, refuse_other_letters

_SKILLS = {"expand": "expanding brackets", "simplify": "simplifying", "factorise": "factorising"}


class EquationsStrand:
    """Takes equations to solve, letters to find from equations, and expressions to rewrite."""

    name = "equations"

    def recognises(self, reading: Reading) -> bool:
        """Whether the ask is about equations or expressions in letters, with no figure behind them."""
        if reading.ask is None:
            return False
        match reading.ask.task:
            case Solve():
                return True
            case Transform("simplify" | "expand" | "factorise", expression):
                return is_algebraic(expression)
            case Find(wanted):
                equations = bool(equations_given(reading.givens))
                return equations and all(map(is_algebraic, wanted)) and not is_substitution(reading)
        return False

    def derive(self, reading: Reading) -> Outcome:
        """The solution with its lines, or NotRead with what kind of equation it is."""
        assert reading.ask is not None
        try:
            return _derive(reading, reading.ask)
        except NotLinear as fault:
            return NotRead(f"it is not a linear equation or expression: {fault}")
        except NoValue as fault:
            return NotRead(f"it has no value that could be given: {fault}")
        except UnitClash as fault:
            return NotRead(f"the units do not go together: {fault}")
        except (BudgetExceeded, ExpressionNotRead) as fault:
            return NotRead(f"it is beyond the limits of what is worked out: {fault}")
        except ChecksDisagree as fault:
            return NotRead(f"two ways of working it out disagree: {fault}")


def _derive(reading: Reading, ask: Ask) -> Outcome:
    match ask.task:
        case Transform():
            return _rewritten(ask.task, ask)
        case Solve(relations, letters):
            given = equations_given(reading.givens) or ()
            stated = tuple(Stated(relation, "") for relation in relations)
            return _refused(stated or given) or _solve_with(stated, given, letters, reading, ask)
        case Find(wanted):
            stated = equations_given(reading.givens) or ()
            return _refused(stated) or find_outcome(stated, wanted, ask)
    return NotRead("neither an equation nor an expression to rewrite")


def _refused(equations: tuple[Stated, ...]) -> NotRead | None:
    if not equations:
        return NotRead("there is no equation to solve")
    for stated in equations:
        if refusal := refusal_of_relation(stated.relation):
            return NotRead(f"{write(stated.relation)}: {refusal}")
    return None


def _solve_with(
    asked: tuple[Stated, ...], given: tuple[Stated, ...], letters: tuple[str, ...], reading: Reading, ask: Ask
) -> Outcome:
    """The equations of the ask, with the numbers that the givens state for other letters put in.

    Givens that say more than a number are equations beside those of the ask.
    """
    names = {name for stated in asked for name in letters_in(stated.relation)}
    numbers = {name: value for name, value in (numbers_given(reading.givens) or {}).items() if name not in letters}
    needed = [name for name in numbers if name in names]
    if not asked:
        return _solve(given, letters, ask)
    if not needed:
        if given and letters and names - {*letters}:
            return _refused(given) or find_outcome((*asked, *given), tuple(map(Letter, letters)), ask)
        return _solve(asked, letters, ask)
    values = {name: numbers[name][0] for name in needed}
    put_in = [with_numbers(stated.relation, values) for stated in asked]
    outcome = _solve(tuple(Stated(relation, "") for relation in put_in), letters, ask)
    if not isinstance(outcome, Derived):
        return outcome
    texts = tuple(dict.fromkeys(numbers[name][1].text for name in needed))
    before = {write(changed): write(stated.relation) for changed, stated in zip(put_in, asked, strict=True)}
    derivations = tuple(
        replace(one, steps=tuple(_from_equation(one.steps, before, texts)), givens_used=texts)
        for one in outcome.derivations
    )
    return replace(outcome, derivations=derivations)


def _from_equation(steps: tuple[Step, ...], before: dict[str, str], texts: tuple[str, ...]) -> Iterator[Step]:
    """The lines, each equation of the ask in front of the one that it is with the numbers put in."""
    for step in steps:
        number, _, equation = step.statement.rpartition(": ")
        printed = before.get(equation, equation) if step.kind is StepKind.GIVEN else equation
        if printed == equation:
            yield step
            continue
        first = f"{number}: {printed}" if number else printed
        yield Step(first, StepKind.GIVEN, None)
        yield replace(step, kind=StepKind.ALGEBRA, uses=(first, *texts), skill="substitution")


def _solve(equations: tuple[Stated, ...], letters: tuple[str, ...], ask: Ask) -> Outcome:
    """Equations to be solved; that there is no solution, or that all numbers are one, is an answer here."""
    relations = [stated.relation for stated in equations]
    names = tuple(dict.fromkeys(letters or (name for relation in relations for name in letters_in(relation))))
    if not names:
        return NotRead("there is no letter to solve for")
    every = dict.fromkeys(name for relation in relations for name in letters_in(relation))
    if not (len(relations) > 1 and len(every) <= len(relations) and set(names) <= set(every)):
        refuse_other_letters(relations, names)
    if len(relations) < len(names):
        return find_outcome(equations, tuple(map(Letter, names)), ask)
    found = solved(relations, names, [stated.text for stated in equations])
    texts = tuple(dict.fromkeys(stated.text for stated in equations if stated.text))
    if isinstance(found.values, str):
        text, closing = closing_step(found)
        return Derived((Answer(text),), (Derivation((*found.steps, closing), SUBSTITUTED, texts),))
    steps: list[Step] = list(found.steps)
    answers: list[Answer] = []
    for name in names:
        answer, ending = finished(found.value(name), ask, steps[-1].statement, name)
        answers.append(answer)
        steps.extend(ending)
    return Derived(tuple(answers), (Derivation(tuple(steps), SUBSTITUTED, texts),))


def _rewritten(task: Transform, ask: Ask) -> Outcome:
    """An expression of the first degree expanded, simplified or factorised."""
    if refusal := refusal_of_expression(task.expression):
        return NotRead(f"{write(task.expression)}: {refusal}")
    unit = unit_of(task.expression)
    lines = rewritten_lines(without_units(task.expression, unit), task.command)
    confirm_same(lines, letters_of(task.expression))
    skill = _SKILLS[task.command]
    texts = [write(line) for line in lines]
    first = f"{texts[0]} = {texts[1]}" if len(texts) > 1 else texts[0]
    steps = [Step(first, StepKind.ALGEBRA, None, (), texts[min(1, len(texts) - 1)], skill)]
    for text in texts[2:]:
        steps.append(Step(f"= {text}", StepKind.ALGEBRA, None, (steps[-1].statement,), text, skill))
    return Derived((answer_of(lines[-1], unit),), (Derivation(tuple(steps), EVALUATED),))
