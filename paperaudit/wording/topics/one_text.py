"""Asks of algebra that stand in two sentences: both read as one text by the grammar of the topic."""

from collections.abc import Callable

from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.limits import LONGEST_TEXT
from paperaudit.maths.peg import parsed
from paperaudit.model.ask import Ask, Task
from paperaudit.model.paper import Part, Question
from paperaudit.wording.asides import Asides, asides_of
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.topics.registry import topic_named
from paperaudit.wording.topics.topic import Told


def told_in_one(
    topic: str, task: Callable[[Node, Asides], Task], question: Question, part: Part, scene: Scene
) -> Told | None:
    """The ask that all sentences of a part make together; None where they are not one, or givens stand beside them."""
    lines = [line for line in (question.text, part.text) if line is not None]
    if not lines or part.ask is not None or question.given or part.given:
        return None
    said = " ".join(line.text.strip() for line in lines)
    if len(said) > LONGEST_TEXT:
        return None
    asides = asides_of(scene.notation(said))
    try:
        found = task(parsed(topic_named(topic).rules(), "ask", asides.rest.text), asides)
    except (ExpressionNotRead, NotUnderstood):
        return None
    ask = Ask(found, said.strip(" ."), asides.accuracy, asides.unit, bool(asides.reasons), place=lines[-1].place)
    return Told(ask)
