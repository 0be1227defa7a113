"""Pairs labels with what they can belong to, at the least cost in all."""

import math
from collections.abc import Sequence


def paired(costs: Sequence[Sequence[float]], most: float) -> list[int | None]:
    """For each row the column that it gets, None where none costs less than `most`; a column goes to one row.

    The sum of all costs is least, a row without a column counted as `most` (Kuhn and Munkres' method with
    potentials).

    >>> paired([[1.0, 2.0], [1.2, 9.0]], 5.0)
    [1, 0]
    >>> paired([[1.0], [0.5]], 5.0)
    [None, 0]
    """
    rows = len(costs)
    if not rows:
        return []
    columns = len(costs[0]) + rows
    table = [[min(cost, 1e6) for cost in row] + [most] * rows for row in costs]
    row_of = _least(table, rows, columns)
    found: list[int | None] = [None] * rows
    for column in range(columns - rows):
        row = row_of[column]
        if row is not None and table[row][column] < most:
            found[row] = column
    return found


def _least(table: Sequence[Sequence[float]], rows: int, columns: int) -> list[int | None]:
    """The row of each column in the cheapest assignment of all rows."""
    over, under = [0.0] * rows, [0.0] * columns
    row_of: list[int | None] = [None] * columns
    for start in range(rows):
        least = [math.inf] * columns
        came: list[int | None] = [None] * columns
        done = [False] * columns
        at: int | None = None
        while True:
            row = start if at is None else row_of[at]
            assert row is not None
            if at is not None:
                done[at] = True
            for column in range(columns):
                if not done[column]:
                    reduced = table[row][column] - over[row] - under[column]
                    if reduced < least[column]:
                        least[column], came[column] = reduced, at
            nearest = min((column for column in range(columns) if not done[column]), key=least.__getitem__)
            step = least[nearest]
            over[start] += step
            for column in range(columns):
                if done[column]:
                    owner = row_of[column]
                    assert owner is not None
                    over[owner] += step
                    under[column] -= step
                else:
                    least[column] -= step
            at = nearest
            if row_of[at] is None:
                break
        while at is not None:
            before = came[at]
            row_of[at] = start if before is None else row_of[before]
            at = before
    return row_of
