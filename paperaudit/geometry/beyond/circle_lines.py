"""Lines that a pupil draws in at a circle: from its centre to where tangents meet, and perpendiculars beside radii."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import HIDDEN
from paperaudit.geometry.linear.constructions import Extended, with_perpendiculars, with_radii
from paperaudit.geometry.theorems import instances
from paperaudit.geometry.theorems.circles import circles
from paperaudit.geometry.theorems.tangents import pairs


def with_axes(arrangement: Arrangement) -> Extended | None:
    """Joins lettered centres to where tangents of their circles meet and to each other, beside the radii; or None.

    In "PA and PB are tangents to circle O at A and B" it is OP, which halves ∠APB.
    """
    base = with_radii(arrangement)
    grown = base.arrangement if base else arrangement
    lines = list(grown.lines)
    words = dict(base.words) if base else {}
    joined = False
    for start, end in _axes(grown):
        if not any(start in line and end in line for line in lines):
            lines.append((start, end))
            words.update({start + end: f"Join {start}{end}", end + start: f"Join {start}{end}"})
            joined = True
    if not joined:
        return None
    extended = Arrangement(replace(grown.figure, lines=tuple(lines)), grown.drawing)
    return Extended(extended, tuple(instances(extended)), words)


def _axes(arrangement: Arrangement) -> Iterator[tuple[str, str]]:
    """A centre with each point where two tangents of its circle meet; the centres of two circles."""
    lettered = [circle for circle in circles(arrangement) if not circle.centre.startswith(HIDDEN)]
    for circle in lettered:
        for meet, _, _ in pairs(arrangement, circle):
            yield circle.centre, meet
    for one, other in combinations(lettered, 2):
        if one.centre != other.centre:
            yield one.centre, other.centre


def with_radii_and_perpendiculars(arrangement: Arrangement) -> Iterator[Extended]:
    """Radii and axes with a perpendicular, one at a time: from the centre to a chord, to a radius of another circle."""
    base = with_axes(arrangement) or with_radii(arrangement)
    for extended in with_perpendiculars(base.arrangement) if base else ():
        yield replace(extended, words={**base.words, **extended.words}) if base else extended
