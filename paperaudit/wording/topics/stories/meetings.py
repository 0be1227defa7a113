"""Stories of two that move towards each other, apart, or one after the other on the same road."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from parsimonious.nodes import Node

from paperaudit.maths.tree import the
from paperaudit.model.expression import Number
from paperaudit.model.story import (
    NOTHING,
    Added,
    Amount,
    Claim,
    Extreme,
    Gap,
    Mover,
    Multiplied,
    Named,
    Said,
    Same,
    Sought,
    StoryTask,
    Taken,
    Wanted,
)
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.stories.amounts import number_in, unit_symbol
from paperaudit.wording.topics.stories.grammar import tree_of
from paperaudit.wording.topics.stories.plain import Plain
from paperaudit.wording.topics.stories.trees import has_any, within

AHEAD = re.compile(r"\b(?:apart|towards each other|opposite directions|later)\b")
_SPEEDS = {"km/h": ("km", "hour"), "m/s": ("m", "second"), "mph": ("mile", "hour")}
ONE, OTHER, TIME = "one", "other", "time"


def meetings_story(sentences: Sequence[Plain]) -> StoryTask | None:
    """The story of a part as one of two movers; raises NotUnderstood or ExpressionNotRead where it is none."""
    trees = [(tree, sentence) for sentence in sentences if (tree := tree_of("meetings", sentence)) is not None]
    return _Meeting(trees).task() if trees else None


@dataclass(frozen=True, slots=True)
class Road:
    """The units of a story of motion: of speed, distance and time, which must go together."""

    speed: str
    length: str
    time: str

    @staticmethod
    def of(trees: Sequence[Node]) -> "Road":
        """The units that the trees use; raises NotUnderstood where they do not go together."""
        speeds, lengths, times = (
            {unit_symbol(_SPOKEN.get(node.text, node.text)) for tree in trees for node in within(tree, rule)}
            for rule in ("speed_unit", "length_unit", "time_unit")
        )
        fits = [
            (speed, *parts)
            for speed, parts in _SPEEDS.items()
            if speeds <= {speed} and lengths <= {parts[0]} and times <= {parts[1]}
        ]
        if not fits or not (speeds or (lengths and times)):
            raise NotUnderstood("units that do not go together", 0)
        return Road(*fits[0])


_SPOKEN = {"km an hour": "km/h", "kilometres an hour": "km/h", "h": "hour", "min": "minute", "s": "second"}


def amount(node: Node) -> Amount:
    """The number of a speed, a length or a time; its unit is the story's."""
    return Amount(number_in(the(node, "number").text))


