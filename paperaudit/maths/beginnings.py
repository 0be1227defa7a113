"""Which characters a rule of a grammar can begin with, so that hopeless alternatives are not tried."""

import re
from functools import cache
from re import _constants as codes  # type: ignore[attr-defined]
from re import _parser as reading  # type: ignore[attr-defined]
from typing import Any

from parsimonious.expressions import Expression as Rule
from parsimonious.expressions import Literal, Lookahead, OneOf, Quantifier, Regex, Sequence

LONGEST_LOOKED_INTO = 60
"""Patterns of more characters are simply tried."""
END = ""
"""Stands for the end of the text, where only rules that match nothing can match."""

_CLASSES = {
    codes.CATEGORY_DIGIT: r"\d",
    codes.CATEGORY_NOT_DIGIT: r"\D",
    codes.CATEGORY_SPACE: r"\s",
    codes.CATEGORY_NOT_SPACE: r"\S",
    codes.CATEGORY_WORD: r"\w",
    codes.CATEGORY_NOT_WORD: r"\W",
}


class Beginnings:
    """Answers for one grammar, remembered by rule and character; sure where they say no, generous where yes.

    >>> Beginnings().may_begin(Literal("abc"), "b")
    False
    """

    def __init__(self) -> None:
        self._known: dict[tuple[int, str], bool] = {}
        self._empty: dict[int, bool] = {}

    def may_begin(self, rule: Rule, character: str) -> bool:
        """Whether a match of `rule` can begin with the character, or hold nothing at all."""
        key = (id(rule), character)
        known = self._known.get(key)
        if known is None:
            self._known[key] = True  # a rule that leads to itself adds nothing to what its other ways say
            known = self._known[key] = self._begins(rule, character)
        return known

    def _begins(self, rule: Rule, character: str) -> bool:
        if self.may_be_empty(rule):
            return True
        match rule:
            case Literal(literal=text):
                return character != END and bool(text.startswith(character))
            case Regex():
                parts = parts_of_pattern(rule.pattern)
                return parts is None or (character != END and _pattern_begins(parts, character)[0])
            case Sequence():
                for member in rule.members:
                    if not isinstance(member, Lookahead) and self.may_begin(member, character):
                        return True
                    if not self.may_be_empty(member):
                        return False
                return True
            case OneOf() | Quantifier():
                return any(self.may_begin(member, character) for member in rule.members)
        return True

    def may_be_empty(self, rule: Rule) -> bool:
        """Whether a match of `rule` can hold nothing."""
        known = self._empty.get(id(rule))
        if known is None:
            self._empty[id(rule)] = False
            known = self._empty[id(rule)] = self._is_empty(rule)
        return known

    def _is_empty(self, rule: Rule) -> bool:
        match rule:
            case Literal(literal=text):
                return not text
            case Regex():
                parts = parts_of_pattern(rule.pattern)
                return parts is None or _pattern_begins(parts, END)[1]
            case Lookahead():
                return True
            case Sequence():
                return all(self.may_be_empty(member) for member in rule.members)
            case OneOf():
                return any(self.may_be_empty(member) for member in rule.members)
            case Quantifier(min=least):
                return least == 0 or self.may_be_empty(rule.members[0])
        return True


@cache
def parts_of_pattern(pattern: str) -> Any:
    """A regular expression as the standard library takes it apart; None for a long one, which takes too long."""
    return reading.parse(pattern) if len(pattern) <= LONGEST_LOOKED_INTO else None


def _pattern_begins(pattern: Any, character: str) -> tuple[bool, bool]:
    """Whether a regular expression can begin with the character, and whether it can match nothing."""
    for code, value in pattern:
        begins, empty = _item_begins(code, value, character)
        if begins:
            return True, False
        if not empty:
            return False, False
    return False, True


def _item_begins(code: Any, value: Any, character: str) -> tuple[bool, bool]:
    if code in (codes.AT, codes.ASSERT, codes.ASSERT_NOT):
        return False, True
    if code is codes.LITERAL:
        return character == chr(value), False
    if code is codes.NOT_LITERAL:
        return character not in (END, chr(value)), False
    if code is codes.ANY:
        return character != END, False
    if code is codes.IN:
        return character != END and _in_class(value, character), False
    if code is codes.BRANCH:
        ways = [_pattern_begins(way, character) for way in value[1]]
        return any(begins for begins, _ in ways), any(empty for _, empty in ways)
    if code is codes.SUBPATTERN:
        return _pattern_begins(value[3], character)
    if code in (codes.MAX_REPEAT, codes.MIN_REPEAT, codes.POSSESSIVE_REPEAT):
        least, _, inner = value
        begins, empty = _pattern_begins(inner, character)
        return begins, empty or least == 0
    return True, True


def _in_class(members: Any, character: str) -> bool:
    denied = False
    found = False
    for code, value in members:
        if code is codes.NEGATE:
            denied = True
        elif code is codes.LITERAL:
            found |= character == chr(value)
        elif code is codes.RANGE:
            found |= value[0] <= ord(character) <= value[1]
        else:
            found |= value not in _CLASSES or re.fullmatch(_CLASSES[value], character) is not None
    return found is not denied
