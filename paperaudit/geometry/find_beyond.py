"""Answers what linear relations of angles and lengths do not settle; loaded when a question needs it."""

from contextlib import suppress
from dataclasses import replace

from paperaudit.errors import BudgetExceeded
from paperaudit.geometry.alternatives import alternatives
from paperaudit.geometry.beyond.find_further import Attempt, attempts
from paperaudit.geometry.beyond.further_answers import answer_of as further_answer
from paperaudit.geometry.beyond.in_letters import in_letters_outcome
from paperaudit.geometry.beyond.refute_further import no_lengths_outcome, refute_lengths
from paperaudit.geometry.budget import Budget
from paperaudit.geometry.figure.build import FigureBuilder
from paperaudit.geometry.figure.figure import Figure
from paperaudit.geometry.figure.notation import Notation, notation_of
from paperaudit.geometry.figure.sketch import settled_by_sketch
from paperaudit.geometry.figure.wanted import Wanted, positions, wanted_of
from paperaudit.geometry.find import said
from paperaudit.geometry.linear.examine import Settled, examine, in_degrees
from paperaudit.geometry.linear.open_case import unreached
from paperaudit.geometry.overdetermined import overdetermined
from paperaudit.model.derivation import Case, Derived, NotRead, Outcome, Several
from paperaudit.model.expression import Expression, Letter
from paperaudit.model.fact import Given

__all__ = ["in_letters_outcome", "no_lengths", "other_ways", "overdetermined", "unsettled"]


def no_lengths(figure: Figure, givens: tuple[Given, ...], notation: Notation) -> Outcome:
    """A figure that cannot be drawn, refuted by all its lengths together where that can be done."""
    refutation = refute_lengths(settled_by_sketch(figure))
    if refutation:
        return no_lengths_outcome(refutation, givens, notation)
    return NotRead("the figure could neither be drawn from its givens nor shown to be impossible")


def other_ways(
    builder: FigureBuilder,
    figure: Figure,
    givens: tuple[Given, ...],
    asked: tuple[Expression, ...],
    outcome: Derived,
) -> Derived:
    """A derived outcome with other derivations of the same sizes, the shortest first, at most five in all."""
    resolved = [builder.resolved(item) for item in asked]
    result = examine(figure, [wanted_of(item, builder.unit).form for item in resolved])
    if len(result.settled) != 1:
        return outcome
    found = alternatives(result.settled[0], resolved, givens, notation_of(builder.unit, givens), outcome.derivations[0])
    return replace(outcome, derivations=found)


def unsettled(
    figure: Figure, settled: tuple[Settled, ...], wanted: list[Wanted], givens: tuple[Given, ...], notation: Notation
) -> Outcome:
    """The outcome where linear relations neither settle everything nor leave it open: derived beyond them, or not."""
    asked = [item.expression for item in wanted]
    budget = Budget()
    found = attempts(figure, settled, asked, givens, notation, False, budget)
    if not found:
        found = attempts(figure, settled, asked, givens, notation, True, budget)
    elif any(attempt.may_be_exact for attempt in found):
        with suppress(BudgetExceeded):
            found = attempts(figure, settled, asked, givens, notation, True, budget) or found
    if found:
        return _reached(figure, found, wanted, notation)
    return unreached(settled, wanted)


def _reached(figure: Figure, found: list[Attempt], wanted: list[Wanted], notation: Notation) -> Outcome:
    """The outcome of the search beyond linear relations: one answer, or one for every different figure."""
    asked = [item.expression for item in wanted]
    outcomes = [
        (
            tuple(
                further_answer(item, value, notation, in_degrees(figure, item) if isinstance(item, Letter) else False)
                for item, value in zip(asked, attempt.values, strict=True)
            ),
            attempt,
        )
        for attempt in found
    ]
    if len(outcomes) == 1:
        answers, attempt = outcomes[0]
        return Derived(answers, (attempt.derivation,), positions(attempt.arrangement))
    cases = tuple(
        Case(f"{said(wanted, answers)} in one figure that meets the givens", answers, positions(attempt.arrangement))
        for answers, attempt in outcomes
    )
    every = tuple(dict.fromkeys(answer for answers, _ in outcomes for answer in answers))
    return Several(every, cases, tuple(attempt.derivation for _, attempt in outcomes))
