"""Which letters or words a text must hold somewhere for a rule of a grammar to match in it."""

from collections.abc import Collection
from re import _constants as codes  # type: ignore[attr-defined]
from typing import Any, TypeAlias

from parsimonious.expressions import Expression as Rule
from parsimonious.expressions import Literal, Lookahead, OneOf, Quantifier, Regex, Sequence

from paperaudit.maths.beginnings import parts_of_pattern

Needs: TypeAlias = tuple[frozenset[str], ...]
"""Of each set at least one text has to be there."""

MOST_WAYS = 40
"""A set of more alternatives costs more to look for than it saves."""


class Needed:
    """Answers for one grammar, remembered by rule; what is left out is merely not asked for.

    >>> Needed().of(Sequence(Literal("D"), Literal(" is the midpoint of ")))
    (frozenset({'D'}), frozenset({' is the midpoint of '}))
    """

    def __init__(self) -> None:
        self._known: dict[int, Needs] = {}
        self._rarest: dict[int, tuple[str, ...]] = {}

    def of(self, rule: Rule) -> Needs:
        """What any match of `rule` holds."""
        known = self._known.get(id(rule))
        if known is None:
            self._known[id(rule)] = ()  # a rule inside itself asks for nothing more
            known = self._known[id(rule)] = tuple(dict.fromkeys(self._needs(rule)))
        return known

    def may_be_in(self, text: str, rule: Rule) -> bool:
        """Whether the text holds what is rarest of a rule's needs."""
        rarest = self._rarest.get(id(rule))
        if rarest is None:
            best: frozenset[str] = min(self.of(rule), key=_effort, default=frozenset())
            rarest = self._rarest[id(rule)] = tuple(sorted(best))
        for word in rarest:
            if word in text:
                return True
        return not rarest

    def _needs(self, rule: Rule) -> Needs:
        match rule:
            case Literal(literal=text):
                return (frozenset((text,)),) if text.strip() else ()
            case Regex():
                parts = parts_of_pattern(rule.pattern)
                return () if parts is None else _pattern_needs(parts)
            case Lookahead(negativity=True):
                return ()
            case Sequence() | Lookahead():
                return tuple(need for member in rule.members for need in self.of(member))
            case Quantifier(min=least) if least > 0:
                return self.of(rule.members[0])
            case OneOf():
                return _either([self.of(member) for member in rule.members])
        return ()


def _either(ways: list[Needs]) -> Needs:
    """What is needed where one of several ways is gone: one need of each."""
    if not all(ways):
        return ()
    together = frozenset[str]().union(*(min(way, key=_effort) for way in ways))
    return (together,) if len(together) <= MOST_WAYS else ()


def _effort(need: Collection[str]) -> tuple[int, int]:
    """Few texts are looked for first, then long ones, which are rarer."""
    return len(need), -min(map(len, need))


def _pattern_needs(pattern: Any) -> Needs:
    """The runs of letters in a regular expression that every match holds."""
    needs: list[frozenset[str]] = []
    run = ""
    for code, value in pattern:
        if code is codes.LITERAL:
            run += chr(value)
            continue
        if run.strip():
            needs.append(frozenset((run,)))
        run = ""
        needs.extend(_item_needs(code, value))
    if run.strip():
        needs.append(frozenset((run,)))
    return tuple(needs)


def _item_needs(code: Any, value: Any) -> Needs:
    if code is codes.BRANCH:
        return _either([_pattern_needs(way) for way in value[1]])
    if code is codes.SUBPATTERN and not value[1]:
        return _pattern_needs(value[3])
    if code in (codes.MAX_REPEAT, codes.MIN_REPEAT, codes.POSSESSIVE_REPEAT) and value[0] > 0:
        return _pattern_needs(value[2])
    return ()
