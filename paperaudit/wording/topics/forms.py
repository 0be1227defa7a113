"""Asks for numbers in other forms: "Write 0.4̇5̇ as a fraction", "Estimate the value of 4.8 × 31.2"."""

import re
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.maths.recurring import Recurring, read_recurring
from paperaudit.maths.terms import expression_of
from paperaudit.maths.tree import first, has, the
from paperaudit.model.accuracy_task import Estimated
from paperaudit.model.ask import Accuracy, Task, Transform, WriteAs
from paperaudit.model.expression import Expression, Number
from paperaudit.model.number_form_task import InSurdForm, PowerOf, RecurringAsFraction
from paperaudit.wording.asides import Asides
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.tasks import is_numeric
from paperaudit.wording.topics.topic import Readers

_ONE_FIGURE = Accuracy("significant figures", "1")


def _task(node: Node, asides: Asides) -> Task:
    chosen = the(node, "recurring", "shown", "scientific", "single_power", "estimate", "rationalise", "shaped")
    match chosen.expr_name:
        case "recurring":
            decimal = _recurring(the(chosen, "recurring_number"), asides)
            return RecurringAsFraction(decimal.whole, decimal.fixed, decimal.cycle)
        case "shown":
            decimal = _recurring(the(chosen, "recurring_number"), asides)
            return RecurringAsFraction(decimal.whole, decimal.fixed, decimal.cycle, _numeric(the(chosen, "expression")))
        case "scientific":
            return WriteAs(_numeric(the(chosen, "expression")), "standard form")
        case "single_power":
            base = first(chosen, "base")
            expression = expression_of(the(chosen, "expression"))
            if not is_numeric(expression):
                raise NotUnderstood("letters in a power", chosen.start)
            return PowerOf(expression, int(base.text) if base is not None else 0)
        case "rationalise":
            return Transform("simplify", _numeric(the(chosen, "expression")))
        case "shaped":
            return _shaped(chosen)
    return _estimate(chosen, asides)


def _numeric(node: Node) -> Expression:
    expression = expression_of(node)
    if not is_numeric(expression):
        raise NotUnderstood("letters among the numbers", node.start)
    return expression


def _shaped(node: Node) -> InSurdForm:
    """A surd in the form a√3, a + b√3 or a√b: the root that is named, or 0 where it is a letter."""
    shape = the(node, "shape").text
    if shape.lstrip("( ").startswith("√"):
        raise NotUnderstood("one root without a factor", node.start, "a form such as a√3")
    root = re.search(r"√ ?(\d+)", shape)
    return InSurdForm(_numeric(the(node, "expression")), int(root[1]) if root else 0)


def _recurring(node: Node, asides: Asides) -> Recurring:
    """The decimal as the teacher wrote it, points of omission and all."""
    written = asides.rest.source_of(node.start, node.end)
    return read_recurring(written if "…" in written else node.text)


def _estimate(node: Node, asides: Asides) -> Estimated:
    """A calculation to be rounded number by number; another accuracy than that of the numbers is the answer's own."""
    expression = expression_of(the(node, "expression"))
    told = has(node, "then_round") or (
        has(node, "by_rounding") and "round" in the(node, "by_rounding").text and asides.accuracy is not None
    )
    accuracy = asides.accuracy or _ONE_FIGURE
    if not is_numeric(expression) or (isinstance(expression, Number) and expression.value == Fraction(0)):
        raise NotUnderstood("letters in an estimate", node.start)
    if asides.accuracy is not None and not told and asides.accuracy != _ONE_FIGURE:
        raise NotUnderstood("an accuracy of the answer", node.start)
    return Estimated(expression, accuracy, told or asides.accuracy is not None)


READERS = Readers(task=_task)
