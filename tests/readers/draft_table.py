"""Prints how the drafts of fixtures/drafts are read: `python -m tests.readers.draft_table [NAME…] [--show]`.

A row a draft: parts with number and marks, what cover and totals say, texts of parts as a whole, expressions linear
and right, figures entirely right, planted faults found, false errors, parts confirmed with the right answer, answers
that would be wrong, and the time of reading beside plain text extraction. --show says what is missing.
"""

import sys
from collections.abc import Sequence

from rich.console import Console
from rich.table import Table

from tests.readers.draft_measures import Measured, Share, measured
from tests.readers.draft_truth import Truth, truths

HEADS = (
    "draft",
    "parts",
    "cover",
    "texts",
    "expressions",
    "figures",
    "faults",
    "false errors",
    "answers",
    "wrong",
    "time",
)


def figures_right(truth: Truth) -> Share | None:
    """The figures with everything right and nothing invented, or None where no reader of figures is built."""
    try:
        from tests.readers.drawn_table import scores_of
    except ImportError:
        return None
    found = Share()
    for figure, one, _ in scores_of(truth.folder):
        where = f"page {figure['page']}, {figure.get('question', 'nowhere')}"
        found.count(one.exact, f"{where}: {one.unread} missing {one.missing} invented {one.invented}")
    return found


def table(rows: Sequence[tuple[Measured, Share | None]]) -> Table:
    """All drafts and their sums."""
    shown = Table(*HEADS)
    for one, figures in rows:
        shown.add_row(*_cells(one, figures))
    parts = [one for one, _ in rows]
    sums = [sum((getattr(one, key) for one in parts), Share()) for key in ("parts", "cover", "texts", "expressions")]
    drawn = sum((figures for _, figures in rows if figures is not None), Share())
    faults, answers = (sum((getattr(one, key) for one in parts), Share()) for key in ("faults", "answers"))
    false = str(sum(len(one.false_errors) for one in parts))
    wrong = str(sum(len(one.wrong) for one in parts))
    slowest = f"{max((one.ratio for one in parts), default=0):.2f} at most"
    shown.add_section()
    shown.add_row("in all", *map(str, sums), str(drawn), str(faults), false, str(answers), wrong, slowest)
    return shown


def _cells(one: Measured, figures: Share | None) -> list[str]:
    parts = f"{one.parts} +{len(one.added)}" if one.added else str(one.parts)
    drawn = "not built" if figures is None else str(figures)
    time = f"{one.seconds:.2f} s, {one.ratio:.2f}" if one.seconds else "not read"
    shares = [parts, str(one.cover), str(one.texts), str(one.expressions), drawn, str(one.faults)]
    return [one.name, *shares, str(len(one.false_errors)), str(one.answers), str(len(one.wrong)), time]


def _show(console: Console, one: Measured, figures: Share | None) -> None:
    console.print(f"\n{one.name}", style="bold")
    lists = {
        "complaints": one.complaints,
        "parts": [*one.parts.missed, *(f"{name}: not in the draft" for name in one.added)],
        "cover and totals": one.cover.missed,
        "texts": one.texts.missed,
        "expressions": one.expressions.missed,
        "figures": figures.missed if figures is not None else [],
        "faults": one.faults.missed,
        "false errors": one.false_errors,
        "beside a planted fault": one.errors_beside,
        "answers": one.answers.missed,
    }
    for head, lines in lists.items():
        for line in lines:
            console.print(f"  {head}: {line}", markup=False, highlight=False)


def main(arguments: Sequence[str]) -> None:
    """The table of the drafts that the command names, or of all."""
    console = Console(width=160)
    names = [one for one in arguments if not one.startswith("-")]
    rows = [(measured(truth), figures_right(truth)) for truth in truths(names)]
    console.print(table(rows))
    if "--show" in arguments:
        for one, figures in rows:
            _show(console, one, figures)


if __name__ == "__main__":
    main(sys.argv[1:])
