"""Word problems: letters, equations from the sentences, their solution, and the answer put back into them."""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from paperaudit.errors import BudgetExceeded, ExpressionNotRead, NoValue
from paperaudit.maths.exact import NotSurd, rational_value
from paperaudit.maths.linear_terms import NotLinear
from paperaudit.maths.measure import UnitClash
from paperaudit.maths.number_forms import as_decimal, whole_or_fraction
from paperaudit.maths.story_equations import Formed, expressed, formed
from paperaudit.maths.units import MONEY, unit_named
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
from paperaudit.model.expression import Expression, Letter, Measured, Number, letters_of
from paperaudit.model.reading import Reading
from paperaudit.model.story import Extreme, Named, StoryTask, Wanted
from paperaudit.strands.finishing import ChecksDisagree, finished
from paperaudit.strands.stories.irrational import Irrational, irrational_outcome
from paperaudit.strands.stories.put_back import PUT_BACK, broken, faults, measured
from paperaudit.strands.stories.solving import FORMING, Solutions, solutions_of
from paperaudit.strands.substitution import substituted


class StoriesStrand:
    """Takes the stories that the wording of word problems has read."""

    name = "stories"

    def recognises(self, reading: Reading) -> bool:
        """Whether the ask is a story."""
        return reading.ask is not None and isinstance(reading.ask.task, StoryTask)

    def derive(self, reading: Reading) -> Outcome:
        """The answer with its lines, or why the sentences do not go together."""
        assert reading.ask is not None and isinstance(reading.ask.task, StoryTask)
        try:
            return _derive(reading.ask.task, reading.ask)
        except NotLinear as fault:
            return NotRead(f"it leads to an equation that is not solved yet: {fault}")
        except (NoValue, NotSurd) as fault:
            return NotRead(f"it has no value that could be given: {fault}")
        except UnitClash as fault:
            return NotRead(f"the units do not go together: {fault}")
        except (BudgetExceeded, ExpressionNotRead) as fault:
            return NotRead(f"it is beyond the limits of what is worked out: {fault}")
        except ChecksDisagree as fault:
            return NotRead(f"two ways of working it out disagree: {fault}")


def _derive(task: StoryTask, ask: Ask) -> Outcome:
    form = formed(task)
    if len(form.letters) + len(form.defined) != len(task.sought):
        return NotRead("it has more unknowns than are worked with")
    for relation, said in form.equations:
        if letters_of(relation.left) or letters_of(relation.right):
            continue
        if rational_value(relation.left) != rational_value(relation.right):
            told = tuple(dict.fromkeys((*(by.text for _, by, _ in form.defined), said.text)))
            return Impossible(told, (f"{write(relation)} is false",), "change one of these numbers")
    found = solutions_of(form, task, ask)
    opening = tuple(_opening(form, task))
    if isinstance(found, Irrational):
        told = tuple(dict.fromkeys((*(said.text for _, said, _ in form.defined), *found.texts)))
        return irrational_outcome(found, form, task, ask, opening, told)
    if not isinstance(found, Solutions):
        return found
    kept, rejections = _kept(found, form, task)
    if not kept:
        return _impossible(found, form, task, opening, rejections)
    steps = (*opening, *found.steps)
    if not task.wanted:
        return NotRead("nothing is asked for")
    texts = tuple(dict.fromkeys((*(said.text for _, said, _ in form.defined), *found.texts)))
    return _answered(kept, form, task, ask, (*steps, *rejections), texts)


def _opening(form: Formed, task: StoryTask) -> Iterator[Step]:
    """What each letter stands for, and what the sentences say of other sizes in it."""
    sought = {one.key: one for one in task.sought}
    for key, letter in form.letters.items():
        unit = f" (in {_unit_word(sought[key].unit)})" if sought[key].unit else ""
        yield Step(f"let {letter} be {sought[key].meaning}{unit}", StepKind.GIVEN)
    for key, said, raw in form.defined:
        told = not letters_of(form.named[key])
        unit = sought[key].unit
        shown = write(Measured(form.named[key], unit) if told and unit else form.named[key])
        worked = told and not isinstance(raw, Number)
        text = f"{sought[key].meaning}: {write(raw)} = {shown}" if worked else f"{sought[key].meaning}: {shown}"
        kind = StepKind.CALCULATION if worked else StepKind.GIVEN if told else StepKind.EQUATION
        skill = "substitution" if worked else "" if told else FORMING
        yield Step(text, kind, None, (said.text,), shown if worked else "", skill)


def _unit_word(unit: str) -> str:
    known = unit_named(unit)
    return known.plural or unit if known is not None and unit not in MONEY else unit


def _everything(form: Formed, letters: dict[str, Fraction]) -> dict[str, Fraction]:
    values: dict[str, Fraction] = {}
    for key, expression in form.named.items():
        value = rational_value(expression, letters)
        if value is None:
            raise NoValue("an irrational size")
        values[key] = value
    return values


