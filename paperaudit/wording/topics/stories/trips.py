"""Stories of one trip in stages: the average speed, and how far it is there and back."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from parsimonious.nodes import Node

from paperaudit.maths.tree import first
from paperaudit.model.story import (
    Added,
    Claim,
    Divided,
    Multiplied,
    Named,
    Said,
    Same,
    Size,
    Sought,
    StoryTask,
    Wanted,
)
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.stories.cast import one_thing
from paperaudit.wording.topics.stories.grammar import tree_of
from paperaudit.wording.topics.stories.meetings import Road, amount
from paperaudit.wording.topics.stories.plain import Plain
from paperaudit.wording.topics.stories.trees import has_any, within

AHEAD = re.compile(r"\baverage speed\b|\bhow far\b|\breturns\b|\bback\b")


def trips_story(sentences: Sequence[Plain]) -> StoryTask | None:
    """The story of a part as one of a trip; raises NotUnderstood or ExpressionNotRead where it is none."""
    trees = [(tree, sentence) for sentence in sentences if (tree := tree_of("trips", sentence)) is not None]
    return _Trip(trees).task() if trees else None


@dataclass
class _Trip:
    """The stages of one trip, each with its distance, speed and time."""

    trees: list[tuple[Node, Plain]]
    stages: int = 0
    claims: list[Said] = field(default_factory=list)
    wanted: list[Wanted] = field(default_factory=list)
    returns: bool = False

    def task(self) -> StoryTask:
        """The task, with every sentence accounted for."""
        self.road = Road.of([tree for tree, _ in self.trees])
        one_thing([who.text for tree, _ in self.trees for who in within(tree, "who") if not has_any(who, "pronoun")])
        for tree, sentence in self.trees:
            for node in within(tree, "claim"):
                for claim in self._told(node.children[0]):
                    self.claims.append(Said(sentence.said, claim))
        if self.stages != 2:
            raise NotUnderstood("how many stages there are", 0)
        for tree, _ in self.trees:
            for node in within(tree, "ask"):
                self._asked(node.children[0])
        if not self.wanted:
            raise NotUnderstood("nothing is asked", 0)
        sought = []
        for at in (1, 2):
            for key, unit in (("distance", self.road.length), ("speed", self.road.speed), ("time", self.road.time)):
                sought.append(Sought(f"{key} {at}", f"{key} {at}", unit, "positive", False, f"a {key}"))
        return StoryTask(tuple(sought), tuple(self.claims), tuple(self.wanted))

    def _stage(self, distance: Size | None, speed: Size | None, time: Size | None) -> Iterator[Claim]:
        """A stage of which two of distance, speed and time are told."""
        self.stages += 1
        names = {key: Named(f"{key} {self.stages}") for key in ("distance", "speed", "time")}
        for key, told in (("distance", distance), ("speed", speed), ("time", time)):
            if told is not None:
                yield Same(names[key], told)
        if time is None:
            yield Same(names["time"], Divided(names["distance"], names["speed"]))
        elif speed is None:
            yield Same(names["speed"], Divided(names["distance"], names["time"]))
        else:
            yield Same(names["distance"], Multiplied(names["speed"], names["time"]))

    def _told(self, node: Node) -> Iterator[Claim]:
        match node.expr_name:
            case "stage" | "two_stages":
                for leg in within(node, "leg"):
                    parts = [first(leg, rule) or next(within(leg, rule), None) for rule in ("length", "speed", "time")]
                    yield from self._stage(*(amount(part) if part is not None else None for part in parts))
            case "there_back":
                for speed in within(node, "speed"):
                    yield from self._stage(None, amount(speed), None)
                self.returns = True
                yield Same(Named("distance 2"), Named("distance 1"))
            case "back":
                if self.stages != 1:
                    raise NotUnderstood("from where", node.start)
                self.returns = True
                yield from self._stage(None, amount(next(within(node, "speed"))), None)
                yield Same(Named("distance 2"), Named("distance 1"))
            case "whole_time":
                yield Same(Added((Named("time 1"), Named("time 2"))), amount(next(within(node, "time"))))
            case "whole_way":
                yield Same(Added((Named("distance 1"), Named("distance 2"))), amount(next(within(node, "length"))))

    def _asked(self, node: Node) -> None:
        if node.expr_name == "ask_average":
            distance, time = (Added((Named(f"{key} 1"), Named(f"{key} 2"))) for key in ("distance", "time"))
            self.wanted.append(Wanted(Divided(distance, time), "the average speed", self.road.speed))
        elif self.returns:
            self.wanted.append(Wanted(Named("distance 1"), "the distance", self.road.length))
        else:
            raise NotUnderstood("which distance is asked for", node.start)
