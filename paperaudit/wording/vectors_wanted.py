"""Sums of vectors that an ask names by their letters alone: "find 2a − b" beside a = (3, −1) and b = (−2, 4)."""

from dataclasses import replace

from paperaudit.errors import BudgetExceeded
from paperaudit.maths.algebra.terms import NotTerms, terms_of
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.model.ask import Find
from paperaudit.model.expression import Expression, letters_of
from paperaudit.model.movement_task import OfVectors, Vector
from paperaudit.model.reading import Reading


def with_vectors(reading: Reading) -> Reading:
    """The reading with a sum of letters as one of vectors, where the givens name a vector by each letter."""
    if reading.ask is None or not isinstance(reading.ask.task, Find) or len(reading.ask.task.wanted) != 1:
        return reading
    (wanted,) = reading.ask.task.wanted
    names = {fact.name for given in reading.givens for fact in given.facts if isinstance(fact, Vector)}
    sum_of = _multiples(wanted) if names and names >= set(letters_of(wanted)) else ()
    return replace(reading, ask=replace(reading.ask, task=OfVectors("vector", sum_of))) if sum_of else reading


def _multiples(wanted: Expression) -> tuple[tuple[Expression, str], ...]:
    """Each multiple with the letter that it is of; () for anything else."""
    try:
        terms = terms_of(wanted)
    except (NotTerms, BudgetExceeded):
        return ()
    if any([count for _, count in term.powers] != [1] for term in terms):
        return ()
    return tuple((whole_or_fraction(term.coefficient), term.powers[0][0]) for term in terms)
