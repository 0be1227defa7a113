"""The theorems of linear relations, one value each, a file a topic; the order here is the order of trial."""

from collections.abc import Iterator

from paperaudit.geometry.coordinates.arrangement import ALIKE, Arrangement
from paperaudit.geometry.theorems import (
    arc_angles,
    arcs,
    chords,
    circle_converses,
    circles,
    concyclic,
    given,
    kites,
    lengths,
    parallels,
    perimeters,
    points,
    polygons,
    quadrilaterals,
    tangents,
    triangles,
    two_circles,
)
from paperaudit.geometry.theorems.theorem import Instance, Predicate, SegmentsEqual, Theorem

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


SKILLS: dict[str, str] = {theorem.name: theorem.skill for theorem in reversed(ALL)}
"""The skill that each theorem's name trains."""
