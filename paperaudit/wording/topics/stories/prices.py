"""Stories of two prices and a total: tickets, coins, notes, things of two kinds bought together."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from parsimonious.nodes import Node

from paperaudit.maths.tree import first, the
from paperaudit.model.story import (
    Added,
    Amount,
    Claim,
    Multiplied,
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
from paperaudit.wording.topics.stories.cast import bare, one_thing
from paperaudit.wording.topics.stories.grammar import tree_of
from paperaudit.wording.topics.stories.measures import Scale
from paperaudit.wording.topics.stories.plain import Plain
from paperaudit.wording.topics.stories.trees import has_any, lies_in, within

AHEAD = re.compile(r"\bhow many\b|\bnumber of\b")
_HEADS = frozenset({"ticket", "coin", "note", "stamp", "seat", "pass", "entry"})


def prices_story(sentences: Sequence[Plain]) -> StoryTask | None:
    """The story of a part as one of prices; raises NotUnderstood or ExpressionNotRead where it is none."""
    trees = [(tree, sentence) for sentence in sentences if (tree := tree_of("prices", sentence)) is not None]
    return _Prices(trees, Scale.of([tree for tree, _ in trees])).task() if trees else None


@dataclass
class _Prices:
    """The kinds of one story with their prices, and what is said of how many there are."""

    trees: list[tuple[Node, Plain]]
    scale: Scale
    prices: dict[str, Amount] = field(default_factory=dict)
    shown: dict[str, str] = field(default_factory=dict)
    claims: list[Said] = field(default_factory=list)
    told: list[str] = field(default_factory=list)
    wanted: list[Wanted] = field(default_factory=list)
    totals: list[tuple[str, Amount]] = field(default_factory=list)
    money: list[tuple[str, Amount]] = field(default_factory=list)

    def task(self) -> StoryTask:
        """The task, with every sentence accounted for."""
        if not self.scale.unit:
            raise NotUnderstood("no prices", 0)
        for tree, sentence in self.trees:
            for claim in within(tree, "price_list", "price_for", "price_of", "price_one", "price_at"):
                self._price(claim, sentence)
            for item in within(tree, "two_items", "item"):
                self._worth(item)
        buyers = [
            name.text
            for tree, _ in self.trees
            for claim in within(tree, "more", "fold", "counted", "takings", "kinds")
            for name in within(claim, "name")
            if not lies_in(claim, name, "item", "things", "price")
        ]
        one_thing(buyers, ("they", "jar", "box", "tin", "bag", "purse", "till"))
        if not 2 <= len(self.prices) <= 3 or set(self.prices) != set(self.shown):
            raise NotUnderstood("how many prices there are", 0)
        for tree, sentence in self.trees:
            for node in within(tree, "claim"):
                for claim in self._told(node.children[0], sentence):
                    self.claims.append(Said(sentence.said, claim))
        self._add_totals()
        for tree, _ in self.trees:
            for node in within(tree, "ask"):
                self._asked(node.children[0])
        if not self.wanted or not self.money:
            raise NotUnderstood("prices of which too little is told or asked", 0)
        counts = [
            Sought(key, self._meaning(key), "", "not negative", True, f"a number of {self.shown[key].split()[-1]}")
            for key in self.prices
        ]
        priced = [
            Sought(f"price {key}", f"the price of {self.shown[key]}", self.scale.unit, "positive", False, "a price")
            for key in self.told
        ]
        sought = (*counts, *priced)
        return StoryTask(sought, tuple(self.claims), tuple(self.wanted))

    def _meaning(self, key: str) -> str:
        return f"the number of {self.shown[key]}"

    def _add_totals(self) -> None:
        keys = tuple(self.prices)
        if len(self.totals) > 1 or len(self.money) > 1:
            raise NotUnderstood("two totals", 0)
        for said, total in self.totals:
            self.claims.append(Said(said, Same(Added(tuple(map(Named, keys))), total)))
        for said, total in self.money:
            parts: tuple[Size, ...] = tuple(Multiplied(self._price_of(key), Named(key)) for key in keys)
            self.claims.append(Said(said, Same(Added(parts), total)))

    def _price_of(self, key: str) -> Size:
        """The price of a kind: told in a sentence, or what a coin says itself."""
        return Named(f"price {key}") if key in self.told else self.prices[key]

    def _price(self, node: Node, sentence: Plain) -> None:
        for item, price in _pairs(node):
            key = self._key(item.text)
            amount = self.scale.amount(the(price, "value").children[0])
            if self.prices.setdefault(key, amount) != amount:
                raise NotUnderstood("two prices of one thing", node.start)
            if key not in self.told:
                self.told.append(key)
                self.claims.append(Said(sentence.said, Same(Named(f"price {key}"), amount)))

    def _worth(self, node: Node) -> None:
        """A coin, note or stamp says itself what it is worth."""
        coins = first(node, "coins")
        counted = [
            one for tree, _ in self.trees for one in within(tree, "things") if re.fullmatch(r"coins|notes", one.text)
        ]
        if coins is None and (node.expr_name != "two_items" or has_any(node, "item") or not counted):
            return
        word = coins.text if coins is not None else counted[0].text
        for value in within(node, "value"):
            text = f"{value.text} {word}"
            self.prices.setdefault(self._key(text), self.scale.amount(value.children[0]))

    def _key(self, text: str) -> str:
        name = re.sub(r"'s?(?= |$)", "", bare(re.sub(r"^(?:an?|the|each) ", "", text.strip())))
        words = name.split()
        if len(words) > 1 and words[-1] in _HEADS:
            words = words[:-1]
        key = " ".join(bare(word) for word in words)
        plural = re.sub(r"^(?:an?|the|each) ", "", text.strip())
        shown = self.shown.get(key)
        if shown is None or (plural.endswith("s") and not shown.endswith("s")):
            self.shown[key] = plural
        return key

    def _known(self, text: str) -> str:
        before = set(self.prices)
        key = self._key(text)
        if key not in before:
            raise NotUnderstood(f"the price of {text}", 0)
        return key

    def _told(self, node: Node, sentence: Plain) -> Iterator[Claim]:
        match node.expr_name:
            case "price_list" | "price_one" | "price_at" | "price_for" | "price_of" | "kinds":
                for item in within(node, "item"):
                    self._known(item.text)
            case "more" | "number_more":
                one, other = (self._known(item.text) for item in within(node, "item"))
                size: Size = Named(other)
                times = next(within(node, "multiple"), None)
                if times is not None:
                    size = Scaled(multiple_of(times), size)
                number = first(node, "number")
                if number is not None:
                    by = Amount(number_in(number.text))
                    more = re.search(r"\d+ more (?:than )?", node.text)
                    size = Added((size, by)) if more else Taken(size, by)
                yield Same(Named(one), size)
            case "fold":
                one, other = (self._known(item.text) for item in within(node, "item"))
                yield Same(Named(one), Scaled(multiple_of(node), Named(other)))
            case "counted":
                yield from self._counted(node, sentence)
            case "takings":
                self.money.append((sentence.said, self.scale.amount(the(the(node, "price"), "value").children[0])))

    def _counted(self, node: Node, sentence: Plain) -> Iterator[Claim]:
        paid = next(within(node, "for_money"), None)
        price = the(paid, "price") if paid is not None else first(node, "price")
        if price is not None:
            self.money.append((sentence.said, self.scale.amount(the(price, "value").children[0])))
        number = next(one for one in within(node, "number"))
        total = Amount(number_in(number.text))
        things = next(within(node, "things")).text
        key = self._alike(things)
        if key is None:
            self.totals.append((sentence.said, total))
        else:
            yield Same(Named(key), total)

    def _alike(self, things: str) -> str | None:
        """The kind that counted things are of, None where they are of all kinds."""
        shown = dict(self.shown)
        key = self._key(things)
        self.shown = shown
        return key if key in self.prices else None

    def _asked(self, node: Node) -> None:
        keys = [self._known(item.text) for item in within(node, "item")] or list(self.prices)
        self.wanted.extend(Wanted(Named(key), self._meaning(key)) for key in keys)


def _pairs(node: Node) -> Iterator[tuple[Node, Node]]:
    """Items with their prices in the order written, whichever of the two comes first."""
    found = list(within(node, "item", "price"))
    found = [
        one
        for one in found
        if not any(
            other is not one and other.expr_name == "item" and other.start <= one.start and one.end <= other.end
            for other in found
        )
    ]
    if len(found) % 2:
        raise NotUnderstood("an item without a price", node.start)
    for first_one, second in zip(found[::2], found[1::2], strict=True):
        if {first_one.expr_name, second.expr_name} != {"item", "price"}:
            raise NotUnderstood("an item without a price", node.start)
        yield (first_one, second) if first_one.expr_name == "item" else (second, first_one)
