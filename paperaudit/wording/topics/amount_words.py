"""Amounts in the trees of amounts.peg, and whole parts in the spelling that it reads."""

from collections.abc import Callable

from parsimonious.nodes import Node

from paperaudit.maths.tree import first, the
from paperaudit.model.expression import Expression, Measured
from paperaudit.model.paper import Part, Question
from paperaudit.model.reckoning import Amount, Reckoning
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.topics.registry import topic_named
from paperaudit.wording.topics.stories.amounts import number_in, unit_symbol
from paperaudit.wording.topics.stories.plain import plain
from paperaudit.wording.topics.topic import Told
from paperaudit.wording.topics.whole_text import story_of

Story = Callable[[Question, Part, Scene], Told | None]


def story(name: str, reckoning: Callable[[Node], Reckoning]) -> Story:
    """A reader of whole parts for the topic of that name, whose grammar stands on amounts.peg."""

    def told(question: Question, part: Part, scene: Scene) -> Told | None:
        return story_of(lambda: topic_named(name), reckoning, question, part, scene, plain)

    return told


def amount_of(node: Node) -> Expression:
    """The amount under a node, with its unit where it has one; raises NotUnderstood for an unknown unit."""
    kinds = ("money", "measure", "figure")
    found = node if node.expr_name in kinds else first(node, *kinds)
    if found is None:
        raise NotUnderstood("an amount", node.start)
    number = number_in(found.text if found.expr_name == "figure" else the(found, "figure").text)
    if found.expr_name == "money":
        return Measured(number, found.text[0])
    return Measured(number, unit_symbol(the(found, "unit").text)) if found.expr_name == "measure" else number


def percent_of(node: Node) -> Expression:
    """The percentage under a node."""
    return number_in((node if node.expr_name == "percent" else the(node, "percent")).text)


def named(name: str, node: Node) -> Amount:
    """The amount under a node by a name."""
    return Amount(name, amount_of(node))
