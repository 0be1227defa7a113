"""Running heads and feet: what pages repeat at their edges, page numbers, calls to turn over."""

import re
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Final, TypeAlias

from paperaudit.readers.draft.marks import marks_alone
from paperaudit.readers.draft.numbering import Style, numbers_at
from paperaudit.readers.draft.page import DraftPage
from paperaudit.readers.draft.runs import Run, runs_of

_EDGE: Final = 0.13
"""Share of the page's height at its top and bottom in which heads and feet stand."""
_CENTRAL: Final = 0.12
"""Share of the page's width from its middle."""
_FOOT: Final = 0.94
"""Share of the page's height below which only feet stand."""
_OVER: Final = 0.4
"""Share of the lower of two runs' boxes that lies beside the other where they are of one row."""
_SAME_HEIGHT: Final = 4.0
"""Points that a head may move from page to page."""
_PAGE_NUMBER: Final = re.compile(
    r"(?:page\s*|p\.?\s*)?[-–—|•\[(]*\s*(?P<n>\d{1,3})\s*[-–—|•\])]*(?:\s*(?:of|/)\s*\d{1,3})?"
    r"|(?:page|seite)\s+(?P<m>\d{1,3})\s*(?:of|/)?\s*\d{0,3}",
    re.IGNORECASE,
)
_CALL: Final = re.compile(
    r"[\[(]?\s*(?:please\s+)?(?:turn\s+over|p\.?\s?t\.?\s?o\.?|blank\s+page|see\s+next\s+page|continued\s+overleaf)"
    r"(?:\s+please)?\s*[\])./]*|(?:copyright|©).*",
    re.IGNORECASE,
)
_PAGES_ON: Final = re.compile(r"\d+")
_Seen: TypeAlias = dict[str, list[tuple[int, float]]]
"""Where runs of each shape stand: their pages, counted from 0, and baselines."""


@dataclass(frozen=True, slots=True)
class RunningMatter:
    """What of a page is no part of its text: the indexes of the glyphs, and the page's printed number if any."""

    glyphs: frozenset[int] = frozenset()
    number: int | None = None
    texts: tuple[str, ...] = field(default=())


def running_matter(pages: Sequence[DraftPage]) -> tuple[RunningMatter, ...]:
    """The running heads and feet of each page.

    A run at an edge counts that stands at the same height on another page too with the same words, numbers
    aside; a page number counts on its own where it stands farther out than all the text. "Question 4" and "7.1"
    count only with the same number again, and a bare number only where it goes up with the pages.
    """
    edges = [_at_edges(page) for page in pages]
    seen: _Seen = defaultdict(list)
    for at, runs in enumerate(edges):
        for run, _ in runs:
            seen[_shape(run.text, at)].append((at, run.baseline))
    return tuple(_of_page(at, runs, seen, (pages[at].width, pages[at].height)) for at, runs in enumerate(edges))


def _of_page(at: int, runs: Sequence[tuple[Run, bool]], seen: _Seen, size: tuple[float, float]) -> RunningMatter:
    repeated = [
        any(page != at and abs(height - run.baseline) <= _SAME_HEIGHT for page, height in seen[_shape(run.text, at)])
        for run, _ in runs
    ]
    repeated = [again and not _begins_a_part(run.text) for again, (run, _) in zip(repeated, runs, strict=True)]
    taken: set[int] = set()
    number: int | None = None
    texts: list[str] = []
    for side in _sides(runs, size[1]):
        for row in side:
            kept = [there for there in row if _is_running(there, row, runs, repeated, at, size[0])]
            if _is_lone_foot([runs[there][0] for there in row], at, size[1]) and len(side) == 1:
                kept = row
            if not kept:
                # What stands farther in than a row of text is text too.
                break
            for run in (runs[there][0] for there in kept):
                taken.update(glyph.index for glyph in run.glyphs)
                texts.append(run.text)
                if numbered := _PAGE_NUMBER.fullmatch(run.text):
                    number = _number_of(numbered)
    return RunningMatter(frozenset(taken), number, tuple(texts))


