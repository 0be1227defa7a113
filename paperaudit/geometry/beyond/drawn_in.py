"""Lines that a pupil draws in where a figure alone does not lead on, in the order in which they are tried."""

from collections.abc import Iterator
from dataclasses import replace

from paperaudit.geometry.beyond.circle_lines import with_axes, with_radii_and_perpendiculars
from paperaudit.geometry.beyond.diagonals import with_cuts, with_diagonals
from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.linear.constructions import (
    Extended,
    with_chords,
    with_crossings,
    with_extensions,
    with_parallels,
    with_perpendiculars,
    with_radii,
)


def drawn_in_first(arrangement: Arrangement) -> Iterator[Extended]:
    """What is drawn in before any size is called by a letter."""
    axes = (with_axes(arrangement) or with_radii(arrangement)) if arrangement.rounds else None
    if axes:
        yield axes
    diagonals = with_diagonals(arrangement)
    crossed = with_crossings(diagonals.arrangement if diagonals else arrangement)
    if crossed:
        yield replace(crossed, words={**(diagonals.words if diagonals else {}), **crossed.words})


def drawn_in(arrangement: Arrangement) -> Iterator[Extended]:
    """Radii, axes of tangents, diagonals, chords, crossings, cuts, perpendiculars, parallels, extensions, in turn."""
    for construct in (with_radii, with_axes, with_diagonals, with_chords, with_crossings):
        extended = construct(arrangement)
        if extended:
            yield extended
    yield from with_cuts(arrangement)
    yield from with_perpendiculars(arrangement)
    yield from with_radii_and_perpendiculars(arrangement)
    for construct in (with_parallels, with_extensions):
        extended = construct(arrangement)
        if extended:
            yield extended
