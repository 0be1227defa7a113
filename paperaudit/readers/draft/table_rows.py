"""Reads a ruled table: rows that are parts of questions, with number and marks in cells of their own, or data."""

from collections.abc import Iterator, Sequence
from typing import Final, TypeAlias

from paperaudit.model.place import Box
from paperaudit.readers.draft.marks import bare_number, marks_alone, total_of
from paperaudit.readers.draft.numbering import Style, numbers_at
from paperaudit.readers.draft.page import box_around
from paperaudit.readers.draft.print_line import Column, PrintLine, PrintTable
from paperaudit.readers.draft.row import Cell, Row

Cells: TypeAlias = tuple[tuple[tuple[Box, tuple[Row, ...]], ...], ...]
"""The bands of a table; each cell is its box with its rows."""
_HEADINGS: Final = frozenset(
    (
        *("no", "nr", "number", "question", "questions", "part", "item", "task"),
        *("answer", "answers", "working", "mark", "marks", "mk", "mks", "max", "points", "score"),
    )
)
_BESIDE: Final = 0.7
"""Sizes of the print within which rows of neighbouring cells stand on one height."""
_WORDS: Final = 4
"""Words that the text of a part has at least, in the median, where a table lists parts."""


def is_list_of_parts(cells: Cells) -> bool:
    """Whether the rows of a table are questions or parts: numbers in front, sentences behind them."""
    numbered = texts = 0
    for band in cells:
        filled = [(box, rows) for box, rows in band if rows]
        if not filled:
            continue
        first = filled[0][1][0].text.strip()
        words = max(len(" ".join(row.text for row in rows).split()) for _, rows in filled)
        numbered += bool(numbers_at(first)) and (len(filled) > 1 or words >= _WORDS)
        texts += words >= _WORDS
    return (numbered > 0 and texts > 0 and texts * 2 >= numbered and _steps_up(cells)) or _all_marked(cells)


def _all_marked(cells: Cells) -> bool:
    """Whether every row has a number in front and marks behind: formulas are parts too, without many words."""
    bands = [[" ".join(row.text for row in rows).strip() for _, rows in band if rows] for band in cells]
    bands = [band for band in bands if band]
    fronts = [number for band in bands for number in numbers_at(band[0])[:1] if _is_number(band[0])]
    dressed = any(one.dress or one.style is Style.DECIMAL for one in fronts)
    marked = all(len(band) > 2 and (bare_number(band[-1]) or marks_alone(band[-1])) for band in bands)
    return dressed and marked and len(fronts) == len(bands)


def _steps_up(cells: Cells) -> bool:
    """Whether no number of a data table pretends to be a part's: the fronts are all numbers, or stay empty."""
    fronts = [" ".join(row.text for row in band[0][1]).strip() for band in cells if band]
    numbered = [bool(numbers_at(front)) for front in fronts if front]
    return bool(numbered) and sum(numbered) * 3 >= 2 * (len(numbered) - 1)


def lines_of_table(column: Column, cells: Cells) -> Iterator[PrintLine]:
    """The rows of a table that lists parts: the number goes in front of the text, the marks behind it."""
    marked = _column_of_marks(cells)
    for band in cells:
        if _is_heading(band):
            continue
        fronts: list[Cell] = []
        marks: list[Cell] = []
        texts: list[tuple[Row, ...]] = []
        for at, (_, rows) in enumerate(band):
            whole = " ".join(row.text for row in rows).strip()
            if not whole:
                continue
            if at == len(band) - 1 and at and (at == marked or marks_alone(whole) or total_of(whole)):
                marks = [_as_marks(cell, at == marked) for row in rows for cell in row.cells]
            elif not texts and _is_number(whole) and (len(rows) == 1 or _is_single(band)):
                fronts += [cell for row in rows for cell in row.cells]
            else:
                texts.append(rows)
        yield from _band(column, fronts, texts, marks)


def _is_single(band: tuple[tuple[Box, tuple[Row, ...]], ...]) -> bool:
    """Whether the cells of a band behind the first have a row each, so that its numbers belong together."""
    return all(len(rows) < 2 for _, rows in band[1:])


def _is_heading(band: tuple[tuple[Box, tuple[Row, ...]], ...]) -> bool:
    """Whether a band names the columns: "No.", "Question", "Marks"."""
    return are_headings([" ".join(row.text for row in rows) for _, rows in band if rows])


