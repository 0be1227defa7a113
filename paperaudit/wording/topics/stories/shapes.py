"""Stories of rectangles and triangles: one side in terms of another, perimeter, area, angles."""

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
    Multiplied,
    Named,
    NotLess,
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
from paperaudit.wording.topics.stories.amounts import amount_of, multiple_of
from paperaudit.wording.topics.stories.cast import one_thing
from paperaudit.wording.topics.stories.grammar import tree_of
from paperaudit.wording.topics.stories.plain import Plain
from paperaudit.wording.topics.stories.trees import has_any, within

AHEAD = re.compile(r"\brectang|\btriangle\b")
_SHAPED = re.compile(
    r"^ (?:of|in) |^(?:the|an?|this|each|our|my) |\b(?:2|rectangular|right-angled|right angled|right|isosceles) "
    r"| (?:with|of) perimeter.*"
)
_TWO = Number(Fraction(2))
_SMALLER = re.compile(r" (?:less|shorter|narrower|smaller) than ")
_ALIKE = {"largest": "longest", "biggest": "longest", "smallest": "shortest", "another": "other"}
_ROWS: tuple[tuple[str, ...], ...] = (
    ("first", "second", "third"),
    ("shortest", "middle", "longest"),
    ("one", "other"),
    ("longer", "shorter"),
)


def shapes_story(sentences: Sequence[Plain]) -> StoryTask | None:
    """The story of a part as one of a shape; raises NotUnderstood or ExpressionNotRead where it is none."""
    trees = [(tree, sentence) for sentence in sentences if (tree := tree_of("shapes", sentence)) is not None]
    return _Shape(trees, " ".join(sentence.text for sentence in sentences)).task() if trees else None


