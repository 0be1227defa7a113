"""Numbers that are changed step by step: doubled, then 5 is added."""

import re
from dataclasses import dataclass
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.maths.tree import first, the
from paperaudit.model.expression import Number
from paperaudit.model.story import (
    Added,
    Amount,
    Divided,
    Scaled,
    Size,
    Squared,
    Taken,
)
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.stories.number_phrases import NumberPhrases, number_under
from paperaudit.wording.topics.stories.trees import within

_PLAIN_OF = {
    "doubled": 2,
    "double": 2,
    "doubles": 2,
    "twice": 2,
    "trebled": 3,
    "tripled": 3,
    "treble": 3,
    "trebles": 3,
    "triple": 3,
    "3 times": 3,
}


@dataclass
class ChangedNumbers(NumberPhrases):
    """The numbers of a story with the result that is running while one is changed."""

    running: Size | None = None

    def process(self, claim: Node) -> None:
        """Every change of a sentence, in order."""
        for node in within(claim, "operation", "pulled", "pulled_by"):
            if node.expr_name == "operation":
                self.operate(node)
            elif node.expr_name == "pulled_by":
                into = first(node, "size")
                if into is not None:
                    if self.running is not None:
                        raise NotUnderstood("a second start", node.start)
                    self.running = self.size(into)
                self.change(node.text, number_under(the(node, "plain")))
            else:
                own = first(claim, "size") if self.running is None else None
                if own is not None:
                    self.running = self.size(own)
                number = first(node, "plain")
                if number is not None and re.match(r"(?:then )?(?:subtracted|taken)", node.text):
                    assert self.running is not None
                    self.running = Taken(number_under(number), self.running)
                    continue
                self.change(node.text, number_under(number) if number is not None else None)

    def operate(self, node: Node) -> None:
        """One change that somebody makes: "add 5", "double it"."""
        number = first(node, "plain")
        if self.running is None:
            if not re.search(r"\b(?:number|it|this|that)\b", node.text):
                raise NotUnderstood("what is changed", node.start)
            self.running = self.start()
        self.change(node.text, number_under(number) if number is not None else None)

    def change(self, words: str, by: Amount | None) -> None:
        """Do to the running result what the words say."""
        assert self.running is not None
        word = re.sub(r"^(?:then )?(?:-?[\d./]+ is (?:then )?)?", "", words)
        if by is None:
            stem = next((key for key in _PLAIN_OF if word.startswith(key)), "")
            if word.startswith("square"):
                self.running = Squared(self.running)
            elif word.startswith("halve"):
                self.running = Scaled(Number(Fraction(1, 2)), self.running)
            else:
                self.running = Scaled(Number(Fraction(_PLAIN_OF[stem])), self.running)
        elif word.startswith(("add", "increase")):
            self.running = Added((self.running, by))
        elif word.startswith(("subtract", "take", "decrease", "reduce")):
            self.running = Taken(self.running, by)
        elif word.startswith("multipl"):
            self.running = Scaled(by.number, self.running)
        elif word.startswith("divide"):
            self.running = Divided(self.running, by)
        else:
            raise NotUnderstood(words, 0)
