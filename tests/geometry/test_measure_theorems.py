"""Theorems of measure (trigonometry, areas, circles): where they fire, that they are true, that a false one is seen."""

import pytest

from paperaudit.geometry.theorems import (
    area_ratios,
    areas,
    bearings,
    circle_lengths,
    circle_sizes,
    quadrilateral_areas,
    regular_polygons,
    sectors,
    trigonometry,
)
from paperaudit.geometry.theorems.theorem import Theorem
from tests.geometry.theorem_trials import TRIALS, Trial, premises_are_enough

TOPICS = (
    trigonometry,
    areas,
    quadrilateral_areas,
    area_ratios,
    circle_sizes,
    sectors,
    circle_lengths,
    regular_polygons,
    bearings,
)
OURS: tuple[Theorem, ...] = tuple(theorem for topic in TOPICS for theorem in topic.THEOREMS)
NAMES = [f"{number}-{theorem.name}" for number, theorem in enumerate(OURS)]


@pytest.mark.parametrize("trial", TRIALS)
@pytest.mark.parametrize("theorem", OURS, ids=NAMES)
def test_theorem(theorem: Theorem, trial: Trial) -> None:
    if trial is premises_are_enough and theorem in bearings.THEOREMS:
        # Which of two bearings is the larger is read off the drawing, and a figure drawn anew has another north.
        return
    trial(theorem)
