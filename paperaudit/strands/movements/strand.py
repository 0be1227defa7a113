"""The strand of movements and vectors: which derivation takes which task."""

from paperaudit.model.movement_task import Image, OfVectors, VectorsParallel, WhichMovement
from paperaudit.strands.by_task import Derivations, StrandByTask
from paperaudit.strands.movements import images, naming, vectors

DERIVATIONS: Derivations = {
    Image: images.image,
    WhichMovement: naming.which_movement,
    OfVectors: vectors.of_vectors,
    VectorsParallel: vectors.parallel,
}
"""By the task of the ask."""


STRAND = StrandByTask("transformations", DERIVATIONS)
