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
_SLACK: Final = 4.0


def attached(outline: Outline, figures: Sequence[DrawnFigure]) -> Attached:
    """Which entry each figure belongs to.

    A caption that one entry alone names settles it. Otherwise it is the last entry that begins above the
    figure's middle in its column; a figure that is its question's only one is the whole question's.
    """
    starts = sorted(_starts(outline), key=lambda one: (one[0].page, one[0].rank, one[1]))
    held: dict[int, list[tuple[Entry, Entry, DrawnFigure]]] = {}
    for figure in figures:
        found = _by_caption(outline, figure) or _by_place(starts, figure)
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


def _by_place(starts: Sequence[tuple[Column, float, Entry, Entry]], figure: DrawnFigure) -> tuple[Entry, Entry] | None:
    across, down = (figure.box[0] + figure.box[2]) / 2, (figure.box[1] + figure.box[3]) / 2
    before: tuple[Entry, Entry] | None = None
    for column, top, question, entry in starts:
        if column.page > figure.page:
            break
        beside = column.left - _SLACK <= across <= column.right + _SLACK
        if column.page == figure.page and (top > down or not (beside or column.right < figure.box[0])):
            continue
        before = question, entry
    return before


def _all(entry: Entry) -> Iterator[Entry]:
    yield entry
    for part in entry.parts:
        yield from _all(part)
