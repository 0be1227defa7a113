"""Keeps rows that stand between parts and belong to those that follow: "Solve for x:"."""

from paperaudit.readers.draft.notices import is_for_several, is_instruction, questions_meant
from paperaudit.readers.draft.outline import Entry
from paperaudit.readers.draft.wording_rows import TextRow


class Leads:
    """The rows that go before further entries, by the depth of these; fresh ones have had no entry behind them."""

    def __init__(self) -> None:
        self._rows: dict[int, list[TextRow]] = {}
        self._fresh: set[int] = set()

    def add(self, depth: int, row: TextRow) -> None:
        """A row before the next entries at `depth`; it takes the place of what went before earlier ones."""
        if depth not in self._fresh:
            self._rows[depth] = []
            self._fresh.add(depth)
        self._rows[depth].append(row)

    def before(self, depth: int, number: str = "") -> tuple[TextRow, ...]:
        """The rows that go before an entry that begins now at `depth`, unless they name other numbers.

        Rows that were to go before entries further out, and have a part behind them, go before that part.
        """
        for outer in sorted(level for level in self._fresh if level < depth):
            self._fresh.discard(outer)
            self._rows[depth] = self._rows.pop(outer)
        self._fresh.discard(depth)
        rows = tuple(self._rows.get(depth, ()))
        meant = questions_meant(" ".join(row.text for row in rows))
        if meant and number.isdigit() and not meant[0] <= int(number) <= meant[1]:
            return ()
        return rows

    def left_below(self, depth: int) -> list[TextRow]:
        """The rows that were to go before parts deeper than `depth` and have none: they stay with the last part.

        At the end of a question a row that ends with a colon goes before the next questions.
        """
        left: list[TextRow] = []
        for level in sorted(level for level in self._rows if level > depth):
            rows = self._rows.pop(level)
            if level not in self._fresh:
                continue
            self._fresh.discard(level)
            if depth == 0 and rows[-1].text.endswith(":"):
                self._rows[0] = rows
                self._fresh.add(0)
            else:
                left += rows
        return left

    def next_question(self) -> None:
        """A question begins: what led only to the one before it is done with."""
        if 0 not in self._fresh and not _is_shared(self._rows.get(0, [])):
            self._rows.pop(0, None)

    def close(self) -> list[TextRow]:
        """A section ends: the rows that no question came behind, unless they are instructions."""
        rows = self._rows.get(0, []) if 0 in self._fresh else []
        self._rows, self._fresh = {}, set()
        return [] if all(is_instruction(row.text) for row in rows) else rows


def _is_shared(rows: list[TextRow]) -> bool:
    return bool(rows) and is_for_several(" ".join(row.text for row in rows))


def settle_leads(entry: Entry) -> None:
    """Moves "Simplify:" from the head of a question to its first parts, where later ones have a lead of their own."""
    later = [part for part in entry.parts if part.lead]
    if later and entry.rows and entry.rows[-1].text.endswith(":") and "." not in entry.rows[-1].text:
        row = entry.rows.pop()
        for part in entry.parts[: entry.parts.index(later[0])]:
            part.lead = (row,)
    for part in entry.parts:
        settle_leads(part)
