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
from paperaudit.model.graph_task import Bending, DomainOf, ImageOnGraph, Optimum, RegionBetween, Rising, ShiftedGraph
from paperaudit.strands.by_task import Derivations, StrandByTask
from paperaudit.strands.functions import (
    bending,
    derivatives,
    increase,
    integrals,
    moved_graphs,
    optimum,
    regions,
    sets_of,
    values,
)

DERIVATIONS: Derivations = {
    ValueOf: values.value_of,
    WhereEqual: values.where_equal,
    InverseOf: values.inverse,
    Derivative: derivatives.derivative,
    Touching: derivatives.touching,
    Stationary: derivatives.stationary,
    Integral: integrals.integral,
    DomainOf: sets_of.domain_of,
    Rising: increase.rising,
    Bending: bending.bending,
    Optimum: optimum.optimum,
    RegionBetween: regions.between,
    ShiftedGraph: moved_graphs.shifted,
    ImageOnGraph: moved_graphs.image_on,
}
"""By the task of the ask."""


STRAND = StrandByTask("functions", DERIVATIONS)
