"""Rules that a maker fills as what lies between two rectangles, one within the other, rather than draw them."""

from collections.abc import Sequence
from typing import Final

from paperaudit.model.place import Box
from paperaudit.readers.draft.page import Piece, box_around

_ALIKE: Final = 0.01
"""Points between edges that are one."""


def strips_between(runs: Sequence[Sequence[Piece]]) -> tuple[Box, ...]:
    """The strips between two rectangles of which one holds the other; none where the strokes are anything else.

    A browser's border at the top alone is such a strip: the smaller rectangle shares its other three sides.

    >>> def ring(left, top, right, bottom):
    ...     corners = [(left, top), (right, top), (right, bottom), (left, bottom), (left, top)]
    ...     return [Piece(pair) for pair in zip(corners, corners[1:])]
    >>> strips_between([ring(0, 1, 9, 20), ring(0, 0, 9, 20)])
    ((0, 0, 9, 1),)
    """
    if len(runs) != 2:
        return ()
    boxes = [_rectangle(run) for run in runs]
    for outer, inner in (boxes, boxes[::-1]):
        if outer and inner and outer != inner and _holds(outer, inner):
            around = (
                (outer[0], outer[1], outer[2], inner[1]),
                (outer[0], inner[3], outer[2], outer[3]),
                (outer[0], outer[1], inner[0], outer[3]),
                (inner[2], outer[1], outer[2], outer[3]),
            )
            return tuple(one for one in around if one[2] - one[0] > _ALIKE and one[3] - one[1] > _ALIKE)
    return ()


def _rectangle(run: Sequence[Piece]) -> Box | None:
    """The rectangle that a stroke goes round, or None."""
    if len(run) != 4 or not all(piece.straight and _along(piece) for piece in run):
        return None
    return box_around([(x, y, x, y) for piece in run for x, y in piece.points])


def _along(piece: Piece) -> bool:
    """Whether a stretch is level or upright."""
    (left, top), (right, bottom) = piece.points
    return abs(left - right) < _ALIKE or abs(top - bottom) < _ALIKE


def _holds(outer: Box, inner: Box) -> bool:
    near = all(here <= there + _ALIKE for here, there in zip(outer[:2], inner[:2], strict=True))
    return near and all(here >= there - _ALIKE for here, there in zip(outer[2:], inner[2:], strict=True))
