"""The strand of movements and vectors: which derivation takes which task."""

from collections.abc import Callable
from typing import Any

from paperaudit.errors import BudgetExceeded
from paperaudit.maths.algebra.terms import NotTerms, terms_of
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.model.ask import Find
from paperaudit.model.derivation import Outcome
from paperaudit.model.expression import letters_of
from paperaudit.model.movement_task import Image, OfVectors, Vector, VectorsParallel, WhichMovement
from paperaudit.model.reading import Reading
from paperaudit.strands.movements import images, naming, vectors
from paperaudit.strands.refusals import or_not_read

DERIVATIONS: dict[type, Callable[[Any, Reading], Outcome]] = {
    Image: images.image,
    WhichMovement: naming.which_movement,
    OfVectors: vectors.of_vectors,
    VectorsParallel: vectors.parallel,
}
"""By the task of the ask."""


class MovementsStrand:
    """Takes the tasks of `model/movement_task.py`, and sums of letters that the givens say are vectors: 2a − b."""

    name = "transformations"

    def recognises(self, reading: Reading) -> bool:
        """Whether the ask is one of these tasks."""
        return _task(reading) is not None

    def derive(self, reading: Reading) -> Outcome:
        """The answer with its lines, or NotRead with what stopped it."""
        task = _task(reading)
        return or_not_read(lambda: DERIVATIONS[type(task)](task, reading))


def _task(reading: Reading) -> object | None:
    task = reading.ask.task if reading.ask is not None else None
    if isinstance(task, Find):
        return _sum_of_vectors(task, reading)
    return task if type(task) in DERIVATIONS else None


def _sum_of_vectors(task: Find, reading: Reading) -> OfVectors | None:
    """A sum of multiples of letters, each of which is a vector; None for anything else."""
    named = {fact.name for given in reading.givens for fact in given.facts if isinstance(fact, Vector)}
    if len(task.wanted) != 1 or not named or not named >= set(letters_of(task.wanted[0])):
        return None
    try:
        terms = terms_of(task.wanted[0])
    except (NotTerms, BudgetExceeded):
        return None
    if not terms or any([count for _, count in term.powers] != [1] for term in terms):
        return None
    return OfVectors("vector", tuple((whole_or_fraction(term.coefficient), term.powers[0][0]) for term in terms))


STRAND = MovementsStrand()
