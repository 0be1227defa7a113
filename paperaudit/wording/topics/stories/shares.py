"""Stories of what people or things have: more than each other, so many times as much, together."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.maths.tree import first, the
from paperaudit.model.expression import Number
from paperaudit.model.story import (
    Added,
    Amount,
    Claim,
    Extreme,
    Named,
    Said,
    Same,
    Scaled,
    StoryTask,
    Taken,
    Wanted,
)
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.stories.amounts import multiple_of, number_in
from paperaudit.wording.topics.stories.cast import Cast, bare, one_thing
from paperaudit.wording.topics.stories.grammar import tree_of
from paperaudit.wording.topics.stories.holders import PIECES, Holders
from paperaudit.wording.topics.stories.measures import Scale
from paperaudit.wording.topics.stories.plain import Plain
from paperaudit.wording.topics.stories.trees import has_any, within

_VERBS = re.compile(r"^ (?:will |must |should |to )?([a-z]+)")
_SAME_DEED = {
    **dict.fromkeys(("has", "have", "had", "own", "owns", "owned", "holds", "hold", "contains", "contain"), "have"),
    **dict.fromkeys(("gets", "get", "got", "receives", "receive", "received"), "get"),
    **dict.fromkeys(("is", "are", "was", "were"), "be"),
    **dict.fromkeys(("caught", "catch", "catches"), "catch"),
    **dict.fromkeys(("made", "make", "makes"), "make"),
    **dict.fromkeys(("won", "win", "wins"), "win"),
    **dict.fromkeys(("sold", "sell", "sells"), "sell"),
    **dict.fromkeys(("spent", "spend", "spends"), "spend"),
    **dict.fromkeys(("took", "take", "takes"), "take"),
    **dict.fromkeys(("ran", "run", "runs"), "run"),
    **dict.fromkeys(("wrote", "write", "writes"), "write"),
    **dict.fromkeys(("drove", "drive", "drives"), "drive"),
    **dict.fromkeys(("paid", "pay", "pays"), "pay"),
}
AHEAD = re.compile(
    r"\b(?:more|less|fewer|longer|shorter|heavier|lighter|taller|cheaper|dearer|as (?:many|much|long|heavy|tall)|"
    r"shared?|"
    r"divided|split|altogether|together|total|difference|in all|times|twice)\b"
)
_LESS = re.compile(r"^(?:less|fewer|shorter|lighter|cheaper|smaller|lower)$")


def shares_story(sentences: Sequence[Plain]) -> StoryTask | None:
    """The story of a part as one of shares; raises NotUnderstood or ExpressionNotRead where it is none."""
    trees = [(tree, sentence) for sentence in sentences if (tree := tree_of("shares", sentence)) is not None]
    return _Shares(Cast(sentences), Scale.of([tree for tree, _ in trees]), trees=trees).task() if trees else None


@dataclass
class _Shares(Holders):
    """Everybody and everything that has something in one story."""

    trees: list[tuple[Node, Plain]] = field(default_factory=list)
    claims: list[Said] = field(default_factory=list)
    wanted: list[Wanted] = field(default_factory=list)
    totals: list[tuple[int, str, Amount]] = field(default_factory=list)
    known: list[int] = field(default_factory=list)
    owners: set[str] = field(default_factory=set)
    held: set[str] = field(default_factory=set)

    def task(self) -> StoryTask:
        """The task, with every sentence accounted for."""
        self.cut = any(has_any(tree, "pieces") for tree, _ in self.trees)
        self.counts = any(
            has_any(tree, "there_more", "there_fold") or self._kinds_of_one(tree) for tree, _ in self.trees
        )
        for tree, sentence in self.trees:
            for node in within(tree, "claim"):
                for claim in self._told(node.children[0], sentence):
                    self.claims.append(Said(sentence.said, claim))
        self._of_one_kind()
        self._add_totals()
        for tree, _ in self.trees:
            for node in within(tree, "ask"):
                self._asked(node.children[0])
        if not self.claims or not self.wanted or len(self.kinds - {""}) > 1 or len(self.cast.names) < 2:
            raise NotUnderstood("shares of which too little is told or asked", 0)
        if self.scale.unit and self.kinds - {"", "money", "amount", "rand"}:
            raise NotUnderstood("things and amounts of money", 0)
        sought = tuple(self._sought(key) for key in self.cast.names)
        return StoryTask(sought, tuple(self.claims), tuple(self.wanted))

    def _of_one_kind(self) -> None:
        """Nobody is left out of "3 friends", and what one has is not compared with what another has earned."""
        counts = {
            int(found)
            for tree, _ in self.trees
            for node in within(tree, "group", "pieces")
            for found in re.findall(r"(?:^|\binto |\bthe )([23])\b", node.text)
        }
        if counts - {len(self.cast.names)}:
            raise NotUnderstood("a share of which nothing is told", 0)
        verbs = {verb for tree, _ in self.trees for node in within(tree, "verb") for verb in _VERBS.findall(node.text)}
        if len({_SAME_DEED.get(verb, verb[:3]) for verb in verbs}) > 1:
            raise NotUnderstood("different deeds in one comparison", 0)

    def _total(self, sentence: Plain, total: Amount) -> None:
        """Remember what everybody has together, and how many are known when it is said."""
        self.totals.append((len(self.claims), sentence.said, total))
        self.known.append(len(self.cast.names))

    def _add_totals(self) -> None:
        """What everybody has together, now that everybody is known."""
        for at, (place, said, total) in enumerate(self.totals):
            keys = [key for key in self.cast.names if key not in self.held]
            if len(keys) < 2 or (not self.counts and 2 <= self.known[at] < len(keys)):
                raise NotUnderstood("whose shares are added", 0)
            self.claims.insert(place + at, Said(said, Same(Added(tuple(map(Named, keys))), total)))

    def _told(self, node: Node, sentence: Plain) -> Iterator[Claim]:
        if not has_any(node, "there_more", "there_fold", "there_told") and node.expr_name not in (
            "there_more",
            "there_fold",
            "there_told",
        ):
            self.kinds |= {self._kind(kind.text) for kind in within(node, "kind")}
        match node.expr_name:
            case "more" | "longer":
                yield self._more(node)
            case "fold" | "as_long":
                factor = multiple_of(the(node, "fold_of") if node.expr_name == "fold" else node)
                one, target = self._sides(node)
                yield Same(one, Scaled(factor, target))
            case "same_as":
                one, target = self._sides(node)
                yield Same(one, target)
            case "kinds_fold" | "kinds_more":
                yield self._kinds(node)
            case "there_more" | "there_fold":
                yield self._there(node)
            case "in_holder":
                number = Amount(number_in(the(node, "number").text))
                self._total(sentence, number)
                yield self._there(the(node, "there_more", "there_fold"))
            case "owned":
                yield from self._counted(node, sentence)
            case "total" | "shared" | "in_ratio" | "pieces":
                yield from self._together(node, sentence)
            case "there_told" | "held":
                yield from self._counted(node, sentence)
            case "told_amount" if self.owners:
                yield from self._counted(node, sentence)
            case "told_amount":
                yield Same(self._who(the(node, "who")), self.scale.amount(the(node, "amount_of").children[0]))
            case _:
                raise NotUnderstood(node.text, node.start)

    def _more(self, node: Node) -> Claim:
        pattern = (
            r"(?:^|[ ])(more expensive|more|less|fewer|longer|shorter|heavier|lighter|taller|dearer|cheaper|bigger|"
            r"smaller|higher|lower|deeper)(?= )"
        )
        after = node.text[the(node, "amount_of").end - node.start :]
        word = re.search(pattern, after)
        assert word is not None
        by = self.scale.amount(the(node, "amount_of").children[0])
        one, target = self._sides(node)
        return Same(one, Taken(target, by) if _LESS.match(word.group(1)) else Added((target, by)))

    def _kinds(self, node: Node) -> Claim:
        """Twice as many sheep as goats that one farmer has; "than Ben" compares two people."""
        one, other = (things.text for things in within(node, "things"))
        if not self._names_person(other):
            self.owners.add(the(node, "who").text)
            names = (self._counted_key(one), self._counted_key(other))
        else:
            self.kinds.add(self._kind(one))
            owner = the(node, "who")
            key = self.cast.take(other)
            names = (self.cast.only_other([key]) if has_any(owner, "pronoun") else self._key(owner), key)
            if names[0] == names[1]:
                raise NotUnderstood("a comparison of one with itself", node.start)
        if node.expr_name == "kinds_fold":
            return Same(Named(names[0]), Scaled(multiple_of(node), Named(names[1])))
        by = Amount(number_in(the(node, "number").text))
        more = re.search(r"\d more ", node.text)
        return Same(Named(names[0]), Added((Named(names[1]), by)) if more else Taken(Named(names[1]), by))

    def _there(self, node: Node) -> Claim:
        one, other = (self._counted_key(things.text) for things in within(node, "things"))
        if node.expr_name == "there_fold":
            return Same(Named(one), Scaled(multiple_of(node), Named(other)))
        by = Amount(number_in(the(node, "number").text))
        more = re.search(r"^there (?:are|were) [\d./]+ more", node.text)
        return Same(Named(one), Added((Named(other), by)) if more else Taken(Named(other), by))

    def _counted(self, node: Node, sentence: Plain) -> Iterator[Claim]:
        """So many of a kind that is compared, or so many in all."""
        number = Amount(number_in(next(within(node, "number")).text))
        things = next(within(node, "things")).text
        if first(node, "who") is not None:
            if not self.owners:
                raise NotUnderstood("who else has some", node.start)
            one_thing([*self.owners, the(node, "who").text], ("he", "she", "it"))
        if not self.counts:
            raise NotUnderstood("things of which no kinds are compared", node.start)
        compared = {
            bare(one.text)
            for tree, _ in self.trees
            for claim in within(tree, "there_more", "there_fold", "kinds_fold", "kinds_more")
            for one in within(claim, "things")
        }
        if bare(things) in compared:
            yield Same(Named(self._counted_key(things)), number)
        else:
            self._total(sentence, number)

    def _together(self, node: Node, sentence: Plain) -> Iterator[Claim]:
        place = next(within(node, "amount_of"), None) or next(within(node, "measure"), None)
        if place is None:
            raise NotUnderstood("how much", node.start)
        total = self.scale.amount(place.children[0] if place.expr_name == "amount_of" else place)
        people = [self._key(one) for whos in within(node, "whos") for one in within(whos, "who")]
        if node.expr_name == "in_ratio":
            shares = [Number(Fraction(number)) for number in re.findall(r"\d+", the_text(node, "ratio_of"))]
            if len(shares) != len(people) or any(not share.value for share in shares):
                raise NotUnderstood("a ratio of other numbers", node.start)
            for key, share in zip(people[1:], shares[1:], strict=True):
                yield Same(Named(key), Scaled(Number(share.value / shares[0].value), Named(people[0])))
        if people:
            yield Same(Added(tuple(map(Named, people))), total)
        else:
            self._total(sentence, total)

    def _asked(self, node: Node) -> None:
        people = list(within(node, "who"))
        self.kinds |= {self._kind(things.text) for things in within(node, "things")} if not self.counts else set()
        if node.expr_name == "how_many_there" or (self.counts and node.expr_name in ("how_many", "find_share")):
            self._asked_counts(node)
        elif people:
            for person in people:
                self._want(person)
        else:
            for key in self.cast.names:
                self._want_key(key)

    def _asked_counts(self, node: Node) -> None:
        names = [things.text for things in within(node, "things")] or [one.text for one in within(node, "name")]
        for name in names:
            self._want_key(self.cast.find(name))

    def _want(self, node: Node) -> None:
        piece = first(node, "piece")
        if (elder := first(node, "elder")) is not None:
            self._want_key(self.cast.find(elder.text))
            return
        if piece is None:
            self._want_key(self.cast.find(the(node, "name").text))
            return
        word = re.sub(r"^(?:the )", "", piece.text).split()[0]
        word = PIECES.get(word, word)
        if word in self.cast.names:
            self._want_key(word)
        elif word in ("longer", "shorter", "longest", "shortest"):
            size = Extreme(tuple(self.cast.names), word.startswith("long"))
            self.wanted.append(Wanted(size, f"the {word} piece", self.scale.unit))
        else:
            raise NotUnderstood(f"which one “{piece.text}” is", node.start)

    def _want_key(self, key: str) -> None:
        self.wanted.append(Wanted(Named(key), self._meaning(key), self.scale.unit))


def the_text(node: Node, rule: str) -> str:
    """The text of the first descendant under a rule."""
    return str(next(within(node, rule)).text)
