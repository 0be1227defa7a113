"""What a row may begin with as a number: Question 3, 3., 3.2.1, (a), a), (ii), SECTION B."""

import re
from dataclasses import dataclass
from enum import Enum
from typing import Final


class Style(Enum):
    """The ways of numbering that are told apart; `WORD` has the word question in front.

    `BRACKETED` is (1), which marks look like too: it needs a text behind it.
    """

    WORD = "question"
    ARABIC = "1"
    DECIMAL = "1.1"
    BRACKETED = "(1)"
    LETTER = "a"
    ROMAN = "i"


@dataclass(frozen=True, slots=True)
class Number:
    """A number at the start of a text, or what looks like one.

    `value` counts from 1, outermost level first; `dress` is what stands round it ("()", ")", "." or ""), `printed`
    the number without it, `end` where it ends in the text.
    """

    style: Style
    value: tuple[int, ...]
    dress: str
    printed: str
    end: int


@dataclass(frozen=True, slots=True)
class Heading:
    """The heading of a section: its whole title and its rank, counted from 1."""

    title: str
    rank: int

    @property
    def name(self) -> str:
        """The title as it is kept."""
        return re.sub(r"\s+", " ", self.title).strip(" :–—-")[:100]


_BEHIND = r"(?=\s|$|\(|\[)"
_WORD: Final = re.compile(
    r"(?:question|problem|exercise|task)\s*(?:no\.?\s*)?(\d{1,3})(?:\s*[.:)])?(?=\s|$|\(|\[|—|–|-)"
    r"|q\s?\.?\s?(\d{1,3})(?:\s*[.:)])?(?=\s|$|\(|\[)",
    re.IGNORECASE,
)
_DECIMAL: Final = re.compile(r"(\d{1,2}(?:\.\d{1,2}){1,3})([.)]?)" + _BEHIND)
_ARABIC: Final = re.compile(r"(\d{1,3})([.):])(?![\d)])|(\d{1,3})(?=[a-h]\))|(\d{1,3})" + _BEHIND)
_BRACKETED: Final = re.compile(r"\(\s?(\d{1,2})\s?\)(?=\s+\S)")
_AGAIN: Final = re.compile(
    r"(?:(?:question|problem|q)\s*\.?\s*)?(\d{1,3})\s*\.?\s*(?=\([a-z]{1,4}\)|[a-z]{1,4}\)|(?<=\.)[a-h]\.?$)",
    re.IGNORECASE,
)
_LETTER: Final = re.compile(r"\(\s?([a-z])\s?\)|([a-z])([.)])(?=\s|$|\()|([a-z])$")
_ROMAN: Final = re.compile(r"\(\s?([ivx]{1,5})\s?\)|([ivx]{1,5})([.)])(?=\s|$|\()|([ivx]{1,5})$")
_ROMANS: Final = {
    name: at
    for at, name in enumerate(
        "i ii iii iv v vi vii viii ix x xi xii xiii xiv xv xvi xvii xviii xix xx".split(),  # noqa: SIM905
        start=1,
    )
}
_HEADING: Final = re.compile(r"(?:section|part)\s+([A-H]|[1-9]|I{1,3}|IV|V)\b(?P<rest>.*)", re.IGNORECASE | re.DOTALL)
_TITLE_GOES_ON: Final = re.compile(r"\s*(?:$|[:–—.(\[-]|\d+\s+marks)")


def numbers_at(text: str) -> tuple[Number, ...]:
    """All readings of what `text` begins with as a number; (i) is a letter and a Roman number.

    >>> [(one.style.name, one.value, one.dress) for one in numbers_at("(i) Find x")]
    [('ROMAN', (1,), '()'), ('LETTER', (9,), '()')]
    >>> [(one.style.name, one.value) for one in numbers_at("3.2 Solve")], numbers_at("3.25 m of rope")[0].value
    ([('DECIMAL', (3, 2))], (3, 25))
    >>> [one.style.name for one in numbers_at("(2) Find x")], numbers_at("(2)")
    (['BRACKETED'], ())
    """
    found: list[Number] = []
    if match := _WORD.match(text):
        printed = match.group(1) or match.group(2)
        found.append(Number(Style.WORD, (int(printed),), "", printed, match.end()))
    elif match := _DECIMAL.match(text):
        value = tuple(int(level) for level in match.group(1).split("."))
        found.append(Number(Style.DECIMAL, value, match.group(2), match.group(1), match.end()))
    elif match := _BRACKETED.match(text):
        found.append(Number(Style.BRACKETED, (int(match.group(1)),), "()", match.group(1), match.end()))
    elif match := _ARABIC.match(text):
        printed = match.group(1) or match.group(3) or match.group(4)
        found.append(Number(Style.ARABIC, (int(printed),), match.group(2) or "", printed, match.end()))
    if match := _ROMAN.match(text):
        printed, dress = _dressed(match)
        if printed in _ROMANS:
            found.append(Number(Style.ROMAN, (_ROMANS[printed],), dress, printed, match.end()))
    if match := _LETTER.match(text):
        printed, dress = _dressed(match)
        found.append(Number(Style.LETTER, (ord(printed) - ord("a") + 1,), dress, printed, match.end()))
    return tuple(one for one in found if all(one.value))


def bracketed_alone(text: str) -> tuple[Number, ...]:
    """The (1) that a whole cell is, for whoever knows that the next cell has the text.

    >>> bracketed_alone("(1)")[0].style.name, bracketed_alone("(1) x")
    ('BRACKETED', ())
    """
    match = _BRACKETED.match(f"{text} .")
    if match is None or match.end() < len(text.strip()):
        return ()
    return (Number(Style.BRACKETED, (int(match.group(1)),), "()", match.group(1), len(text)),)


def question_again(text: str, question: int) -> int:
    """How long the open question's number is where a text begins with it before a part's: the 1 of "1(b)" or "1b)".

    >>> question_again("1(b) Find x", 1), question_again("1b) Find x", 1), question_again("1(b) Find x", 2)
    (1, 1, 0)
    >>> question_again("2.a", 2), question_again("2.a m", 2)
    (2, 0)
    """
    match = _AGAIN.match(text)
    return match.end() if match and int(match.group(1)) == question else 0


def heading_at(text: str) -> Heading | None:
    """The heading of a section that a whole row is, or None.

    >>> heading_at("SECTION B: Geometry"), heading_at("Section A of the diagram"), heading_at("Part 2").rank
    (Heading(title='SECTION B: Geometry', rank=2), None, 2)
    """
    match = _HEADING.fullmatch(text.strip())
    if match is None or not _TITLE_GOES_ON.match(match.group("rest")) or len(text) > 90:
        return None
    name = match.group(1).upper()
    rank = int(name) if name.isdigit() else _ROMANS.get(name.lower()) or ord(name) - ord("A") + 1
    return Heading(text.strip(), rank)


def _dressed(match: re.Match[str]) -> tuple[str, str]:
    bracketed, bare, mark, alone = match.groups()
    return (bracketed, "()") if bracketed else (bare, mark) if bare else (alone, "")
