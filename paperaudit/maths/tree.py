"""Looks into a parse tree by the names of grammar rules."""

from collections.abc import Iterator

from parsimonious.nodes import Node


def every(node: Node, *names: str) -> Iterator[Node]:
    """The nearest descendants under any of these rules, left to right; a match is not looked into."""
    for child in node.children:
        if child.expr_name in names:
            yield child
        else:
            yield from every(child, *names)


def first(node: Node, *names: str) -> Node | None:
    """The first descendant under any of these rules, or None."""
    return next(every(node, *names), None)


def the(node: Node, *names: str) -> Node:
    """The first descendant under any of these rules, which the grammar says is there."""
    found = first(node, *names)
    if found is None:
        raise LookupError(f"no {' or '.join(names)} in {node.expr_name}: {node.text!r}")
    return found


def has(node: Node, *names: str) -> bool:
    """Whether a descendant stands under any of these rules."""
    return first(node, *names) is not None
