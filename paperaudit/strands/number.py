"""Plain numbers: calculations, percentages and fractions of quantities, rounding, other forms of a number."""

from dataclasses import replace
from itertools import pairwise

from paperaudit.maths.exact import exact_value
from paperaudit.maths.measure import UnitClash, unit_of, without_units
from paperaudit.maths.settled import fraction_parts
from paperaudit.maths.surd import Surd
from paperaudit.maths.surd_lines import has_roots
from paperaudit.maths.units import conversion, unit_named
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask, Find, Rounded, Transform, WriteAs
from paperaudit.model.derivation import Answer, Derivation, Derived, NotRead, Outcome, Step, StepKind
from paperaudit.model.expression import Expression, Letter, Measured
from paperaudit.model.number_form_task import InSurdForm, PowerOf
from paperaudit.model.reading import Reading
from paperaudit.strands.calculating import (
    CONFIRMED,
    calculated,
    calculation_steps,
    confirm,
    continued_steps,
    is_numeric,
    rational,
    skill_of,
)
from paperaudit.strands.finishing import answer_of, finished
from paperaudit.strands.long_decimals import with_short_lines
from paperaudit.strands.numbers.powers import as_power
from paperaudit.strands.numbers.recurring import as_recurring, is_endless
from paperaudit.strands.powers_of_ten import in_standard_form
from paperaudit.strands.refusals import or_not_read
from paperaudit.strands.substitution import is_substitution, numbers_given, substituted, wanted_values
from paperaudit.strands.written_forms import FORMS, form_texts


class NumberStrand:
    """Takes parts whose ask is a calculation with numbers, a rounding, or a number in another form."""

    name = "number"

    def recognises(self, reading: Reading) -> bool:
        """Whether only numbers stand in the ask, or letters that the givens give numbers to."""
        if reading.ask is None:
            return False
        match reading.ask.task:
            case Transform("evaluate" | "simplify" | "expand", expression) | Rounded(expression) | WriteAs(expression):
                return is_numeric(expression) or is_substitution(reading)
            case InSurdForm():
                return True
            case Find(wanted):
                return all(map(is_numeric, wanted)) or is_substitution(reading)
        return False

    def derive(self, reading: Reading) -> Outcome:
        """The answer with its calculation, or NotRead with what stopped it."""
        assert reading.ask is not None
        ask = reading.ask
        return with_short_lines(or_not_read(lambda: _derive(reading, ask)))


def _derive(reading: Reading, ask: Ask) -> Outcome:
    match ask.task:
        case WriteAs(expression, form):
            return _written(expression, form, ask)
        case Rounded(expression):
            return _worked_out((expression,), ask)
        case InSurdForm(expression, root):
            return _in_surd_form(expression, root, ask)
    if is_substitution(reading):
        return _substituted(reading, ask)
    if isinstance(ask.task, Transform) and ask.task.command == "simplify" and fraction_parts(ask.task.expression):
        return _written(ask.task.expression, "lowest terms", ask)
    wanted = ask.task.wanted if isinstance(ask.task, Find) else ()
    return _worked_out((ask.task.expression,) if isinstance(ask.task, Transform) else wanted, ask)


def _worked_out(expressions: tuple[Expression, ...], ask: Ask) -> Outcome:
    answers: list[Answer] = []
    steps: list[Step] = []
    for expression in expressions:
        lines = calculated(expression, ask.unit, surds=ask.accuracy is None)
        working = calculation_steps(lines, skill_of(expression))
        answer, closing = finished(lines[-1], ask, working[-1].statement)
        if closing and len(lines) == 1:
            # A number that is only rounded or brought to a unit has no line of its own before that.
            working, closing = (), _joined(expression, closing)
        answers.append(answer)
        steps.extend((*working, *closing))
    return Derived(tuple(answers), (Derivation(tuple(steps), CONFIRMED),))


def _in_surd_form(expression: Expression, root: int, ask: Ask) -> Outcome:
    """A surd in the form that is named; one with other roots does not have it."""
    outcome = _worked_out((expression,), replace(ask, task=Transform("simplify", expression)))
    value = exact_value(expression)
    roots = set(value.parts) - {1} if isinstance(value, Surd) else set()
    if len(roots) > 1 or (root and roots and roots != {root}):
        answers = outcome.answers[0].text if isinstance(outcome, Derived) else write(expression)
        return NotRead(f"it is {answers}, which does not have the form that is asked for")
    return outcome


