"""The strand of trigonometry beyond triangles: which derivation takes which task."""

from paperaudit.model.trig_task import ExactRatio, Identity, InRadians, OfWave, RatioFrom, SimplerTrig, SolveTrig
from paperaudit.strands.by_task import Derivations, StrandByTask
from paperaudit.strands.waves import equations, graphs, identities, known_ratio

DERIVATIONS: Derivations = {
    SolveTrig: equations.solve,
    OfWave: graphs.of_wave,
    InRadians: graphs.in_radians,
    ExactRatio: identities.exact_ratio,
    SimplerTrig: identities.simpler,
    Identity: identities.identity,
    RatioFrom: known_ratio.ratio_from,
}
"""By the task of the ask."""


STRAND = StrandByTask("trigonometry", DERIVATIONS)