def _sides(runs: Sequence[tuple[Run, bool]], height: float) -> list[list[list[int]]]:
    """The rows of the head and those of the foot, each from the page's edge inwards, as places among the runs."""
    rows: list[list[int]] = []
    for place, (run, _) in enumerate(runs):
        if rows and any(_beside(runs[other][0], run) for other in rows[-1]):
            rows[-1].append(place)
        else:
            rows.append([place])
    heads = [row for row in rows if runs[row[0]][0].baseline < height / 2]
    return [heads, rows[len(heads) :][::-1]]


def _beside(one: Run, other: Run) -> bool:
    """Whether two runs stand on one row: on one baseline, or as powers and what they belong to."""
    over = min(one.box[3], other.box[3]) - max(one.box[1], other.box[1])
    high = min(one.box[3] - one.box[1], other.box[3] - other.box[1])
    return abs(one.baseline - other.baseline) < 1 or over > _OVER * high


def _is_running(
    there: int, row: Sequence[int], runs: Sequence[tuple[Run, bool]], repeated: Sequence[bool], at: int, width: float
) -> bool:
    run, outermost = runs[there]
    numbered = _PAGE_NUMBER.fullmatch(run.text)
    # A page number has no text beside it, or only a running head.
    own_row = all(repeated[other] for other in row if other != there)
    alone = numbered is not None and outermost and own_row and _number_of(numbered) == at + 1
    if marks_alone(run.text) and not (alone and _is_central(run, width)):
        return False
    return repeated[there] or alone or bool(_CALL.fullmatch(run.text))


def _is_lone_foot(row: Sequence[Run], at: int, height: float) -> bool:
    """Whether a row at the very foot of the page holds the page's number beside a title."""
    low = row[0].baseline > _FOOT * height
    numbers = [match for run in row if (match := _PAGE_NUMBER.fullmatch(run.text)) and not marks_alone(run.text)]
    return low and len(row) > 1 and any(_number_of(match) == at + 1 for match in numbers)


def _begins_a_part(text: str) -> bool:
    """Whether a run looks like the first row of a question or a part, which pages may well have at one height."""
    if _PAGE_NUMBER.fullmatch(text):
        return False
    return any(
        (one.dress or one.style in (Style.DECIMAL, Style.WORD)) and one.end < len(text) for one in numbers_at(text)
    )


def _number_of(match: re.Match[str]) -> int:
    return int(match.group("n") or match.group("m"))


def _is_central(run: Run, width: float) -> bool:
    """Whether a run stands about the middle of the page, where no marks are."""
    return abs((run.box[0] + run.box[2]) / 2 - width / 2) < _CENTRAL * width


def _at_edges(page: DraftPage) -> list[tuple[Run, bool]]:
    """The runs at the top and at the bottom, each with whether nothing is printed farther out."""
    top, bottom = _EDGE * page.height, (1 - _EDGE) * page.height
    runs = runs_of([one for one in page.glyphs if one.upright and not top < one.baseline < bottom], gap=4.0)
    if not runs:
        return []
    heads = [run for run in runs if run.baseline <= top]
    feet = [run for run in runs if run.baseline > top]
    ends = [*(run.baseline for run in heads[:1]), *(run.baseline for run in feet[-1:])]
    return [(run, _outermost(run, runs, ends)) for run in runs]


def _outermost(run: Run, runs: Sequence[Run], ends: Sequence[float]) -> bool:
    """Whether a run is in the first row of the head or the last of the foot; what could be marks, alone there."""
    if not any(abs(run.baseline - end) < 1 for end in ends):
        return False
    return not marks_alone(run.text) or sum(abs(one.baseline - run.baseline) < 1 for one in runs) == 1


def _shape(text: str, at: int) -> str:
    """A run's words with # for its numbers; those of questions stay, and of page numbers how far ahead they are."""
    plain = " ".join(text.lower().split())
    if numbered := _PAGE_NUMBER.fullmatch(plain):
        return f"{_PAGES_ON.sub('#', plain)} {_number_of(numbered) - at}"
    alone = any(one.end == len(plain) and (one.dress or one.style is not Style.ARABIC) for one in numbers_at(plain))
    return plain if alone else _PAGES_ON.sub("#", plain)
