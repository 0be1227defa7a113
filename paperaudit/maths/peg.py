"""Compiles grammar files, one on top of another, and matches whole texts against a rule."""

import sys
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from typing import TypeAlias

from parsimonious.exceptions import ParseError
from parsimonious.expressions import Expression as Rule
from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.limits import check_limits
from paperaudit.maths.matching import Matched
from paperaudit.maths.peg_reader import read_rules

Rules: TypeAlias = Mapping[str, Rule]
"""Compiled rules by name."""

_FRAMES = 20_000


def compiled(text: str, known: Rules | None = None) -> Rules:
    """The rules of a grammar's text, with those that are `known` already, to which they may refer.

    >>> parsed(compiled('sum = digit ("+" digit)*', compiled('digit = ~"[0-9]"')), "sum", "1+2").text
    '1+2'
    """
    known = known or {}
    return {**known, **read_rules(text, known)}


def parsed(rules: Rules, name: str, text: str) -> Node:
    """The tree of a whole text under the rule of that name.

    Raises ExpressionNotRead with the offset in `text` that reading reached, and no message: what was
    expected there is for the caller to say.
    """
    check_limits(text)
    with _room_to_recurse():
        tree = rules[name].match_core(text, 0, Matched(), ParseError(text))
        if tree is None or tree.end < len(text):
            stopped = ParseError(text)
            tree = rules[name].match_core(text, 0, Matched(thorough=True), stopped)
            raise ExpressionNotRead("", max(stopped.pos, 0 if tree is None else tree.end))
    return tree


@contextmanager
def _room_to_recurse() -> Iterator[None]:
    """Lets brackets nest to the limit: a level of brackets takes some twenty calls."""
    before = sys.getrecursionlimit()
    sys.setrecursionlimit(max(before, _FRAMES))
    try:
        yield
    finally:
        sys.setrecursionlimit(before)
