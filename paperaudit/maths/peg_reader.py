"""Reads the notation of grammar files into parsimonious rules, in a tenth of the time that its own reader takes."""

import re
from collections.abc import Iterator, Mapping
from math import inf

from parsimonious.expressions import Expression as Rule

from paperaudit.maths.beginnings import Beginnings
from paperaudit.maths.matching import Ahead, Choice, Letters, Pattern, Repeated, Row
from paperaudit.maths.needed_letters import Needed

_TOKEN = re.compile(
    r"""\s+ | \#[^\n]*
    | (?P<start> [a-z_]+ ) \s* = (?!=)
    | (?P<name> [a-z_]+ ) (?!["a-z_])
    | (?P<pattern> ~ )? (?P<string> r?"[^"\\]*(?:\\.[^"\\]*)*" )
    | (?P<often> [?*+] | \{\d+,\} )
    | (?P<sign> [()/!&] )""",
    re.VERBOSE,
)
_OFTEN = {"?": (0, 1), "*": (0, inf), "+": (1, inf)}


def read_rules(text: str, known: Mapping[str, Rule]) -> dict[str, Rule]:
    """The rules of a grammar's text by name; what they refer to is another of them or is `known`.

    Raises ValueError where the notation is not that of a grammar, KeyError for a name without a rule.

    >>> sorted(read_rules('sum = digit ("+" digit)*  digit = ~"[0-9]"', {}))
    ['digit', 'sum']
    """
    rules = _Reader(text).rules()
    return _resolved(rules, known)


class _Reference(Rule):  # type: ignore[misc]
    """Stands for a rule until all are read."""

    def __init__(self, target: str) -> None:
        super().__init__()
        self.target = target


class _Reader:
    """Walks through the tokens of a grammar's text."""

    def __init__(self, text: str) -> None:
        self._tokens = list(_tokens(text))
        self._at = 0

    def rules(self) -> dict[str, Rule]:
        """Every rule by its name, references in it still to be resolved."""
        found: dict[str, Rule] = {}
        while self._at < len(self._tokens):
            kind, name = self._tokens[self._at]
            if kind != "start":
                raise ValueError(f"{name!r} stands where a rule should begin")
            self._at += 1
            rule = self._choice()
            rule.name = name
            found[name] = rule
        return found

    def _next(self) -> tuple[str, str]:
        return self._tokens[self._at] if self._at < len(self._tokens) else ("end", "")

    def _choice(self) -> Rule:
        options = [self._sequence()]
        while self._next() == ("sign", "/"):
            self._at += 1
            options.append(self._sequence())
        return options[0] if len(options) == 1 else Choice(*options)

    def _sequence(self) -> Rule:
        members: list[Rule] = []
        while (term := self._term()) is not None:
            members.append(term)
        if not members:
            raise ValueError(f"{self._next()[1]!r} stands where a rule should go on")
        return members[0] if len(members) == 1 else Row(*members)

    def _term(self) -> Rule | None:
        kind, text = self._next()
        if kind == "sign" and text in "!&":
            self._at += 1
            ahead = self._term()
            if ahead is None:
                raise ValueError(f"nothing stands behind {text!r}")
            return Ahead(ahead, negative=text == "!")
        atom = self._atom(kind, text)
        kind, text = self._next()
        if atom is None or kind != "often":
            return atom
        self._at += 1
        low, high = _OFTEN[text] if text in _OFTEN else (int(text[1:-2]), inf)
        return Repeated(atom, min=low, max=high)

    def _atom(self, kind: str, text: str) -> Rule | None:
        if kind not in ("name", "pattern", "string") and (kind, text) != ("sign", "("):
            return None
        self._at += 1
        if kind == "name":
            return _Reference(text)
        if kind != "sign":
            return Pattern(_string(text)) if kind == "pattern" else Letters(_string(text))
        inner = self._choice()
        if self._next() != ("sign", ")"):
            raise ValueError("a bracket is not closed")
        self._at += 1
        return inner


def _tokens(text: str) -> Iterator[tuple[str, str]]:
    at = 0
    while at < len(text):
        token = _TOKEN.match(text, at)
        if token is None:
            raise ValueError(f"no grammar: {text[at : at + 30]!r}")
        at = token.end()
        if token.lastgroup is not None:
            kind = "pattern" if token["pattern"] else token.lastgroup
            yield kind, token[token.lastgroup]


_ESCAPE = re.compile(r"\\(u[0-9a-fA-F]{4}|.)")


def _string(quoted: str) -> str:
    """The text between quotation marks, escapes read unless it is raw."""
    if quoted.startswith("r"):
        return quoted[2:-1]
    return _ESCAPE.sub(_unescaped, quoted[1:-1])


def _unescaped(escape: re.Match[str]) -> str:
    """The character that an escape stands for; one that only a regular expression knows stays as it is."""
    code = escape[1]
    if code[0] == "u" and len(code) > 1:
        return chr(int(code[1:], 16))
    return {"n": "\n", '"': '"', "\\": "\\", "'": "'"}.get(code, escape[0])


def _resolved(rules: dict[str, Rule], known: Mapping[str, Rule]) -> dict[str, Rule]:
    """The rules with every reference replaced; one that is a reference alone is the other rule itself."""

    def target(rule: Rule) -> Rule:
        while isinstance(rule, _Reference):
            rule = rules[rule.target] if rule.target in rules else known[rule.target]
        return rule

    shared, needed = Beginnings(), Needed()
    todo = list(rules.values())
    while todo:
        rule = todo.pop()
        members = getattr(rule, "members", ())
        todo.extend(member for member in members if not isinstance(member, _Reference))
        if members:
            rule.members = tuple(target(member) for member in members)
        if isinstance(rule, Choice):
            rule.beginnings, rule.needed = shared, needed
    return {name: target(rule) for name, rule in rules.items()}
