"""Stories of a price or number that is changed by per cents one after the other."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from parsimonious.nodes import Node

from paperaudit.maths.tree import first, the
from paperaudit.maths.units import MONEY
from paperaudit.model.story import (
    Added,
    Amount,
    Claim,
    Named,
    Said,
    Same,
    Scaled,
    Size,
    Sought,
    StoryTask,
    Taken,
    Wanted,
)
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.stories.amounts import number_in
from paperaudit.wording.topics.stories.cast import one_thing
from paperaudit.wording.topics.stories.grammar import tree_of
from paperaudit.wording.topics.stories.measures import Scale
from paperaudit.wording.topics.stories.plain import Plain
from paperaudit.wording.topics.stories.trees import within

AHEAD = re.compile(r"%")
_UP = re.compile(r"\b(?:increase[ds]?|raised|marked up|rises|goes up|rose|grows|grew)\b")
_OWNED = re.compile(
    r"(?:price|cost|value|salary|wage|rent|fare|mass|fee|population|area) of (?:an?|the|his|her|its|each) ([a-z]+)"
    r"|(?:^|[.] |\bthe |\ba |\ban )([a-z]+) (?:now costs|costs|cost|sells for|is worth|is priced at)\b"
)
_SUBJECTS = re.compile(
    r"\b(price|cost|fare|fee|number|salary|wages?|population|rent|mass|weight|membership|area|income)\b"
)
_SORTS = {"cost": "price", "fare": "price", "fee": "price", "wage": "salary", "wages": "salary", "weight": "mass"}
_START = "start"


def percents_story(sentences: Sequence[Plain]) -> StoryTask | None:
    """The story of a part as one of changes; raises NotUnderstood or ExpressionNotRead where it is none."""
    trees = [(tree, sentence) for sentence in sentences if (tree := tree_of("percents", sentence)) is not None]
    return _Changes(trees, Scale.of([tree for tree, _ in trees])).task() if trees else None


@dataclass
class _Changes:
    """The one size of a story, from its start through every change."""

    trees: list[tuple[Node, Plain]]
    scale: Scale
    sizes: int = 0
    up: bool = False
    ended: bool = False
    started: bool = False
    claims: list[Said] = field(default_factory=list)
    wanted: list[Wanted] = field(default_factory=list)

    def task(self) -> StoryTask:
        """The task, with every sentence accounted for."""
        words = " ".join(sentence.text for _, sentence in self.trees)
        one_thing(name for names in _OWNED.findall(words) for name in names if name not in ("it", "price"))
        one_thing([_SORTS.get(word, word) for word in _SUBJECTS.findall(words)], ("value", "amount", "result"))
        for tree, sentence in self.trees:
            for node in within(tree, "claim"):
                for claim in self._told(node.children[0]):
                    self.claims.append(Said(sentence.said, claim))
        for tree, _ in self.trees:
            for node in within(tree, "ask"):
                self._asked(node.children[0])
        if not self.sizes or not self.wanted or self.started == self.ended:
            raise NotUnderstood("changes of which too little is told or asked", 0)
        kind = "an amount of money" if self.scale.unit in MONEY else "such a size"
        names = ["the value at the start", *(f"the value after change {at}" for at in range(1, self.sizes + 1))]
        sought = tuple(
            Sought(self._key(at), name, self.scale.unit, "not negative" if self.scale.unit else "any", False, kind)
            for at, name in enumerate(names)
        )
        return StoryTask(sought, tuple(self.claims), tuple(self.wanted))

    @staticmethod
    def _key(at: int) -> str:
        return f"after {at}" if at else _START

    def _told(self, node: Node) -> Iterator[Claim]:
        match node.expr_name:
            case "start":
                if self.sizes or self.started:
                    raise NotUnderstood("a second start", node.start)
                self.started = True
                yield Same(Named(_START), self._value(the(node, "value")))
            case "changed" | "again":
                if self.ended:
                    raise NotUnderstood("a change after the end", node.start)
                if node.expr_name == "changed":
                    self.up = _UP.search(node.text) is not None
                elif not self.sizes:
                    raise NotUnderstood("a further change without a first", node.start)
                before = Named(self._key(self.sizes))
                part = Scaled(number_in(the(node, "percentage").text), before)
                self.sizes += 1
                after: Size = Added((before, part)) if self.up else Taken(before, part)
                yield Same(Named(self._key(self.sizes)), after)
                if (later := first(node, "later")) is not None:
                    yield self._end(later)
            case "result":
                yield self._end(node)

    def _end(self, node: Node) -> Claim:
        if self.ended or not self.sizes:
            raise NotUnderstood("a second end", node.start)
        self.ended = True
        return Same(Named(self._key(self.sizes)), self._value(the(node, "value")))

    def _value(self, node: Node) -> Amount:
        return self.scale.amount(node.children[0])

    def _asked(self, node: Node) -> None:
        if node.expr_name == "ask_final":
            if self.ended:
                raise NotUnderstood("the end is told", node.start)
            self.wanted.append(Wanted(Named(self._key(self.sizes)), "the value at the end", self.scale.unit))
        else:
            if self.started:
                raise NotUnderstood("the start is told", node.start)
            self.wanted.append(Wanted(Named(_START), "the value at the start", self.scale.unit))
