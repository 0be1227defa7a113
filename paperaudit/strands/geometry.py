"""Plane geometry: from a part's givens to its angles and lengths, with reasons, or to why there are none."""

from dataclasses import replace

from paperaudit.errors import BudgetExceeded
from paperaudit.geometry.beyond.spelled import as_bearing
from paperaudit.geometry.figure.build import FigureBuilder
from paperaudit.geometry.figure.incidence import Unclear
from paperaudit.geometry.figure.sizes import NotLinear
from paperaudit.geometry.figure.variants import combined, variants
from paperaudit.geometry.find import find_outcome
from paperaudit.maths.exact import rational_value
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask, Establish, Find, Task, WriteAs
from paperaudit.model.derivation import Derived, NotRead, Outcome, Several, Step, StepKind
from paperaudit.model.expression import (
    AngleAt,
    AngleOf,
    BearingOf,
    Expression,
    LengthOf,
    Measured,
    PerimeterOf,
    Quotient,
    leaves,
)
from paperaudit.model.fact import Given, Holds
from paperaudit.model.reading import Reading
from paperaudit.strands.accuracy import to_accuracy
from paperaudit.strands.pi_taken import with_pi

IN_LETTERS = "in terms of"
"""How the form of an ask begins that wants a size as an expression in the paper's letters."""

_FIGURE_SIZES = (AngleOf, AngleAt, LengthOf, PerimeterOf)


class GeometryStrand:
    """Takes parts that ask for angles, lengths or letters of a figure, or for a claim about one."""

    name = "geometry"

    def recognises(self, reading: Reading) -> bool:
        """Whether the ask is about a figure: its sizes, a letter that its givens use, or a claim."""
        if reading.ask is None:
            return False
        match reading.ask.task:
            case Establish():
                return True
            case WriteAs(expression, form):
                return form.startswith(IN_LETTERS) and _about_figure(expression)
            case Find(wanted):
                return any(_about_figure(item) for item in wanted) or _has_figure(reading.givens)
        return False

    def derive(self, reading: Reading) -> Outcome:
        """The outcome of the part; what the engine cannot take in comes back as NotRead with the reason."""
        assert reading.ask is not None
        try:
            readings = variants(reading.givens, reading.sketch)
            outcomes = [self._one(reading, givens) for givens in readings]
            if isinstance(reading.ask.task, Establish):
                from paperaudit.geometry.claims.claims import combined_claims  # loaded by need

                return combined_claims(outcomes)
            outcome = to_accuracy(with_pi(combined(outcomes), reading.ask.pi), reading.ask)
            return _ratios_as_asked(_bearings_in_full(outcome, reading.ask.task), reading.ask)
        except (Unclear, NotLinear) as obstacle:
            return NotRead(str(obstacle))
        except BudgetExceeded as obstacle:
            return NotRead(f"the budget for one part was used up: {obstacle}")

    def with_other_ways(self, reading: Reading, outcome: Outcome) -> Outcome:
        """The outcome with other derivations of the sizes asked for; what is no answer for sizes stays as it is."""
        assert reading.ask is not None
        task = reading.ask.task
        readings = variants(reading.givens, reading.sketch)
        if not isinstance(outcome, Derived) or not isinstance(task, Find) or len(readings) != 1:
            return outcome
        builder = FigureBuilder(readings[0], task.wanted)
        figure = builder.figure(reading.sketch, task.wanted)
        from paperaudit.geometry.find_beyond import other_ways  # loaded by need

        return other_ways(builder, figure, readings[0], task.wanted, outcome)

    def _one(self, reading: Reading, givens: tuple[Given, ...]) -> Outcome:
        assert reading.ask is not None
        task = reading.ask.task
        if isinstance(task, Find | WriteAs):
            wanted = task.wanted if isinstance(task, Find) else (task.expression,)
            builder = FigureBuilder(givens, wanted)
            figure = builder.figure(reading.sketch, wanted)
            return find_outcome(builder, figure, givens, wanted, in_letters=isinstance(task, WriteAs))
        assert isinstance(task, Establish)
        from paperaudit.geometry.claims.claims import claim_outcome  # loaded by need

        return claim_outcome(reading, givens, task)


def _ratios_as_asked(outcome: Outcome, ask: Ask) -> Outcome:
    """A rational answer as the ratio that is asked for, 4 : 25 for 0.16, with a line that says so."""
    task = ask.task
    if not isinstance(outcome, Derived) or not isinstance(task, Find) or ask.accuracy is not None:
        return outcome
    answer, wanted = outcome.answers[0], task.wanted[0]
    if " : " not in ask.text or not isinstance(wanted, Quotient) or len(task.wanted) != 1 or answer.value is None:
        return outcome
    # Only a number may be a ratio; an answer with a unit, which has no rational value, is none.
    value = None if isinstance(answer.value, Measured) else rational_value(answer.value)
    if value is None:
        return outcome
    text = f"{value.numerator} : {value.denominator}"
    said = f"{write(wanted.numerator)} : {write(wanted.denominator)} = {text}"
    derivations = tuple(
        replace(one, steps=(*one.steps, Step(said, StepKind.CONCLUSION, None, (one.steps[-1].statement,), text)))
        for one in outcome.derivations
    )
    return replace(outcome, answers=(replace(answer, text=text),), derivations=derivations)


def _about_figure(expression: Expression) -> bool:
    return any(isinstance(leaf, _FIGURE_SIZES) for leaf in leaves(expression))


def _has_figure(givens: tuple[Given, ...]) -> bool:
    """Whether some given is about a figure, not a bare relation in letters."""
    for given in givens:
        for fact in given.facts:
            if not isinstance(fact, Holds):
                return True
            if _about_figure(fact.relation.left) or _about_figure(fact.relation.right):
                return True
    return False


def _bearings_in_full(outcome: Outcome, task: Task) -> Outcome:
    """Answers that are bearings with three figures: 015°."""
    wanted = task.wanted if isinstance(task, Find) else ()
    if not isinstance(outcome, Derived | Several) or not wanted or not all(isinstance(w, BearingOf) for w in wanted):
        return outcome
    return replace(outcome, answers=tuple(replace(one, text=as_bearing(one.text)) for one in outcome.answers))
