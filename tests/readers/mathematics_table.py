"""Prints how fixtures/drafts/mathematics is read: `python -m tests.readers.mathematics_table [NAME…]`."""

import re
import sys
import unicodedata
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from rich.console import Console
from rich.table import Table
from ruamel.yaml import YAML

from paperaudit.readers.draft.open_pdf import pages_of
from paperaudit.readers.draft.rows import rows_of

FOLDER = Path(__file__).resolve().parents[2] / "fixtures" / "drafts" / "mathematics"
LINE = re.compile(r"(\d+)\. Here ?is ?(.*?) ?in its line\.")
_LOOSE = re.compile(r"(?<!\d) | (?!\d)")
"""A space that could be left out: only between two digits it means something."""


@dataclass(frozen=True)
class ReadDraft:
    """What one file says and what was read: by number, the paragraph, what is doubtful."""

    name: str
    wanted: dict[int, str]
    found: dict[int, str]
    paragraph: str
    doubts: tuple[str, ...]

    @property
    def wrong(self) -> dict[int, tuple[str, str]]:
        """The expressions that were read otherwise, as they are and as they were read."""
        return {
            number: (wanted, self.found.get(number, ""))
            for number, wanted in self.wanted.items()
            if tight(self.found.get(number, "")) != tight(wanted)
        }


def tight(text: str) -> str:
    """A text without the spaces that mean nothing."""
    return _LOOSE.sub("", unicodedata.normalize("NFC", text).replace("Δ", "△").replace("∆", "△").replace("∶", ":"))


@cache
def truth() -> dict[str, Any]:
    """The content of expressions.yaml."""
    held: dict[str, Any] = YAML(typ="safe", pure=True).load((FOLDER / "expressions.yaml").read_text(encoding="utf-8"))
    return held


@cache
def read_draft(name: str) -> ReadDraft:
    """One file read, its rows taken as they come."""
    pages = pages_of((FOLDER / f"{name}.pdf").read_bytes(), name)
    rows = [row for page in pages for row in rows_of(page.glyphs, page.paths)]
    texts = [" ¦ ".join(cell.text for cell in row.cells) for row in rows]
    first = next(at for at, text in enumerate(texts) if LINE.match(text))
    lines = [found for text in texts if (found := LINE.fullmatch(text))]
    left_out = truth()["left_out"][name]
    return ReadDraft(
        name,
        {number: text for number, text in truth()["expressions"].items() if number not in left_out},
        {int(found[1]): found[2] for found in lines},
        " ".join(texts[:first]),
        tuple(doubt for row in rows for cell in row.cells for doubt in cell.doubts),
    )


def main(names: list[str]) -> None:
    """The table, and below it what was read wrong."""
    table = Table("draft", "right", "of", "doubts", "words")
    drafts = [read_draft(name) for name in names or truth()["left_out"]]
    for draft in drafts:
        right = len(draft.wanted) - len(draft.wrong)
        words = "yes" if draft.paragraph == truth()["paragraph"] else "no"
        table.add_row(draft.name, str(right), str(len(draft.wanted)), str(len(draft.doubts)), words)
    wanted = sum(len(draft.wanted) for draft in drafts)
    right = wanted - sum(len(draft.wrong) for draft in drafts)
    table.add_row("in all", str(right), str(wanted), f"{right / wanted:.1%}", "", end_section=True)
    console = Console()
    console.print(table)
    for draft in drafts:
        for number, (wanted_text, found) in draft.wrong.items():
            console.print(f"{draft.name} {number}: {wanted_text!r} was read as {found!r}", markup=False)


if __name__ == "__main__":
    main(sys.argv[1:])