def are_headings(texts: Sequence[str]) -> bool:
    """Whether texts are the names of columns of questions and nothing else.

    >>> are_headings(["No.", "Question", "Marks"]), are_headings(["Goals", "Marks"])
    (True, False)
    """
    return bool(texts) and all(text.lower().strip(" .:#") in _HEADINGS for text in texts)


def _band(column: Column, fronts: list[Cell], texts: list[tuple[Row, ...]], marks: list[Cell]) -> Iterator[PrintLine]:
    rows = [row for held in texts for row in held] if len(texts) < 2 else _side_by_side(texts)
    if not rows:
        if fronts or marks:
            yield PrintLine(column, _row([*fronts, *marks]), in_table=True)
        return
    held = _marks_by_row(rows, marks)
    for at, row in enumerate(rows):
        cells = [*(fronts if at == 0 else ()), *row.cells, *held.get(at, ())]
        yield PrintLine(column, _row(cells, row), in_table=True)


def _marks_by_row(rows: Sequence[Row], marks: Sequence[Cell]) -> dict[int, list[Cell]]:
    """Which row each mark belongs to: the parts in their order where they are as many, a single one to the last."""
    if len(marks) < 2:
        return {len(rows) - 1: list(marks)}
    numbered = [at for at, row in enumerate(rows) if any(one.dress for one in numbers_at(row.text))]
    if len(numbered) == len(marks):
        return {at: [cell] for at, cell in zip(numbered, marks, strict=True)}
    held: dict[int, list[Cell]] = {}
    for cell in marks:
        nearest = min(range(len(rows)), key=lambda at: abs(rows[at].baseline - cell.box[3]))
        held.setdefault(nearest, []).append(cell)
    return held


def _side_by_side(texts: list[tuple[Row, ...]]) -> list[Row]:
    """Rows of neighbouring cells on one height as one: numbers and their parts, options beside one another."""
    lines: list[list[Row]] = [[row] for row in texts[0]]
    for rows in texts[1:]:
        free = list(lines)
        for row in rows:
            beside = [line for line in free if abs(line[0].baseline - row.baseline) < _BESIDE * row.size]
            if beside:
                free.remove(beside[0])
                beside[0].append(row)
            else:
                lines.append([row])
    lines.sort(key=lambda line: line[0].baseline)
    return [_row([cell for row in line for cell in row.cells], line[0]) for line in lines]


def _row(cells: list[Cell], like: Row | None = None) -> Row:
    box = box_around([cell.box for cell in cells])
    size = box[3] - box[1]
    return Row(
        tuple(cells), box, like.baseline if like else box[3], like.size if like else size, bool(like and like.bold)
    )


def _is_number(text: str) -> bool:
    """Whether a cell holds numbers of parts and nothing else: "3", "3 (a)"."""
    rest = text
    for _ in range(3):
        if not rest:
            return True
        found = numbers_at(rest)
        if not found:
            return False
        rest = rest[found[0].end :].strip()
    return not rest


def _column_of_marks(cells: Cells) -> int | None:
    """The last column where its heading speaks of marks, or it holds small numbers alone beside texts."""
    last = max(len(band) for band in cells) - 1
    held = [[row.text.strip() for row in band[last][1]] for band in cells if len(band) == last + 1]
    filled = [text for texts in held for text in texts]
    if last < 1 or not filled:
        return None
    if " ".join(held[0]).lower().strip(" .:") in ("mark", "marks", "mk", "mks", "max", "points"):
        return last
    return last if all(bare_number(text) is not None or marks_alone(text) for text in filled) else None


def _as_marks(cell: Cell, known: bool) -> Cell:
    """A bare number of the column of marks, dressed so that it is known as marks."""
    if known and bare_number(cell.text) is not None:
        return Cell(f"[{cell.text.strip()} marks]", cell.box, cell.glyphs, cell.doubts)
    return cell


def named_table(column: Column, box: Box, cells: Cells) -> PrintTable:
    """A table of data as the texts of its cells."""
    rows = tuple(tuple(" ".join(row.text for row in rows) for _, rows in band) for band in cells)
    doubts = [
        doubt for band in cells for _, held in band for row in held for cell in row.cells for doubt in cell.doubts
    ]
    return PrintTable(column, box, rows, tuple(dict.fromkeys(doubts)))
