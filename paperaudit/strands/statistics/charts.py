"""Frequencies for charts: totals, cumulative frequencies, angles of a pie chart, a number missing from a table."""

from collections.abc import Sequence
from fractions import Fraction
from itertools import accumulate

from paperaudit.maths.collected_values import number
from paperaudit.model.derivation import Answer, Impossible, NotRead
from paperaudit.model.statistics_task import Categories, Frequencies, Grouped, MissingCell, Sector
from paperaudit.strands.numbers.working import require
from paperaudit.strands.statistics.lines import Lines, bracketed, shown, summed

_SKILL = "tables and charts"


def total(collected: Frequencies | Grouped | Categories, lines: Lines) -> Answer:
    """The sum of the frequencies."""
    value = sum(collected.counts)
    lines.say(f"{summed(collected.counts)} = {value}", str(value), _SKILL, starts=True)
    return lines.end(number(Fraction(value)), "statistic", "total frequency", unit=False)


def cumulative(collected: Frequencies | Grouped, lines: Lines) -> Answer:
    """The running sums of the frequencies."""
    sums = list(accumulate(collected.counts))
    before = 0
    for count, reached in zip(collected.counts, sums, strict=True):
        lines.say(f"{before} + {count} = {reached}" if before else str(count), str(reached), _SKILL, starts=not before)
        before = reached
    require([sum(collected.counts[: at + 1]) for at in range(len(sums))] == sums, "running sums in two ways")
    return Answer(", ".join(map(str, sums)), None, "cumulative frequencies", kind="numbers in order")


def pie_angles(collected: Categories | Frequencies, lines: Lines) -> Answer:
    """The angle of every sector: its share of 360°."""
    names = collected.names if isinstance(collected, Categories) else tuple(map(shown, collected.values))
    whole = sum(collected.counts)
    lines.say(f"total: {summed(collected.counts)} = {whole}", str(whole), _SKILL, starts=True)
    angles = [Fraction(360 * count, whole) for count in collected.counts]
    for name, count, angle in zip(names, collected.counts, angles, strict=True):
        lines.say(f"{name}: {count}/{whole} × 360° = {shown(angle)}°", f"{shown(angle)}°", _SKILL)
    require(sum(angles) == 360, "the angles of a pie chart do not fill it")
    text = ", ".join(f"{name}: {shown(angle)}°" for name, angle in zip(names, angles, strict=True))
    return Answer(text, None, "pie-chart angles", kind="statistic")


def sector(task: Sector, lines: Lines) -> Answer:
    """The angle of one sector."""
    whole = sum(task.collected.counts)
    count = task.collected.counts[task.collected.names.index(task.name)]
    angle = Fraction(360 * count, whole)
    lines.say(f"total: {summed(task.collected.counts)} = {whole}", str(whole), _SKILL, starts=True)
    lines.say(f"{count}/{whole} × 360° = {shown(angle)}°", f"{shown(angle)}°", _SKILL)
    others = sum((Fraction(360 * other, whole) for other in task.collected.counts), Fraction(0)) - angle
    require(angle + others == 360, "the angles of a pie chart do not fill it")
    lines.unit = "°"
    return lines.end(number(angle))


def missing_cell(task: MissingCell, lines: Lines) -> tuple[Answer, ...] | Impossible | NotRead:
    """The wanted numbers of a table with totals, or the row or column that clashes with its total."""
    rows = completed(task, lines)
    if not isinstance(rows, list):
        return rows
    for row, column in task.wanted:
        if task.rows[row][column] is not None:
            value = shown(task.rows[row][column] or 0)
            lines.say(f"{task.row_names[row]}, {task.column_names[column]}: {value}", value, _SKILL, starts=True)
    found = [rows[row][column] for row, column in task.wanted]
    return tuple(lines.end(number(value), unit=False) for value in found if value is not None)


def completed(task: MissingCell, lines: Lines) -> list[list[Fraction | None]] | Impossible | NotRead:
    """The rows of a table with totals, its wanted numbers filled in; or the row or column that clashes."""
    rows = [list(row) for row in task.rows]
    groups = _groups(task)
    wanted = set(task.wanted)
    for _ in range(len(groups)):
        for cells, name in groups:
            _fill(rows, cells, name, lines)
    for cells, name in groups:
        known = [rows[row][column] for row, column in cells]
        if any(value is None for value in known):
            continue
        parts, whole = [value for value in known[:-1] if value is not None], known[-1]
        assert whole is not None
        if sum(parts) != whole:
            said = f"{summed(parts)} = {shown(sum(parts, Fraction(0)))}"
            return Impossible((f"{name}: {', '.join(map(shown, parts))}", f"total of {name}: {shown(whole)}"),
                              (said, f"the total of {name} is {shown(whole)}: false"),
                              "Check the numbers of the table against their total.")  # fmt: skip
    if any(rows[row][column] is None for row, column in wanted):
        return NotRead("the totals of the table do not settle the number that is missing")
    if any((value or 0) < 0 for row in rows for value in row):
        return Impossible(tuple(name for _, name in groups), ("a number of the table is below nought: false",))
    return rows


def _groups(task: MissingCell) -> list[tuple[list[tuple[int, int]], str]]:
    """Rows and columns whose last number is the sum of the others."""
    height, width = len(task.rows), len(task.rows[0])
    groups = []
    if task.row_total:
        groups += [
            ([(row, column) for column in range(width)], f"row “{task.row_names[row]}”") for row in range(height)
        ]
    if task.column_total:
        groups += [([(row, column) for row in range(height)], f"column “{task.column_names[column]}”")
                   for column in range(width)]  # fmt: skip
    return groups


def _fill(rows: list[list[Fraction | None]], cells: Sequence[tuple[int, int]], name: str, lines: Lines) -> None:
    """The one number that a row or column with a total lacks."""
    unknown = [cell for cell in cells if rows[cell[0]][cell[1]] is None]
    if len(unknown) != 1:
        return
    row, column = unknown[0]
    known = [rows[one][other] for one, other in cells if (one, other) != (row, column)]
    values = [value for value in known if value is not None]
    if (row, column) == tuple(cells[-1]):
        value = sum(values, Fraction(0))
        said = summed(values)
    else:
        value = values[-1] - sum(values[:-1], Fraction(0))
        said = " − ".join((shown(values[-1]), *map(bracketed, values[:-1])))
    rows[row][column] = value
    *parts, whole = (rows[one][other] or Fraction(0) for one, other in cells)
    require(sum(parts, Fraction(0)) == whole, f"the total of {name}")
    lines.say(f"{name}: {said} = {shown(value)}", shown(value), _SKILL, starts=True)
