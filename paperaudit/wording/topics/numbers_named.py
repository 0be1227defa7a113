"""What the topics about numbers share: numbers in a row, each read by the grammar of expressions."""

from collections.abc import Iterable

from parsimonious.nodes import Node

from paperaudit.maths.grammar import expression_grammar
from paperaudit.maths.peg import parsed
from paperaudit.maths.terms import expression_of
from paperaudit.maths.tree import every
from paperaudit.model.expression import Expression, Letter, Measured, leaves
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.tasks import has_quantity


def number_in(node: Node, letters: bool = True) -> Expression:
    """The number under an `item`. Raises NotUnderstood for sizes of a figure, and without `letters` for these."""
    value = expression_of(parsed(expression_grammar(), "expression", node.text.strip()))
    plain = letters or not any(isinstance(leaf, Letter) and leaf.name != "π" for leaf in leaves(value))
    if has_quantity(value) or not plain:
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
