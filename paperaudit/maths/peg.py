"""Compiles grammar files, one on top of another, and matches whole texts against a rule."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from functools import lru_cache

from parsimonious.exceptions import ParseError
from parsimonious.expressions import Expression as Rule
from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.limits import check_limits
from paperaudit.maths.matching import Matched
from paperaudit.maths.peg_reader import read_rules
from paperaudit.maths.shapes import Shapes, patterns_of, set_in

SHAPES_KEPT = 2_048
"""Trees that a grammar keeps, for other texts of the same shape."""

_FRAMES = 20_000


class Rules(dict[str, Rule]):
    """Compiled rules by name, with the trees of the texts that they have matched."""

    def __init__(self, rules: dict[str, Rule]) -> None:
        super().__init__(rules)
        self._shapes = Shapes(patterns_of(rules.values()))
        self._of_shape = lru_cache(maxsize=SHAPES_KEPT)(self.matched)

    def tree(self, name: str, text: str) -> Node:
        """The tree of a whole text; raises ExpressionNotRead as `parsed` does."""
        matched = self._of_shape(name, self._shapes.of(text))
        if isinstance(matched, int):
            raise ExpressionNotRead("", matched)
        with _room_to_recurse():
            return set_in(matched, text)

    def forget(self) -> None:
        """Forgets every tree, for whoever takes times."""
        self._of_shape.cache_clear()

    def matched(self, name: str, text: str) -> Node | int:
        """The tree of a whole text that is matched anew, or how far reading got."""
        with _room_to_recurse():
            tree: Node | None = self[name].match_core(text, 0, Matched(), ParseError(text))
            if tree is not None and tree.end == len(text):
                return tree
            stopped = ParseError(text)
            tree = self[name].match_core(text, 0, Matched(thorough=True), stopped)
            return max(stopped.pos, 0 if tree is None else tree.end)


def compiled(text: str, known: Rules | None = None) -> Rules:
    """The rules of a grammar's text, with those that are `known` already, to which they may refer.

    >>> parsed(compiled('sum = digit ("+" digit)*', compiled('digit = ~"[0-9]"')), "sum", "1+2").text
    '1+2'
    """
    known = known or Rules({})
    return Rules({**known, **read_rules(text, known)})


def parsed(rules: Rules, name: str, text: str) -> Node:
    """The tree of a whole text under the rule of that name.

    Raises ExpressionNotRead with the offset in `text` that reading reached, and no message: what was
    expected there is for the caller to say.
    """
    check_limits(text)
    return rules.tree(name, text)


@contextmanager
def _room_to_recurse() -> Iterator[None]:
    """Lets brackets nest to the limit: a level of brackets takes some twenty calls."""
    before = sys.getrecursionlimit()
    sys.setrecursionlimit(max(before, _FRAMES))
    try:
        yield
    finally:
        sys.setrecursionlimit(before)
