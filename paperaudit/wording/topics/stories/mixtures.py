"""Stories of solutions that are mixed: so much of one strength with so much of another."""

import re
from collections.abc import Sequence

from parsimonious.nodes import Node

from paperaudit.maths.tree import every, first, the
from paperaudit.model.expression import Number
from paperaudit.model.story import (
    NOTHING,
    Added,
    Amount,
    Divided,
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
from paperaudit.wording.topics.stories.amounts import number_in, unit_symbol
from paperaudit.wording.topics.stories.grammar import tree_of
from paperaudit.wording.topics.stories.plain import Plain
from paperaudit.wording.topics.stories.trees import within

AHEAD = re.compile(r"%.*%|%.*\bwater\b|\bwater\b.*%")
_FIRST, _SECOND = "first", "second"


def mixtures_story(sentences: Sequence[Plain]) -> StoryTask | None:
    """The story of a part as one of a mixture; raises NotUnderstood or ExpressionNotRead where it is none."""
    trees = [(tree, sentence) for sentence in sentences if (tree := tree_of("mixtures", sentence)) is not None]
    stuffs = {node.text for tree, _ in trees for node in within(tree, "stuff")}
    units = {unit_symbol(node.text) for tree, _ in trees for node in within(tree, "unit")}
    if len(stuffs) > 1 or len(units) != 1:
        raise NotUnderstood("different stuffs or units", 0)
    unit = units.pop()
    whole = [(node, sentence) for tree, sentence in trees for node in _tops(tree, "asks_all")]
    if len(whole) == 1 and len(trees) == 1:
        return _asked_amount(whole[0][0], whole[0][1].said, unit)
    mixed = [(node, sentence) for tree, sentence in trees for node in within(tree, "mixed")]
    asked = any(True for tree, _ in trees for _ in within(tree, "ask"))
    if len(mixed) == 1 and asked and not whole:
        return _asked_strength(mixed[0][0], mixed[0][1].said, unit)
    raise NotUnderstood("a mixture of which too little is told or asked", 0)


def _tops(tree: Node, name: str) -> list[Node]:
    return [tree] if tree.expr_name == name else list(within(tree, name))


def _strength(node: Node) -> Number:
    """The share of pure stuff in a source: 20%, water none, pure acid all."""
    percent = next(within(node, "percentage"), None)
    if percent is not None:
        return number_in(percent.text)
    return number_in("0%") if first(node, "pure") is not None or node.text.endswith("water") else number_in("100%")


def _asked_amount(node: Node, said: str, unit: str) -> StoryTask:
    """How much of one must go with so much of another, or how much of two makes so much."""
    unknown = first(node, "unknown")
    whole = the(node, "whole")
    target = _strength(whole)
    total = next(within(whole, "quantity"), None)
    known = list(every(node, "part"))
    if unknown is None:
        raise NotUnderstood("of which each", node.start)
    named = re.match(r"how (?:many|much) (litres|ml|kg|grams|g|l|millilitres|kilograms)", unknown.text)
    if named is not None and unit_symbol(named.group(1)) != unit:
        raise NotUnderstood("an amount in another unit", node.start)
    sources = [_strength(the(unknown, "source"))]
    sizes: list[Size] = [Named(_FIRST), Named(_SECOND)]
    claims = []
    if known:
        sources.append(_strength(the(known[0], "source")))
        claims.append(Said(said, Same(Named(_SECOND), _amount(the(known[0], "quantity"), unit))))
    else:
        sources.append(_strength(the(the(node, "unknown_second"), "source")))
    if total is not None:
        claims.append(Said(said, Same(Added(tuple(sizes)), _amount(total, unit))))
    if known and total is not None:
        raise NotUnderstood("both the part and the whole", node.start)
    pure: list[Size] = [Scaled(share, size) for share, size in zip(sources, sizes, strict=True) if share.value]
    left: Size = Added(tuple(pure)) if len(pure) > 1 else pure[0] if pure else NOTHING
    right: Size = Added(tuple(sizes)) if total is None else _amount(total, unit)
    claims.append(Said(said, Same(left, Scaled(target, right))))
    meanings = [f"the amount of {_source_text(share)}" for share in sources]
    sought = tuple(
        Sought(key, meaning, unit, "not negative", False, "an amount")
        for key, meaning in zip((_FIRST, _SECOND), meanings, strict=True)
    )
    wanted = [Wanted(Named(_FIRST), meanings[0], unit)]
    if not known:
        wanted.append(Wanted(Named(_SECOND), meanings[1], unit))
    return StoryTask(sought, tuple(claims), tuple(wanted))


def _asked_strength(node: Node, said: str, unit: str) -> StoryTask:
    """What strength comes of two parts."""
    parts = list(within(node, "part"))
    shares = [_strength(the(part, "source")) for part in parts]
    amounts = [_amount(the(part, "quantity"), unit) for part in parts]
    keys = (Named(_FIRST), Named(_SECOND))
    claims = tuple(Said(said, Same(key, amount)) for key, amount in zip(keys, amounts, strict=True))
    pure = Added(tuple(Scaled(share, key) for share, key in zip(shares, keys, strict=True)))
    percent = Divided(Scaled(Number(number_in("100").value), pure), Added(keys))
    sought = tuple(
        Sought(key.key, f"the amount of {_source_text(share)}", unit, "positive", False, "an amount")
        for key, share in zip(keys, shares, strict=True)
    )
    return StoryTask(sought, claims, (Wanted(percent, "the strength in per cent"),))


def _amount(node: Node, unit: str) -> Amount:
    return Amount(number_in(the(node, "number").text), unit)


def _source_text(share: Number) -> str:
    from paperaudit.maths.write import write

    return "water" if not share.value else "pure stuff" if share.value == 1 else f"the {write(share)} solution"
