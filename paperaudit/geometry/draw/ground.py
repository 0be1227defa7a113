"""The page while it fills up: what is drawn already, and how much a new text would cover of it."""

import math
from collections.abc import Iterable
from dataclasses import dataclass, field
from itertools import pairwise

from paperaudit.geometry.draw.elements import Arc, Box, Circle, LabelKind, polar
from paperaudit.geometry.plane import Spot, side

# Advance widths in thousandths of the size, as in the metrics of Helvetica that Adobe published.
_WIDTHS = {
    **dict.fromkeys("ijl", 222),
    **dict.fromkeys(" It.,/f", 278),
    **dict.fromkeys("()r-²³", 333),
    **dict.fromkeys("ckvxyzsJ", 500),
    **dict.fromkeys("0123456789?abdeghnopqu", 556),
    **dict.fromkeys("+−=×÷<>", 584),
    **dict.fromkeys("FTLZ", 611),
    **dict.fromkeys("ABEKPSVXY", 667),
    **dict.fromkeys("CDHNRUw", 722),
    **dict.fromkeys("GOQ", 778),
    **dict.fromkeys("Mm", 833),
    "W": 944,
    "°": 400,
}
_UNKNOWN_WIDTH = 600
INK_HEIGHT = 0.76
"""Height of capitals and digits, brackets included, in terms of the size."""

SIZES: dict[LabelKind, float] = {"letter": 13.0, "size": 12.0, "asked": 13.0, "number": 9.0}
"""Sizes of type, in page units."""
FROM_ARC = 2.5
"""Clear space between an arc and a text."""
ON_LINE = 1.0
"""A spot this near to a line is on it."""
ARC_PIECES = 6
CIRCLE_PIECES = 72
MARGIN = 1.2
"""Clear space round a text."""
COVERED_TEXT = 1.0
COVERED_LINE = 1.0
COVERED_MARK = 0.6
"""How bad it is to cover a unit of another text's side, of a line's length, of a mark's length."""


def text_extent(text: str, size: float) -> tuple[float, float]:
    """Width and height of a text's ink, near enough for any sans-serif face.

    >>> text_extent("68°", 10.0)
    (15.12, 7.6)
    """
    width = sum(_WIDTHS.get(letter, _UNKNOWN_WIDTH) for letter in text)
    return round(width * size / 1000, 3), INK_HEIGHT * size


def reach_of(extent: tuple[float, float], way: float) -> float:
    """How far a text's box reaches from its centre in a direction (degrees)."""
    turned = math.radians(way)
    return extent[0] / 2 * abs(math.cos(turned)) + extent[1] / 2 * abs(math.sin(turned))


def box_round(centre: Spot, extent: tuple[float, float]) -> Box:
    """The box of a text centred on a spot."""
    (x, y), (width, height) = centre, extent
    return x - width / 2, y - height / 2, x + width / 2, y + height / 2


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
    """Lines, marks and texts that stand on the page; `covered` is what a box would hide of them."""

    lines: list[tuple[Spot, Spot]] = field(default_factory=list)
    marks: list[tuple[Spot, Spot]] = field(default_factory=list)
    boxes: list[Box] = field(default_factory=list)
    chords: list[tuple[Spot, Spot]] = field(default_factory=list)
    outlines: list[tuple[Spot, Spot]] = field(default_factory=list)

    def add_chain(self, spots: Iterable[Spot]) -> None:
        """Takes in a mark made of straight pieces."""
        self.marks += pairwise(spots)

    def add_arc(self, arc: Arc) -> None:
        """Takes in an arc as a chain of chords."""
        spots = [arc.spot(step / ARC_PIECES) for step in range(ARC_PIECES + 1)]
        self.add_chain(spots)
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

    def covered(self, box: Box, enough: float = math.inf) -> float:
        """The weighted lengths under a box with its margin; counting stops once there is `enough`."""
        wide = (box[0] - MARGIN, box[1] - MARGIN, box[2] + MARGIN, box[3] + MARGIN)
        total = 0.0
        for other in self.boxes:
            if other[0] < wide[2] and wide[0] < other[2] and other[1] < wide[3] and wide[1] < other[3]:
                total += COVERED_TEXT * sum(shared(wide, other))
        for start, end in (*self.lines, *self.outlines):
            total += COVERED_LINE * covered_length(wide, start, end)
            if total >= enough:
                return total
        for start, end in self.marks:
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
