"""What a topic of the syllabus adds to the language: asks, statements, and stories in several sentences."""

import re
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from pathlib import Path as File

from parsimonious.nodes import Node

from paperaudit.maths.grammar import expression_grammar
from paperaudit.maths.peg import Rules, compiled
from paperaudit.model.ask import Ask, Task
from paperaudit.model.fact import Fact, Given
from paperaudit.model.paper import Part, Question
from paperaudit.wording.asides import Asides
from paperaudit.wording.scene import Scene


@dataclass(frozen=True, slots=True)
class Told:
    """What a story in several sentences, or a data table with an ask, amounts to; `ask.read_as` says it."""

    ask: Ask
    givens: tuple[Given, ...] = ()


@dataclass(frozen=True, slots=True)
class Topic:
    """A topic: words that announce it, the grammar of its sentences, and who reads them.

    `ahead` is looked for in the plain spelling of a sentence before anything is parsed, so that other topics
    cost nothing. `grammar` is a file beside the topic's module, on top of the expression grammar, with a rule
    `ask` for `task` and a rule `statement` for `facts`, where the topic has these. `task` and `facts` raise
    NotUnderstood for words that fit the grammar and mean nothing. `story` reads a whole part where the
    sentences do not read one by one, `story_ahead` announces it; it gives None for what is not wholly understood.
    """

    name: str
    ahead: re.Pattern[str]
    grammar: str
    task: Callable[[Node, Asides], Task] | None = None
    facts: Callable[[Node, Scene], tuple[Fact, ...]] | None = None
    story: Callable[[Question, Part, Scene], Told | None] | None = None
    story_ahead: re.Pattern[str] | None = None

    def rules(self) -> Rules:
        """The topic's compiled grammar."""
        return _rules(self.grammar)


@cache
def _rules(grammar: str) -> Rules:
    text = File(__file__).with_name(grammar).read_text(encoding="utf-8")
    return compiled(text, expression_grammar())
