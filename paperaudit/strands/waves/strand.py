"""The strand of trigonometry beyond triangles: which derivation takes which task."""

from paperaudit.model.trig_task import InRadians, OfWave, SolveTrig
from paperaudit.strands.by_task import Derivations, StrandByTask
from paperaudit.strands.waves import equations, graphs

DERIVATIONS: Derivations = {
    SolveTrig: equations.solve,
    OfWave: graphs.of_wave,
    InRadians: graphs.in_radians,
}
"""By the task of the ask."""


STRAND = StrandByTask("trigonometry", DERIVATIONS)
