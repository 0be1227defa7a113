"""All families of school questions, and how questions are drawn from them.

Weights follow how often annotated school solutions use what a family is about (common practice, no
source): triangle sums, inscribed angles, lengths that add and parallels first, areas of compounds last.
"""

import random

from tests.geometry import school_circles, school_lengths, school_letters, school_triangles  # noqa: F401 (they register families)
from tests.geometry.school_sheet import REGISTER, SchoolQuestion, set_question

FAMILIES = tuple(REGISTER)


def drawn(seed: int) -> SchoolQuestion:
    """The question for a seed: its family by weight, its numbers, its letters and its sketch."""
    chance = random.Random(seed * 7919)
    families = list(REGISTER.values())
    function, _ = chance.choices(families, [weight for _, weight in families])[0]
    return set_question(function, seed)
