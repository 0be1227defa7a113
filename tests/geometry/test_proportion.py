"""Theorems of proportion, congruence and shapes: where they fire, that they are true, and that a false one is seen."""

from dataclasses import replace
from fractions import Fraction
from time import process_time

import pytest

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.theorems import (
    between_parallels,
    bisectors,
    comparing,
    congruent,
    equals,
    hypotenuse,
    isosceles_axes,
    proportion,
    quadrilateral_lengths,
    shape_converses,
    similar,
    special_shapes,
    square_lines,
    straight,
    triangle_centres,
)
from paperaudit.geometry.theorems.theorem import (
    Instance,
    Theorem,
)
from paperaudit.marking.skills import skills
from tests.geometry.premises import redrawn
from tests.geometry.theorem_trials import TRIALS, Trial, drawn, instances_of, is_true

TOPICS = (
    similar,
    congruent,
    equals,
    straight,
    hypotenuse,
    isosceles_axes,
    bisectors,
    proportion,
    triangle_centres,
    between_parallels,
    shape_converses,
    special_shapes,
    quadrilateral_lengths,
    comparing,
    square_lines,
)
OURS: tuple[Theorem, ...] = tuple(theorem for topic in TOPICS for theorem in topic.THEOREMS)
NAMES = [f"{number}-{theorem.name}" for number, theorem in enumerate(OURS)]


@pytest.mark.parametrize("trial", TRIALS)
@pytest.mark.parametrize("theorem", OURS, ids=NAMES)
def test_theorem(theorem: Theorem, trial: Trial) -> None:
    trial(theorem)


def test_ratios_are_exact() -> None:
    for theorem in OURS:
        for found in instances_of(theorem, drawn(theorem.fires, 1)[0]):
            if isinstance(found, Instance):
                assert all(isinstance(value, Fraction | int) for value in found.relation.terms.values())


@pytest.mark.parametrize("name", ["congruent-sss", "congruent-sas", "congruent-rhs", "midpoint-theorem", "centroid"])
def test_a_missing_premise_is_seen(name: str) -> None:
    """The figures drawn from the premises would show a theorem that leaves one out."""
    theorem = next(theorem for theorem in OURS if theorem.name == name)
    (arrangement,) = drawn(theorem.fires, 1)
    false = 0
    for found in instances_of(theorem, arrangement)[:4]:
        lame = replace(found, premises=found.premises[:-1])
        false += sum(not is_true(loose, lame) for loose in redrawn(arrangement, lame.premises, range(6)))
    assert false


def test_every_skill_is_one_of_the_list() -> None:
    """Marks are counted by the names of `schemes/skills.yaml`."""
    assert {theorem.skill for theorem in OURS} <= set(skills())


def test_finders_are_quick_on_a_figure_full_of_like_triangles() -> None:
    """A regular pentagon with its diagonals: 35 triangles of two shapes. Some 0.15 s of processor time when written."""
    star = (
        "regular pentagon ABCDE",
        "AC and BD intersect at P",
        "BD and CE intersect at Q",
        "CE and AD intersect at R",
        "AD and BE intersect at S",
        "BE and AC intersect at T",
    )
    arrangement = Arrangement(drawn(star, 1)[0].figure, drawn(star, 1)[0].drawing)
    before = process_time()
    found = sum(len(list(find(arrangement))) for find in dict.fromkeys(theorem.find for theorem in OURS))
    assert found > 1000
    assert process_time() - before < 1.0
