"""Tells pictures of one dot, with which some makers of PDFs print rules: fraction bars, lines of tables."""

from pdfminer.pdftypes import PDFStream

from paperaudit.readers.draft.page import Path, Piece, Point, box_around


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
