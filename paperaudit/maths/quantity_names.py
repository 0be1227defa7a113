"""The names of sizes as they are printed: ∠ABC, AB, area of △ABC, length of arc AB."""

from paperaudit.model.expression import (
    AngleAt,
    AngleOf,
    AnswerTo,
    ArcLengthOf,
    ArcOf,
    AreaOf,
    BearingOf,
    CircleSize,
    DistanceOf,
    LengthOf,
    PerimeterOf,
    Quantity,
    RoundSize,
    SectorOf,
    SegmentOf,
)
from paperaudit.model.quantity import centre_of_circle, of_circle

_HAT = "\N{COMBINING CIRCUMFLEX ACCENT}"
_LOWERED = str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉")
UNNAMED = ("radius", "diameter", "circumference")
"""Sizes that one names without saying "of the circle" where there is but one."""


def quantity_name(quantity: Quantity | AnswerTo) -> str:
    """The name of a size of a figure, or of an answer.

    >>> quantity_name(AngleOf("A", "B", "C"))
    '∠ABC'
    """
    match quantity:
        case AngleOf(arm, vertex, other, reflex):
            return f"{'reflex ' if reflex else ''}∠{arm}{vertex}{other}"
        case AngleAt(vertex, number, reflex):
            name = f"{vertex}{_HAT}{str(number).translate(_LOWERED)}" if number else f"∠{vertex}"
            return f"{'reflex ' if reflex else ''}{name}"
        case LengthOf(start, end):
            return start + end
        case AreaOf(points):
            return f"area of {'△' if len(points) == 3 else ''}{''.join(points)}"
        case PerimeterOf(points):
            return f"perimeter of {'△' if len(points) == 3 else ''}{''.join(points)}"
        case DistanceOf(point, path):
            return f"distance from {point} to {''.join(path)}"
        case BearingOf(start, end):
            return f"bearing of {end} from {start}"
        case AnswerTo(part):
            return f"answer to {part}"
        case _:
            return _round_name(quantity)


def _round_name(size: RoundSize) -> str:
    match size:
        case ArcOf(start, end, through, major):
            return f"{'major ' if major else ''}arc {start}{through}{end}"
        case ArcLengthOf(arc):
            return f"length of {_round_name(arc)}"
        case CircleSize(kind, centre):
            return kind + ("" if not centre and kind in UNNAMED else of_circle(centre))
        case SectorOf(kind, arc):
            return f"{kind} of {'major ' if arc.major else ''}sector {arc.start}{centre_of_circle(arc.centre)}{arc.end}"
        case SegmentOf(kind, arc):
            return f"{kind} of {'major ' if arc.major else ''}segment {arc.start}{arc.through}{arc.end}"
