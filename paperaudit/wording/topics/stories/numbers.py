"""Stories of numbers: one, two or three of them, consecutive ones, and numbers that are thought of."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Literal

from parsimonious.nodes import Node

from paperaudit.maths.tree import every, has, the
from paperaudit.model.story import (
    Added,
    Claim,
    Consecutive,
    Extreme,
    Named,
    Said,
    Same,
    Scaled,
    Size,
    Sought,
    StoryTask,
    Wanted,
)
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.stories.amounts import multiple_of
from paperaudit.wording.topics.stories.grammar import tree_of
from paperaudit.wording.topics.stories.number_changes import ChangedNumbers
from paperaudit.wording.topics.stories.number_phrases import in_ratio, name_under, number_under
from paperaudit.wording.topics.stories.plain import Plain
from paperaudit.wording.topics.stories.trees import has_any, within

AHEAD = re.compile(r"\b(?:numbers?|integers?)\b")
_CASTS = (
    ("one", "other"),
    ("larger", "smaller"),
    ("first", "second"),
    ("first", "second", "third"),
    ("smallest", "middle", "largest"),
)


def numbers_story(sentences: Sequence[Plain]) -> StoryTask | None:
    """The story of a part as one of numbers; raises NotUnderstood or ExpressionNotRead where it is none."""
    trees = [(tree, sentence) for sentence in sentences if (tree := tree_of("numbers", sentence)) is not None]
    return _Numbers(trees=trees).task() if trees else None


@dataclass
class _Numbers(ChangedNumbers):
    """The numbers of one story and what is said of them."""

    trees: list[tuple[Node, Plain]] = field(default_factory=list)
    claims: list[Said] = field(default_factory=list)
    wanted: list[Wanted] = field(default_factory=list)
    together: bool = False

    def task(self) -> StoryTask:
        """The task, with every sentence accounted for."""
        self._cast()
        for tree, sentence in self.trees:
            for node in every(tree, "claim", "answered_claim", "whose", "ask"):
                for claim in self._asked(node) if node.expr_name == "ask" else self._told(node):
                    self.claims.append(Said(sentence.said, claim))
        if self.running is not None and self.running != self.start():
            raise NotUnderstood("a result is not told", 0)
        if not self.claims or not self.wanted:
            raise NotUnderstood("numbers of which nothing is told or asked", 0)
        words = " ".join(sentence.text for _, sentence in self.trees)
        sign: Literal["any", "positive"] = "positive" if re.search(r"\bpositive\b|\bnatural\b", words) else "any"
        whole = self.row is not None or bool(re.search(r"\bintegers?\b|\bwhole\b|\bnatural\b", words))
        kind = "a natural number" if sign == "positive" and whole else "such a number"
        if self.row is not None:
            self.claims.insert(0, Said(self._row_said(), self.row))
        sought = tuple(Sought(key, self.meaning(key), "", sign, whole, kind) for key in self.keys)
        return StoryTask(sought, tuple(self.claims), tuple(self.wanted), not self.together)

    def _row_said(self) -> str:
        return next(sentence.said for tree, sentence in self.trees if has(tree, "consecutive") or tree.expr_name)

    def _cast(self) -> None:
        """Which numbers there are."""
        named: list[str] = []
        single = False
        for tree, _ in self.trees:
            asks = {id(node) for ask in every(tree, "ask") for node in every(ask, "named", "the_number")}
            for node in within(tree, "named", "the_number"):
                if id(node) in asks:
                    continue
                if node.expr_name == "the_number":
                    single = single or node.text not in ("it", "itself")
                else:
                    named.append(name_under(node))
        rows = [node for tree, _ in self.trees for node in within(tree, "consecutive")]
        if rows:
            self._consecutive(rows, named)
            return
        if "other" in named and named.count("one") == 0 and single:
            named = ["one", "other"]
        used = set(named)
        several = any(re.search(r"\b(?:numbers|integers)\b", sentence.text) for _, sentence in self.trees)
        if not used and (single or not several):
            self.keys = ("number",)
            return
        if not used:
            differ = any(
                has_any(tree, "differ", "whole_difference") or "difference" in sentence.text
                for tree, sentence in self.trees
            )
            used = {"larger", "smaller"} if differ else {"one", "other"}
        cast = next((cast for cast in _CASTS if used <= set(cast) and (len(cast) == 2 or len(used) > 1)), None)
        if cast is None:
            raise NotUnderstood("which numbers are meant", 0)
        self.keys = cast
        if len(cast) == 2 and re.search(
            r"\b3 (?:\w+ )?(?:numbers|integers)\b", " ".join(s.text for _, s in self.trees)
        ):
            raise NotUnderstood("three numbers of which two are named", 0)

    def _consecutive(self, rows: Sequence[Node], named: Sequence[str]) -> None:
        specs = [
            re.search(r"(?:(\d) )?(?:[a-z]+ )*?consecutive(?: positive| natural| whole)* ?(even|odd)?", node.text)
            for node in rows
        ]
        counts = {spec.group(1) for spec in specs if spec and spec.group(1)}
        parities = {spec.group(2) or "" for spec in specs if spec}
        parity = next(iter(parities - {""}), "")
        if len(counts) != 1 or len(parities - {""}) > 1:
            raise NotUnderstood("how many consecutive numbers", 0)
        count = int(counts.pop())
        names = {
            2: ("first", "second"),
            3: ("first", "second", "third"),
            4: ("first", "second", "third", "fourth"),
            5: ("first", "second", "third", "fourth", "fifth"),
        }
        self.keys = names[count]
        assert parity in ("", "even", "odd")
        self.row = Consecutive(self.keys, 2 if parity else 1, "even" if parity == "even" else "odd" if parity else "")

    def _told(self, node: Node) -> Iterator[Claim]:
        if node.expr_name == "whose":
            self._want_new(node)
            for clause in within(node, "trait", "own_claim", "claim"):
                yield from self._whose(clause)
            return
        claim = node.children[0]
        match claim.expr_name:
            case "equation":
                left, right = every(claim, "size")
                yield Same(self.size(left), self.size(right))
            case "exceeds":
                left, right = every(claim, "size")
                yield Same(self.size(left), Added((self.size(right), number_under(the(claim, "plain")))))
            case "as_big":
                left, right = every(claim, "size")
                yield Same(self.size(left), Scaled(multiple_of(the(claim, "multiple")), self.size(right)))
            case "pair_adds":
                one, its = self.part(the(claim, "part").children[0]), self.its(the(claim, "its"))
                yield Same(Added((one, its)), number_under(the(claim, "plain")))
            case "adds_up":
                yield Same(Added(self.everyone()), number_under(the(claim, "plain")))
            case "differ":
                apart, *total = every(claim, "plain")
                yield self.difference(number_under(apart))
                if total:
                    yield Same(Added(self.everyone()), number_under(total[0]))
            case "have_sum":
                traits = re.findall(r"\b(sum|total|difference|product) of", claim.text)
                for trait, number in zip(traits, every(claim, "plain"), strict=True):
                    yield self._trait(trait, number_under(number))
            case "ratio":
                yield from in_ratio(self.in_order(the(claim, "ratio_of").text), the(claim, "ratio_of").text)
            case "thought":
                self.running = self.start()
                for operation in every(claim, "operation"):
                    self.operate(operation)
            case "process":
                self.process(claim)
            case "answered":
                if self.running is None:
                    raise NotUnderstood("a result of nothing", claim.start)
                yield Same(self.running, self.size(the(claim, "size")))
                self.running = None

    def _whose(self, clause: Node) -> Iterator[Claim]:
        match clause.expr_name:
            case "trait":
                word = re.match(r"(?:a |the |their |its )?(sum|total|difference|product|add|differ)", clause.text)
                assert word is not None
                yield self._trait(word.group(1), number_under(the(clause, "plain")))
            case "own_claim":
                if self.keys != ("number",) or clause.text.startswith("exceeds"):
                    raise NotUnderstood("which number is meant", clause.start)
                yield Same(Named("number"), self.size(the(clause, "size")))
            case _:
                yield from self._told(clause)

    def _trait(self, word: str, value: Size) -> Claim:
        if word in ("sum", "total", "add"):
            return Same(Added(self.everyone()), value)
        if word == "product":
            return Same(self.product(), value)
        return self.difference(value)

    def _asked(self, node: Node) -> Iterator[Claim]:
        if has_any(node, "they_ask"):
            self._want_all()
            return
        asked = list(every(node, "asked"))
        for one in asked or [None]:
            if one is None:
                self.wanted.append(Wanted(self.start(), "the number"))
                continue
            what = one.children[0]
            match what.expr_name:
                case "all_numbers":
                    if re.search(r"\b(?:consecutive|even|odd)\b", what.text) and self.row is None:
                        raise NotUnderstood("which consecutive numbers", what.start)
                    self.everyone()
                    self._want_all()
                case "named":
                    self._want_named(what)
                case "whole_sum" | "whole_product":
                    name = re.sub(r" of .*", "", what.text)
                    self.wanted.append(Wanted(self.atom(what), f"{name} of the numbers"))
                case _:
                    self.wanted.append(Wanted(self.atom(what), "the number"))
        yield from ()

    def _want_named(self, node: Node) -> None:
        name = name_under(node)
        if self.row is None and name not in self.keys and name in ("larger", "smaller", "largest", "smallest"):
            size: Size = Extreme(self.keys, name.startswith("l"))
            self.everyone()
        else:
            size = Named(self.key(node))
        self.wanted.append(Wanted(size, f"the {name} number"))

    def _want_new(self, node: Node) -> None:
        if has(node, "new_number"):
            self.wanted.append(Wanted(self.start(), "the number"))
        else:
            self._want_all()

    def _want_all(self) -> None:
        self.everyone()
        self.wanted.extend(Wanted(Named(key), self.meaning(key)) for key in self.keys)
        self.together = True
