"""The rules of grammars with quicker matching than parsimonious has: its own results, fewer attempts."""

import re
from collections import defaultdict
from functools import cached_property

from parsimonious.exceptions import ParseError
from parsimonious.expressions import Expression as Rule
from parsimonious.expressions import Literal, Lookahead, OneOf, Quantifier, Regex, Sequence
from parsimonious.nodes import Node

from paperaudit.maths.beginnings import Beginnings
from paperaudit.maths.needed_letters import Needed


class Matched(defaultdict[int, dict[int, Node | None]]):
    """What each rule, by its identity, matched at each position of the text.

    A `thorough` matching passes nothing over, so that it gets as far as any rule can, and says how far.
    """

    def __init__(self, thorough: bool = False) -> None:
        super().__init__(dict)
        self.thorough = thorough


def _remembered(rule: Rule, text: str, pos: int, cache: Matched, error: ParseError) -> Node | None:
    """The node of a rule at a position, matched once."""
    known = cache[id(rule)]
    if pos in known:
        node = known[pos]
    else:
        known[pos] = None  # a rule that begins with itself matches nothing there
        node = known[pos] = rule._uncached_match(text, pos, cache, error)
    if node is None and cache.thorough:
        _failed(rule, pos, error)
    return node


def _failed(rule: Rule, position: int, error: ParseError) -> None:
    """Records how far reading got, as parsimonious does for every rule that fails."""
    if position >= error.pos and (rule.name or getattr(error.expr, "name", None) is None):
        error.expr, error.pos = rule, position


class Letters(Literal):  # type: ignore[misc]
    """A text that has to stand there; looking is quicker than remembering."""

    def match_core(self, text: str, pos: int, cache: Matched, error: ParseError) -> Node | None:
        """The node of the letters, or None."""
        if text.startswith(self.literal, pos):
            return Node(self, text, pos, pos + len(self.literal))
        if cache.thorough:
            _failed(self, pos, error)
        return None


class Pattern(Regex):  # type: ignore[misc]
    """A regular expression of the standard library, which compiles in a third of the time, when it is first tried."""

    match_core = _remembered

    def __init__(self, pattern: str) -> None:
        Rule.__init__(self)
        self.pattern = pattern
        self.identity_tuple = (self.name, pattern)

    @cached_property
    def re(self) -> re.Pattern[str]:
        """The compiled pattern: most papers try a few of them only."""
        return re.compile(self.pattern)

    def _uncached_match(self, text: str, pos: int, cache: Matched, error: ParseError) -> Node | None:
        match = self.re.match(text, pos)
        return None if match is None else Node(self, text, pos, match.end())


class Row(Sequence):  # type: ignore[misc]
    """Rules that match one behind the other."""

    match_core = _remembered

    def _uncached_match(self, text: str, pos: int, cache: Matched, error: ParseError) -> Node | None:
        end, children = pos, []
        for member in self.members:
            node = member.match_core(text, end, cache, error)
            if node is None:
                return None
            children.append(node)
            end = node.end
        return Node(self, text, pos, end, children)


class Repeated(Quantifier):  # type: ignore[misc]
    """A rule that matches several times running, or not at all."""

    match_core = _remembered


class Ahead(Lookahead):  # type: ignore[misc]
    """What must, or must not, come next, and is not taken."""

    match_core = _remembered


MANY = 2
"""A choice of so many ways first looks which of them can match."""


class Choice(OneOf):  # type: ignore[misc]
    """The first of several rules that matches; those that cannot match here are passed over.

    A rule cannot match where it cannot begin with the next character, or needs words that the text does not hold.
    """

    match_core = _remembered

    def __init__(self, *members: Rule) -> None:
        super().__init__(*members)
        self.beginnings = Beginnings()
        self.needed = Needed()
        self._begun_by: dict[str, tuple[Rule, ...]] = {}
        self._text = ""
        self._in_text: dict[str, tuple[Rule, ...]] = {}

    def _worth_trying(self, text: str, character: str) -> tuple[Rule, ...]:
        every: tuple[Rule, ...] = self.members
        if len(every) < MANY:
            return every
        members = self._begun_by.get(character)
        if members is None:
            members = tuple(one for one in every if self.beginnings.may_begin(one, character))
            self._begun_by[character] = members
        if text is not self._text:
            self._text, self._in_text = text, {}
        worth = self._in_text.get(character)
        if worth is None:
            worth = self._in_text[character] = tuple(one for one in members if self.needed.may_be_in(text, one))
        return worth

    def _uncached_match(self, text: str, pos: int, cache: Matched, error: ParseError) -> Node | None:
        members = self.members if cache.thorough else self._worth_trying(text, text[pos : pos + 1])
        for member in members:
            node = member.match_core(text, pos, cache, error)
            if node is not None:
                return Node(self, text, pos, node.end, children=[node])
        return None
