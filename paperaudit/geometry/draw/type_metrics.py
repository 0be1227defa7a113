"""How much room a text takes on the page: widths of letters, height of the ink, where the baseline lies."""

import math

from paperaudit.geometry.draw.elements import Box, LabelKind
from paperaudit.geometry.figure.plane import Spot

# Advance widths in thousandths of the size, as in the metrics of Helvetica that Adobe published.
_WIDTHS = {
    **dict.fromkeys("ijl", 222),
    **dict.fromkeys(" It.,/f:", 278),
    **dict.fromkeys("()r-²³", 333),
    **dict.fromkeys("ckvxyzsJ", 500),
    **dict.fromkeys("0123456789?abdeghnopqu", 556),
    **dict.fromkeys("+−=×÷<>≈", 584),
    **dict.fromkeys("FTLZ", 611),
    **dict.fromkeys("ABEKPSVXY", 667),
    **dict.fromkeys("CDHNRUw", 722),
    **dict.fromkeys("GOQ", 778),
    **dict.fromkeys("Mm", 833),
    "W": 944,
    "°": 400,
    "√": 560,
    "π": 560,
    "△": 720,
    "∠": 770,
}
_UNKNOWN_WIDTH = 600
_BOLDER = 1.1
"""How much wider letters are in bold."""

SIZES: dict[LabelKind, float] = {
    "letter": 13.0,
    "size": 12.0,
    "asked": 13.0,
    "number": 9.0,
    "north": 10.5,
    "caption": 10.5,
}
"""Sizes of type, in page units."""
_CAPITALS, _SMALL = 0.74, 0.54
"""How high capitals and digits, and letters without ascenders, stand over the baseline, in terms of the size."""
_BELOW = 0.21
_DESCENDING = frozenset("()gjpqy,√")
_LOW = frozenset("acemnorsuvwxz")


def text_extent(text: str, kind: LabelKind) -> tuple[float, float]:
    """Width and height of a text's ink, near enough for any sans-serif face.

    >>> text_extent("68°", "size")
    (18.144, 8.88)
    """
    size = SIZES[kind]
    width = sum(_WIDTHS.get(letter, _UNKNOWN_WIDTH) for letter in text) * (_BOLDER if kind == "asked" else 1.0)
    above, below = _ink(text)
    return round(width * size / 1000, 3), round((above + below) * size, 3)


def baseline_under(text: str, kind: LabelKind) -> float:
    """How far a text's baseline lies below the middle of its ink."""
    above, below = _ink(text)
    return SIZES[kind] * (above - below) / 2


def _ink(text: str) -> tuple[float, float]:
    """How far the ink goes above the baseline and below it, in terms of the size."""
    return _SMALL if set(text) <= _LOW else _CAPITALS, _BELOW if _DESCENDING & set(text) else 0.0


def reach_of(extent: tuple[float, float], way: float) -> float:
    """How far a text's box reaches from its centre in a direction (degrees)."""
    turned = math.radians(way)
    return extent[0] / 2 * abs(math.cos(turned)) + extent[1] / 2 * abs(math.sin(turned))


def box_round(centre: Spot, extent: tuple[float, float]) -> Box:
    """The box of a text centred on a spot."""
    (x, y), (width, height) = centre, extent
    return x - width / 2, y - height / 2, x + width / 2, y + height / 2
