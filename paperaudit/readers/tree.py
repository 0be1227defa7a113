"""The plain tree that a YAML file or a workbook is turned into, each value with the place it was read from."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TypeAlias

from paperaudit.model.place import Place

_ABSENT = frozenset({"~", "null", "Null", "NULL"})


# What the YAML standard bars from a stream, half characters too: none of it can be printed.
_CONTROL = frozenset(
    chr(code)
    for codes in (
        range(0x00, 0x09),
        (0x0B, 0x0C),
        range(0x0E, 0x20),
        range(0x7F, 0x85),
        range(0x86, 0xA0),
        range(0xD800, 0xE000),
        (0xFFFE, 0xFFFF),
    )
    for code in codes
)


def holds_control(text: str) -> bool:
    """Whether a text holds a character that cannot be printed, such as an escape for the terminal."""
    return not _CONTROL.isdisjoint(text)


@dataclass(frozen=True, slots=True)
class Scalar:
    """A single value as its author wrote it; `quoted` tells "3" from 3."""

    text: str
    place: Place
    quoted: bool = False

    @property
    def absent(self) -> bool:
        """Whether the author left the value out: a key with nothing behind it."""
        return not self.text.strip() or (not self.quoted and self.text in _ABSENT)


@dataclass(frozen=True, slots=True)
class Items:
    """A list."""

    values: "tuple[Node, ...]"
    place: Place


@dataclass(frozen=True, slots=True)
class Entries:
    """Keys and their values in the order written; every key occurs once."""

    pairs: "tuple[tuple[Scalar, Node], ...]"
    place: Place

    def get(self, key: str) -> "Node | None":
        """The value of `key`, or None where the key is not there or holds nothing."""
        for name, value in self.pairs:
            if name.text == key:
                return None if isinstance(value, Scalar) and value.absent else value
        return None

    def text(self, key: str) -> str:
        """The value of `key` where it is a single value, else ""."""
        value = self.get(key)
        return value.text if isinstance(value, Scalar) else ""

    def listed(self, key: str) -> "Iterator[Node]":
        """The members of the list under `key`; none where there is no list."""
        value = self.get(key)
        if isinstance(value, Items):
            yield from value.values


Node: TypeAlias = Scalar | Items | Entries
Route: TypeAlias = tuple[str | int, ...]
"""Keys and positions that lead from the top of a tree to a value: ("questions", 0, "marks")."""


class Written(str):
    """A single value's text on its way into the shape, which must know whether it was quoted."""

    __slots__ = ("quoted",)
    quoted: bool


def plain(node: Node) -> object:
    """The tree as dicts, lists and `Written` texts; keys that hold nothing are left out, in a list it is None.

    >>> plain(Entries(((Scalar("marks", Place()), Scalar("3", Place())),), Place()))
    {'marks': '3'}
    """
    match node:
        case Scalar(text, _, quoted):
            if node.absent:
                return None
            written = Written(text)
            written.quoted = quoted
            return written
        case Items(values):
            return [plain(value) for value in values]
        case Entries(pairs):
            return {key.text: plain(value) for key, value in pairs if not (isinstance(value, Scalar) and value.absent)}


def follow(node: Node, route: Route) -> Node:
    """The value that `route` leads to, or the last one on the way where it leads nowhere."""
    for step in route:
        if isinstance(node, Items) and isinstance(step, int) and step < len(node.values):
            node = node.values[step]
        elif isinstance(node, Entries) and (inner := node.get(str(step))) is not None:
            node = inner
        else:
            break
    return node


def place_of(node: Node, route: Route) -> Place:
    """Where the value of `route` was read; for a single value behind a key, where its key stands."""
    holder = follow(node, route[:-1])
    if route and isinstance(holder, Entries):
        for key, _ in holder.pairs:
            if key.text == route[-1]:
                return key.place
    return follow(node, route).place


def shown(node: Node, longest: int = 40) -> str:
    """A value as a complaint quotes it, shortened.

    >>> shown(Scalar("three", Place()))
    "'three'"
    """
    match node:
        case Scalar() if node.absent:
            return "nothing"
        case Scalar(text):
            line = " ".join(text.split())
            return f"'{line}'" if len(line) <= longest else f"'{line[:longest]}…' ({len(text)} characters)"
        case Items(values):
            return f"a list of {len(values)}"
        case Entries(pairs):
            return "keys (" + ", ".join(key.text[:20] for key, _ in pairs[:3]) + (", …)" if len(pairs) > 3 else ")")
