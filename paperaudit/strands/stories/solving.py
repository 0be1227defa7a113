"""Solves the equations of a story: every set of values of its letters, with the lines to them."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.exact import rational_value
from paperaudit.maths.story_equations import Formed
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Derived, Impossible, NotDetermined, NotRead, Step, StepKind
from paperaudit.model.expression import Letter, Relation
from paperaudit.model.story import StoryTask
from paperaudit.strands.equation_checks import form_at_points
from paperaudit.strands.finishing import ChecksDisagree
from paperaudit.strands.stories.degree_two import Roots, letters_of_relation, put_in, roots_of
from paperaudit.strands.stories.irrational import Irrational, by_algebra
from paperaudit.strands.unknowns import Stated, find_outcome

FORMING = "forming equations"
QUADRATIC = "quadratic equations"
LINEAR = "linear equations"


@dataclass(frozen=True, slots=True)
class Solutions:
    """Every set of values of the letters, and the lines that lead to them; `texts` are the sentences used."""

    values: tuple[dict[str, Fraction], ...]
    steps: tuple[Step, ...]
    texts: tuple[str, ...]


def solutions_of(
    form: Formed, task: StoryTask, ask: Ask
) -> Solutions | Irrational | Impossible | NotDetermined | NotRead:
    """The solutions of the equations that hold a letter.

    Raises what the solving of linear equations raises, and NotSurd, NoValue, BudgetExceeded.
    """
    letters = tuple(form.letters.values())
    stated = [Stated(relation, said.text) for relation, said in form.equations if letters_of_relation(relation)]
    if not letters:
        return Solutions(({},), (), ())
    if all(_is_linear(one.relation, letters) for one in stated):
        return _linear(stated, form, task, ask)
    if len(letters) == 1:
        return _one_letter(stated, letters[0], all(sought.whole for sought in task.sought))
    if len(letters) == 2 and len(stated) == 2:
        return _two_letters(stated, letters)
    return NotRead(f"it leads to {len(stated)} equations in {len(letters)} unknowns, not all of the first degree")


def _is_linear(relation: Relation, letters: Sequence[str]) -> bool:
    from paperaudit.maths.polynomial import ONE, algebraic_fraction

    sides = [algebraic_fraction(side) for side in (relation.left, relation.right)]
    if any(side.below != ONE or side.above.degree > 1 for side in sides):
        return False
    try:
        form_at_points(relation, letters)
    except ChecksDisagree:
        return False
    return True


def _linear(
    stated: Sequence[Stated], form: Formed, task: StoryTask, ask: Ask
) -> Solutions | Impossible | NotDetermined | NotRead:
    plain = Ask(ask.task, ask.text)
    outcome = find_outcome(stated, tuple(map(Letter, form.letters.values())), plain)
    if isinstance(outcome, NotDetermined):
        return _open(outcome, stated, form, task)
    if not isinstance(outcome, Derived):
        assert isinstance(outcome, Impossible)
        return outcome
    values: dict[str, Fraction] = {}
    for answer in outcome.answers:
        assert answer.value is not None
        value = rational_value(answer.value)
        assert value is not None
        values[answer.letter] = value
    steps = tuple(_as_formed(step) for step in outcome.derivations[0].steps)
    return Solutions((values,), steps, outcome.derivations[0].givens_used)


def _open(outcome: NotDetermined, stated: Sequence[Stated], form: Formed, task: StoryTask) -> NotDetermined | NotRead:
    """Equations that leave a letter open: infinitely many answers, unless only whole or positive ones count."""
    if any(sought.whole for sought in task.sought):
        return NotRead(
            "the sentences give fewer equations than unknowns; which whole numbers would do was not looked for"
        )
    if not stated:
        return NotRead("no sentence was read that settles what is asked for")
    return outcome


def _as_formed(step: Step) -> Step:
    if step.kind is not StepKind.GIVEN:
        return step
    return Step(step.statement, StepKind.EQUATION, None, step.uses, "", FORMING)


def _one_letter(stated: Sequence[Stated], letter: str, whole: bool) -> Solutions | Irrational | NotRead:
    """Every equation of one letter; the roots that they share."""
    steps: list[Step] = []
    shared: list[Fraction] | None = None
    for one in stated:
        found = roots_of(one.relation, letter)
        steps += _steps(found, one.text)
        if found.irrational and whole:
            steps.append(_no_whole_root(found))
        elif found.irrational:
            if len(stated) > 1 or found.standard is None or "multiply by" in " ".join(found.lines):
                return NotRead(f"{found.lines[-1]} has irrational roots, which are not worked out in a story yet")
            roots, lines = by_algebra(found.standard, letter, steps[-1])
            return Irrational(letter, roots, (*steps, *lines), (one.text,))
        shared = [value for value in found.values if shared is None or value in shared]
    return Solutions(tuple({letter: value} for value in shared or ()), tuple(steps), tuple(one.text for one in stated))


def _no_whole_root(found: Roots) -> Step:
    """The line that says why no whole number satisfies an equation whose discriminant is no square."""
    statement = f"the discriminant of {found.lines[-1]} is not a square, so no whole number satisfies it"
    return Step(statement, StepKind.ALGEBRA, None, (found.lines[-1],), "", QUADRATIC)


def _steps(found: Roots, text: str) -> list[Step]:
    steps = [Step(found.lines[0], StepKind.EQUATION, None, (text,), "", FORMING)]
    skill = QUADRATIC if any("²" in line for line in found.lines) else LINEAR
    for line in found.lines[1:]:
        steps.append(Step(line, StepKind.ALGEBRA, None, (steps[-1].statement,), "", skill))
    return steps


def _two_letters(stated: Sequence[Stated], letters: Sequence[str]) -> Solutions | NotRead:
    """One letter by the other from the linear equation, put into the other equation."""
    changed = put_in([one.relation for one in stated], letters)
    if changed is None:
        return NotRead("neither equation gives one unknown by the other")
    letter, value, relation = changed
    (free,) = (name for name in letters if name != letter)
    found = roots_of(relation, free)
    if found.irrational:
        return NotRead(f"{found.lines[-1]} has irrational roots, which are not worked out in a story yet")
    steps = [Step(write(one.relation), StepKind.EQUATION, None, (one.text,), "", FORMING) for one in stated]
    first = f"{letter} = {write(value)}"
    skill = "simultaneous equations"
    if first not in [step.statement for step in steps]:
        steps.append(Step(first, StepKind.ALGEBRA, None, (steps[0].statement, steps[1].statement), "", skill))
    lines = _steps(found, first)
    steps += [Step(lines[0].statement, StepKind.ALGEBRA, None, lines[0].uses, "", "substitution"), *lines[1:]]
    sets = []
    for root in found.values:
        other = rational_value(value, {free: root})
        if other is None:
            raise NoValue("an irrational value")
        sets.append({free: root, letter: other})
    return Solutions(tuple(sets), tuple(steps), tuple(one.text for one in stated))
