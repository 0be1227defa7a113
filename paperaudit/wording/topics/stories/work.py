"""Stories of people and pipes at one job: how long each takes alone, and all together."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Literal

from parsimonious.nodes import Node

from paperaudit.maths.tree import first, the
from paperaudit.model.story import (
    Added,
    Amount,
    Claim,
    Job,
    Named,
    Said,
    Same,
    Size,
    Sought,
    StoryTask,
    Taken,
    Wanted,
)
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.stories.amounts import number_in, unit_symbol
from paperaudit.wording.topics.stories.cast import Cast, one_thing
from paperaudit.wording.topics.stories.grammar import tree_of
from paperaudit.wording.topics.stories.plain import Plain
from paperaudit.wording.topics.stories.trees import has_any, within

AHEAD = re.compile(r"\b(?:together|alone|both|pipes?|taps?|pumps?|drain)\b")
_JOB = re.compile(r"^(?: (?:the|a|an|this|that|same|all|whole|entire|full|empty|of|his|her|their)(?![a-z]))+ ?|^ ")
_TOGETHER = "together"
_VERB = re.compile(r"(?:es|s)$")


def work_story(sentences: Sequence[Plain]) -> StoryTask | None:
    """The story of a part as one of work; raises NotUnderstood or ExpressionNotRead where it is none."""
    trees = [(tree, sentence) for sentence in sentences if (tree := tree_of("work", sentence)) is not None]
    return _Work(trees, Cast(sentences)).task() if trees else None


@dataclass
class _Work:
    """Who works in one story."""

    trees: list[tuple[Node, Plain]]
    cast: Cast
    unit: str = ""
    signs: dict[str, Literal[1, -1]] = field(default_factory=dict)
    claims: list[Said] = field(default_factory=list)
    wanted: list[Wanted] = field(default_factory=list)
    joint: str = ""
    verbs: set[str] = field(default_factory=set)

    def task(self) -> StoryTask:
        """The task, with every sentence accounted for."""
        units = {unit_symbol(node.text) for tree, _ in self.trees for node in within(tree, "time_unit")}
        if len(units) != 1:
            raise NotUnderstood("times in different units", 0)
        self.unit = units.pop()
        one_thing(
            [_JOB.sub("", job.text) for tree, _ in self.trees for job in within(tree, "job")], ("it", "same", "job")
        )
        for tree, sentence in self.trees:
            for node in within(tree, "claim"):
                for claim in self._told(node.children[0], sentence):
                    self.claims.append(Said(sentence.said, claim))
        for tree, sentence in self.trees:
            for node in within(tree, "ask"):
                self._asked(node.children[0], sentence)
        if len(self.signs) < 2 or not self.joint or not 1 <= len(self.wanted) <= 2 or len(self.verbs) > 1:
            raise NotUnderstood("workers of whom too little is told or asked", 0)
        time = Named(_TOGETHER)
        workers: tuple[tuple[Size, Size, Literal[1, -1]], ...] = tuple(
            (Named(key), time, sign) for key, sign in sorted(self.signs.items(), key=lambda pair: -pair[1])
        )
        self.claims.append(Said(self.joint, Job(workers)))
        sought = [
            Sought(key, f"the time of {self.cast.shown(key)} alone", self.unit, "positive", False, "a time")
            for key in self.signs
        ]
        sought.append(Sought(_TOGETHER, "the time together", self.unit, "positive", False, "a time"))
        return StoryTask(tuple(sought), tuple(self.claims), tuple(self.wanted))

    def _told(self, node: Node, sentence: Plain) -> Iterator[Claim]:
        number = next(within(node, "hours"))
        hours = Amount(number_in(the(number, "number").text), self.unit)
        self.verbs |= {_VERB.sub("", verb.text) for verb in within(node, "verbs")}
        match node.expr_name:
            case "does" | "takes" | "empties":
                key = self._worker(next(within(node, "worker")))
                self.signs[key] = -1 if node.expr_name == "empties" else 1
                yield Same(Named(key), hours)
            case "slower":
                one, other = (self._worker(worker) for worker in within(node, "worker"))
                self.signs.setdefault(one, 1)
                self.signs.setdefault(other, 1)
                less = re.search(r" (?:less|shorter)(?: time)? than ", node.text)
                yield Same(Named(one), Taken(Named(other), hours) if less else Added((Named(other), hours)))
            case "together":
                self.joint = self.joint or sentence.said
                yield Same(Named(_TOGETHER), hours)

    def _worker(self, node: Node) -> str:
        if has_any(node, "pronoun"):
            raise NotUnderstood("who works", node.start)
        name = re.sub(r"^(?:1|one) ", "first ", node.text)
        name = re.sub(r"^(?:another|the other|a second|the second)(?= |$)", "second", name)
        if name in ("second", "first"):
            noun = next((key.split()[-1] for key in self.cast.names if key.startswith("first ")), "")
            name = f"{name} {noun}".strip()
        return self.cast.take(name)

    def _asked(self, node: Node, sentence: Plain) -> None:
        if node.expr_name in ("ask_together", "ask_both"):
            self.joint = self.joint or sentence.said
            self.wanted.append(Wanted(Named(_TOGETHER), "the time together", self.unit))
            return
        if node.expr_name == "ask_each":
            if len(self.signs) != 2:
                raise NotUnderstood("who each is", node.start)
            for key in self.signs:
                self.wanted.append(Wanted(Named(key), f"the time of {self.cast.shown(key)} alone", self.unit))
            return
        worker = first(node, "worker") or next(within(node, "worker"))
        key = self._worker(worker)
        self.signs.setdefault(key, 1)
        self.wanted.append(Wanted(Named(key), f"the time of {self.cast.shown(key)} alone", self.unit))
