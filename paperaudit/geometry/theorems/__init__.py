"""Every theorem that the program knows, one value each, a file a topic; the order here is the order of trial."""

from collections.abc import Iterator

from paperaudit.geometry.coordinates.arrangement import ALIKE, Arrangement
from paperaudit.geometry.theorems import (
    arc_angles,
    arcs,
    area_ratios,
    areas,
    balances,
    bearings,
    between_parallels,
    bisectors,
    chords,
    circle_converses,
    circle_lengths,
    circle_sizes,
    circles,
    comparing,
    concyclic,
    congruent,
    equals,
    given,
    hypotenuse,
    isosceles_axes,
    kites,
    lengths,
    parallels,
    perimeters,
    points,
    polygons,
    proportion,
    quadrilateral_areas,
    quadrilateral_lengths,
    quadrilaterals,
    regular_polygons,
    right_triangles,
    sectors,
    shape_converses,
    similar,
    special_shapes,
    square_lines,
    straight,
    tangents,
    triangle_centres,
    triangles,
    trigonometry,
    two_circles,
)
from paperaudit.geometry.theorems.theorem import Equation, Instance, Predicate, SegmentsEqual, Theorem

ALL: tuple[Theorem, ...] = (
    *given.THEOREMS,
    *points.THEOREMS,
    *parallels.THEOREMS,
    *triangles.THEOREMS,
    *quadrilaterals.THEOREMS,
    *kites.THEOREMS,
    *polygons.THEOREMS,
    *circles.THEOREMS,
    *chords.THEOREMS,
    *tangents.THEOREMS,
    *arcs.THEOREMS,
    *arc_angles.THEOREMS,
    *two_circles.THEOREMS,
    *circle_converses.THEOREMS,
    *concyclic.THEOREMS,
    *lengths.THEOREMS,
    *perimeters.THEOREMS,
)

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


def instances(arrangement: Arrangement, theorems: tuple[Theorem, ...] = ALL) -> Iterator[Instance]:
    """Every instance of every theorem in an arrangement, in a fixed order; empty relations are dropped."""
    for find in dict.fromkeys(theorem.find for theorem in theorems):
        for instance in find(arrangement):
            assert isinstance(instance, Instance)
            if instance.conclusion is not None or instance.relation.terms or instance.relation.constant:
                yield instance


def applicable(arrangement: Arrangement) -> tuple[Instance, ...]:
    """The instances that can apply in a figure drawn from all its givens.

    Two sides that are shown to be equal are equal in every such drawing: where these are not, nothing follows
    from it, and it will not be shown. A figure drawn without its numbers has to keep every instance.
    """
    alike: dict[SegmentsEqual, bool] = {}

    def may_hold(predicate: Predicate | None) -> bool:
        if not isinstance(predicate, SegmentsEqual):
            return True
        known = alike.get(predicate)
        if known is None:
            one, two = arrangement.measured(predicate.first), arrangement.measured(predicate.second)
            known = alike[predicate] = abs(one - two) < ALIKE * max(one, two)
        return known

    return tuple(
        instance
        for instance in instances(arrangement)
        if may_hold(instance.conclusion) and all(map(may_hold, instance.premises))
    )


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
"""The skill that each theorem's name trains."""
