"""Asks about logarithms: written as one, taken apart, or found from others that are given."""

from parsimonious.nodes import Node

from paperaudit.maths.algebra.logarithms import has_logarithm
from paperaudit.maths.terms import expression_of
from paperaudit.maths.tree import every, the
from paperaudit.model.algebra_task import LogarithmFromOthers, LogarithmsApart, SingleLogarithm
from paperaudit.model.ask import Task, Transform
from paperaudit.model.expression import Letter, Logarithm, letters_of
from paperaudit.wording.asides import Asides
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.tasks import letters_named
from paperaudit.wording.topics.topic import Readers


def _task(node: Node, asides: Asides) -> Task:
    chosen = the(node, "single", "apart", "from_given")
    expression, *others = (expression_of(one) for one in every(chosen, "expression"))
    if asides.unit or not has_logarithm(expression):
        raise NotUnderstood("something else than logarithms", chosen.start)
    match chosen.expr_name:
        case "single":
            return SingleLogarithm(expression)
        case "apart":
            if others and all(isinstance(one, Logarithm) and not letters_of(one.argument) for one in others):
                return LogarithmFromOthers(expression, (), tuple(others))
            if any(not isinstance(one, Logarithm) or not isinstance(one.argument, Letter) for one in others):
                raise NotUnderstood("something else than logarithms of letters", chosen.start)
            return LogarithmsApart(expression)
    letters = letters_named(chosen) or tuple(asides.terms.replace(",", " ").replace(" and ", " ").split())
    return LogarithmFromOthers(expression, letters) if letters else Transform("evaluate", expression)


READERS = Readers(task=_task)
