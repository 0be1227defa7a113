"""The strand of functions: which derivation takes which task."""

from collections.abc import Callable
from typing import Any

from paperaudit.model.derivation import Outcome
from paperaudit.model.function_task import (
    Derivative,
    Integral,
    InverseOf,
    Stationary,
    Touching,
    ValueOf,
    WhereEqual,
)
from paperaudit.model.reading import Reading
from paperaudit.strands.functions import derivatives, integrals, values
from paperaudit.strands.refusals import or_not_read

DERIVATIONS: dict[type, Callable[[Any, Reading], Outcome]] = {
    ValueOf: values.value_of,
    WhereEqual: values.where_equal,
    InverseOf: values.inverse,
    Derivative: derivatives.derivative,
    Touching: derivatives.touching,
    Stationary: derivatives.stationary,
    Integral: integrals.integral,
}
"""By the task of the ask."""


class FunctionsStrand:
    """Takes the tasks of `model/function_task.py`."""

    name = "functions"

    def recognises(self, reading: Reading) -> bool:
        """Whether the ask is one of these tasks."""
        return reading.ask is not None and type(reading.ask.task) in DERIVATIONS

    def derive(self, reading: Reading) -> Outcome:
        """The answer with its lines, or NotRead with what stopped it."""
        assert reading.ask is not None
        task = reading.ask.task
        return or_not_read(lambda: DERIVATIONS[type(task)](task, reading))
