"""Settles which circle a size is meant of: the radius of "the circle", the centre in a sector's name."""

from collections.abc import Collection, Mapping
from dataclasses import replace

from paperaudit.maths.distances import THE_CENTRE
from paperaudit.model.expression import ArcOf, CircleSize, DistanceOf, Expression, SectorOf, leaves, with_leaves


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
