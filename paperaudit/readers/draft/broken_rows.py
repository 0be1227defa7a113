"""The order in which rows are mended before they are read as an outline."""

from collections.abc import Iterator, Sequence

from paperaudit.readers.draft.broken_marks import with_cells_apart, with_marks_on_their_row, with_whole_marks
from paperaudit.readers.draft.left_marks import with_marks_behind
from paperaudit.readers.draft.part_grids import with_parts_apart
from paperaudit.readers.draft.print_line import Printed, PrintLine
from paperaudit.readers.draft.table_rows import are_headings


def mended(printed: Sequence[Printed]) -> tuple[Printed, ...]:
    """The rows with their marks whole and behind their text, and each part on rows of its own."""
    mends = (
        _without_headings,
        with_whole_marks,
        with_marks_on_their_row,
        with_cells_apart,
        with_marks_behind,
        with_parts_apart,
    )
    for mend in mends:
        printed = tuple(mend(printed))
    return tuple(printed)


def _without_headings(printed: Sequence[Printed]) -> Iterator[Printed]:
    """The rows without the names of columns, "No.", "Question", "Marks", that pages repeat."""
    for one in printed:
        cells = one.row.cells if isinstance(one, PrintLine) else ()
        if len(cells) < 2 or not are_headings([cell.text for cell in cells]):
            yield one