@dataclass
class _Shape:
    """The one shape of a story."""

    trees: list[tuple[Node, Plain]]
    words: str
    keys: tuple[str, ...] = ()
    unit: str = ""
    kind: str = ""
    claims: list[Said] = field(default_factory=list)
    wanted: list[Wanted] = field(default_factory=list)

    def task(self) -> StoryTask:
        """The task, with every sentence accounted for."""
        if re.search(r"\bsquare(?! (?:m|cm|km|mm|metres?|centimetres?)\b)", self.words):
            raise NotUnderstood("a square beside it", 0)
        shapes = [node.text for tree, _ in self.trees for node in within(tree, "of_shape", "shape")]
        one_thing([_SHAPED.sub("", text) for text in shapes], ("rectangle", "triangle"))
        self._settle()
        for tree, sentence in self.trees:
            for node in within(tree, "claim"):
                for claim in self._told(node.children[0]):
                    self.claims.append(Said(sentence.said, claim))
        if not self.claims:
            raise NotUnderstood("a shape of which nothing is told", 0)
        self._by_nature()
        for tree, _ in self.trees:
            for node in within(tree, "ask"):
                self._asked(node)
        if not self.wanted:
            raise NotUnderstood("nothing is asked", 0)
        what = "an angle" if self.kind == "angles" else "a length"
        sought = tuple(Sought(key, self._meaning(key), self.unit, "positive", False, what) for key in self.keys)
        return StoryTask(sought, tuple(self.claims), tuple(self.wanted))

    def _settle(self) -> None:
        """What kind of shape it is, its parts and their unit."""
        words = self.words
        rectangle, triangle = "rectang" in words, "triangle" in words
        if rectangle == triangle:
            raise NotUnderstood("which shape it is", 0)
        names = {_ordinal(node) for tree, _ in self.trees for node in within(tree, "ordinal")}
        equal = any(True for tree, _ in self.trees for _ in within(tree, "equal_sides"))
        if rectangle:
            if names or equal:
                raise NotUnderstood("sides of a rectangle by their order", 0)
            self.kind, self.keys = "rectangle", ("length", "breadth")
        elif re.search(r"\bangles\b|\bangle of\b|\bangle is\b", re.sub(r"right[- ]angled", "", words)):
            row = next((row for row in _ROWS[:2] if names <= set(row)), None)
            if row is None or equal or len(names) < 3:
                raise NotUnderstood("which angles are meant", 0)
            self.kind, self.keys = "angles", row
        elif equal or ("isosceles" in words and "base" in words):
            self.kind, self.keys = "isosceles", ("equal", "base")
            if names or "isosceles" not in words:
                raise NotUnderstood("which sides are meant", 0)
        elif "hypotenuse" in words:
            row = next((row for row in _ROWS[2:] if names and names <= set(row)), None)
            if row is None or "right" not in words:
                raise NotUnderstood("which legs are meant", 0)
            self.kind, self.keys = "right", ("hypotenuse", *row)
        else:
            row = next((row for row in _ROWS[:2] if names <= set(row)), None)
            if row is None or len(names) < 3:
                raise NotUnderstood("which sides are meant", 0)
            self.kind, self.keys = "sides", row
        self._unit()

    def _unit(self) -> None:
        units = {amount_of(node).unit for tree, _ in self.trees for node in within(tree, "measure")}
        lengths = {unit for unit in units if not unit.endswith("²")}
        if not lengths and units:
            lengths = {unit.removesuffix("²") for unit in units}
        if not units and self.kind == "angles":
            lengths = {"°"}
        if len(lengths) != 1 or any(unit.removesuffix("²") not in lengths for unit in units):
            raise NotUnderstood("lengths in different units", 0)
        self.unit = lengths.pop()
        if (self.unit == "°") != (self.kind == "angles"):
            raise NotUnderstood("a length in degrees or an angle in a length", 0)

    def _meaning(self, key: str) -> str:
        if self.kind == "rectangle":
            return (
                "the width"
                if key == "breadth" and "width" in self.words and "breadth" not in self.words
                else f"the {key}"
            )
        if self.kind == "isosceles":
            return "the base" if key == "base" else "each equal side"
        if key == "hypotenuse":
            return "the hypotenuse"
        noun = {"angles": "angle", "right": "leg"}.get(self.kind, "side")
        return f"{'one' if key == 'one' else f'the {key}'} {noun}"

    def _by_nature(self) -> None:
        """What every such shape has: the angle sum, Pythagoras' theorem."""
        said = next(sentence.said for tree, sentence in self.trees if has_any(tree, "claim"))
        if self.kind == "angles":
            straight = Amount(Number(Fraction(180)), "°")
            self.claims.append(Said(said, Same(Added(tuple(map(Named, self.keys))), straight)))
        told = {
            dim.text for tree, _ in self.trees for claim in within(tree, "claim") for dim in within(claim, "dim_word")
        }
        alone = not any(has_any(tree, "longer_than_wide", "ratio") for tree, _ in self.trees)
        if self.kind == "rectangle" and told == {"perimeter", "area"} and alone:
            self.claims.append(Said("the length of a rectangle is its longer side", NotLess("length", "breadth")))
        if self.kind == "right":
            first_leg, second_leg = (Squared(Named(key)) for key in self.keys[1:])
            self.claims.append(Said(said, Same(Added((first_leg, second_leg)), Squared(Named("hypotenuse")))))

    def _told(self, node: Node) -> Iterator[Claim]:
        match node.expr_name:
            case "longer_than_wide":
                breadth = self._dim("breadth")
                times, by = next(within(node, "multiple"), None), next(within(node, "measure"), None)
                longer = Scaled(multiple_of(times), breadth) if times is not None else None
                yield Same(self._dim("length"), longer or Added((breadth, self._amount(by, "length"))))
            case "has":
                for trait in within(node, "trait"):
                    word = the(trait, "dim_word").text
                    yield Same(self._dim(word), self._size(the(trait, "size").children[0], word))
            case "ratio":
                long, broad = (Number(Fraction(number)) for number in re.findall(r"\d+", node.children[-1].text))
                if not long.value * broad.value:
                    raise NotUnderstood("a ratio with a nought", node.start)
                yield Same(self._dim("length"), Scaled(Number(long.value / broad.value), self._dim("breadth")))
            case "exceeds":
                left, right = (self._size(size.children[0], "length") for size in within(node, "size"))
                yield Same(left, Added((right, self._amount(the(node, "measure"), "length"))))
            case "equation":
                left, right = (size.children[0] for size in node.children if size.expr_name == "size")
                word = the(left, "dim_word").text if first(left, "dim_word") is not None else "length"
                yield Same(self._size(left, word), self._size(right, word))
                for also in within(node, "also"):
                    yield Same(self._size(left, word), self._size(also.children[0] if also.children else also, word))

    def _amount(self, node: Node | None, word: str) -> Amount:
        if node is None:
            raise NotUnderstood("by how much", 0)
        amount = amount_of(node)
        wanted = f"{self.unit}²" if word == "area" else self.unit
        if amount.unit != wanted:
            raise NotUnderstood(f"an amount in {amount.unit or 'no unit'}", node.start)
        return Amount(amount.number, amount.unit)

    def _size(self, node: Node, word: str) -> Size:
        match node.expr_name:
            case "compared":
                by = self._amount(node.children[0].children[0], word)
                base = self._size(the(node, "size").children[0], word)
                words = node.text[len(node.children[0].text) :]
                return Taken(base, by) if _SMALLER.match(words) else Added((base, by))
            case "scaled":
                return Scaled(multiple_of(the(node, "multiple")), self._size(the(node, "size").children[0], word))
            case "sum_of":
                return Added(tuple(self._part(part) for part in within(node, "part")))
            case "part":
                return self._part(node)
        return self._amount(node, word)

    def _part(self, node: Node) -> Size:
        dim, ordinal = next(within(node, "dim_word"), None), next(within(node, "ordinal"), None)
        if dim is not None:
            return self._dim(dim.text)
        if ordinal is None:
            return self._named("equal")
        return self._named(_ordinal(ordinal))

    def _named(self, key: str) -> Size:
        if key not in self.keys:
            raise NotUnderstood(f"which side the {key} one is", 0)
        return Named(key)

    def _dim(self, word: str) -> Size:
        key = "breadth" if word == "width" else word
        if key in self.keys:
            return Named(key)
        sides = tuple(map(Named, self.keys))
        if key == "perimeter" and self.kind in ("rectangle", "isosceles", "sides", "right"):
            if self.kind == "rectangle":
                return Scaled(_TWO, Added(sides))
            return Added((Scaled(_TWO, sides[0]), sides[1])) if self.kind == "isosceles" else Added(sides)
        if key == "area" and self.kind == "rectangle":
            return Multiplied(*sides)
        raise NotUnderstood(f"the {word} of this shape", 0)

    def _asked(self, node: Node) -> None:
        found = next(within(node, "dimensions", "all_parts"), None)
        if found is not None:
            if (found.expr_name == "dimensions") != (self.kind == "rectangle"):
                raise NotUnderstood("what is asked for", node.start)
            keys = self.keys[1:] if "legs" in found.text else self.keys
            self.wanted.extend(self._want(Named(key), self._meaning(key), self.unit) for key in keys)
            return
        for how in within(node, "how"):
            for word in re.findall(r"\b(long|wide)\b", how.text):
                key = "length" if word == "long" else "breadth"
                self.wanted.append(self._want(self._dim(key), self._meaning(key), self.unit))
        for want in within(node, "wanted"):
            dim, ordinal = next(within(want, "dim_word"), None), next(within(want, "ordinal"), None)
            if dim is not None:
                unit = f"{self.unit}²" if dim.text == "area" else self.unit
                self.wanted.append(self._want(self._dim(dim.text), f"the {dim.text}", unit))
            elif ordinal is not None and _ordinal(ordinal) in ("longest", "shortest") and "longest" not in self.keys:
                word = _ordinal(ordinal)
                self.wanted.append(
                    self._want(Extreme(self.keys, word == "longest"), f"the {ordinal.text} one", self.unit)
                )
            else:
                size = self._part(want)
                assert isinstance(size, Named)
                self.wanted.append(self._want(size, self._meaning(size.key), self.unit))

    @staticmethod
    def _want(size: Size, meaning: str, unit: str) -> Wanted:
        return Wanted(size, meaning, unit)


def _ordinal(node: Node) -> str:
    return str(_ALIKE.get(node.text, node.text))
