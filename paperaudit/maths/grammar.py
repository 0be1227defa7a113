"""The compiled grammar of expressions and relations, which other grammars build on."""

import re
from functools import cache
from pathlib import Path

from paperaudit.maths.notation import UNIT_MARK
from paperaudit.maths.peg import Rules, compiled
from paperaudit.maths.units import UNITS

_LONE = re.compile(r"[A-Za-z](?:[²³]|\^[23]|/[a-z]+(?:[²³]|\^[23])?)?")


@cache
def expression_grammar() -> Rules:
    """The grammar of expressions and relations, compiled once a process."""
    rules = Path(__file__).with_name("expression.peg").read_text(encoding="utf-8")
    return compiled(f"{rules}\n{_unit_rules()}")


def _unit_rules() -> str:
    """The rules of units, from the table of units; "in" before a word is no inch."""
    spellings = {spelling for unit in UNITS for spelling in (unit.symbol, unit.plural, *unit.spellings) if spelling}
    words = [word for word in spellings - {"in"} if not _LONE.fullmatch(word) and word[0] not in "$£€₦₹"]
    alone = [spelling for spelling in spellings if _LONE.fullmatch(spelling)]
    return f"""
unit_word = ~r"(?:{_alternatives(words)}|deg)(?![A-Za-z0-9^²³])|in(?![A-Za-z0-9^²³]| (?!and|with)[a-z])"
lone_unit = "{UNIT_MARK}" ~r"(?:{_alternatives(alone)})(?![A-Za-z0-9(^])"
"""


def _alternatives(spellings: list[str]) -> str:
    """A regular expression for any of the spellings, the longest first."""
    longest_first = sorted(spellings, key=lambda word: (-len(word), word))
    return "|".join(re.escape(spelling).replace("\\ ", " ") for spelling in longest_first)
