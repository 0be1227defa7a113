"""Settles which circle is meant: by the radius of "the circle", the centre in a sector's name, "the larger circle"."""

from collections.abc import Collection, Iterable, Mapping
from dataclasses import replace

from paperaudit.maths.distances import THE_CENTRE
from paperaudit.maths.round_sizes import LARGER, SMALLER
from paperaudit.model.expression import ArcOf, CircleSize, DistanceOf, Expression, SectorOf, leaves, with_leaves
from paperaudit.model.fact import Circle, Fact
from paperaudit.model.quantity import AMONG

WHICH = {LARGER: "larger", SMALLER: "smaller"}
"""What circles about one centre are told apart by, in their names."""
HIDDEN_CENTRE = "⊙"
"""The centre of circles about one centre that has no letter."""
NEW_CENTRES = "OCMPQZ"
"""Letters for a centre that has none, the first that is free."""


def leaves_open(expression: Expression, centres: Collection[str], several: bool) -> bool:
    """Whether a size is that of "the circle", or taken from its centre, and it is not clear which is meant."""
    for leaf in leaves(expression):
        match leaf:
            case CircleSize(_, "") if several:
                return True
            case DistanceOf(point) if point == THE_CENTRE and len(centres) != 1:
                return True
            case SectorOf(_, arc) if centres and arc.centre not in centres and not _known_in(arc, centres):
                return True
    return False


def sized(expression: Expression, centres: Collection[str], others: Mapping[str, str]) -> Expression:
    """The expression with the letter of the only circle's centre, of that of each sector and of each other circle."""
    only = next(iter(centres)) if len(centres) == 1 else ""

    def settled(leaf: Expression) -> Expression:
        match leaf:
            case CircleSize(_, "") if only:
                return replace(leaf, centre=only)
            case CircleSize(_, centre) if centre in others:
                return replace(leaf, centre=others[centre])
            case DistanceOf(point) if point == THE_CENTRE and only:
                return replace(leaf, point=only)
            case SectorOf(_, arc) if arc.centre not in centres and (centre := _known_in(arc, centres)):
                return replace(leaf, arc=_from(arc, centre))
            case _:
                return leaf

    return with_leaves(expression, settled)


def _known_in(arc: ArcOf, centres: Collection[str]) -> str:
    """The one letter of a sector that is a known centre, "" where there is none or more than one."""
    known = [point for point in _letters(arc) if point in centres]
    return known[0] if len(known) == 1 else ""


def _letters(arc: ArcOf) -> list[str]:
    return [point for point in (arc.start, arc.through, arc.centre, arc.end) if point]


def _from(arc: ArcOf, centre: str) -> ArcOf:
    """The sector's arc with another of its letters as the centre."""
    points = [point for point in _letters(arc) if point != centre]
    return replace(arc, start=points[0], end=points[-1], through=points[1] if len(points) == 3 else "", centre=centre)


def ring_names(facts: Iterable[Fact], centres: tuple[str, ...], used: str | None) -> dict[str, str]:
    """The names of the circles about one centre by the words for them; none where no two circles share a centre.

    A centre that gets its letter later on has it from there; one without is called O where that is free.
    """
    names = {fact.centre for fact in facts if isinstance(fact, Circle) and AMONG in fact.centre}
    shared = {name.partition(AMONG)[0] for name in names}
    if len(shared) != 1:
        return {}
    (centre,) = shared
    if centre == HIDDEN_CENTRE and len(centres) == 1:
        (centre,) = centres
    elif centre == HIDDEN_CENTRE and used is not None:
        centre = next((letter for letter in NEW_CENTRES if letter not in used), centre)
    found = {words: f"{centre}{AMONG}{which}" for words, which in WHICH.items()}
    found |= {f"{HIDDEN_CENTRE}{AMONG}{which}": f"{centre}{AMONG}{which}" for which in WHICH.values()}
    return found
