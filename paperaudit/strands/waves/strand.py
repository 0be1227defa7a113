"""The strand of trigonometry beyond triangles: which derivation takes which task."""

from collections.abc import Callable
from typing import Any

from paperaudit.model.derivation import Outcome
from paperaudit.model.reading import Reading
from paperaudit.model.trig_task import InRadians, OfWave, SolveTrig
from paperaudit.strands.refusals import or_not_read
from paperaudit.strands.waves import equations, graphs

DERIVATIONS: dict[type, Callable[[Any, Reading], Outcome]] = {
    SolveTrig: equations.solve,
    OfWave: graphs.of_wave,
    InRadians: graphs.in_radians,
}
"""By the task of the ask."""


class WavesStrand:
    """Takes the tasks of `model/trig_task.py`."""

    name = "trigonometry"

    def recognises(self, reading: Reading) -> bool:
        """Whether the ask is one of these tasks."""
        return reading.ask is not None and type(reading.ask.task) in DERIVATIONS

    def derive(self, reading: Reading) -> Outcome:
        """The answer with its lines, or NotRead with what stopped it."""
        assert reading.ask is not None
        task = reading.ask.task
        return or_not_read(lambda: DERIVATIONS[type(task)](task, reading))
