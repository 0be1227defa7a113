"""Looks into a parse tree by the names of grammar rules."""

from collections.abc import Collection

from parsimonious.nodes import Node


def every(node: Node, *names: str) -> list[Node]:
    """The nearest descendants under any of these rules, left to right; a match is not looked into."""
    found: list[Node] = []
    _collect(node, names, found)
    return found


def _collect(node: Node, names: Collection[str], found: list[Node]) -> None:
    for child in node.children:
        if child.expr.name in names:
            found.append(child)
        elif child.children:
            _collect(child, names, found)


def names_in(node: Node) -> frozenset[str]:
    """The names of all rules that a node holds, at any depth."""
    found: set[str] = set()
    waiting = [node]
    while waiting:
        for child in waiting.pop().children:
            found.add(child.expr.name)
            if child.children:
                waiting.append(child)
    return frozenset(found)


def first(node: Node, *names: str) -> Node | None:
    """The first descendant under any of these rules, or None."""
    return first_of(node, names)


def first_of(node: Node, names: Collection[str]) -> Node | None:
    """As `first`, for names in a collection of their own."""
    for child in node.children:
        if child.expr.name in names:
            return child
        if child.children:
            found = first_of(child, names)
            if found is not None:
                return found
    return None


def the(node: Node, *names: str) -> Node:
    """The first descendant under any of these rules, which the grammar says is there."""
    found = first_of(node, names)
    if found is None:
        raise LookupError(f"no {' or '.join(names)} in {node.expr_name}: {node.text!r}")
    return found


def has(node: Node, *names: str) -> bool:
    """Whether a descendant stands under any of these rules."""
    return first(node, *names) is not None
