"""What a figure says in words under its drawing: lengths beside which no dimension line has room."""

from collections.abc import Iterator, Sequence

from paperaudit.geometry.draw.elements import Box, Label
from paperaudit.geometry.draw.type_metrics import baseline_under, box_round, text_extent

BELOW, LINE = 9.0, 15.0
"""From the drawing to the middle of the first line, and from line to line."""
BETWEEN = ",  "


def noted(frame: Box, notes: Sequence[str]) -> tuple[Box, tuple[Label, ...]]:
    """The frame with room for the notes at its foot, and these as centred lines, several in one where they fit."""
    left, top, right, bottom = frame
    labels = []
    for text in _lines(notes, right - left):
        centre = ((left + right) / 2, bottom + BELOW - LINE / 3)
        box = box_round(centre, text_extent(text, "size"))
        labels.append(Label(text, centre, box, "size", centre[1] + baseline_under(text, "size")))
        bottom += LINE
    return (left, top, right, bottom), tuple(labels)


def _lines(notes: Sequence[str], width: float) -> Iterator[str]:
    line = ""
    for note in notes:
        longer = f"{line}{BETWEEN}{note}" if line else note
        if line and text_extent(longer, "size")[0] > width:
            yield line
            longer = note
        line = longer
    if line:
        yield line
