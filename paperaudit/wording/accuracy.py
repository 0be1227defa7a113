"""Finds the accuracy that an answer is asked for: decimal places, significant figures, the nearest step."""

import re

from paperaudit.maths.notation import UNIT_MARK, Notation
from paperaudit.maths.units import unit_named
from paperaudit.model.ask import Accuracy

_SPELLED = ("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
COUNTS = {word: str(count) for count, word in enumerate(_SPELLED)}
YOUR_ANSWER = r"""
    (?: (?: please\s )?
        (?: giv(?:e|ing) | leav(?:e|ing) | writ(?:e|ing) | express(?:ing)? | stat(?:e|ing) | round(?:ing|ed)? )
        (?: \soff )? \s )?
    (?: (?: your | the | all | each | any ) \s (?: final\s )? (?: answers? | results? | values? | solutions? ) ,? \s
      | [Aa]nswers? \s (?= to\s | correct\s ) )?
"""
_LETTER = r"(?: giv(?:e|ing) \s (?: your \s )? (?: (?: the \s )? values? \s of \s )? [a-zθα] \s )?"
"""giving x correct to …"""
_LEADS_IN = rf"""[,;(]? \s? (?: and\s )? (?: {_LETTER} | {YOUR_ANSWER} )
    (?: (?: correct | accurate | rounded | round ) (?: \soff )? \s )*"""
_FIGURES = re.compile(
    rf"""{_LEADS_IN} to \s (?P<count> \d+ | {" | ".join(COUNTS)} | {" | ".join(COUNTS).upper()} ) \s
    (?P<kind> decimal\splaces? | decimals? | d \.? \s? ps? (?: \. | (?![a-z]) )
            | significant\s(?:figures?|digits?) | sig \.? \s (?:figs?|figures?) \.? | s \.? \s? f (?: \. | (?![a-z]) ) )
    (?: \s (?: if | where ) \s (?: necessary | needed | appropriate ) )? \)?""",
    re.VERBOSE,
)
_NEAREST = re.compile(
    rf"""{_LEADS_IN} to \s the \s nearest [{UNIT_MARK}\s]
    (?P<step> (?: one \s )? (?: ten \s | hundred \s )? (?: thousand | million | billion ) (?! [a-z] )
            | one \s (?: tenth | hundredth | thousandth | hundred | ten ) (?! [a-z] )
            | [a-z°]+ [²³]? (?: \s (?: number | integer ) )?
            | \d+ (?: \s\d{{3}} )* (?: [.,]\d+ )? (?: [{UNIT_MARK}\s]? [a-z]+ [²³]? )? )
    \)?""",
    re.VERBOSE,
)
_STEPS = {
    "whole number": "1",
    "integer": "1",
    "unit": "1",
    "ten": "10",
    "hundred": "100",
    "thousand": "1000",
    "ten thousand": "10000",
    "hundred thousand": "100000",
    "million": "1000000",
    "ten million": "10000000",
    "hundred million": "100000000",
    "billion": "1000000000",
    "tenth": "0.1",
    "hundredth": "0.01",
    "thousandth": "0.001",
    "rand": "R",
    "dollar": "$",
    "euro": "€",
}


def accuracy_of(notation: Notation) -> tuple[Accuracy | None, Notation]:
    """The accuracy that a sentence asks for, and the sentence without it.

    The step behind "nearest" is a number ("10", "0.1"), a unit's symbol ("°", "cm") or both ("5 cm").
    """
    figures = _FIGURES.search(notation.text)
    if figures is not None:
        count = COUNTS.get(figures["count"].lower(), figures["count"])
        accuracy = Accuracy("decimal places" if figures["kind"].startswith("d") else "significant figures", count)
        return accuracy, notation.without(*figures.span())
    nearest = _NEAREST.search(notation.text)
    step = _step(nearest["step"]) if nearest is not None else ""
    if nearest is None or not step:
        return None, notation
    return Accuracy("nearest", step), notation.without(*nearest.span())


def _step(words: str) -> str:
    """The step in symbols, or "" where the words name none."""
    plain = words.replace(UNIT_MARK, " ").strip().removeprefix("one ")
    if plain in _STEPS:
        return _STEPS[plain]
    number, _, name = plain.rpartition(" ") if plain[0].isdigit() else ("", "", plain)
    unit = unit_named(name)
    if unit is None:
        return plain if plain[-1].isdigit() else ""
    symbol = unit.symbol if len(name) > 2 else name
    return f"{number} {symbol}".strip()
