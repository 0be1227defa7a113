"""The theorems beyond linear relations of angles and lengths, loaded when a question needs them."""

from collections.abc import Iterator

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.theorems import (
    ALL,
    area_ratios,
    areas,
    balances,
    bearings,
    between_parallels,
    bisectors,
    circle_lengths,
    circle_sizes,
    comparing,
    congruent,
    equals,
    hypotenuse,
    isosceles_axes,
    proportion,
    quadrilateral_areas,
    quadrilateral_lengths,
    regular_polygons,
    right_triangles,
    sectors,
    shape_converses,
    similar,
    special_shapes,
    square_lines,
    straight,
    triangle_centres,
    trigonometry,
)
from paperaudit.geometry.theorems.theorem import Equation, Instance, Theorem

FURTHER: tuple[Theorem, ...] = (
    *balances.THEOREMS,
    *right_triangles.THEOREMS,
    *trigonometry.THEOREMS,
    *areas.THEOREMS,
    *quadrilateral_areas.THEOREMS,
    *area_ratios.THEOREMS,
    *circle_sizes.THEOREMS,
    *sectors.THEOREMS,
    *circle_lengths.THEOREMS,
    *regular_polygons.THEOREMS,
    *bearings.THEOREMS,
    *similar.THEOREMS,
    *congruent.THEOREMS,
    *equals.THEOREMS,
    *straight.THEOREMS,
    *hypotenuse.THEOREMS,
    *isosceles_axes.THEOREMS,
    *bisectors.THEOREMS,
    *proportion.THEOREMS,
    *triangle_centres.THEOREMS,
    *between_parallels.THEOREMS,
    *shape_converses.THEOREMS,
    *special_shapes.THEOREMS,
    *quadrilateral_lengths.THEOREMS,
)
"""Theorems beyond linear relations of angles and lengths; `reach.py` searches with these and with ALL."""


def comparisons(arrangement: Arrangement) -> Iterator[Instance | Equation]:
    """Every instance of the theorems that compare sizes, for claims that one is greater."""
    for find in dict.fromkeys(theorem.find for theorem in comparing.THEOREMS):
        yield from find(arrangement)


def perpendiculars(arrangement: Arrangement) -> Iterator[Instance | Equation]:
    """Every instance of the theorems on lines at right angles, for claims about lines that meet in no named point."""
    for find in dict.fromkeys(theorem.find for theorem in square_lines.THEOREMS):
        yield from find(arrangement)


def further_instances(arrangement: Arrangement) -> Iterator[Instance | Equation]:
    """Every instance of the theorems that are not linear, in a fixed order."""
    for find in dict.fromkeys(theorem.find for theorem in FURTHER):
        yield from find(arrangement)


SKILLS: dict[str, str] = {
    theorem.name: theorem.skill for theorem in reversed((*ALL, *FURTHER, *comparing.THEOREMS, *square_lines.THEOREMS))
}
"""The skill that each theorem's name trains, linear ones too."""
