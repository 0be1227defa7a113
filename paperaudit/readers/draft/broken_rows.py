"""The order in which rows are mended before they are read as an outline."""

from collections.abc import Sequence

from paperaudit.readers.draft.broken_marks import with_cells_apart, with_marks_on_their_row, with_whole_marks
from paperaudit.readers.draft.left_marks import with_marks_behind
from paperaudit.readers.draft.part_grids import with_parts_apart
from paperaudit.readers.draft.print_line import Printed


def mended(printed: Sequence[Printed]) -> tuple[Printed, ...]:
    """The rows with their marks whole and behind their text, and each part on rows of its own."""
    for mend in (with_whole_marks, with_marks_on_their_row, with_cells_apart, with_marks_behind, with_parts_apart):
        printed = tuple(mend(printed))
    return tuple(printed)
