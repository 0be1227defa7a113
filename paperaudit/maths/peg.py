"""Compiles grammar files, one on top of another, and matches whole texts against a rule."""

import re
import sys
from collections import defaultdict
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from functools import cached_property
from typing import Any, TypeAlias

from parsimonious.exceptions import ParseError
from parsimonious.expressions import Expression as Rule
from parsimonious.expressions import Regex
from parsimonious.grammar import RuleVisitor, rule_grammar
from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.limits import check_limits

Rules: TypeAlias = Mapping[str, Rule]
"""Compiled rules by name."""

_FRAMES = 20_000


def compiled(text: str, known: Rules | None = None) -> Rules:
    """The rules of a grammar's text, with those that are `known` already, to which they may refer.

    >>> parsed(compiled('sum = digit ("+" digit)*', compiled('digit = ~"[0-9]"')), "sum", "1+2").text
    '1+2'
    """
    rules: Rules = _Reader(known or {}).visit(rule_grammar.parse(text))
    return rules


def parsed(rules: Rules, name: str, text: str) -> Node:
    """The tree of a whole text under the rule of that name.

    Raises ExpressionNotRead with the offset in `text` that reading reached, and no message: what was
    expected there is for the caller to say.
    """
    check_limits(text)
    stopped = ParseError(text)
    with _room_to_recurse():
        tree = rules[name].match_core(text, 0, defaultdict(dict), stopped)
    if tree is None or tree.end < len(text):
        reached = max(stopped.pos, 0 if tree is None else tree.end)
        raise ExpressionNotRead("", reached)
    return tree


class _Pattern(Regex):  # type: ignore[misc]
    """A regular expression of the standard library, which compiles in a third of the time, when it is first tried."""

    def __init__(self, pattern: str) -> None:
        Rule.__init__(self)
        self.pattern = pattern
        self.identity_tuple = (self.name, pattern)

    @cached_property
    def re(self) -> re.Pattern[str]:
        """The compiled pattern: most papers try a few of them only."""
        return re.compile(self.pattern)


class _Reader(RuleVisitor):  # type: ignore[misc]
    """Reads rules; references to known rules are taken as they are, not compiled again."""

    def __init__(self, known: Rules) -> None:
        super().__init__({})
        self.known = known

    def visit_regex(self, node: Node, parts: list[Any]) -> Rule:
        _, literal, *_ = parts
        return _Pattern(literal.literal)

    def visit_rules(self, node: Node, parts: list[Any]) -> Rules:
        _, rules = parts
        found = dict(self.known) | {rule.name: rule for rule in rules}
        for rule in rules:
            found[rule.name] = rule.resolve_refs(found)
        return found


@contextmanager
def _room_to_recurse() -> Iterator[None]:
    """Lets brackets nest to the limit: a level of brackets takes some twenty calls."""
    before = sys.getrecursionlimit()
    sys.setrecursionlimit(max(before, _FRAMES))
    try:
        yield
    finally:
        sys.setrecursionlimit(before)
