"""The strand of movements and vectors: which derivation takes which task."""

from paperaudit.model.movement_task import Image, OfVectors, VectorsParallel
from paperaudit.strands.by_task import Derivations, StrandByTask
from paperaudit.strands.movements import images, vectors

DERIVATIONS: Derivations = {
    Image: images.image,
    OfVectors: vectors.of_vectors,
    VectorsParallel: vectors.parallel,
}
"""By the task of the ask."""


STRAND = StrandByTask("transformations", DERIVATIONS)
