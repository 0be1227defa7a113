"""What is printed about marks and time: (3), [3 marks], /5, Total 12, 1 hour 30 minutes."""

import re
from dataclasses import dataclass
from typing import Final, Literal

Whose = Literal["part", "question", "section", "paper", "above"]
"""What marks are for; a bare "Total" counts for whatever stands above it."""


@dataclass(frozen=True, slots=True)
class Marks:
    """Marks as printed: how many, how they are dressed ("()", "[]", "/", "marks" or "" for a bare number).

    `start` is where they begin in the text that they were read from, `terms` the addends of a printed sum.
    """

    number: int
    dress: str
    start: int = 0
    terms: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Total:
    """A total as printed; `name` is the number of its question or section where that is said."""

    number: int
    whose: Whose
    name: str = ""


_UNIT: Final = r"(?:marks?|mks?|points?|pts?|m)"
_SUM: Final = r"\d{1,3}(?:\s?[+,]\s?\d{1,2}){0,6}"
_ALONE: Final = re.compile(
    rf"(?P<open>[(\[{{])\s*(?P<sum>{_SUM})\s*(?P<unit>{_UNIT}\.?)?\s*[)\]}}]"
    rf"|(?P<slashed>/)\s*(?P<of>\d{{1,3}})"
    rf"|(?P<words>{_SUM})\s*(?P<said>marks?|mks?|pts?|points?)\.?",
    re.IGNORECASE,
)
_AT_END: Final = re.compile(rf"(?:^|(?<=\s)|(?<=[.?!:;]))(?:{_ALONE.pattern})\s*$", re.IGNORECASE)
_IN_FRONT: Final = re.compile(
    r"[(\[]\s*(\d{1,3})\s*(?:marks?|mks?|points?|pts?)\.?\s*[)\]][\s.:]*(?=\S)", re.IGNORECASE
)
_BARE: Final = re.compile(r"\d{1,2}")
_COUNT: Final = rf"(?P<n>\d{{1,3}})\s*{_UNIT}?\.?"
_TOTALS: Final = (
    re.compile(
        rf"total\s+(?:marks?\s+)?(?:for|of)\s+(?:question|q)\s*\.?\s*(?P<name>\d{{1,3}})\s*(?:is|are|=|:|-|–|\.{{2,}})?"
        rf"\s*[(\[]?{_COUNT}",
        re.IGNORECASE,
    ),
    re.compile(
        rf"(?:total\s+(?:marks?\s+)?(?:for\s+)?(?:this\s+|the\s+)?(?P<of>question|section|paper|test|exam(?:ination)?)"
        rf"\s*(?P<name>[A-H]|\d{{1,2}})?|(?P<of2>question|section|paper|test)\s*(?P<name2>[A-H]|\d{{1,2}})?\s+total)"
        rf"\s*(?:marks?)?\s*(?:is|are|=|:|-|–)?\s*[(\[]?{_COUNT}",
        re.IGNORECASE,
    ),
    re.compile(
        rf"(?:grand\s+total|(?:max(?:imum)?\.?|full|total)\s+(?:marks?|points?)(?:\s+available)?)"
        rf"\s*(?:is|are|=|:|-|–)?\s*[(\[]?{_COUNT}",
        re.IGNORECASE,
    ),
    re.compile(rf"total\s*(?:is|=|:|-|–)?\s*[(\[]?{_COUNT}", re.IGNORECASE),
)
_PAPER_WORDS: Final = re.compile(r"grand|max|full|available", re.IGNORECASE)
_AROUND: Final = "()[]{} .*_—–-/"
_PART_OF_AN_HOUR: Final = r"½|¼|¾|1/2|1/4|3/4|\.5|,5|\s+and\s+a\s+half"
_HOURS: Final = rf"(?P<hours>\d{{1,2}}|one|two|three|four)?\s*(?P<half>{_PART_OF_AN_HOUR})?\s*(?:hours?|hrs?|h)\b"
_MINUTES: Final = r"(?P<minutes>\d{1,3})\s*(?:minutes?|mins?|min|m)\b\.?"
_TIME: Final = re.compile(
    rf"(?:{_HOURS}\s*(?:and\s+)?(?:{_MINUTES})?|(?P<only>\d{{1,3}})\s*(?:minutes?|mins?)\b)", re.I
)
_CALLED_TIME: Final = re.compile(
    r"\b(?:time|duration|allowed|length)\b|\b(?:allow|you (?:will )?have) (?=\d|one|two)", re.IGNORECASE
)
_SHARE: Final = {"½": 30, "1/2": 30, ".5": 30, ",5": 30, "and a half": 30, "¼": 15, "1/4": 15, "¾": 45, "3/4": 45}
_WORDS: Final = {"one": 1, "two": 2, "three": 3, "four": 4}


