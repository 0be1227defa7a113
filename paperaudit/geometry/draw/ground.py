"""What is drawn on the page before the texts are, and how much a text would cover of it."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from itertools import pairwise

from paperaudit.geometry.draw.elements import Arc, Box, Circle, distance, polar
from paperaudit.geometry.figure.plane import Spot, side

FROM_ARC = 2.5
"""Clear space between an arc and a text."""
ON_LINE = 1.0
"""A spot this near to a line is on it."""
ARC_PIECES, WIDEST_PIECE = 6, 8.0
"""In how many chords an arc is followed at least, and how many degrees one of them has at most."""
CIRCLE_PIECES = 72
MARGIN = 1.2
"""Clear space round a text."""
COVERED_TEXT = 1.0
COVERED_LINE = 1.0
COVERED_MARK = 1.0
COVERED_DOT = 4.0
"""How bad it is to cover a unit of another text's side, of a line's length, of a mark's length; to cover a dot."""
DOT = 1.7
"""Radius of the dots at points."""


def covered_length(box: Box, start: Spot, end: Spot) -> float:
    """The length of a segment's part inside a box (Liang and Barsky's clipping).

    >>> covered_length((0.0, 0.0, 2.0, 2.0), (-1.0, 1.0), (5.0, 1.0))
    2.0
    """
    (x, y), (p, q) = start, end
    left, top, right, bottom = box
    if (x < left and p < left) or (x > right and p > right) or (y < top and q < top) or (y > bottom and q > bottom):
        return 0.0
    low, high = 0.0, 1.0
    for way, near, far in ((p - x, left - x, right - x), (q - y, top - y, bottom - y)):
        if abs(way) < 1e-12:
            if near > 0 or far < 0:
                return 0.0
            continue
        first, second = near / way, far / way
        if first > second:
            first, second = second, first
        low, high = max(low, first), min(high, second)
        if low >= high:
            return 0.0
    return (high - low) * math.hypot(p - x, q - y)


def shared(one: Box, other: Box) -> tuple[float, float]:
    """Width and height of the overlap of two boxes, both 0 where they are apart."""
    width = min(one[2], other[2]) - max(one[0], other[0])
    height = min(one[3], other[3]) - max(one[1], other[1])
    return (width, height) if width > 0 and height > 0 else (0.0, 0.0)


@dataclass(slots=True)
class Ground:
    """Lines, circles, marks and dots on the page; `covered` is what a text's box would hide of them."""

    lines: list[tuple[Spot, Spot]] = field(default_factory=list)
    marks: list[tuple[Spot, Spot]] = field(default_factory=list)
    dots: list[Spot] = field(default_factory=list)
    chords: list[tuple[Spot, Spot]] = field(default_factory=list)
    outlines: list[tuple[Spot, Spot]] = field(default_factory=list)

    def add_chain(self, spots: Iterable[Spot]) -> None:
        """Takes in a mark made of straight pieces."""
        self.marks += pairwise(spots)

    def add_arc(self, arc: Arc, parts: bool = True) -> None:
        """Takes in an arc as a chain of chords; one that `parts` should not lie between a text and what it names."""
        pieces = max(ARC_PIECES, round(abs(arc.turn) / WIDEST_PIECE))
        spots = [arc.spot(step / pieces) for step in range(pieces + 1)]
        self.add_chain(spots)
        if parts:
            self.chords += pairwise(spots)

    def add_circle(self, circle: Circle) -> None:
        """Takes in the outline of a circle as a chain of chords, which texts avoid as they do lines."""
        turn = 360 / CIRCLE_PIECES
        self.outlines += pairwise(polar(circle.centre, step * turn, circle.radius) for step in range(CIRCLE_PIECES + 1))

    def is_parted(self, one: Spot, other: Spot) -> bool:
        """Whether a drawn line runs between two spots; a line through one of them does not part them."""
        return any(_parts(line, one, other) for line in self.lines)

    def is_across_circle(self, one: Spot, other: Spot) -> bool:
        """Whether the outline of a circle runs between two spots, neither of which is on it."""
        return any(_parts(chord, one, other) for chord in self.outlines)

    def is_behind_arc(self, one: Spot, other: Spot) -> bool:
        """Whether an arc runs between two spots, neither of which is on it."""
        return any(_parts(chord, one, other) for chord in self.chords)

    def crossed(self, spots: Sequence[Spot]) -> int:
        """How many drawn lines a chain of straight pieces crosses; lines that begin or end on it don't count."""
        return sum(any(_parts(line, one, other) for one, other in pairwise(spots)) for line in self.lines)

    def nearest(self, spot: Spot, segment: tuple[Spot, Spot]) -> float:
        """How far a spot is from the nearest drawn line that does not run along a segment."""
        return min(
            (
                distance(spot, *line)
                for line in self.lines
                if max(abs(side(end, *line)) for end in segment) > ON_LINE * math.dist(*line)
            ),
            default=math.inf,
        )

    def covered(
        self,
        box: Box,
        others: Iterable[Box] = (),
        leads: Iterable[tuple[Spot, Spot]] = (),
        enough: float = math.inf,
    ) -> float:
        """The weighted lengths under a box with its margin; counting stops once there is `enough`.

        `others` are the boxes of other texts, `leads` thin lines that lead to such.
        """
        wide = (box[0] - MARGIN, box[1] - MARGIN, box[2] + MARGIN, box[3] + MARGIN)
        total = 0.0
        for other in others:
            if other[0] < wide[2] and wide[0] < other[2] and other[1] < wide[3] and wide[1] < other[3]:
                total += COVERED_TEXT * sum(shared(wide, other))
        for x, y in self.dots:
            if wide[0] < x + DOT and x - DOT < wide[2] and wide[1] < y + DOT and y - DOT < wide[3]:
                total += COVERED_DOT
        for start, end in (*self.lines, *self.outlines):
            total += COVERED_LINE * covered_length(wide, start, end)
            if total >= enough:
                return total
        for start, end in (*self.marks, *leads):
            total += COVERED_MARK * covered_length(wide, start, end)
            if total >= enough:
                return total
        return total


def _parts(line: tuple[Spot, Spot], one: Spot, other: Spot) -> bool:
    """Whether a segment runs between two spots, clear of both."""
    start, end = line
    first, second = side(start, one, other), side(end, one, other)
    if (first < 0) == (second < 0):
        return False
    third, fourth = side(one, start, end), side(other, start, end)
    return third * fourth < 0 and min(abs(third), abs(fourth)) > ON_LINE * math.dist(start, end)
