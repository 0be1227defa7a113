"""Stories of a fixed charge and so much for each: one bill, or two offers that cost the same."""

import re
from collections.abc import Sequence

from parsimonious.nodes import Node

from paperaudit.model.story import Added, Amount, Named, Said, Same, Scaled, Size, Sought, StoryTask, Wanted
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.stories.amounts import amount_of
from paperaudit.wording.topics.stories.cast import singular
from paperaudit.wording.topics.stories.grammar import tree_of
from paperaudit.wording.topics.stories.plain import Plain
from paperaudit.wording.topics.stories.trees import within

AHEAD = re.compile(r"\b(?:charges?|costs?|asks?)\b.*\b(?:per|each|every)\b")
_COUNT = "count"
_UNITS = {"kilometre": "km", "kilometer": "km", "km": "km", "hour": "hour", "minute": "minute", "day": "day",
          "month": "month", "week": "week"}  # fmt: skip


def tariffs_story(sentences: Sequence[Plain]) -> StoryTask | None:
    """The story of a part as one of charges; raises NotUnderstood or ExpressionNotRead where it is none."""
    trees = [(tree, sentence) for sentence in sentences if (tree := tree_of("tariffs", sentence)) is not None]
    found = [(tree.children[0], sentence.said) for tree, sentence in trees]
    plans = [(node, said) for node, said in found if node.expr_name == "plan"]
    bills = [(node, said) for node, said in found if node.expr_name == "bill"]
    asks = [node.children[0] for node, _ in found if node.expr_name == "ask"]
    nouns = {singular(noun.text) for tree, _ in trees for noun in within(tree, "unit_noun")}
    units = {_UNITS.get(noun, noun) for noun in nouns}
    if len(asks) != 1 or not plans or len(units) != 1:
        raise NotUnderstood("charges of which too little is told or asked", 0)
    unit = _UNITS.get(nouns.pop(), "")
    equal = asks[0].expr_name == "equal_ask"
    costs = [_cost(node) for node, _ in plans]
    money = {sign for _, sign in costs}
    if len(money) != 1 or equal != (len(plans) == 2 and not bills) or (not equal and len(plans) * len(bills) != 1):
        raise NotUnderstood("charges that are not compared", 0)
    (sign,) = money
    names = ["the first charge", "the second charge"] if equal else ["the charge"]
    claims = [
        Said(said, Same(Named(name), cost)) for name, (cost, _), (_, said) in zip(names, costs, plans, strict=True)
    ]
    if equal:
        asked = next(said for node, said in found if node.expr_name == "ask")
        claims.append(Said(asked, Same(Named(names[0]), Named(names[1]))))
    else:
        paid = amount_of(next(within(bills[0][0], "money")))
        if paid.unit != sign:
            raise NotUnderstood("two kinds of money", 0)
        claims.append(Said(bills[0][1], Same(Named(names[0]), paid)))
    noun = singular(next(noun.text for tree, _ in trees for noun in within(tree, "unit_noun")))
    meaning = "the number of kilometres" if unit == "km" else f"the number of {noun}s"
    sought = (Sought(_COUNT, meaning, unit, "not negative", False, "a number"),
              *(Sought(name, name, sign, "positive", False, "a charge") for name in names))  # fmt: skip
    return StoryTask(sought, tuple(claims), (Wanted(Named(_COUNT), meaning, unit),))


def _cost(node: Node) -> tuple[Size, str]:
    """What so many cost: the fixed charge and so many times the rate; and the sign of the money."""
    one, other = (amount_of(money) for money in within(node, "money"))
    fixed, rate = (one, other) if next(within(node, "fixed_first"), None) is not None else (other, one)
    if one.unit != other.unit:
        raise NotUnderstood("two kinds of money", node.start)
    return Added((Amount(fixed.number, fixed.unit), Scaled(rate.number, Named(_COUNT)))), one.unit
