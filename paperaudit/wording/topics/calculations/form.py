"""A story by the form that its whole text has, and the pieces that such forms are put together from."""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import TypeAlias

from paperaudit.wording.topics.stories.amounts import number_in

Pieces: TypeAlias = Mapping[str, str]
"""What the named groups of a form hold, "" for one that the text lacks."""

NUMBER = r"(?:\d+ \d+/\d+|\d+/\d+|\d+\.\d+|\d+)(?![\d/]|[.:]\d)"
"""A number in figures."""
WHOLE = r"\d+(?![\d/%]|[.:]\d)"
SIGN = "[R$£€₦₹]"
MONEY = rf"{SIGN} ?{NUMBER}"
_CHANGING = (
    "not|no|none|never|only|except|without|other|another|both|half|twice|double|more|less|fewer|than|then|but|if|when"
    "|after|before|remaining|rest|left|each|every|per|of|in|at|by|for|to|from|and|or|is|are|was|were|has|have|had|how"
    "|what|which|who|find|calculate|total|same|equal|equally|first|second|third|last|next|extra|additional"
)
WORD = rf"(?!(?:{_CHANGING})(?![a-z'-]))[a-z][a-z'-]*"
"""A word that neither denies nor alters anything."""
THING = rf"{WORD}(?: {WORD}){{0,2}}"
WHO = rf"(?:(?:an?|the|his|her|mr|mrs|ms|miss) )?{WORD}(?: {WORD})?"
FIND = (
    r"(?:(?:hence,? )?(?:find|calculate|work out|determine|compute|write down|give|state|what is|what was"
    r"|what will be) )"
)


@dataclass(frozen=True, slots=True)
class Form:
    """A pattern for a whole text, and the calculation that its pieces come to; "" where they come to none.

    The pattern is compiled when a text is first held against it: most papers need few of them.
    """

    pattern: str
    comes_to: Callable[[Pieces], str]

    def pieces_of(self, text: str) -> Pieces | None:
        """The pieces of a text that has this form, None for any other.

        >>> form(r"(?P<one>\\d+) and (?P<other>\\d+)", lambda pieces: "").pieces_of("3 and 4")
        {'one': '3', 'other': '4'}
        """
        found = _compiled(self.pattern).fullmatch(text)
        return None if found is None else {name: piece or "" for name, piece in found.groupdict().items()}


def form(text: str, comes_to: Callable[[Pieces], str]) -> Form:
    """A form by the source of its pattern."""
    return Form(text, comes_to)


@cache
def _compiled(pattern: str) -> re.Pattern[str]:
    return re.compile(pattern)


def value(piece: str) -> Fraction:
    """The number of a piece, with or without a sign of money.

    >>> value("$2.50")
    Fraction(5, 2)
    """
    return number_in(bare(piece)).value


def bare(piece: str) -> str:
    """An amount of money without its sign, for a fraction of two such amounts.

    >>> bare("$2.50")
    '2.50'
    """
    return re.sub(SIGN, "", piece).strip()


def one_currency(*amounts: str) -> bool:
    """Whether amounts of money have the same sign."""
    return len({amount[0] for amount in amounts if amount}) <= 1
