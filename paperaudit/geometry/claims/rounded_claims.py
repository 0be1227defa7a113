"""Claims of a size to an accuracy: show that AC = 5.83, correct to 2 decimal places."""

import math
from collections.abc import Sequence
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.geometry.beyond.amounts import as_fraction
from paperaudit.geometry.beyond.find_further import attempted
from paperaudit.geometry.beyond.further_answers import answer_of
from paperaudit.geometry.coordinates.measure import in_unit
from paperaudit.geometry.figure.build import FigureBuilder
from paperaudit.geometry.figure.notation import Notation
from paperaudit.geometry.figure.relations import in_figure_unit
from paperaudit.geometry.figure.wanted import positions
from paperaudit.geometry.linear.examine import Settled
from paperaudit.maths.write import write
from paperaudit.model.ask import Accuracy, Establish
from paperaudit.model.derivation import Answer, Derivation, Derived, Outcome, Step, StepKind
from paperaudit.model.expression import Expression, Measured, Number
from paperaudit.model.fact import Fact, Given, Holds

EXACTLY = 1e-9


def rounded_claim_outcome(
    settled: Sequence[Settled],
    builder: FigureBuilder,
    givens: tuple[Given, ...],
    task: Establish,
    accuracy: Accuracy | None,
    notation: Notation,
    said: str,
) -> Outcome | None:
    """The derivation of a size whose rounded value is claimed; None for other claims, or where it rounds otherwise.

    Without an accuracy asked for, a decimal is taken as rounded to its places where the value has no
    exact one with as many: only to show or prove, never to decide.
    """
    if len(task.claims) != 1:
        return None
    sides = _sides(task.claims[0], builder)
    if sides is None or (accuracy is None and (task.how == "decide" or not sides[1].places)):
        return None
    size, stated = sides
    play = _play(stated, accuracy, builder.unit)
    outcomes = []
    for one in settled:
        real = one.arrangement.measured(size)
        off = abs(real - float(stated.value))
        if play is None or off <= EXACTLY * abs(real) or off > play * (1 + EXACTLY):
            return None
        attempt = attempted(one, [size], givens, notation) or attempted(one, [size], givens, notation, deep=True)
        if attempt is None or (accuracy is None and _ends(as_fraction(attempt.values[0]))):
            return None
        found = answer_of(size, attempt.values[0], notation, False).text
        unit = f" {builder.unit}" if builder.unit and not found.endswith("°") else ""
        text = f"{write(size)} = {found}, which is {write(stated)}{unit} as rounded"
        steps = (*attempt.derivation.steps, Step(text, StepKind.CONCLUSION, None, (), "", "rounding"))
        derivation = Derivation(steps, attempt.derivation.confirmed_by, attempt.derivation.givens_used)
        outcomes.append(Derived((Answer(said),), (derivation,), positions(one.arrangement)))
    return outcomes[0] if outcomes else None


def _sides(fact: Fact, builder: FigureBuilder) -> tuple[Expression, Number] | None:
    """The size and the number that a claim says it is, in the figure's unit."""
    if not isinstance(fact, Holds) or fact.relation.sign != "=":
        return None
    left, right = (in_figure_unit(builder.resolved(side), builder.unit) for side in _both(fact))
    amount = right.amount if isinstance(right, Measured) else right
    return (left, amount) if isinstance(amount, Number) else None


def _both(fact: Holds) -> tuple[Expression, Expression]:
    return fact.relation.left, fact.relation.right


def _play(stated: Number, accuracy: Accuracy | None, unit: str) -> float | None:
    """Half a step of the accuracy, None where it is not one of numbers."""
    value = abs(float(stated.value))
    if accuracy is None:
        return 0.5 * 10.0**-stated.places
    if accuracy.kind == "decimal places":
        return 0.5 * 10.0 ** -int(accuracy.amount)
    if accuracy.kind == "significant figures":
        return 0.5 * 10.0 ** (math.floor(math.log10(value)) + 1 - int(accuracy.amount)) if value else None
    try:
        return float(accuracy.amount) / 2
    except ValueError:
        pass
    if accuracy.amount in ("°", "degree"):
        return 0.5
    try:
        return float(in_unit(accuracy.amount, unit)) / 2
    except NoValue:
        return None


def _ends(value: Fraction | None) -> bool:
    """Whether a value has an exact decimal."""
    if value is None:
        return False
    denominator = value.denominator
    for prime in (2, 5):
        while denominator % prime == 0:
            denominator //= prime
    return denominator == 1
