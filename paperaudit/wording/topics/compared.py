"""Coefficients to compare: 2x² − 12x + 7 is written as a(x + p)² + q, and a, p and q are asked for."""

from parsimonious.nodes import Node

from paperaudit.maths.terms import expression_of
from paperaudit.maths.tree import every, has
from paperaudit.model.algebra_task import InForm
from paperaudit.model.ask import Task
from paperaudit.model.expression import letters_of
from paperaudit.model.paper import Part, Question
from paperaudit.wording.asides import Asides
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.tasks import has_quantity
from paperaudit.wording.topics.one_text import told_in_one
from paperaudit.wording.topics.topic import Readers, Told


def _task(node: Node, asides: Asides) -> Task:
    """The task, where it is said that the sides are equal for every number and not for some."""
    expression, form = (expression_of(one) for one in every(node, "expression"))
    wanted = tuple(one.text for one in every(every(node, "form_letters")[-1], "letter"))
    constants = [{one.text for one in every(tail, "letter")} for tail in every(node, "tail")]
    if has(node, "equal") and not has(node, "for_all") and set(wanted) not in constants:
        raise NotUnderstood("an equation", node.start, "an identity, for all values of a letter")
    if has_quantity(expression) or has_quantity(form) or asides.unit:
        raise NotUnderstood("a size of a figure", node.start, "an expression in letters")
    own = set(letters_of(expression)) & set(letters_of(form))
    if set(wanted) & set(letters_of(expression)):
        expression, form = form, expression
    free = set(letters_of(form)) - set(letters_of(expression))
    if len(own) != 1 or set(wanted) - free:
        raise NotUnderstood("letters that are not in the form", node.start, "the letters of the form")
    return InForm(expression, form, wanted)


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    """The sentences of a part together, which must be the whole of it."""
    return told_in_one("coefficients to compare", _task, question, part, scene)


READERS = Readers(task=_task, story=_story)
"""The task in one sentence or in two."""
