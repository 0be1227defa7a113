"""Stories of numbers: one, two or three of them, consecutive ones, and numbers that are thought of."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from parsimonious.nodes import Node

from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.expression import Number
from paperaudit.model.story import (
    Added,
    Amount,
    Claim,
    Consecutive,
    Divided,
    Extreme,
    Multiplied,
    Named,
    Said,
    Same,
    Scaled,
    Size,
    Sought,
    Squared,
    StoryTask,
    Taken,
    Wanted,
)
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.stories.amounts import multiple_of, number_in
from paperaudit.wording.topics.stories.grammar import tree_of
from paperaudit.wording.topics.stories.plain import Plain
from paperaudit.wording.topics.stories.trees import has_any, within

AHEAD = re.compile(r"\b(?:numbers?|integers?)\b")
_ALIKE = {
    "bigger": "larger", "greater": "larger", "biggest": "largest", "greatest": "largest", "last": "largest",
    "least": "smallest", "another": "other",
}
_CASTS = (("one", "other"), ("larger", "smaller"), ("first", "second"), ("first", "second", "third"),
          ("smallest", "middle", "largest"))
_MEANINGS = {"one": "one number", "other": "the other number"}
_PLAIN_OF = {"doubled": 2, "double": 2, "doubles": 2, "twice": 2, "trebled": 3, "tripled": 3, "treble": 3, "trebles": 3,
             "triple": 3, "3 times": 3}


def numbers_story(sentences: Sequence[Plain]) -> StoryTask | None:
    """The story of a part as one of numbers; raises NotUnderstood or ExpressionNotRead where it is none."""
    trees = [(tree, sentence) for sentence in sentences if (tree := tree_of("numbers", sentence)) is not None]
    return _Numbers(trees).task() if trees else None


@dataclass
class _Numbers:
    """The numbers of one story and what is said of them."""

    trees: list[tuple[Node, Plain]]
    keys: tuple[str, ...] = ()
    row: Consecutive | None = None
    running: Size | None = None
    claims: list[Said] = field(default_factory=list)
    wanted: list[Wanted] = field(default_factory=list)
    together: bool = False

    def task(self) -> StoryTask:
        """The task, with every sentence accounted for."""
        self._cast()
        for tree, sentence in self.trees:
            for node in every(tree, "claim", "whose", "ask"):
                for claim in self._asked(node) if node.expr_name == "ask" else self._told(node):
                    self.claims.append(Said(sentence.said, claim))
        if self.running is not None:
            raise NotUnderstood("a result is not told", 0)
        if not self.claims or not self.wanted:
            raise NotUnderstood("numbers of which nothing is told or asked", 0)
        words = " ".join(sentence.text for _, sentence in self.trees)
        sign: Literal["any", "positive"] = "positive" if re.search(r"\bpositive\b|\bnatural\b", words) else "any"
        whole = self.row is not None or bool(re.search(r"\bintegers?\b|\bwhole\b|\bnatural\b", words))
        kind = "a natural number" if sign == "positive" and whole else "such a number"
        if self.row is not None:
            self.claims.insert(0, Said(self._row_said(), self.row))
        sought = tuple(Sought(key, self._meaning(key), "", sign, whole, kind) for key in self.keys)
        return StoryTask(sought, tuple(self.claims), tuple(self.wanted), not self.together)

    def _row_said(self) -> str:
        return next(sentence.said for tree, sentence in self.trees if has(tree, "consecutive") or tree.expr_name)

    def _meaning(self, key: str) -> str:
        if key == "number":
            return "the number"
        return _MEANINGS.get(key, f"the {key} number")

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
                    named.append(_name(node))
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
            differ = any(has_any(tree, "differ", "whole_difference") or "difference" in sentence.text
                         for tree, sentence in self.trees)
            used = {"larger", "smaller"} if differ else {"one", "other"}
        cast = next((cast for cast in _CASTS if used <= set(cast) and (len(cast) == 2 or len(used) > 1)), None)
        if cast is None:
            raise NotUnderstood("which numbers are meant", 0)
        self.keys = cast
        if len(cast) == 2 and re.search(r"\b3 (?:\w+ )?(?:numbers|integers)\b", " ".join(s.text for _, s in self.trees)):
            raise NotUnderstood("three numbers of which two are named", 0)

    def _consecutive(self, rows: Sequence[Node], named: Sequence[str]) -> None:
        specs = [re.search(r"(?:(\d) )?(?:[a-z]+ )*?consecutive(?: positive| natural| whole)* ?(even|odd)?", node.text)
                 for node in rows]
        counts = {spec.group(1) for spec in specs if spec and spec.group(1)}
        parities = {spec.group(2) or "" for spec in specs if spec}
        parity = next(iter(parities - {""}), "")
        if len(counts) != 1 or len(parities - {""}) > 1:
            raise NotUnderstood("how many consecutive numbers", 0)
        count = int(counts.pop())
        names = {2: ("first", "second"), 3: ("first", "second", "third"), 4: ("first", "second", "third", "fourth"),
                 5: ("first", "second", "third", "fourth", "fifth")}
        self.keys = names[count]
        assert parity in ("", "even", "odd")
        self.row = Consecutive(self.keys, 2 if parity else 1, "even" if parity == "even" else "odd" if parity else "")

    def _key(self, node: Node) -> str:
        """The key that a name stands for."""
        name = _name(node)
        if self.row is not None:
            last = len(self.keys) - 1
            places = {"smallest": 0, "smaller": 0, "first": 0, "largest": last, "larger": last, "second": 1, "third": 2}
            if name == "middle" and len(self.keys) in (3, 5):
                return self.keys[last // 2]
            if name not in places or places[name] > last or (name in ("smaller", "larger") and last > 1):
                raise NotUnderstood(f"the {name} of {last + 1} numbers", node.start)
            return self.keys[places[name]]
        if name not in self.keys:
            raise NotUnderstood(f"the {name} number", node.start)
        return name

    def _all(self) -> tuple[Size, ...]:
        if len(self.keys) < 2:
            raise NotUnderstood("several numbers where one is told of", 0)
        return tuple(Named(key) for key in self.keys)

    def _told(self, node: Node) -> Iterator[Claim]:
        if node.expr_name == "whose":
            self._want_new(node)
            for clause in every(node, "whose_claim"):
                yield from self._whose(clause.children[0])
            return
        claim = node.children[0]
        match claim.expr_name:
            case "equation":
                left, right = every(claim, "size")
                yield Same(self._size(left), self._size(right))
            case "exceeds":
                left, right = every(claim, "size")
                yield Same(self._size(left), Added((self._size(right), _plain(the(claim, "plain")))))
            case "as_big":
                left, right = every(claim, "size")
                yield Same(self._size(left), Scaled(multiple_of(the(claim, "multiple")), self._size(right)))
            case "adds_up":
                yield Same(Added(self._all()), _plain(the(claim, "plain")))
            case "differ":
                apart, *total = every(claim, "plain")
                yield self._difference(_plain(apart))
                if total:
                    yield Same(Added(self._all()), _plain(total[0]))
            case "have_sum":
                traits = re.findall(r"\b(sum|total|difference|product) of", claim.text)
                for trait, number in zip(traits, every(claim, "plain"), strict=True):
                    yield self._trait(trait, _plain(number))
            case "ratio":
                yield from _in_ratio(self._all(), the(claim, "ratio_of").text)
            case "thought":
                self.running = self._start()
                for operation in every(claim, "operation"):
                    self._operate(operation)
            case "process":
                self._process(claim)
            case "answered":
                if self.running is None:
                    raise NotUnderstood("a result of nothing", claim.start)
                yield Same(self.running, self._size(the(claim, "size")))
                self.running = None

    def _whose(self, clause: Node) -> Iterator[Claim]:
        match clause.expr_name:
            case "trait":
                word = re.match(r"(?:a )?(sum|total|difference|product|add|differ)", clause.text)
                assert word is not None
                yield self._trait(word.group(1), _plain(the(clause, "plain")))
            case "own_claim":
                if self.keys != ("number",) or clause.text.startswith("exceeds"):
                    raise NotUnderstood("which number is meant", clause.start)
                yield Same(Named("number"), self._size(the(clause, "size")))
            case _:
                yield from self._told(the(clause, "claim") if clause.expr_name != "claim" else clause)

    def _trait(self, word: str, value: Size) -> Claim:
        if word in ("sum", "total", "add"):
            return Same(Added(self._all()), value)
        if word == "product":
            return Same(self._product(), value)
        return self._difference(value)

    def _product(self) -> Size:
        first_one, *others = self._all()
        for other in others:
            first_one = Multiplied(first_one, other)
        return first_one

    def _difference(self, value: Size) -> Claim:
        return Same(self._apart(), value)

    def _apart(self) -> Size:
        if self.keys != ("larger", "smaller"):
            raise NotUnderstood("which number is the larger", 0)
        return Taken(Named("larger"), Named("smaller"))

    def _start(self) -> Size:
        if self.keys != ("number",):
            raise NotUnderstood("which number is thought of", 0)
        return Named("number")

    def _process(self, claim: Node) -> None:
        for node in within(claim, "operation", "pulled", "pulled_by"):
            if node.expr_name == "operation":
                self._operate(node)
            elif node.expr_name == "pulled_by":
                into = first(node, "size")
                if into is not None:
                    if self.running is not None:
                        raise NotUnderstood("a second start", node.start)
                    self.running = self._size(into)
                self._change(node.text, _plain(the(node, "plain")))
            else:
                own = first(claim, "size") if self.running is None else None
                if own is not None:
                    self.running = self._size(own)
                number = first(node, "plain")
                self._change(node.text, _plain(number) if number is not None else None)

    def _operate(self, node: Node) -> None:
        number = first(node, "plain")
        if self.running is None:
            if not re.search(r"\b(?:number|it|this|that)\b", node.text):
                raise NotUnderstood("what is changed", node.start)
            self.running = self._start()
        self._change(node.text, _plain(number) if number is not None else None)

    def _change(self, words: str, by: Amount | None) -> None:
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

    def _size(self, node: Node) -> Size:
        parts = [child for child in every(node, "part", "tail")]
        size = self._part(parts[0].children[0])
        for tail in parts[1:]:
            other = self._part(the(tail, "part").children[0])
            added = re.match(r",? (?:plus|increased|added)", tail.text)
            size = Added((size, other)) if added else Taken(size, other)
        return size

    def _part(self, node: Node) -> Size:
        inner = [child.children[0] for child in every(node, "part")]
        match node.expr_name:
            case "plain":
                return _plain(node)
            case "atom":
                return self._atom(node.children[0])
            case "bracketed":
                return self._part(node.children[0])
            case "compared":
                amount, base = _plain(the(node, "plain")), self._part(inner[0])
                more = re.search(r"\b(?:more|greater|larger|bigger) than", node.text[: inner[0].start - node.start])
                return Added((base, amount)) if more else Taken(base, amount)
            case "taken_from":
                amount, base = _plain(the(node, "plain")), self._part(inner[0])
                added = "added to" in node.text[: inner[0].start - node.start]
                return Added((base, amount)) if added else Taken(base, amount)
            case "scaled" | "scaled_sum":
                whole = inner[0] if inner and node.expr_name == "scaled" else the(node, "summed", "differed", "bracketed")
                return Scaled(multiple_of(the(node, "multiple")), self._part(whole))
            case "summed":
                return Added(tuple(map(self._part, inner)))
            case "differed":
                return Taken(self._part(inner[0]), self._part(inner[1]))
            case "multiplied":
                return Multiplied(self._part(inner[0]), self._part(inner[1]))
            case "squares":
                return Added(tuple(Squared(one) for one in self._all()))
            case "square":
                return Squared(self._part(inner[0]) if inner else self._atom(the(node, "atom").children[0]))
            case "operated":
                base, by = self._atom(the(node, "atom").children[0]), _plain(the(node, "plain"))
                return Scaled(by.number, base) if "multiplied" in node.text else Divided(base, by)
        raise NotUnderstood(node.text, node.start)

    def _atom(self, node: Node) -> Size:
        match node.expr_name:
            case "whole_sum":
                return Added(self._all())
            case "whole_product":
                return self._product()
            case "whole_difference":
                return self._apart()
            case "consecutive_size":
                return self._product() if re.match(r"(?:the )?product", node.text) else Added(self._all())
            case "named":
                return Named(self._key(node))
        if self.keys == ("number",):
            return Named("number")
        if self.keys == ("one", "other") and node.text not in ("it", "itself"):
            return Named("one")
        raise NotUnderstood(f"which number “{node.text}” is", node.start)

    def _asked(self, node: Node) -> Iterator[Claim]:
        asked = list(every(node, "asked"))
        for one in asked or [None]:
            if one is None:
                self.wanted.append(Wanted(self._start(), "the number"))
                continue
            what = one.children[0]
            match what.expr_name:
                case "all_numbers":
                    self._all()
                    self._want_all()
                case "named":
                    self._want_named(what)
                case "whole_sum" | "whole_product":
                    name = re.sub(r" of .*", "", what.text)
                    self.wanted.append(Wanted(self._atom(what), f"{name} of the numbers"))
                case _:
                    self.wanted.append(Wanted(self._atom(what), "the number"))
        yield from ()

    def _want_named(self, node: Node) -> None:
        name = _name(node)
        if self.row is None and name not in self.keys and name in ("larger", "smaller", "largest", "smallest"):
            size: Size = Extreme(self.keys, name.startswith("l"))
            self._all()
        else:
            size = Named(self._key(node))
        self.wanted.append(Wanted(size, f"the {name} number"))

    def _want_new(self, node: Node) -> None:
        if has(node, "new_number"):
            self.wanted.append(Wanted(self._start(), "the number"))
        else:
            self._want_all()

    def _want_all(self) -> None:
        self._all()
        self.wanted.extend(Wanted(Named(key), self._meaning(key)) for key in self.keys)
        self.together = True


def _name(node: Node) -> str:
    word = re.match(r"(?:the )?([a-z]+)", node.text)
    assert word is not None
    return _ALIKE.get(word.group(1), word.group(1))


def _plain(node: Node) -> Amount:
    return Amount(number_in(node.text))


def _in_ratio(sizes: Sequence[Size], text: str) -> Iterator[Claim]:
    shares = [Number(Fraction(number)) for number in re.findall(r"\d+", text)]
    if len(shares) != len(sizes) or any(not share.value for share in shares):
        raise NotUnderstood("a ratio of other numbers", 0)
    for size, share in zip(sizes[1:], shares[1:], strict=True):
        yield Same(Scaled(shares[0], size), Scaled(share, sizes[0]))