def _kept(found: Solutions, form: Formed, task: StoryTask) -> tuple[list[dict[str, Fraction]], tuple[Step, ...]]:
    """The solutions that can be what the story speaks of, put back into it, and the lines that reject the others."""
    kept, rejections = [], []
    for letters in found.values:
        values = _everything(form, letters)
        why = next(faults(task, values), "")
        if why:
            shown = " and ".join(f"{letter} = {_number(value)}" for letter, value in letters.items())
            rejections.append(
                Step(
                    f"{shown} is rejected: {why}" if shown else why,
                    StepKind.ALGEBRA,
                    None,
                    (found.steps[-1].statement,) if found.steps else (),
                    "",
                    "forming equations",
                )
            )
            continue
        if wrong := broken(task, values):
            raise ChecksDisagree(f"the values found do not fit “{wrong[0]}”")
        kept.append(values)
    return kept, tuple(rejections)


def _impossible(
    found: Solutions, form: Formed, task: StoryTask, opening: tuple[Step, ...], rejections: Sequence[Step]
) -> Impossible:
    lines = [step.statement for step in (*opening, *found.steps, *rejections)]
    if not rejections:
        lines.append("no number satisfies the equation")
    texts = tuple(dict.fromkeys(said.text for said in task.said))
    return Impossible(texts, tuple(lines), "change one of the numbers so that the answer can be what it stands for")


def _answered(
    kept: list[dict[str, Fraction]],
    form: Formed,
    task: StoryTask,
    ask: Ask,
    steps: tuple[Step, ...],
    texts: tuple[str, ...],
) -> Outcome:
    """The answers of every solution that is left: one set is derived, more are several."""
    sets: list[tuple[tuple[Answer, ...], tuple[Step, ...]]] = []
    seen: set[tuple[Fraction, ...]] = set()
    for values in kept:
        answers = [_answer(wanted, values, form, task, ask, steps) for wanted in task.wanted]
        numbers = tuple(measured(wanted.size, values) for wanted in task.wanted)
        known = numbers if task.in_order else tuple(sorted(numbers))
        if known not in seen:
            seen.add(known)
            sets.append((tuple(one for one, _ in answers), tuple(step for _, lines in answers for step in lines)))
    if len(sets) == 1:
        found, lines = sets[0]
        return Derived(found, (Derivation((*steps, *lines), PUT_BACK, texts),))
    together = tuple(
        Answer(" and ".join(one.text.rpartition(": ")[2] for one in answers), None, "", False, "story")
        if len(answers) > 1
        else answers[0]
        for answers, _ in sets
    )
    cases = tuple(Case(f"{answer.text} fits every sentence", (answer,)) for answer in together)
    closing = tuple(step for _, lines in sets for step in lines)
    return Several(together, cases, (Derivation((*steps, *closing), PUT_BACK, texts),))


def _answer(
    wanted: Wanted, values: dict[str, Fraction], form: Formed, task: StoryTask, ask: Ask, before: Sequence[Step]
) -> tuple[Answer, tuple[Step, ...]]:
    value = measured(wanted.size, values)
    size = wanted.size
    if isinstance(size, Extreme):
        size = Named(next(key for key in size.keys if values[key] == value))
    cents = 2 if wanted.unit in MONEY and value.denominator > 1 else 0
    amount: Expression = as_decimal(value, cents) or whole_or_fraction(value)
    measure = Measured(amount, wanted.unit) if wanted.unit else amount
    expression = expressed(size, form.named)
    again = rational_value(expression, {letter: values[key] for key, letter in form.letters.items()})
    if again != value:
        raise ChecksDisagree(f"{wanted.meaning} comes out as {_number(value)} and as something else")
    said = f"{wanted.meaning} = {_way(expression, values, form)}{write(measure)}"
    uses = (before[-1].statement,) if before else ()
    skill = "substitution" if " = " in said.partition(" = ")[2] else ""
    kind = StepKind.CALCULATION if skill else StepKind.CONCLUSION
    step = Step(said, kind, None, uses, write(measure), skill)
    answer, ending = finished(measure, ask, said)
    text = f"{wanted.meaning}: {answer.text}" if len(task.wanted) > 1 and task.in_order else answer.text
    # An age is given by its number alone as often as with its unit, so it has a name that stands for the unit.
    named = wanted.meaning if (len(task.wanted) > 1 and task.in_order) or wanted.unit == "year" else ""
    return Answer(text, answer.value, named, answer.rounded, "story"), (step, *ending)


def _way(expression: Expression, values: dict[str, Fraction], form: Formed) -> str:
    """How the value comes from the letters: "x + 3 = 11 + 3 = ", "x = "; nothing where there is none."""
    letters = letters_of(expression)
    if isinstance(expression, Number):
        return ""
    if isinstance(expression, Letter):
        return f"{expression.name} = "
    if not letters:
        return f"{write(expression)} = "
    numbers: dict[str, Expression] = {
        letter: as_decimal(values[key]) or whole_or_fraction(values[key]) for key, letter in form.letters.items()
    }
    return f"{write(expression)} = {write(substituted(expression, numbers))} = "


def _number(value: Fraction) -> str:
    return write(as_decimal(value) or whole_or_fraction(value))


STRAND = StoriesStrand()
