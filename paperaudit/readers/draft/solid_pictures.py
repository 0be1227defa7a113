"""Tells what some makers of PDFs print rules with: pictures of one dot, and a letter of Adobe's Symbol."""

from pdfminer.pdftypes import PDFStream

from paperaudit.readers.draft.page import Path, Piece, Point, box_around

RULE_OF_A_ROOT = "\uf8e5"
"""The letter "radicalex" of Symbol; its metrics have it from 0.48 to 1.09 across, from 0.881 to 0.917 up."""


def rule_of_root(origin: Point, size: float, index: int, fill: float) -> Path:
    """The path that prints the same as that letter, whose pen is at `origin`."""
    (x, y), (left, right, low, high) = origin, (0.48 * size, 1.09 * size, 0.881 * size, 0.917 * size)
    corners = ((x + left, y - low), (x + right, y - low), (x + right, y - high), (x + left, y - high))
    return filled(corners, index, fill)


def is_solid(picture: PDFStream) -> bool:
    """Whether a picture is a stencil of a single dot that is printed in the colour of the pen."""
    size = picture.get_any(("W", "Width")), picture.get_any(("H", "Height"))
    if size != (1, 1) or picture.get_any(("IM", "ImageMask")) is not True:
        return False
    decode = picture.get_any(("D", "Decode"))
    printed = 1 if isinstance(decode, list) and decode[:1] == [1] else 0
    dots = picture.get_data()
    return bool(dots) and dots[0] >> 7 == printed


def filled(corners: tuple[Point, Point, Point, Point], index: int, fill: float) -> Path:
    """The path that prints the same as a solid picture with these `corners`, in their order round it.

    >>> filled(((0, 0), (9, 0), (9, 1), (0, 1)), 4, 0.0).box
    (0, 0, 9, 1)
    """
    round_ = [*corners, corners[0]]
    pieces = tuple(Piece((round_[at], round_[at + 1])) for at in range(4))
    boxes = [(x, y, x, y) for x, y in corners]
    return Path(pieces, box_around(boxes), index, closed=True, width=0.0, stroke=None, fill=fill)
