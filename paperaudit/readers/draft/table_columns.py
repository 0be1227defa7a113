"""Names the columns of a data table, whose heading stands in its first row or in its first column."""

from collections.abc import Sequence

from paperaudit.readers.draft.print_line import PrintTable

Columns = tuple[tuple[str, tuple[str, ...]], ...]


def columns_of(tables: Sequence[PrintTable]) -> tuple[Columns, tuple[str, ...]]:
    """The named columns of a question's tables, and what is doubtful about them.

    A table over a page turn goes on where the columns are as many and have no new heading. With several
    tables only the first is told; the others are a doubt.
    """
    rows = [row for row in tables[0].rows if any(row)]
    doubts = list(tables[0].doubts)
    for table in tables[1:]:
        if {len(row) for row in table.rows} == {len(row) for row in rows} and table.page > tables[0].page:
            more = [row for row in table.rows if any(row)]
            rows += more[1:] if more and rows and more[0] == rows[0] else more
        else:
            doubts.append("there is more than one table here")
    if not rows or len({len(row) for row in rows}) != 1:
        return (), (*doubts, "the rows of the table here have different numbers of cells") if rows else tuple(doubts)
    if _headed_at_left(rows):
        rows = [tuple(row[at] for row in rows) for at in range(len(rows[0]))]
    columns: dict[str, tuple[str, ...]] = {}
    for at, name in enumerate(rows[0]):
        unique = name or ("" if at else " ")
        if not unique.strip() or unique in columns:
            unique = f"{name or 'column'} {at + 1}".strip()
        columns[unique[:100]] = tuple(row[at] for row in rows[1:])
    return tuple(columns.items()), tuple(doubts)


def _headed_at_left(rows: Sequence[tuple[str, ...]]) -> bool:
    """Whether the names stand in the first column: x | 1 | 2 | 3 above y | 4 | 5 | 6.

    >>> _headed_at_left([("x", "1", "2"), ("y", "3", "4")]), _headed_at_left([("x", "y"), ("1", "2")])
    (True, False)
    """
    across = [not _is_figure(cell) for cell in rows[0]]
    down = [not _is_figure(row[0]) for row in rows]
    return all(down) and not all(across)


def _is_figure(text: str) -> bool:
    """Whether a cell holds a number or a range of numbers rather than a name."""
    return any(sign.isdigit() for sign in text) and sum(sign.isalpha() for sign in text) <= 2