@dataclass
class _Meeting:
    """The two movers of one story."""

    trees: list[tuple[Node, Plain]]
    mode: str = ""
    said: str = ""
    distance: Amount = NOTHING
    late: Amount = NOTHING
    gap: Amount | None = None
    claims: list[Said] = field(default_factory=list)
    wanted: list[Wanted] = field(default_factory=list)

    def task(self) -> StoryTask:
        """The task, with every sentence accounted for."""
        self.road = Road.of([tree for tree, _ in self.trees])
        for tree, sentence in self.trees:
            for node in within(tree, "claim"):
                for claim in self._told(node.children[0], sentence):
                    self.claims.append(Said(sentence.said, claim))
        for tree, _ in self.trees:
            for node in within(tree, "ask"):
                self._asked(node.children[0])
        if not self.mode or not self.wanted:
            raise NotUnderstood("movers of whom too little is told or asked", 0)
        if self.mode == "towards" and self.distance is NOTHING:
            raise NotUnderstood("how far apart they start", 0)
        if self.mode == "opposite" and self.gap is None:
            raise NotUnderstood("how far apart they are to be", 0)
        self.claims.append(Said(self.said, self._gap()))
        slow = self.mode == "same way"
        names = ("the speed of the first", "the speed of the second") if slow else ("one speed", "the other speed")
        sought = (
            Sought(ONE, names[0], self.road.speed, "positive", False, "a speed"),
            Sought(OTHER, names[1], self.road.speed, "positive", False, "a speed"),
            Sought(TIME, "the time", self.road.time, "positive", False, "a time"),
        )
        return StoryTask(
            sought, tuple(self.claims), tuple(self.wanted), all(one.meaning != names[0] for one in self.wanted)
        )

    def _gap(self) -> Gap:
        time, speeds = Named(TIME), (Named(ONE), Named(OTHER))
        if self.mode == "towards":
            return Gap(
                Mover(NOTHING, 1, speeds[0], NOTHING), Mover(self.distance, -1, speeds[1], NOTHING), time, NOTHING
            )
        if self.mode == "opposite":
            gap = self.gap or NOTHING
            return Gap(Mover(NOTHING, 1, speeds[0], NOTHING), Mover(NOTHING, -1, speeds[1], NOTHING), time, gap)
        early = Amount(Number(-self.late.number.value, self.late.number.form, self.late.number.places))
        return Gap(Mover(NOTHING, 1, speeds[0], early), Mover(NOTHING, 1, speeds[1], NOTHING), time, NOTHING)

    def _mode(self, mode: str, sentence: Plain) -> None:
        if self.mode:
            raise NotUnderstood("two ways of moving", 0)
        self.mode, self.said = mode, sentence.said

    def _told(self, node: Node, sentence: Plain) -> Iterator[Claim]:
        speeds = [amount(speed) for speed in within(node, "speed")]
        match node.expr_name:
            case "live_apart":
                self.distance = amount(the(node, "length"))
            case "they_towards":
                self._mode("towards", sentence)
                for key, speed in zip((ONE, OTHER), speeds, strict=False):
                    yield Same(Named(key), speed)
            case "towards" | "apart":
                self._mode("towards" if node.expr_name == "towards" else "opposite", sentence)
                if node.expr_name == "towards":
                    self.distance = amount(next(within(node, "length")))
                for key, speed in zip((ONE, OTHER), speeds, strict=False):
                    yield Same(Named(key), speed)
            case "speeds":
                if any(re.search(r"slower|faster", part.text) for part in within(node, "one", "other")) and (
                    speeds[0].number.value == speeds[1].number.value
                ):
                    raise NotUnderstood("which is the faster", node.start)
                for key, speed in zip((ONE, OTHER), speeds, strict=True):
                    yield Same(Named(key), speed)
            case "faster":
                one, other = (Named(ONE), Named(OTHER))
                yield Same(one, Taken(other, speeds[0]) if " slower than " in node.text else Added((other, speeds[0])))
            case "gap_after":
                self.gap = amount(the(node, "length"))
                yield Same(Named(TIME), amount(the(node, "time")))
            case "meet_after":
                yield Same(Named(TIME), amount(the(node, "time")))
            case "first_leaves":
                yield Same(Named(ONE), speeds[0])
            case "later":
                self._mode("same way", sentence)
                if not has_any(node, "same_start"):
                    raise NotUnderstood("whether it goes the same way", node.start)
                self.late = amount(the(node, "time"))
                yield Same(Named(OTHER), speeds[0])

    def _asked(self, node: Node) -> None:
        if node.expr_name == "ask_time":
            kind = next(one.expr_name for one in within(node, "meet_words", "apart_words", "catch_words"))
            wanted = {"towards": "meet_words", "opposite": "apart_words", "same way": "catch_words"}
            if wanted.get(self.mode) != kind or (re.match(r"when", node.text) and kind == "catch_words"):
                raise NotUnderstood("which time is asked for", node.start)
            if kind == "apart_words":
                self.gap = amount(next(within(node, "length")))
            unit = re.search(r"\b(hours|minutes|seconds)\b", node.text)
            if unit is not None and unit_symbol(unit.group(1)) != self.road.time:
                raise NotUnderstood("a time in another unit", node.start)
            self.wanted.append(Wanted(Named(TIME), "the time", self.road.time))
        elif node.expr_name == "ask_where":
            if self.mode != "same way":
                raise NotUnderstood("from where", node.start)
            self.wanted.append(Wanted(Multiplied(Named(OTHER), Named(TIME)), "the distance", self.road.length))
        elif word := re.search(r"the speed of the (slower|faster)", node.text):
            size = Extreme((ONE, OTHER), word.group(1) == "faster")
            self.wanted.append(Wanted(size, f"the {word.group(1)} speed", self.road.speed))
        else:
            self.wanted += [
                Wanted(Named(ONE), "one speed", self.road.speed),
                Wanted(Named(OTHER), "the other speed", self.road.speed),
            ]
