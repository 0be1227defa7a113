"""Texts that a grammar cannot tell apart share one tree: ∠ABC = 40° and ∠PQT = 65° are of one shape."""

import re
from collections.abc import Iterable
from functools import cached_property

from parsimonious.expressions import Expression as Rule
from parsimonious.expressions import Literal, Regex
from parsimonious.nodes import Node

_SPELLED_OUT = re.compile(r"\\u([0-9A-Fa-f]{4})|\\x([0-9A-Fa-f]{2})")
_OF_ALL = re.compile(r"\\[A-Za-z]|A-Z|0-9|\{\d*,?\d*\}")
"""What a pattern says of all capitals or of all digits alike, and what has a letter or digit only in its notation."""
_CLASS = re.compile(r"(?<!\\)\[(?:\\.|[^\]\\])*\]")
_OF_SOME_CAPITALS = re.compile(r"[A-Z]-|-[A-Z]|\\[1-9]|\(\?P=|\(\?[a-z]*i")
_OF_SOME_DIGITS = re.compile(r"[0-9]-|-[0-9]|\\[1-9]|\(\?P=")
"""Ranges of a few, and what asks for the same character again or for a capital beside its small letter."""
_DIGITS_NAMED = re.compile(r"(?:(?P<escaped>\\\^)|(?P<before>[a-z]))?(?P<digits>[0-9]+)")
_RUN = re.compile("[0-9]+")
_CAPITALS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
_DIGITS = "0123456789"


class Shapes:
    """Which capitals and digits no pattern of a grammar names, so that one stands for the others.

    >>> Shapes(['R', '[A-Z]{3}', '[0-9]+', r'm\\^2']).of('∠PRT = 65 m^2')
    '∠ARA = 00 m^2'
    >>> Shapes(['n > ?[01]']).of('n > 1'), Shapes(['n > ?[01]']).of('n > 27')
    ('n > 1', 'n > 22')
    """

    def __init__(self, patterns: Iterable[str]) -> None:
        self._patterns = tuple(_OF_ALL.sub("\0", _SPELLED_OUT.sub(_character, pattern)) for pattern in patterns)

    def of(self, text: str) -> str:
        """The text of as many characters that has the same tree."""
        shape = text.translate(self._capitals)
        return _RUN.sub(self._digits_of, shape) if self._digit else shape

    @cached_property
    def _capitals(self) -> dict[int, int]:
        """One capital for all those that stand in no pattern."""
        if any(map(_OF_SOME_CAPITALS.search, self._patterns)):
            return {}
        named = set[str]().union(*self._patterns)
        alike = [ord(letter) for letter in _CAPITALS if letter not in named]
        return dict.fromkeys(alike, alike[0]) if alike else {}

    @cached_property
    def _named(self) -> frozenset[tuple[str, str]]:
        """The digits in patterns, each with the character that has to stand before them, where it is plain which."""
        in_row = [_CLASS.sub("\0", pattern) for pattern in self._patterns]
        in_classes = "".join(found for pattern in self._patterns for found in _CLASS.findall(pattern))
        return frozenset(
            ("^" if found["escaped"] else found["before"] or "", found["digits"])
            for pattern in in_row
            for found in _DIGITS_NAMED.finditer(pattern)
        ) | frozenset(("", digit) for run in _RUN.findall(in_classes) for digit in run)

    @cached_property
    def _digit(self) -> str:
        """The digit that stands for all others: one that no pattern names."""
        if any(map(_OF_SOME_DIGITS.search, self._patterns)):
            return ""
        named = "".join(digits for _, digits in self._named)
        return next((digit for digit in _DIGITS if digit not in named), "")

    def _digits_of(self, run: re.Match[str]) -> str:
        """The run itself where a pattern may name a part of it."""
        digits, before = run[0], run.string[: run.start()][-1:]
        for other, named in self._named:
            if named in digits and (not other or (other == before and digits.startswith(named))):
                return digits
        return self._digit * len(digits)


def _character(spelled: re.Match[str]) -> str:
    return chr(int(spelled[1] or spelled[2], 16))


def patterns_of(rules: Iterable[Rule]) -> list[str]:
    """The regular expressions and texts that rules are made of."""
    found: list[str] = []
    seen: set[int] = set()
    waiting = list(rules)
    while waiting:
        rule = waiting.pop()
        if id(rule) in seen:
            continue
        seen.add(id(rule))
        if isinstance(rule, Regex):
            found.append(rule.pattern)
        elif isinstance(rule, Literal):
            found.append(rule.literal)
        else:
            waiting.extend(rule.members)
    return found


def set_in(tree: Node, text: str) -> Node:
    """The tree over another text of its shape."""
    return Node(tree.expr, text, tree.start, tree.end, [set_in(child, text) for child in tree.children])
