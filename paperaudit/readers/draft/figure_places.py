"""Ties each figure to its question or part: by its caption, else by where it stands among the rows."""

import re
from collections.abc import Iterator, Sequence
from typing import Final, TypeAlias

from paperaudit.readers.draft.drawing.drawn_figure import DrawnFigure
from paperaudit.readers.draft.outline import Entry, Outline
from paperaudit.readers.draft.print_line import Column

Attached: TypeAlias = dict[int, tuple[DrawnFigure, ...]]
"""The figures of each entry, by the entry's identity."""
_CAPTION: Final = re.compile(r"(?:figure|fig\.?|diagram|sketch)\s*\d+(?:\.\d+)*", re.IGNORECASE)
_MENTION: Final = re.compile(
    r"\b(?:figure|fig\.|diagram|sketch|drawing|drawn|shown?|shows|below|graph)\b", re.IGNORECASE
)


def attached(outline: Outline, figures: Sequence[DrawnFigure]) -> Attached:
    """Which entry each figure belongs to.

    A caption that one entry alone names settles it. Otherwise it is the last entry that begins above the
    figure's middle in its column; a figure that is its question's only one is the whole question's.
    """
    starts = sorted(_starts(outline), key=lambda one: (one[0].page, one[0].rank, one[1]))
    held: dict[int, list[tuple[Entry, Entry, DrawnFigure]]] = {}
    for figure in figures:
        found = _by_caption(outline, figure) or _by_place(starts, outline.columns, figure)
        if found is not None:
            question, entry = found
            held.setdefault(id(question), []).append((question, entry, figure))
    result: dict[int, list[DrawnFigure]] = {}
    for members in held.values():
        for question, entry, figure in members:
            owner = question if len(members) == 1 or not _of_a_part(question, entry, members) else entry
            result.setdefault(id(owner), []).append(figure)
    return {key: tuple(value) for key, value in result.items()}


def _of_a_part(question: Entry, entry: Entry, members: Sequence[tuple[Entry, Entry, DrawnFigure]]) -> bool:
    return entry is not question and len({id(other) for _, other, _ in members}) > 1


def _starts(outline: Outline) -> Iterator[tuple[Column, float, Entry, Entry]]:
    def below(question: Entry, entry: Entry) -> Iterator[tuple[Column, float, Entry, Entry]]:
        yield entry.column, entry.box[1], question, entry
        for part in entry.parts:
            yield from below(question, part)

    for question in outline.questions():
        yield from below(question, question)


def _by_caption(outline: Outline, figure: DrawnFigure) -> tuple[Entry, Entry] | None:
    match = _CAPTION.search(figure.caption)
    if match is None:
        return None
    name = re.sub(r"\W+", "", match.group()).lower()
    found = []
    for question in outline.questions():
        for entry in _all(question):
            text = " ".join(row.text for row in (*entry.lead, *entry.rows))
            if any(re.sub(r"\W+", "", one).lower() == name for one in _CAPTION.findall(text)):
                found.append((question, entry))
    return found[0] if len({id(question) for question, _ in found}) == 1 else None


def _by_place(
    starts: Sequence[tuple[Column, float, Entry, Entry]], columns: Sequence[Column], figure: DrawnFigure
) -> tuple[Entry, Entry] | None:
    down = (figure.box[1] + figure.box[3]) / 2
    there = [column for column in columns if column.page == figure.page]
    here = min(there, key=lambda column: _distance(column, figure), default=None)
    before: tuple[Entry, Entry] | None = None
    for column, top, question, entry in starts:
        if here is None:
            earlier = column.page <= figure.page
        else:
            order, its = (column.page, column.rank), (here.page, here.rank)
            earlier = order < its or (order == its and top <= down)
        if earlier:
            before = question, entry
    return before


def _distance(column: Column, figure: DrawnFigure) -> float:
    """How far the figure's middle lies outside a column."""
    across, down = (figure.box[0] + figure.box[2]) / 2, (figure.box[1] + figure.box[3]) / 2
    beside = max(column.left - across, across - column.right, 0.0)
    return beside + max(column.top - down, down - column.bottom, 0.0)


def _all(entry: Entry) -> Iterator[Entry]:
    yield entry
    for part in entry.parts:
        yield from _all(part)
