"""Stories of a number of two figures, and of the number with its figures the other way round."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from parsimonious.nodes import Node

from paperaudit.maths.tree import first, the
from paperaudit.model.story import (
    Added,
    Amount,
    Claim,
    Figures,
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
from paperaudit.wording.topics.stories.grammar import tree_of
from paperaudit.wording.topics.stories.plain import Plain
from paperaudit.wording.topics.stories.trees import within

AHEAD = re.compile(r"\b(?:digits?|figures?)\b")
_NUMBER, _TURNED = Figures(("tens", "units")), Figures(("units", "tens"))


def figures_story(sentences: Sequence[Plain]) -> StoryTask | None:
    """The story of a part as one of a two-figure number; raises NotUnderstood or ExpressionNotRead where it is none."""
    trees = [(tree, sentence) for sentence in sentences if (tree := tree_of("figures", sentence)) is not None]
    if not re.search(r"\b2[- ]digit\b|\b2 (?:digits|figures)\b", " ".join(sentence.text for sentence in sentences)):
        raise NotUnderstood("a number of how many figures", 0)
    return _Number(trees).task() if trees else None


@dataclass
class _Number:
    """The one number of a story."""

    trees: list[tuple[Node, Plain]]
    claims: list[Said] = field(default_factory=list)

    def task(self) -> StoryTask:
        """The task, with every sentence accounted for."""
        for tree, sentence in self.trees:
            for node in within(tree, "claim"):
                for claim in self._told(node.children[0]):
                    self.claims.append(Said(sentence.said, claim))
        asked = any(True for tree, _ in self.trees for _ in within(tree, "ask"))
        if not self.claims or not asked:
            raise NotUnderstood("a number of which too little is told or asked", 0)
        sought = tuple(
            Sought(key, f"the {key} digit", "", "not negative", True, "a digit") for key in ("tens", "units")
        )
        return StoryTask(sought, tuple(self.claims), (Wanted(_NUMBER, "the number"),))

    def _told(self, node: Node) -> Iterator[Claim]:
        match node.expr_name:
            case "equation":
                left, right = (self._size(size.children[0]) for size in node.children if size.expr_name == "size")
                yield Same(left, right)
            case "add_up":
                yield Same(Added((Named("tens"), Named("units"))), _plain(node))
            case "grows":
                by = _plain(node)
                up = "increase" in node.text
                yield Same(_TURNED, Added((_NUMBER, by)) if up else Taken(_NUMBER, by))
            case "swaps":
                by = _plain(node)
                yield Same(Added((_NUMBER, by)) if re.search(r"\badded\b", node.text) else Taken(_NUMBER, by), _TURNED)
            case "reversing":
                base = self._size(next(one for one in node.children if one.expr_name == "size").children[0])
                exceeds = re.search(r" exceeds ", node.text) is not None
                further = next((one for child in node.children[3:] for one in within(child, "plain")), None)
                if exceeds != (further is not None):
                    raise NotUnderstood("by how much", node.start)
                yield Same(_TURNED, Added((base, _plain(further))) if further is not None else base)

    def _size(self, node: Node) -> Size:
        inner = [size.children[0] for size in node.children if size.expr_name == "size"]
        match node.expr_name:
            case "compared":
                base, by = self._size(inner[0]), _plain(node)
                return Taken(base, by) if re.match(r"\d+ (?:less|smaller)", node.text) else Added((base, by))
            case "scaled":
                return Scaled(multiple_of(the(node, "multiple")), self._size(inner[0]))
            case "summed":
                return Added(tuple(map(self._size, inner)))
            case "differed":
                return Taken(self._size(inner[0]), self._size(inner[1]))
            case "digit_sum":
                return Added((Named("tens"), Named("units")))
            case "digit":
                return Named("tens" if re.search(r"\b(?:tens|ten's|first)\b", node.text) else "units")
            case "new_number":
                return _TURNED
            case "the_number":
                return _NUMBER
        return _plain(node)


def _plain(node: Node) -> Amount:
    number = node if node.expr_name == "plain" else first(node, "plain")
    if number is None:
        raise NotUnderstood("which number", node.start)
    return Amount(number_in(number.text))
