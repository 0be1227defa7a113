"""Reads the cover: title, level, minutes, the paper's total, what it claims about questions and pages."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from paperaudit.maths.number_words import BELOW_TWENTY
from paperaudit.readers.draft.marks import minutes_in, total_of
from paperaudit.readers.draft.numbering import numbers_at
from paperaudit.readers.draft.print_line import PrintLine

_NUMBERS: Final = (*BELOW_TWENTY[1:], "twenty")
_COUNT: Final = rf"(\d{{1,3}}|{'|'.join(_NUMBERS)})"
_THINGS: Final = {
    "questions": re.compile(rf"\b{_COUNT}\s+(?:compulsory\s+|numbered\s+)?questions?\b", re.IGNORECASE),
    "pages": re.compile(rf"\b{_COUNT}\s+(?:printed\s+|numbered\s+)*pages?\b", re.IGNORECASE),
}
_CLAIMS: Final = re.compile(
    r"\b(?:consists?|has|have|contains?|comprises?|there\s+(?:are|is)|made\s+up|includes?|answer\s+all|all)\b|^\W*\d+\s+(?:questions|pages)\W*$",
    re.IGNORECASE,
)
_ANY: Final = re.compile(r"\b(?:any|choose|either|only|of\s+the)\b", re.IGNORECASE)
_LEVEL: Final = re.compile(
    r"\b(?:grade|year|form|class|stage|standard|level)\s+(?:\d{1,2}|[IVX]{1,4}|one|two|three)\b", re.I
)
_MARKS: Final = re.compile(
    r"(?:\b(?:total|max(?:imum)?|full)?\s*(?:marks?|points?)\s*(?:available)?\s*[:=]?\s*(?P<n>\d{1,3})\b(?!\s*%)"
    r"|(?P<m>\d{1,3})\s+(?:marks|points)\b|/\s?(?P<of>\d{2,3})\s*$)",
    re.IGNORECASE,
)
_SCORED: Final = re.compile(r"(?:(?:score|marks?|result|total)\s*[:=]?[\s_.]*)?/\s?(\d{2,3})", re.IGNORECASE)
"""The field of the score with what stands behind it: "Score: ____ / 30"."""
_INSIDE: Final = re.compile(r"\btotal(?:\s+marks)?\s*[:=]\s*(\d{1,3})\b", re.IGNORECASE)
"""A total that shares its row with other words."""
_BESIDE: Final = re.compile(r"\s+(?:total|marks|time|duration|date|name)(?:\s+\w+)?\s*[:=_].*", re.IGNORECASE)
"""What stands behind a title in its row."""
_FILLED_IN: Final = re.compile(
    r"\b(?:name|surname|class|date|teacher|candidate|school|centre|number|signature|examiner|moderator|score|result)\s*[:._]",
    re.IGNORECASE,
)
_BEYOND: Final = re.compile(rf"{_FILLED_IN.pattern}|\b\d{{1,3}}\s*(?:marks|points)\b", re.IGNORECASE)
"""What may share a row with the time: fields to fill in, and the marks."""
_SUBJECT: Final = re.compile(
    r"\b(?:test|exam(?:ination)?|paper|assessment|assignment|worksheet|quiz|mock|term|revision|homework|math(?:ematic)?s?"
    r"|algebra|geometry|statistics)\b",
    re.IGNORECASE,
)
_PARTING: Final = re.compile(r"\s*[—–|;•·,.]\s+")
_INSTRUCTIONS: Final = re.compile(
    r"\b(?:instructions?|information|read\s+(?:these|the|all)|answer\s+all|calculator|this\s+(?:question\s+)?(?:paper|test|exam))\b",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Said:
    """Something that the cover says, with the line that it stands in."""

    value: str
    line: PrintLine


@dataclass(frozen=True, slots=True)
class Cover:
    """What the cover says; what it does not say is None."""

    title: Said | None = None
    level: Said | None = None
    minutes: Said | None = None
    total: Said | None = None
    questions: Said | None = None
    pages: Said | None = None


def cover_of(lines: Sequence[PrintLine]) -> Cover:
    """What the lines before the first question say."""
    title = _title(lines)
    level = next((Said(match.group(), line) for line in lines if (match := _LEVEL.search(line.row.text))), None)
    return Cover(
        title=title,
        level=level,
        minutes=next(_minutes(lines), None),
        total=next(_totals(lines), None),
        questions=next(_claims(lines, "questions"), None),
        pages=next(_claims(lines, "pages"), None),
    )


def _title(lines: Sequence[PrintLine]) -> Said | None:
    """The largest print that names a test or its subject, else the largest; fields to fill in are no title."""
    fit = [
        line
        for line in lines
        if line.page == lines[0].page
        and not _FILLED_IN.search(line.row.text)
        and not _INSTRUCTIONS.search(line.row.text)
        and not any(number.dress for number in numbers_at(line.row.text))
        and minutes_in(line.row.text) is None
        and total_of(line.row.text) is None
        and sum(letter.isalpha() for letter in line.row.text) >= 4
    ]
    if not fit:
        return None
    named = [line for line in fit if _SUBJECT.search(line.row.text)] or fit
    best = max(named, key=lambda line: (line.row.size, line.row.bold))
    cells = [cell for cell in best.row.cells if not _LEVEL.fullmatch(cell.text.strip(" .,:–—-"))] or best.row.cells
    apart = best.in_table or len(best.row.cells) > 2
    telling = [cell.text for cell in cells if _SUBJECT.search(cell.text)] if apart else []
    text = " ".join((telling[0] if telling else " ".join(cell.text for cell in cells)).split())
    return Said((_BESIDE.sub("", text) or text)[:100], best)


def _minutes(lines: Sequence[PrintLine]) -> Iterator[Said]:
    for line in lines:
        pieces = (piece for cell in line.row.cells for piece in _PARTING.split(cell.text))
        for text in (*pieces, line.row.text, _BEYOND.sub("", line.row.text)):
            minutes = minutes_in(text)
            if minutes:
                yield Said(str(minutes), line)


def _totals(lines: Sequence[PrintLine]) -> Iterator[Said]:
    for line in lines:
        pieces = (piece for cell in line.row.cells for piece in _PARTING.split(cell.text))
        for text in (line.row.text, *(cell.text for cell in line.row.cells), *pieces):
            if total := total_of(text):
                yield Said(str(total.number), line)
    for line in lines:
        if inside := _INSIDE.search(line.row.text):
            yield Said(inside[1], line)
    for line in lines:
        field = _FILLED_IN.search(line.row.text) and "marks" not in line.row.text.lower()
        for text in (cell.text.strip() for cell in line.row.cells):
            if field:
                yield from (Said(scored[1], line) for scored in [_SCORED.fullmatch(text)] if scored)
                continue
            match = _MARKS.search(text)
            if match and len(text.split()) <= 12 and not re.search(r"\b(?:each|section|per)\b", text, re.I):
                yield Said(match.group("n") or match.group("m") or match.group("of"), line)


def _claims(lines: Sequence[PrintLine], thing: str) -> Iterator[Said]:
    """Numbers of questions or pages in a sentence that says what the paper has; sentences may run over rows."""
    for line in lines:
        if match := re.fullmatch(rf"number\s+of\s+{thing}\s*:?\s*{_COUNT}", line.row.text.strip(), re.IGNORECASE):
            yield Said(_count(match), line)
        for piece in _PARTING.split(line.row.text):
            if match := _THINGS[thing].fullmatch(piece.strip(" .")):
                yield Said(_count(match), line)
    for at, line in enumerate(lines):
        following = lines[at + 1].row.text if at + 1 < len(lines) else ""
        for text in (line.row.text, f"{line.row.text} {following}"):
            match = _THINGS[thing].search(text)
            if not match or not _CLAIMS.search(text) or _ANY.search(text[: match.start()]):
                continue
            yield Said(_count(match), line)
            break


def _count(match: re.Match[str]) -> str:
    word = match.group(1).lower()
    return str(_NUMBERS.index(word) + 1 if word in _NUMBERS else int(word))