def marks_alone(text: str) -> Marks | None:
    """The marks that a whole cell is; a bare number is left to whoever knows its column.

    >>> marks_alone("[3 marks]").number, marks_alone("(2 + 1)").terms, marks_alone("/5").dress, marks_alone("f(3)")
    (3, (2, 1), '/', None)
    """
    match = _ALONE.fullmatch(text.strip())
    return _marks(match, 0) if match else None


def marks_at_end(text: str) -> Marks | None:
    """The marks that a text ends with, or what looks like them; a bracket that a name stands against is none.

    >>> marks_at_end("Find x. (3)").start, marks_at_end("Calculate f(3)"), marks_at_end("Find p. [2 marks]").number
    (8, None, 2)
    """
    match = _AT_END.search(text)
    return _marks(match, match.start()) if match else None


def marks_in_front(text: str) -> tuple[Marks, str] | None:
    """The marks that stand between a question's number and its text, and that text: "(4 points) Compute."."""
    match = _IN_FRONT.match(text)
    return (Marks(int(match.group(1)), "()marks"), text[match.end() :]) if match else None


def bare_number(text: str) -> int | None:
    """The number that a cell of a column of marks holds."""
    return int(text) if _BARE.fullmatch(text.strip()) else None


def total_of(text: str) -> Total | None:
    """The total that a whole row or cell states.

    >>> total_of("(Total for Question 3 is 7 marks)"), total_of("TOTAL: 50"), total_of("Total cost 5")
    (Total(number=7, whose='question', name='3'), Total(number=50, whose='above', name=''), None)
    """
    bare = text.strip(_AROUND).removeprefix("The ").removeprefix("the ")
    for at, pattern in enumerate(_TOTALS):
        if not (match := pattern.fullmatch(bare)):
            continue
        groups = match.groupdict()
        if at == 0:
            return Total(int(groups["n"]), "question", groups["name"])
        if at == 1:
            of = (groups["of"] or groups["of2"]).lower()
            whose: Whose = "question" if of == "question" else "section" if of == "section" else "paper"
            return Total(int(groups["n"]), whose, groups["name"] or groups["name2"] or "")
        paper = at == 2 and _PAPER_WORDS.search(bare)
        return Total(int(groups["n"]), "paper" if paper else "above")
    return None


def minutes_in(text: str) -> int | None:
    """The minutes that a row of the cover allows: it is the time alone, or says that it is the time.

    >>> minutes_in("Time: 1 hour 30 minutes"), minutes_in("1½ hours"), minutes_in("Spend 10 minutes on section A")
    (90, 90, None)
    >>> minutes_in("Allow 1 h 15 min. This set is out of 50 marks.")
    75
    """
    match = _TIME.fullmatch(text.strip(" ()[].:")) or (_TIME.search(text) if _CALLED_TIME.search(text) else None)
    if match is None:
        return None
    if match.group("only"):
        return int(match.group("only"))
    hours, half = match.group("hours"), " ".join((match.group("half") or "").split())
    if hours is None and not half:
        return None
    whole = _WORDS.get((hours or "0").lower())
    return 60 * (int(hours or 0) if whole is None else whole) + _SHARE.get(half, 0) + int(match.group("minutes") or 0)


def _marks(match: re.Match[str], start: int) -> Marks:
    groups = match.groupdict()
    if groups["of"]:
        return Marks(int(groups["of"]), "/", start)
    terms = tuple(int(term) for term in re.findall(r"\d+", groups["sum"] or groups["words"]))
    dress = {"(": "()", "[": "[]", "{": "{}"}.get(groups["open"] or "", "") + ("marks" if _said(groups) else "")
    return Marks(sum(terms), dress, start, terms if len(terms) > 1 else ())


def _said(groups: dict[str, str | None]) -> bool:
    return bool(groups["unit"] or groups["said"])
