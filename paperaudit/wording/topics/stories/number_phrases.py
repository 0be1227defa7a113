"""The phrases of stories of numbers: 5 more than twice the smaller, the sum of the squares, the middle one."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.maths.tree import every, first, the
from paperaudit.model.expression import Number
from paperaudit.model.story import (
    Added,
    Amount,
    Claim,
    Consecutive,
    Divided,
    Multiplied,
    Named,
    Same,
    Scaled,
    Size,
    Squared,
    Taken,
)
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.stories.amounts import multiple_of, number_in

_ALIKE = {
    "bigger": "larger",
    "greater": "larger",
    "biggest": "largest",
    "greatest": "largest",
    "last": "largest",
    "least": "smallest",
    "another": "other",
}
_MEANINGS = {"one": "one number", "other": "the other number"}


@dataclass
class NumberPhrases:
    """The numbers that a story has, by key, and the sizes that its phrases name."""

    keys: tuple[str, ...] = ()
    row: Consecutive | None = None

    def meaning(self, key: str) -> str:
        """How a number is named: "the larger number"."""
        if key == "number":
            return "the number"
        return _MEANINGS.get(key, f"the {key} number")

    def key(self, node: Node) -> str:
        """The key that a name stands for."""
        name = name_under(node)
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

    def everyone(self) -> tuple[Size, ...]:
        """All numbers of the story; raises NotUnderstood where there is one only."""
        if len(self.keys) < 2:
            raise NotUnderstood("several numbers where one is told of", 0)
        return tuple(Named(key) for key in self.keys)

    def in_order(self, ratio: str) -> tuple[Size, ...]:
        """All numbers in the order of a ratio: of 5 : 8 the smaller comes first."""
        sizes, terms = self.everyone(), [int(term) for term in re.findall(r"\d+", ratio)]
        rising = self.keys == ("larger", "smaller") and terms[0] < terms[-1]
        return sizes[::-1] if rising else sizes

    def product(self) -> Size:
        """The product of all numbers."""
        first_one, *others = self.everyone()
        for other in others:
            first_one = Multiplied(first_one, other)
        return first_one

    def difference(self, value: Size) -> Claim:
        """The larger less the smaller is so much."""
        return Same(self.apart(), value)

    def apart(self) -> Size:
        """The larger less the smaller; raises NotUnderstood where the story does not say which is which."""
        if self.keys != ("larger", "smaller"):
            raise NotUnderstood("which number is the larger", 0)
        return Taken(Named("larger"), Named("smaller"))

    def start(self) -> Size:
        """The one number of the story."""
        if self.keys != ("number",):
            raise NotUnderstood("which number is thought of", 0)
        return Named("number")

    def size(self, node: Node) -> Size:
        """The size that a phrase names."""
        parts = list(every(node, "part", "tail"))
        size = self.part(parts[0].children[0])
        for tail in parts[1:]:
            percent = first(tail, "percentage")
            other = (
                self.part(the(tail, "part").children[0]) if percent is None else Scaled(number_in(percent.text), size)
            )
            added = re.match(r",? (?:plus|increased|added)", tail.text)
            size = Added((size, other)) if added else Taken(size, other)
        return size

    def part(self, node: Node) -> Size:
        """The size of a phrase without a tail ("… increased by 5")."""
        inner = [child.children[0] for child in every(node, "part")]
        match node.expr_name:
            case "plain":
                return number_under(node)
            case "atom":
                return self.atom(node.children[0])
            case "bracketed":
                return self.part(node.children[0])
            case "compared":
                if inner[0].expr_name == "operated":
                    raise NotUnderstood("whether the sum is multiplied", node.start)
                amount, base = number_under(the(node, "plain")), self.part(inner[0])
                more = re.search(r"\b(?:more|greater|larger|bigger) than", node.text[: inner[0].start - node.start])
                return Added((base, amount)) if more else Taken(base, amount)
            case "taken_from":
                amount, base = number_under(the(node, "plain")), self.part(inner[0])
                added = "added to" in node.text[: inner[0].start - node.start]
                return Added((base, amount)) if added else Taken(base, amount)
            case "scaled" | "scaled_sum":
                whole = (
                    inner[0] if inner and node.expr_name == "scaled" else the(node, "summed", "differed", "bracketed")
                )
                return Scaled(multiple_of(the(node, "multiple")), self.part(whole))
            case "summed":
                return Added(tuple(map(self.part, inner)))
            case "differed":
                return Taken(self.part(inner[0]), self.part(inner[1]))
            case "multiplied":
                return Multiplied(self.part(inner[0]), self.part(inner[1]))
            case "squares":
                return Added(tuple(Squared(one) for one in self.everyone()))
            case "square":
                return Squared(self.part(inner[0]) if inner else self.atom(the(node, "atom").children[0]))
            case "operated":
                base, by = self.atom(the(node, "atom").children[0]), number_under(the(node, "plain"))
                return Scaled(by.number, base) if "multiplied" in node.text else Divided(base, by)
        raise NotUnderstood(node.text, node.start)

    def its(self, node: Node) -> Size:
        """Its square, its double, half of it."""
        number = self.start()
        if "square" in node.text:
            return Squared(number)
        if "reciprocal" in node.text:
            return Divided(Amount(Number(Fraction(1))), number)
        return Scaled(Number(Fraction(2)) if "double" in node.text else Number(Fraction(1, 2)), number)

    def atom(self, node: Node) -> Size:
        """The size of a single name: the number, the larger, their sum."""
        match node.expr_name:
            case "its":
                return self.its(node)
            case "whole_sum":
                return Added(self.everyone())
            case "whole_product":
                return self.product()
            case "whole_difference":
                return self.apart()
            case "consecutive_size":
                return self.product() if re.match(r"(?:the )?product", node.text) else Added(self.everyone())
            case "named":
                return Named(self.key(node))
        if self.keys == ("number",):
            return Named("number")
        if self.keys == ("one", "other") and node.text not in ("it", "itself"):
            return Named("one")
        raise NotUnderstood(f"which number “{node.text}” is", node.start)


def name_under(node: Node) -> str:
    """The name of a number in one spelling: bigger is larger."""
    word = re.match(r"(?:the )?([a-z]+)", node.text)
    assert word is not None
    return _ALIKE.get(word.group(1), word.group(1))


def number_under(node: Node) -> Amount:
    """The bare number under a node."""
    return Amount(number_in(node.text))


def in_ratio(sizes: Sequence[Size], text: str) -> Iterator[Claim]:
    """Sizes in the ratio of a text: "2 : 3"."""
    shares = [Number(Fraction(number)) for number in re.findall(r"\d+", text)]
    if len(shares) != len(sizes) or any(not share.value for share in shares):
        raise NotUnderstood("a ratio of other numbers", 0)
    for size, share in zip(sizes[1:], shares[1:], strict=True):
        yield Same(Scaled(shares[0], size), Scaled(share, sizes[0]))
