"""Sentences of a story in one spelling: small letters, numbers in figures, thousands joined, words unhyphenated."""

import re
from dataclasses import dataclass

from paperaudit.maths.number_words import BELOW_TWENTY, PARTS, TENS

_UNITS = {word: value for value, word in enumerate(BELOW_TWENTY)}
_PARTS = {**PARTS, **{f"{part}s": count for part, count in PARTS.items()}, "halves": 2}
_SMALL = "|".join(sorted((*_UNITS, *TENS, "hundred", "thousand"), key=len, reverse=True))
_NUMBER = re.compile(
    rf"\b(?:a (?=hundred|thousand))?(?:{_SMALL})(?:(?:(?:(?<=hundred)|(?<=housand)) and |[ -])(?:{_SMALL}))*\b"
)
_FRACTION = re.compile(
    r"\b(?:(one|two|three|four|five|a)[ -])"
    r"(thirds?|quarters?|fourths?|fifths?|sixths?|sevenths?|eighths?|ninths?|tenths?|half|halves)"
    r"(?= (?:of|as|the|that|what|her|his|their|its|an?|full|[a-z]+'s)\b)"
)
_AND_HALF = re.compile(r"\b(\d+|one|two|three|four|five|six) and (?:a half|1/2|one half)\b")
_ONE = re.compile(
    r"\bone(?= (?:more|less|fewer|year|hour|day|minute|second|week|month|km|metre|kilometre|litre|kg|cm|m)\b)"
)
_BIG = re.compile(r"(?<![\d.])(\d{1,3})((?: \d{3})+)(?![\d/])")
_MONEY = re.compile(r"(?<![a-z])r ?(?=\d)")
_SPELLINGS = (
    (re.compile("[’′]"), "'"),
    (re.compile(r"(?<=\d),(?=\d{1,2}(?!\d))"), "."),
    (re.compile(r"\bper cent\b|\bpercent\b"), "%"),
    (re.compile(r"(?<=\d) %"), "%"),
    (re.compile(r"(\d)-(?=(?:digit|figure|year|litre|seater|metre|km|kg|m|cm)\b)"), r"\1 "),
    (re.compile(r"\bthrice\b|\btreble\b|\btriple\b"), "3 times"),
    (re.compile(r"\btwo times\b|\bdouble\b|\b2 times\b"), "twice"),
    (re.compile(r"\bhalf (?:of )?(?!as\b|an?\b|past\b|full\b)"), "1/2 of "),
    (re.compile(r"\b1/2 of of\b"), "1/2 of"),
    (re.compile(r"\bhalf as\b"), "1/2 times as"),
    (re.compile(r"\bhalf an hour\b"), "0.5 hours"),
    (re.compile(r"\b(\d+) 1/2(?= hours?\b| h\b)"), r"\1.5"),
    (re.compile(r"\bhalf a (?=[a-z])"), "1/2 of a "),
    (re.compile(r"\bdozen\b"), "dozen"),
    (re.compile(r" +"), " "),
)


@dataclass(frozen=True, slots=True)
class Plain:
    """A sentence in the spelling of the story grammars, and as its paper has it."""

    text: str
    said: str
    question: bool = False


def plain(text: str) -> str:
    """A sentence with its numbers in figures.

    >>> plain("Twice a number less twenty-five is two thirds of it")
    'twice a number less 25 is 2/3 of it'
    """
    words = text.lower().replace("\ue000", " ").replace("\n", " ").strip(" .?!:;,")
    words = words.replace("’", "'").replace("′", "'").replace("–", "-").replace("−", "-")
    words = _FRACTION.sub(_part, words)
    words = _AND_HALF.sub(lambda found: f"{_digits(found.group(1))}.5", words)
    words = _ONE.sub("1", words)
    words = _NUMBER.sub(_in_figures, words)
    words = _BIG.sub(lambda found: found.group().replace(" ", ""), words)
    words = _MONEY.sub("R", words)
    for pattern, spelling in _SPELLINGS:
        words = pattern.sub(spelling, words)
    return words.strip()


def _digits(word: str) -> str:
    return str(_UNITS.get(word, word))


def _part(found: re.Match[str]) -> str:
    count = 1 if found.group(1) == "a" else _UNITS[found.group(1)]
    return f"{count}/{_PARTS[found.group(2)]}"


def _in_figures(found: re.Match[str]) -> str:
    """The figures of a number in words; a lone "one" and "zero" stay, numbers side by side stay apart."""
    words = [word for word in re.split(r"[ -]", found.group()) if word not in ("and", "a")]
    if words in (["one"], ["zero"]):
        return found.group()
    numbers: list[int] = []
    total = run = 0
    for at, word in enumerate(words):
        before = words[at - 1] if at else ""
        if word == "hundred":
            run = max(run, 1) * 100
        elif word == "thousand":
            total, run = total + max(run, 1) * 1000, 0
        else:
            digit = 0 < _UNITS.get(word, 0) < 10
            if at and not (before in ("hundred", "thousand") or (before in TENS and digit)):
                numbers.append(total + run)
                total = run = 0
            run += _UNITS.get(word, 0) + TENS.get(word, 0)
    return " ".join(map(str, (*numbers, total + run)))
