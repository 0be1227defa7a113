"""Looks for grammar rules anywhere in a tree, inside each other too."""

from collections.abc import Iterator

from parsimonious.nodes import Node


def within(node: Node, *names: str) -> Iterator[Node]:
    """All descendants under any of these rules, left to right."""
    for child in node.children:
        if child.expr_name in names:
            yield child
        yield from within(child, *names)


def has_any(node: Node, *names: str) -> bool:
    """Whether any descendant stands under one of these rules."""
    return next(within(node, *names), None) is not None


def lies_in(top: Node, node: Node, *names: str) -> bool:
    """Whether a node lies inside a descendant of `top` under one of these rules."""
    return any(outer.start <= node.start and node.end <= outer.end for outer in within(top, *names))
