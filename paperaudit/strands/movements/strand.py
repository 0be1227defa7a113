"""The strand of movements and vectors: which derivation takes which task."""

from collections.abc import Callable
from typing import Any

from paperaudit.model.derivation import Outcome
from paperaudit.model.movement_task import Image, OfVectors, VectorsParallel
from paperaudit.model.reading import Reading
from paperaudit.strands.movements import images, vectors
from paperaudit.strands.refusals import or_not_read

DERIVATIONS: dict[type, Callable[[Any, Reading], Outcome]] = {
    Image: images.image,
    OfVectors: vectors.of_vectors,
    VectorsParallel: vectors.parallel,
}
"""By the task of the ask."""


class MovementsStrand:
    """Takes the tasks of `model/movement_task.py`."""

    name = "transformations"

    def recognises(self, reading: Reading) -> bool:
        """Whether the ask is one of these tasks."""
        return reading.ask is not None and type(reading.ask.task) in DERIVATIONS

    def derive(self, reading: Reading) -> Outcome:
        """The answer with its lines, or NotRead with what stopped it."""
        assert reading.ask is not None
        task = reading.ask.task
        return or_not_read(lambda: DERIVATIONS[type(task)](task, reading))
