"""Probabilities from a two-way table whose missing numbers follow from its totals."""

from paperaudit.model.chance_task import FromTable, OfCompleted
from paperaudit.model.derivation import Answer, Impossible, NotDetermined, NotRead
from paperaudit.strands.chance.lines import Lines
from paperaudit.strands.chance.tables import from_table
from paperaudit.strands.statistics.charts import completed
from paperaudit.strands.statistics.lines import Lines as TableLines


def of_completed(task: OfCompleted, lines: Lines) -> Answer | Impossible | NotDetermined | NotRead:
    """The table completed by its totals, then the share of the cells asked for."""
    table_lines = TableLines(lines.ask, lines.used)
    rows = completed(task.table, table_lines)
    if not isinstance(rows, list):
        return rows
    lines.steps.extend(table_lines.steps)
    counts = tuple(rows[row][column] for row, column in task.cells)
    if None in counts:
        return NotRead("the totals of the table do not settle a number that is missing")
    return from_table(FromTable(task.names, counts, "of", task.of, 0, True), lines)
