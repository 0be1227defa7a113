"""Puts a sentence, or the whole of a part, to the topics that its words announce."""

import re

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.notation import Notation
from paperaudit.maths.peg import parsed
from paperaudit.model.ask import Task
from paperaudit.model.fact import Fact
from paperaudit.model.paper import Part, Question
from paperaudit.wording.asides import Asides
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.topics.altering import altered_beside
from paperaudit.wording.topics.chance_and_values import CHANCE_AND_VALUES
from paperaudit.wording.topics.registry import TOPICS, topic_named
from paperaudit.wording.topics.topic import Told

_LEAD = re.compile(
    r"""(?: (?: (?:it \s is|you \s are|we \s are) \s (?:also\s)? )? given (?: \s that | \s is | \s are )? :? \s
          | consider (?: \s the \s following )? :? \s
          | (?:the|this|your) \s (?:sketch|diagram|figure|graph) s? (?: \s (?:below|above|alongside) )?
            \s (?:shows?|represents?) \s (?= (?:the|a) \s (?:graph|curve|line|parabola|hyperbola|function) )
          | in \s the \s (?:sketch|diagram|figure) (?: \s (?:below|above|alongside) )? ,? \s
            (?= the \s (?:graph|curve|line|parabola|function) ) )+""",
    re.VERBOSE | re.IGNORECASE,
)
"""Words before a statement that say nothing of their own; a topic's grammar begins behind them."""
STATING = tuple(topic for topic in TOPICS if topic.states)
SKIPPING = (*CHANCE_AND_VALUES, topic_named("sets"))
"""Topics whose readers leave out sentences that say nothing to them."""


def topic_task(asides: Asides) -> Task | None:
    """The task that a topic reads in an ask, or None where no topic reads all of it."""
    text = asides.rest.text
    for topic in TOPICS:
        read = topic.readers().task if topic.announced_in(text) else None
        if read is None:
            continue
        try:
            return read(parsed(topic.rules(), "ask", text), asides)
        except (ExpressionNotRead, NotUnderstood):
            continue
    return None


def topic_facts(notation: Notation, scene: Scene) -> tuple[Fact, ...] | None:
    """The facts that a topic reads in a statement, or None where no topic reads all of it."""
    text = notation.text
    facts = _stated(text, scene)
    if facts is None and (led := _LEAD.match(text)):
        return _stated(text[led.end() :], scene)
    return facts


def _stated(text: str, scene: Scene) -> tuple[Fact, ...] | None:
    for topic in STATING:
        read = topic.readers().facts if topic.announced_in(text) else None
        if read is None:
            continue
        try:
            return read(parsed(topic.rules(), "statement", text), scene)
        except (ExpressionNotRead, NotUnderstood):
            continue
    return None


def topic_story(question: Question, part: Part, scene: Scene) -> Told | None:
    """What a topic makes of a whole part, text and table, or None where no topic understands all of it."""
    lines = (question.text, part.text, part.ask, *question.given, *part.given)
    text = "\n".join(line.text for line in lines if line is not None)
    for topic in TOPICS:
        if topic.story_ahead is None or not topic.story_ahead.search(text):
            continue
        read = topic.readers().story
        told = read(question, part, scene) if read is not None else None
        if told is not None and (
            topic not in SKIPPING or not altered_beside(question, part, scene, told.ask, told.givens)
        ):
            return told
    return None
