"""Loads the grammar of expressions, alone or in front of another grammar that builds on it."""

import re
import sys
from collections import defaultdict
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from pathlib import Path

from parsimonious.exceptions import ParseError
from parsimonious.grammar import Grammar
from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.notation import UNIT_MARK
from paperaudit.maths.units import UNITS

LONGEST_TEXT = 2_000
DEEPEST_NESTING = 50
_FRAMES = 20_000
_LONE = re.compile(r"[A-Za-z](?:[²³]|\^[23]|/s)?")


@cache
def expression_grammar() -> Grammar:
    """The grammar of expressions and relations, compiled once a process."""
    return Grammar(expression_rules())


def expression_rules() -> str:
    """The text of the expression grammar, with its units, for a grammar that builds on it."""
    spellings = {
        spelling for unit in UNITS for spelling in (unit.symbol, unit.plural, *unit.spellings) if spelling
    }
    words = [word for word in spellings - {"in"} if not _LONE.fullmatch(word) and word[0] not in "$£€₦₹"]
    alone = [spelling for spelling in spellings if _LONE.fullmatch(spelling)]
    rules = Path(__file__).with_name("expression.peg").read_text(encoding="utf-8")
    return f"""{rules}
unit_word = ~r"(?:{_alternatives(words)}|deg)(?![A-Za-z0-9^²³])|in(?![A-Za-z0-9^²³]| (?!and|with)[a-z])"
lone_unit = "{UNIT_MARK}" ~r"(?:{_alternatives(alone)})(?![A-Za-z0-9(^])"
"""


def _alternatives(spellings: list[str]) -> str:
    """A regular expression for any of the spellings, the longest first."""
    longest_first = sorted(spellings, key=lambda word: (-len(word), word))
    return "|".join(re.escape(spelling).replace("\\ ", " ") for spelling in longest_first)


def parsed(grammar: Grammar, rule: str, text: str) -> Node:
    """The tree of a whole text under a rule.

    Raises ExpressionNotRead with the offset in `text` that reading reached, and no message: what was
    expected there is for the caller to say.
    """
    check_limits(text)
    stopped = ParseError(text)
    with _room_to_recurse():
        tree = grammar[rule].match_core(text, 0, defaultdict(dict), stopped)
    if tree is None or tree.end < len(text):
        reached = max(stopped.pos, 0 if tree is None else tree.end)
        raise ExpressionNotRead("", reached)
    return tree


def check_limits(text: str, longest: int = LONGEST_TEXT) -> None:
    """Refuses text that is too long, nested too deeply, or with endless numbers."""
    if len(text) > longest:
        raise ExpressionNotRead(f"longer than {longest} characters", longest, "a shorter text")
    depth = 0
    for position, character in enumerate(text):
        if character in "([{":
            depth += 1
            if depth > DEEPEST_NESTING:
                raise ExpressionNotRead(f"brackets nested deeper than {DEEPEST_NESTING}", position, "fewer brackets")
        elif character in ")]}":
            depth -= 1
    if run := re.search(r"\d[\d ,.]{59,}\d", text):
        digits = sum(character.isdigit() for character in run.group())
        if digits > 60:
            raise ExpressionNotRead("a number of more than 60 digits", run.start(), "a shorter number")


@contextmanager
def _room_to_recurse() -> Iterator[None]:
    """Lets brackets nest to the limit: a level of brackets takes some twenty calls."""
    before = sys.getrecursionlimit()
    sys.setrecursionlimit(max(before, _FRAMES))
    try:
        yield
    finally:
        sys.setrecursionlimit(before)
