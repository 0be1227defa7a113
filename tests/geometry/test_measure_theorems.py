"""Theorems of measure (trigonometry, areas, circles): where they fire, that they are true, that a false one is seen."""

import pytest

from paperaudit.geometry.theorems import (
    area_ratios,
    areas,
    circle_lengths,
    circle_sizes,
    quadrilateral_areas,
    regular_polygons,
    sectors,
    trigonometry,
)
from paperaudit.geometry.theorems.theorem import Theorem
from tests.geometry.theorem_trials import TRIALS, Trial

TOPICS = (
    trigonometry,
    areas,
    quadrilateral_areas,
    area_ratios,
    circle_sizes,
    sectors,
    circle_lengths,
    regular_polygons,
)
OURS: tuple[Theorem, ...] = tuple(theorem for topic in TOPICS for theorem in topic.THEOREMS)
NAMES = [f"{number}-{theorem.name}" for number, theorem in enumerate(OURS)]


@pytest.mark.parametrize("trial", TRIALS)
@pytest.mark.parametrize("theorem", OURS, ids=NAMES)
def test_theorem(theorem: Theorem, trial: Trial) -> None:
    trial(theorem)
