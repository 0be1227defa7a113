"""Letters to be found from equations among the givens: settled, clashing, or left open."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from paperaudit.maths.exact import rational_value
from paperaudit.maths.linear import Elimination, LinearForm
from paperaudit.maths.linear_terms import NotLinear
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.solving import unit_of_constants
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import (
    Answer,
    Case,
    Derivation,
    Derived,
    Impossible,
    NotDetermined,
    Outcome,
    Step,
    StepKind,
)
from paperaudit.model.expression import (
    Euler,
    Expression,
    Letter,
    Number,
    Quantity,
    Relation,
    leaves,
    letters_of,
)
from paperaudit.model.fact import Given, Holds
from paperaudit.strands.equation_checks import SUBSTITUTED, form_at_points, letters_in, solutions
from paperaudit.strands.finishing import ChecksDisagree, answer_of, finished
from paperaudit.strands.solving_steps import SIMULTANEOUS, Solved, solved


@dataclass(frozen=True, slots=True)
class Stated:
    """An equation and the text of the given that states it, "" for one of the ask.

    `changed` says that the text has the value of a function where the equation has what it comes from.
    """

    relation: Relation
    text: str
    changed: bool = False


def is_algebraic(expression: Expression) -> bool:
    """Whether an expression is in letters and numbers, with at least one letter."""
    return bool(letters_of(expression)) and all(
        isinstance(leaf, Letter | Number | Euler) for leaf in leaves(expression)
    )


def equations_given(givens: Sequence[Given]) -> tuple[Stated, ...] | None:
    """The equations that the givens state; None where some given is about a figure or another answer."""
    found: list[Stated] = []
    for given in givens:
        for fact in given.facts:
            if not isinstance(fact, Holds):
                return None
            sides = (fact.relation.left, fact.relation.right)
            if any(isinstance(leaf, Quantity) for side in sides for leaf in leaves(side)):
                return None
            found.append(Stated(fact.relation, given.text))
    return tuple(found)


def find_outcome(equations: Sequence[Stated], wanted: Sequence[Expression], ask: Ask) -> Outcome:
    """The wanted letters, or expressions in them, from linear equations.

    Raises NotLinear, NoValue, UnitClash, BudgetExceeded and ChecksDisagree.
    """
    names = tuple(dict.fromkeys(name for item in wanted for name in letters_of(item)))
    letters = tuple(dict.fromkeys((*_letters(equations), *names)))
    unit = unit_of_constants(*(stated.relation for stated in equations))
    rows: Elimination[str, int] = Elimination()
    for number, stated in enumerate(equations):
        contradiction = rows.add(form_at_points(stated.relation, letters, unit), number)
        if contradiction is not None:
            return _impossible([equations[index] for index in sorted(contradiction.multiples)])
    if all(rows.value(LinearForm.of(name)) is not None for name in names):
        used = [equations[index] for index in sorted(_support(rows, names))]
        if solutions([stated.relation for stated in used], _letters(used), unit) == "one":
            return _derived(used, wanted, names, ask)
    forms = [_form(item, letters) for item in wanted]
    if all(rows.value(form) is not None for form in forms):
        return _combined(equations, rows, wanted, forms)
    return _not_determined(rows, letters, wanted)


def _support(rows: Elimination[str, int], names: Sequence[str]) -> set[int]:
    return {index for name in names for index in rows.support(LinearForm.of(name))}


def _letters(equations: Sequence[Stated]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(name for stated in equations for name in letters_in(stated.relation)))


def _form(item: Expression, letters: Sequence[str]) -> LinearForm[str]:
    return form_at_points(Relation(item, "=", Number(Fraction(0))), letters)


def _derived(used: Sequence[Stated], wanted: Sequence[Expression], names: Sequence[str], ask: Ask) -> Outcome:
    found = solved([stated.relation for stated in used], names, [stated.text for stated in used])
    if isinstance(found.values, str):
        raise ChecksDisagree("the lines find no value where the equations taken at points have one")
    steps = list(found.steps)
    answers: list[Answer] = []
    for item in wanted:
        if isinstance(item, Letter):
            answer, closing = finished(found.value(item.name), ask, steps[-1].statement, item.name)
        else:
            answer, closing = _expression_in(item, found, ask)
        answers.append(answer)
        steps.extend(closing)
    texts = tuple(dict.fromkeys(stated.text for stated in used if stated.text))
    return Derived(tuple(answers), (Derivation(tuple(steps), SUBSTITUTED, texts),))


def _expression_in(item: Expression, found: Solved, ask: Ask) -> tuple[Answer, tuple[Step, ...]]:
    """The value of an expression in letters that are known: n + 1 = −12 + 1 = −11."""
    from paperaudit.strands.calculating import calculated, calculation_steps
    from paperaudit.strands.substitution import substituted

    assert isinstance(found.values, dict)
    put_in = substituted(item, {name: found.value(name) for name in letters_of(item)})
    lines = calculated(put_in)
    uses = (found.steps[-1].statement,)
    steps = calculation_steps((item, *lines), "substitution", uses)
    answer, closing = finished(lines[-1], ask, steps[-1].statement)
    return answer, (*steps, *closing)


def _impossible(clashing: Sequence[Stated]) -> Outcome:
    """A smallest set of equations that clash, with the lines to the contradiction."""
    smallest = list(clashing)
    for stated in clashing:
        without = [other for other in smallest if other is not stated]
        if _clash(without):
            smallest = without
    found = solved([stated.relation for stated in smallest], ())
    lines = [step.statement for step in found.steps]
    last = lines[-1].rpartition(": ")[2]
    why = (*lines, f"{last} is false, so no numbers satisfy the equations")
    clash = tuple(dict.fromkeys(stated.text or write(stated.relation) for stated in smallest))
    return Impossible(clash, why, "change one of these equations")


def _clash(equations: Sequence[Stated]) -> bool:
    relations = [stated.relation for stated in equations]
    return solutions(relations, _letters(equations), unit_of_constants(*relations)) == "none"


def _combined(
    equations: Sequence[Stated],
    rows: Elimination[str, int],
    wanted: Sequence[Expression],
    forms: Sequence[LinearForm[str]],
) -> Outcome:
    """Expressions that are settled although their letters are not: x + y from 2x + 2y = 10."""
    steps: list[Step] = []
    answers: list[Answer] = []
    used: dict[int, str] = {}
    for item, form in zip(wanted, forms, strict=True):
        value = rows.value(form)
        assert value is not None
        multiples = {index: -Fraction(multiple) for index, multiple in rows.reduce(form)[1].items()}
        for index in sorted(multiples):
            if index not in used:
                used[index] = f"({index + 1}): {write(equations[index].relation)}"
                steps.append(Step(used[index], StepKind.GIVEN, None, tuple(filter(None, (equations[index].text,)))))
        name = " + ".join(_multiple(multiples[index], index + 1) for index in sorted(multiples)).replace("+ −", "− ")
        text = write(whole_or_fraction(value))
        statement = f"{name}: {write(item)} = {text}"
        uses = tuple(used[index] for index in sorted(multiples))
        steps.append(Step(statement, StepKind.ALGEBRA, None, uses, text, SIMULTANEOUS))
        answers.append(answer_of(whole_or_fraction(value), "", item.name if isinstance(item, Letter) else ""))
    _confirm_everywhere(rows, wanted, answers)
    texts = tuple(dict.fromkeys(equations[index].text for index in used if equations[index].text))
    return Derived(tuple(answers), (Derivation(tuple(steps), SUBSTITUTED, texts),))


def _multiple(multiple: Fraction, number: int) -> str:
    size = "" if abs(multiple) == 1 else f"{write(whole_or_fraction(abs(multiple)))} × "
    return f"{'−' if multiple < 0 else ''}{size}({number})"


def _confirm_everywhere(rows: Elimination[str, int], wanted: Sequence[Expression], answers: Sequence[Answer]) -> None:
    """Two different solutions of the equations must give a settled expression one value."""
    letters = tuple(dict.fromkeys(name for item in wanted for name in letters_of(item)))
    for start in (Fraction(1), Fraction(7, 2)):
        values = _one_solution(rows, letters, start)
        for item, answer in zip(wanted, answers, strict=True):
            if answer.value is None or rational_value(item, values) != rational_value(answer.value):
                raise ChecksDisagree(f"{write(item)} is not {answer.text} for every solution")


def _one_solution(rows: Elimination[str, int], letters: Sequence[str], start: Fraction) -> dict[str, Fraction]:
    """A solution of the equations in which the free letters are start, start + 1, …"""
    free: dict[str, LinearForm[str]] = {}
    values: dict[str, Fraction] = {}
    for name in letters:
        rest = rows.reduce(LinearForm.of(name))[0]
        for other in rest.terms:
            free.setdefault(other, LinearForm.number(start + len(free)))
        values[name] = Fraction(rest.replaced(free).constant)
    return values


def _not_determined(rows: Elimination[str, int], letters: Sequence[str], wanted: Sequence[Expression]) -> Outcome:
    """Two solutions that differ in what is wanted, and the value that would settle it."""
    cases: list[Case] = []
    for start in (Fraction(1), Fraction(2)):
        values = _one_solution(rows, letters, start)
        shown = ", ".join(f"{name} = {write(whole_or_fraction(value))}" for name, value in values.items())
        answers = tuple(_answers(wanted, values))
        cases.append(Case(f"with {shown} every equation holds", answers))
    return NotDetermined(tuple(cases), _missing(rows, letters))


def _answers(wanted: Sequence[Expression], values: dict[str, Fraction]) -> Iterator[Answer]:
    for item in wanted:
        value = rational_value(item, values)
        if value is not None:
            yield answer_of(whole_or_fraction(value), "", item.name if isinstance(item, Letter) else "")


def _missing(rows: Elimination[str, int], letters: Sequence[str]) -> str:
    """The letter whose value would settle everything, where one would."""
    free = {other for name in letters for other in rows.reduce(LinearForm.of(name))[0].terms}
    return f"the value of {min(free)}" if len(free) == 1 else ""


def refuse_other_letters(equations: Sequence[Relation], asked: Sequence[str]) -> None:
    """Raises NotLinear where an equation to be solved for some letters has others too."""
    for relation in equations:
        others = [name for name in letters_in(relation) if name not in asked]
        if others:
            raise NotLinear(f"{write(relation)}, which has the letter {others[0]} as well")
