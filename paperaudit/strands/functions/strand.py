"""The strand of functions: which derivation takes which task."""

from paperaudit.model.function_task import (
    Derivative,
    Integral,
    InverseOf,
    Stationary,
    Touching,
    ValueOf,
    WhereEqual,
)
from paperaudit.strands.by_task import Derivations, StrandByTask
from paperaudit.strands.functions import derivatives, integrals, values

DERIVATIONS: Derivations = {
    ValueOf: values.value_of,
    WhereEqual: values.where_equal,
    InverseOf: values.inverse,
    Derivative: derivatives.derivative,
    Touching: derivatives.touching,
    Stationary: derivatives.stationary,
    Integral: integrals.integral,
}
"""By the task of the ask."""


STRAND = StrandByTask("functions", DERIVATIONS)
