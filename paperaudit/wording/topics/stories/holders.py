"""Who and what has something in a story of shares: people, pieces, kinds of things."""

import re
from dataclasses import dataclass, field

from parsimonious.nodes import Node

from paperaudit.maths.tree import first, the
from paperaudit.maths.units import MONEY
from paperaudit.model.story import (
    Named,
    Scaled,
    Sign,
    Size,
    Sought,
)
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.stories.amounts import multiple_of
from paperaudit.wording.topics.stories.cast import Cast, bare
from paperaudit.wording.topics.stories.measures import Scale
from paperaudit.wording.topics.stories.trees import has_any, within

PIECES = {"another": "other", "larger": "longer", "smaller": "shorter"}


@dataclass
class Holders:
    """Everybody and everything that has something in one story, by key, and how it is named."""

    cast: Cast
    scale: Scale
    kinds: set[str] = field(default_factory=set)
    counts: bool = False
    cut: bool = False

    def _kinds_of_one(self, tree: Node) -> bool:
        """Whether somebody has more of one kind than of another, and not more than somebody else."""
        claims = list(within(tree, "kinds_fold", "kinds_more"))
        return any(not self._names_person(list(within(claim, "things"))[1].text) for claim in claims)

    def _sought(self, key: str) -> Sought:
        whole = not self.scale.unit
        what = self._what()
        kind = (
            f"a number of {what}" if whole else "an amount of money" if self.scale.unit in MONEY else "a length or mass"
        )
        sign: Sign = "not negative" if whole or self.scale.unit in MONEY else "positive"
        return Sought(key, self._meaning(key), self.scale.unit, sign, whole, kind)

    def _what(self) -> str:
        kind = next(iter(self.kinds - {""}), "")
        return kind if kind else "things"

    def _meaning(self, key: str) -> str:
        shown = self.cast.shown(key)
        if self.counts:
            return f"the number of {self.cast.names[key]}"
        if self.cut:
            return f"{shown} piece"
        return f"{shown}'s share" if shown[0].isupper() else shown

    def _kind(self, text: str) -> str:
        kind = bare(re.sub(r"^ ?(?:of )?", "", text))
        return "" if kind in ("money", "") else kind

    def _sides(self, node: Node) -> tuple[Size, Size]:
        people = list(within(node, "who"))
        if len(people) != 2:
            raise NotUnderstood("who is compared", node.start)
        one, other = people
        if first(node, "kind") is not None and not self._is_person(other):
            raise NotUnderstood("kinds of things that one person has", node.start)
        target = first(node, "target")
        if has_any(one, "pronoun"):
            key = self._key(other)
            names = (self.cast.only_other([key]), key)
        elif has_any(other, "pronoun"):
            key = self._key(one)
            names = (key, self.cast.only_other([key]))
        else:
            names = (self._key(one), self._key(other))
        if names[0] == names[1]:
            raise NotUnderstood("a comparison of one with itself", node.start)
        size: Size = Named(names[1])
        if target is not None and (times := first(target, "multiple")) is not None:
            size = Scaled(multiple_of(times), size)
        return Named(names[0]), size

    def _is_person(self, node: Node) -> bool:
        """Whether a name has an article or a capital: "than Ben", "than his brother", and not "than goats"."""
        if has_any(node, "pronoun", "elder", "piece"):
            return True
        return self._names_person(the(node, "name").text)

    def _names_person(self, name: str) -> bool:
        return (
            re.match(r"(?:the|a|an|his|her|their|my) ", name) is not None
            or self.cast.cased(name.split()[0])[0].isupper()
        )

    def _key(self, node: Node) -> str:
        elder = first(node, "elder")
        if elder is not None:
            return self.cast.take(elder.text)
        piece = first(node, "piece")
        if piece is not None:
            word = re.sub(r"^(?:the )", "", piece.text).split()[0]
            return self.cast.take(PIECES.get(word, word))
        if has_any(node, "pronoun"):
            raise NotUnderstood("whom a pronoun means", node.start)
        name = the(node, "name").text
        if re.match(r"(?:rest|remainder|total)\b", bare(name)):
            raise NotUnderstood("a rest or total", node.start)
        return self.cast.take(name)

    def _who(self, node: Node) -> Size:
        return Named(self._key(node))

    def _counted_key(self, text: str) -> str:
        return self.cast.take(re.sub(r"^ ", "", text))