def _joined(expression: Expression, closing: tuple[Step, ...]) -> tuple[Step, ...]:
    """The closing lines with the number in front of the first: "2.446 ≈ 2.4"."""
    first = replace(closing[0], statement=f"{write(expression)} {closing[0].statement}", uses=())
    rest = (replace(step, uses=(before.statement,)) for before, step in pairwise((first, *closing[1:])))
    return first, *rest


def _substituted(reading: Reading, ask: Ask) -> Outcome:
    """Numbers put in place of letters, and the result worked out."""
    known = numbers_given(reading.givens)
    assert known is not None
    values = {name: value for name, (value, _) in known.items()}
    answers: list[Answer] = []
    steps: list[Step] = []
    used: list[str] = []
    for expression in wanted_values(reading):
        names = [name for name in known if Letter(name) in _letters(expression)]
        texts = tuple(dict.fromkeys(known[name][1].text for name in names))
        used.extend(text for text in texts if text not in used)
        put_in = substituted(expression, values)
        lines = calculated(put_in)
        letter = expression.name if isinstance(expression, Letter) else ""
        if letter:
            working = calculation_steps(lines, skill_of(put_in), texts, letter)
        else:
            first = Step(
                f"{write(expression)} = {write(put_in)}",
                StepKind.CALCULATION,
                None,
                texts,
                write(put_in),
                "substitution",
            )
            working = (first, *continued_steps(lines, skill_of(put_in), first.statement))
        answer, closing = finished(lines[-1], ask, working[-1].statement, letter)
        answers.append(answer)
        steps.extend((*working, *closing))
    return Derived(tuple(answers), (Derivation(tuple(steps), CONFIRMED, tuple(used)),))


def _letters(expression: Expression) -> tuple[Expression, ...]:
    from paperaudit.model.expression import leaves

    return tuple(leaf for leaf in leaves(expression) if isinstance(leaf, Letter))


def _written(expression: Expression, form: str, ask: Ask) -> Outcome:
    """A number in another form, or in another unit."""
    if form == "standard form":
        return in_standard_form(expression, ask)
    if form == "index form":
        return as_power(PowerOf(expression), None)
    form = "decimal" if form == "ordinary number" else form
    if form in ("decimal", "recurring decimal") and ask.accuracy is None and is_endless(expression):
        return as_recurring(expression)
    form = "decimal" if form == "recurring decimal" else form
    if form == "lowest terms" and has_roots(expression):
        return _worked_out((expression,), ask)
    lines = calculated(expression) if form != "lowest terms" else (expression,)
    if unit_named(form) is not None:
        return _in_unit(lines, form, ask)
    if form not in FORMS:
        return NotRead(f"writing a number as “{form}” is not known yet")
    unit = unit_of(lines[-1])
    if unit and form == "percentage":
        raise UnitClash(f"{write(lines[-1])} as a percentage")
    start = expression if len(lines) <= 2 and _is_reduced_only(lines) else lines[-1]
    texts, value = form_texts(rational(start), without_units(start, unit), form, ask.accuracy is not None)
    confirm((expression, Measured(value, unit) if unit else value))
    working = calculation_steps(lines, skill_of(expression)) if start is lines[-1] and len(lines) > 1 else ()
    steps = list(working)
    final = answer_of(value, unit).text
    if final != write(start) and ask.accuracy is None:
        texts = (*texts, final)
    for text in texts:
        before = (steps[-1].statement,) if steps else ()
        said = f"= {text}" if steps else f"{write(start)} = {text}"
        steps.append(Step(said, StepKind.CALCULATION, None, before, text, _skill_of_form(form)))
    if not steps:
        steps.append(Step(final, StepKind.CALCULATION, None, (), final, _skill_of_form(form)))
    answer, closing = finished(Measured(value, unit) if unit else value, ask, steps[-1].statement)
    return Derived((answer,), (Derivation((*steps, *closing), CONFIRMED),))


def _is_reduced_only(lines: tuple[Expression, ...]) -> bool:
    """Whether the calculation only brought one fraction to lowest terms."""
    from paperaudit.maths.settled import is_settled

    return is_settled(lines[0])


def _in_unit(lines: tuple[Expression, ...], target: str, ask: Ask) -> Outcome:
    own = unit_of(lines[-1])
    if not own or conversion(own, target) is None:
        return NotRead(f"{write(lines[-1])} cannot be written in {target}")
    return _worked_out((lines[0],), replace(ask, unit=target))


def _skill_of_form(form: str) -> str:
    return {"decimal": "decimals", "percentage": "percentages"}.get(form, "fractions")
