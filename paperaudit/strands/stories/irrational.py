"""Stories whose equation has irrational roots: the formula's lines, exact answers, put back with sixty figures."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.exact import exact_expression, exact_value, rational_value
from paperaudit.maths.story_equations import Formed, expressed
from paperaudit.maths.surd import Surd
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import (
    Answer,
    Case,
    Derivation,
    Derived,
    Impossible,
    NotRead,
    Outcome,
    Several,
    Step,
    StepKind,
)
from paperaudit.model.expression import Expression, Letter, Measured
from paperaudit.model.story import Same, StoryTask, Wanted
from paperaudit.strands.finishing import ChecksDisagree, finished
from paperaudit.strands.stories.put_back import PUT_BACK, faults, measured
from paperaudit.strands.substitution import substituted

_CLOSE = Fraction(1, 10**30)


@dataclass(frozen=True, slots=True)
class Irrational:
    """The roots of a story's equation in `letter`, exact, and the lines to them; `texts` are the sentences used."""

    letter: str
    roots: tuple[Expression, ...]
    steps: tuple[Step, ...]
    texts: tuple[str, ...]


def by_algebra(standard: Expression, letter: str, above: Step) -> tuple[tuple[Expression, ...], list[Step]]:
    """The roots of an expression of the second degree that is nought, with the lines of the formula."""
    from paperaudit.maths.algebra.terms import terms_of
    from paperaudit.strands.algebra.roots import roots_of
    from paperaudit.strands.algebra.working import Working

    working = Working("quadratic equations", steps=[above])
    roots = roots_of(terms_of(standard), letter, working)
    return tuple(roots.values), working.steps[1:]


def irrational_outcome(
    found: Irrational, form: Formed, task: StoryTask, ask: Ask, opening: Sequence[Step], texts: tuple[str, ...]
) -> Outcome:
    """The answers that can be what the story speaks of, each put back into its sentences."""
    if not all(isinstance(said.claim, Same) for said in task.said):
        return NotRead("it has irrational roots, and its sentences are not put back with roots yet")
    steps = [*opening, *found.steps]
    kept = []
    for root in found.roots:
        values = _near(root, found.letter, form)
        why = next(_faults(task, values, root, found.letter), "")
        if why:
            steps.append(Step(why, StepKind.ALGEBRA, None, (steps[-1].statement,), "", "forming equations"))
            continue
        _put_back(task, values)
        kept.append(root)
    if not kept:
        lines = tuple(step.statement for step in steps)
        return Impossible(texts, (*lines, "no root can be what is asked for: false"))
    answers = [
        [_answer(wanted, root, found.letter, form, task, ask, steps[-1]) for wanted in task.wanted] for root in kept
    ]
    closing = [step for one in answers for _, lines in one for step in lines]
    derivation = Derivation((*steps, *closing), PUT_BACK, texts)
    if len(answers) == 1:
        return Derived(tuple(answer for answer, _ in answers[0]), (derivation,))
    if len(task.wanted) > 1:
        return NotRead("several pairs of irrational answers are not told apart yet")
    several = tuple(one[0][0] for one in answers)
    return Several(several, tuple(Case(f"{one.text} fits every sentence", (one,)) for one in several), (derivation,))


def _near(root: Expression, letter: str, form: Formed) -> dict[str, Fraction]:
    """Every size of the story with sixty figures."""
    value = exact_value(root)
    near = Fraction(value.to_decimal()) if isinstance(value, Surd) else value
    sizes = {key: rational_value(expression, {letter: near}) for key, expression in form.named.items()}
    if any(size is None for size in sizes.values()):
        raise NoValue("a root within a root")
    return {key: size for key, size in sizes.items() if size is not None}


def _faults(task: StoryTask, values: dict[str, Fraction], root: Expression, letter: str) -> Iterator[str]:
    if next(faults(task, values), ""):
        yield f"{letter} = {write(root)} is rejected: it is negative or leads to a negative size"


def _put_back(task: StoryTask, values: dict[str, Fraction]) -> None:
    for said in task.said:
        assert isinstance(said.claim, Same)
        if abs(measured(said.claim.left, values) - measured(said.claim.right, values)) > _CLOSE:
            raise ChecksDisagree(f"the values found do not fit “{said.text}”")


def _answer(
    wanted: Wanted, root: Expression, letter: str, form: Formed, task: StoryTask, ask: Ask, before: Step
) -> tuple[Answer, tuple[Step, ...]]:
    expression = expressed(wanted.size, form.named)
    alone = expression == Letter(letter)
    value = root if alone else exact_expression(exact_value(substituted(expression, {letter: root})))
    measure = Measured(value, wanted.unit) if wanted.unit else value
    way = f"{letter} = " if alone else f"{write(expression)} = "
    said = f"{wanted.meaning} = {way}{write(measure)}"
    step = Step(said, StepKind.CALCULATION, None, (before.statement,), write(measure), "substitution")
    answer, ending = finished(measure, ask, said)
    several = len(task.wanted) > 1 and task.in_order
    text = f"{wanted.meaning}: {answer.text}" if several else answer.text
    return Answer(text, answer.value, wanted.meaning if several else "", answer.rounded, "story"), (step, *ending)
