"""Stories of a craft with and against a current or a wind."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Literal

from parsimonious.nodes import Node

from paperaudit.maths.tree import the
from paperaudit.model.story import (
    Amount,
    Claim,
    Named,
    NotLess,
    Said,
    Same,
    Size,
    Sought,
    StoryTask,
    Stream,
    Wanted,
)
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.stories.cast import one_thing
from paperaudit.wording.topics.stories.grammar import tree_of
from paperaudit.wording.topics.stories.meetings import Road, amount
from paperaudit.wording.topics.stories.plain import Plain
from paperaudit.wording.topics.stories.trees import within

AHEAD = re.compile(r"\b(?:current|stream|downstream|upstream|wind|tide|still)\b")
_THINGS = (
    "current|stream|river|wind|water|boat|ship|yacht|dinghy|launch|canoe|plane|aeroplane|aircraft|kayak|ferry|motorboat|"
    "crew|rower|swimmer|tug|barge|airliner|jet"
)
_OWN, _FLOW, _TIME = "own", "flow", "time"


def streams_story(sentences: Sequence[Plain]) -> StoryTask | None:
    """The story of a part as one of a current or wind; raises NotUnderstood or ExpressionNotRead where it is none."""
    trees = [(tree, sentence) for sentence in sentences if (tree := tree_of("streams", sentence)) is not None]
    return _Stream(trees).task() if trees else None


@dataclass
class _Stream:
    """The craft and the current of one story."""

    trees: list[tuple[Node, Plain]]
    claims: list[Said] = field(default_factory=list)
    wanted: list[Wanted] = field(default_factory=list)
    timed: bool = False

    def task(self) -> StoryTask:
        """The task, with every sentence accounted for."""
        self.road = Road.of([tree for tree, _ in self.trees])
        one_thing([craft.text for tree, _ in self.trees for craft in within(tree, "craft", "name")])
        for tree, sentence in self.trees:
            for node in within(tree, "claim"):
                for claim in self._told(node.children[0]):
                    self.claims.append(Said(sentence.said, claim))
            for node in within(tree, "ask"):
                self._asked(node.children[0], sentence)
        if not self.claims or not self.wanted:
            raise NotUnderstood("a craft of which too little is told or asked", 0)
        words = " ".join(sentence.text for _, sentence in self.trees)
        wind = "wind" in words
        sought = [
            Sought(
                _OWN, f"the speed in still {'air' if wind else 'water'}", self.road.speed, "positive", False, "a speed"
            ),
            Sought(
                _FLOW,
                f"the speed of the {'wind' if wind else 'current'}",
                self.road.speed,
                "not negative",
                False,
                "a speed",
            ),
        ]
        if self.timed:
            sought.append(Sought(_TIME, "the time", self.road.time, "positive", False, "a time"))
        self.claims.append(Said("the craft gets on against it", NotLess(_OWN, _FLOW)))
        return StoryTask(tuple(sought), tuple(self.claims), tuple(self.wanted))

    def _told(self, node: Node) -> Iterator[Claim]:
        match node.expr_name:
            case "own_speed":
                if not re.search(r"\b(?:still|calm)\b", node.text):
                    raise NotUnderstood("whether that is the speed in still water", node.start)
                yield Same(Named(_OWN), amount(the(node, "speed")))
            case "flow_speed":
                yield Same(Named(_FLOW), amount(the(node, "speed")))
            case "takes" | "covers":
                yield from self._legs(node)

    def _legs(self, node: Node) -> Iterator[Claim]:
        """One or two legs; a second without its own length goes the same way back."""
        lengths = [amount(length) for length in within(node, "length")]
        times = [amount(time) for time in within(node, "time")]
        ways = [_direction(way.text) for way in within(node, "way")]
        turned = re.search(r"\b(?:against|with) the (?:current|wind|stream) in\b", node.text)
        if len(times) > 2 or not ways or not lengths:
            raise NotUnderstood("which leg is which", node.start)
        yield self._stream(ways[0], lengths[0], times[0])
        if len(times) == 2:
            if len(lengths) == 1 and len(ways) == 1:
                way: Literal[1, -1] = -1 if ways[0] == 1 else 1
                if turned is not None and _direction(turned.group()) != way:
                    raise NotUnderstood("the way back", node.start)
                yield self._stream(way, lengths[0], times[1])
            else:
                yield self._stream(ways[-1], lengths[-1], times[1])

    def _stream(self, way: Literal[1, -1], length: Size, time: Size) -> Stream:
        return Stream(Named(_OWN), Named(_FLOW), way, length, time)

    def _asked(self, node: Node, sentence: Plain) -> None:
        if node.expr_name == "ask_time":
            length: Amount = amount(the(node, "length"))
            self.claims.append(
                Said(sentence.said, self._stream(_direction(the(node, "way").text), length, Named(_TIME)))
            )
            self.wanted.append(Wanted(Named(_TIME), "the time", self.road.time))
            self.timed = True
            return
        for asked in within(node, "asked_speed"):
            flow = re.search(r"\b(?:current|stream|river|wind)\b", asked.text) or re.search(
                r"of the water$", asked.text
            )
            word = re.search(rf"\b(?:{_THINGS})\b", asked.text)
            meaning = f"the speed of the {word.group()}" if word else "the speed in still water"
            self.wanted.append(Wanted(Named(_FLOW if flow else _OWN), meaning, self.road.speed))


def _direction(text: str) -> Literal[1, -1]:
    return 1 if text.startswith(("downstream", "with")) else -1
