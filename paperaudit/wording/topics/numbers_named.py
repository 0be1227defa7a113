"""What the topics about numbers share: numbers in a row, each read by the grammar of expressions."""

import re
from collections.abc import Iterable

from parsimonious.nodes import Node

from paperaudit.maths.grammar import expression_grammar
from paperaudit.maths.peg import parsed
from paperaudit.maths.terms import expression_of
from paperaudit.maths.tree import every
from paperaudit.model.expression import Expression, Letter, Measured, leaves
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.tasks import has_quantity

_POINT = re.compile(r"\(.*[,;].*\)")
_CALL = re.compile(r"[a-z] ?\( ?(?:-? ?\d+|[a-z]) ?\)")


def number_in(node: Node, letters: bool = True) -> Expression:
    """The number under an `item`, or with `letters` a letter or the value of a function that givens may state.

    Raises NotUnderstood for sizes of a figure, for algebra, and for the coordinates of a point.
    """
    if _POINT.fullmatch(node.text.strip()):
        raise NotUnderstood("a point", node.start, "a number")
    value = expression_of(parsed(expression_grammar(), "expression", node.text.strip()))
    plain = not any(isinstance(leaf, Letter) and leaf.name != "π" for leaf in leaves(value))
    named = letters and (isinstance(value, Letter) or _CALL.fullmatch(node.text.strip()))
    if has_quantity(value) or not (plain or named):
        raise NotUnderstood("no plain number", node.start, "a number")
    return value


def numbers_in(node: Node, letters: bool = True) -> tuple[Expression, ...]:
    """The numbers of a row, left to right."""
    return tuple(number_in(item, letters) for item in every(node, "item"))


def without_units(numbers: Iterable[Expression]) -> tuple[Expression, ...]:
    """The numbers, where none carries a unit; raises NotUnderstood for one that does."""
    found = tuple(numbers)
    if any(isinstance(one, Measured) for one in found):
        raise NotUnderstood("a measure", 0, "plain numbers")
    return found
