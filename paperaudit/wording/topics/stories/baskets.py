"""Stories of unknown prices or masses: so many of one thing and so many of another cost so much."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.maths.tree import first, the
from paperaudit.maths.units import MONEY
from paperaudit.model.expression import Number
from paperaudit.model.story import (
    Added,
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
from paperaudit.wording.topics.stories.amounts import multiple_of, number_in
from paperaudit.wording.topics.stories.cast import bare, none_alike
from paperaudit.wording.topics.stories.grammar import tree_of
from paperaudit.wording.topics.stories.measures import Scale
from paperaudit.wording.topics.stories.plain import Plain
from paperaudit.wording.topics.stories.trees import within

AHEAD = re.compile(r"\bcosts?\b|\bprices?\b|\bweighs?\b|\bmass\b|\bpa(?:ys?|id)\b|\bspen[dt]s?\b")
_LESS = re.compile(r" (?:less|cheaper|lighter) than ")


def baskets_story(sentences: Sequence[Plain]) -> StoryTask | None:
    """The story of a part as one of baskets; raises NotUnderstood or ExpressionNotRead where it is none."""
    trees = [(tree, sentence) for sentence in sentences if (tree := tree_of("baskets", sentence)) is not None]
    return _Baskets(trees, Scale.of([tree for tree, _ in trees])).task() if trees else None


@dataclass
class _Baskets:
    """What is bought in one story, each thing with its price for one."""

    trees: list[tuple[Node, Plain]]
    scale: Scale
    names: list[str] = field(default_factory=list)
    claims: list[Said] = field(default_factory=list)
    wanted: list[Wanted] = field(default_factory=list)

    def task(self) -> StoryTask:
        """The task, with every sentence accounted for."""
        for tree, sentence in self.trees:
            for node in within(tree, "claim"):
                for claim in self._told(node.children[0]):
                    self.claims.append(Said(sentence.said, claim))
        for tree, _ in self.trees:
            for node in within(tree, "ask"):
                self._asked(node)
        none_alike(self.names)
        if not self.claims or not self.wanted or not self.scale.unit or len(self.names) > 3:
            raise NotUnderstood("prices of which too little is told or asked", 0)
        kind = "a price" if self.scale.unit in MONEY else "a mass"
        sought = tuple(
            Sought(name, self._meaning(name), self.scale.unit, "positive", False, kind) for name in self.names
        )
        return StoryTask(sought, tuple(self.claims), tuple(self.wanted))

    def _meaning(self, name: str) -> str:
        article = "an" if name[0] in "aeiou" else "a"
        return f"the {'price' if self.scale.unit in MONEY else 'mass'} of {article} {name}"

    def _told(self, node: Node) -> Iterator[Claim]:
        if node.expr_name == "as_much":
            one, other = (self._take(single.text) for single in within(node, "single"))
            yield Same(one, Scaled(multiple_of(node), other))
            return
        amount = self.scale.amount(the(node, "amount_of").children[0])
        if node.expr_name in ("compared", "known"):
            things = [self._take(one.text) for one in within(node, "single")]
            if node.expr_name == "known":
                yield Same(things[0], amount)
                return
            base: Size = things[1]
            if (times := first(node, "multiple")) is not None:
                base = Scaled(multiple_of(times), base)
            less = _LESS.search(node.text)
            yield Same(things[0], Taken(base, amount) if less else Added((base, amount)))
            return
        entries = list(within(node, "entry", "many"))
        parts = tuple(self._entry(entry) for entry in entries)
        yield Same(Added(parts) if len(parts) > 1 else parts[0], amount)

    def _entry(self, node: Node) -> Size:
        number = first(node, "number")
        count = number_in(number.text) if number is not None else Number(Fraction(1))
        one = self._take(node.text[len(number.text) :] if number is not None else node.text)
        return one if count.value == 1 else Scaled(count, one)

    def _take(self, text: str) -> Named:
        name = self._name(text)
        if name not in self.names:
            self.names.append(name)
        return Named(name)

    @staticmethod
    def _name(text: str) -> str:
        return bare(re.sub(r"^ ?(?:an?|one|the|each|1) ", "", text.strip()).removesuffix(" together"))

    def _asked(self, node: Node) -> None:
        wants = list(within(node, "want"))
        for want in wants:
            number = first(want, "number")
            name = self._name(want.text[len(number.text) :] if number is not None else want.text)
            if name not in self.names:
                raise NotUnderstood(f"the price of {name}", want.start)
            size: Size = Named(name)
            meaning = self._meaning(name)
            if number is not None:
                size, meaning = Scaled(number_in(number.text), size), f"the price of {want.text}"
            self.wanted.append(Wanted(size, meaning, self.scale.unit))
        if len(wants) > 1 and any(first(want, "number") is not None for want in wants):
            together = Added(tuple(one.size for one in self.wanted))
            self.wanted = [Wanted(together, "what these cost", self.scale.unit)]
        if not wants:
            self.wanted.extend(Wanted(Named(name), self._meaning(name), self.scale.unit) for name in self.names)
