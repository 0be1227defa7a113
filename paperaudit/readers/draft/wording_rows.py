"""Joins the rows of a paragraph to running text."""

import re
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Final

from paperaudit.model.place import Box
from paperaudit.readers.draft.page import box_around
from paperaudit.readers.draft.row import Cell

_HYPHENATED: Final = re.compile(r"[a-z]{2}[-‐\xad]$")
_COMPOUND: Final = re.compile(
    r"(?:right|isosceles|semi|mid|non|two|three|four|five|six|seven|eight|nine|ten|twenty|thirty|forty|fifty|self|cross"
    r"|equi|x|y|n|n-th|co|anti|counter)[-‐]$",
    re.IGNORECASE,
)
_WORD: Final = re.compile(r"[^\W\d_]{3,}")
_RELATION: Final = re.compile(r"[=<>≤≥≠]")


@dataclass(frozen=True, slots=True)
class TextRow:
    """The cells of a row that are text, with where they stand; `across` is its left edge from that of its column."""

    cells: tuple[Cell, ...]
    page: int
    across: float = 0.0
    answer_lines: int = 0
    lead: bool = field(default=False)

    @property
    def text(self) -> str:
        """The whole row."""
        return " ".join(cell.text for cell in self.cells).strip()

    @property
    def box(self) -> Box:
        """Around all of its cells."""
        return box_around([cell.box for cell in self.cells])

    @property
    def equations(self) -> tuple[str, ...]:
        """Its cells where each of them is an equation without words, else none."""
        texts = [cell.text.strip(" ,;.") for cell in self.cells]
        shown = all(_RELATION.search(text) and not _WORD.search(_FUNCTIONS.sub("", text)) for text in texts)
        return tuple(texts) if shown else ()


_FUNCTIONS: Final = re.compile(r"\b(?:sin|cos|tan|log|lim|cosec|sec|cot)\b")


def running_text(rows: Sequence[TextRow]) -> str:
    """The rows as one text: words parted at a row's end are joined, equations under one another are listed.

    >>> row = lambda text: TextRow((Cell(text, (0, 0, 1, 1)),), 1)
    >>> running_text([row("Solve the simul-"), row("taneous equations"), row("x + y = 7"), row("x − y = 1.")])
    'Solve the simultaneous equations x + y = 7 and x − y = 1.'
    """
    text = ""
    at = 0
    while at < len(rows):
        listed: list[str] = []
        while at < len(rows) and (found := rows[at].equations):
            listed += found
            at += 1
        if listed:
            last = rows[at - 1].text
            stop = "." if last.endswith(".") and not last.endswith("..") else ""
            text = _joined(text, last if len(listed) == 1 else _listed(listed) + stop)
            continue
        text = _joined(text, rows[at].text)
        at += 1
    return text


def _listed(equations: Sequence[str]) -> str:
    return " and ".join([", ".join(equations[:-1]), equations[-1]]) if len(equations) > 1 else equations[0]


def _joined(before: str, behind: str) -> str:
    if not before or not behind:
        return before or behind
    if _HYPHENATED.search(before) and behind[:1].islower():
        return (before if _COMPOUND.search(before) else before[:-1]) + behind
    return f"{before} {behind}"
