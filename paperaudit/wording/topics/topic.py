"""What a topic of the syllabus adds to the language: asks, statements, and stories in several sentences."""

import re
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from importlib import import_module
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
class Readers:
    """Who reads a topic's sentences: `task` an ask, `facts` a statement, `story` a whole part; None for none.

    `task` and `facts` raise NotUnderstood for words that fit the grammar and mean nothing; `story` gives None for
    what is not wholly understood.
    """

    task: Callable[[Node, Asides], Task] | None = None
    facts: Callable[[Node, Scene], tuple[Fact, ...]] | None = None
    story: Callable[[Question, Part, Scene], Told | None] | None = None


@dataclass(frozen=True, slots=True)
class Topic:
    """A topic by the words that announce it; its readers and its grammar are loaded when these occur.

    `ahead` is looked for in the plain spelling of a sentence, `story_ahead` in the text of a whole part whose
    sentences do not read one by one; None for a topic that reads no sentence, or no story. `module` stands in this
    folder and holds `READERS`; `grammar` names one or more files beside it that together, on top of the expression
    grammar, have a rule `ask` and a rule `statement` where the topic has these. `states` says that it reads statements.
    """

    name: str
    module: str
    grammar: str
    ahead: re.Pattern[str] | None = None
    story_ahead: re.Pattern[str] | None = None
    states: bool = False

    def announced_in(self, sentence: str) -> bool:
        """Whether a sentence in plain spelling has words of the topic."""
        return self.ahead is not None and self.ahead.search(sentence) is not None

    def readers(self) -> Readers:
        """The topic's readers."""
        readers: Readers = import_module(f"{__package__}.{self.module}").READERS
        return readers

    def rules(self) -> Rules:
        """The topic's compiled grammar."""
        return _rules(self.grammar)


def told(name: str, module: str, grammar: str, words: re.Pattern[str]) -> Topic:
    """A topic whose stories have the words of its sentences."""
    return Topic(name, module, grammar, words, words)


@cache
def _rules(grammar: str) -> Rules:
    files = (File(__file__).with_name(name) for name in grammar.split())
    return compiled("\n".join(file.read_text(encoding="utf-8") for file in files), expression_grammar())
