"""Stories of two amounts with a sum and a weighted sum: heads and legs, two rates of interest, two prices mixed."""

import re
from collections.abc import Sequence

from parsimonious.nodes import Node

from paperaudit.maths.tree import first
from paperaudit.model.expression import Number
from paperaudit.model.story import Added, Amount, Named, Said, Same, Scaled, Sought, StoryTask, Wanted
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.stories.amounts import amount_of, number_in, unit_symbol
from paperaudit.wording.topics.stories.grammar import tree_of
from paperaudit.wording.topics.stories.plain import Plain
from paperaudit.wording.topics.stories.trees import within

AHEAD = re.compile(r"\b(?:heads?|legs?|wheels|feet|invest\w*|mixed|blended)\b")
_LEGS = {"chicken": 2, "hen": 2, "duck": 2, "goose": 2, "ostrich": 2, "bird": 2, "turkey": 2, "bicycle": 2,
         "motorcycle": 2, "tricycle": 3}  # fmt: skip
_WHEELED = ("bicycle", "tricycle", "motorcycle", "car")
_FIRST, _SECOND = "first", "second"


def two_kinds_story(sentences: Sequence[Plain]) -> StoryTask | None:
    """The story of a part as one of two amounts; raises NotUnderstood or ExpressionNotRead where it is none."""
    trees = [(tree, sentence) for sentence in sentences if (tree := tree_of("two_kinds", sentence)) is not None]
    told = {}
    for tree, sentence in trees:
        node = tree.children[0]
        if node.expr_name in told:
            raise NotUnderstood("a thing that is said twice", node.start)
        told[node.expr_name] = (node, sentence.said)
    if "ask" not in told:
        raise NotUnderstood("nothing is asked for", 0)
    asked = told.pop("ask")[0].children[0]
    match (asked.expr_name, sorted(told)):
        case ("beasts_ask", ["heads", "keeps"]):
            return _beasts(asked, told["keeps"][0], *told["heads"])
        case ("rates_ask", ["interest", "invested"]):
            return _rates(asked, told["invested"], told["interest"])
        case ("kilo_ask", ["priced"]):
            return _priced(asked, *told["priced"])
    raise NotUnderstood("two amounts of which too little is told or asked", 0)


def _sums(said: tuple[str, str], whole: Amount, shares: tuple[Number, Number], total: Amount) -> tuple[Said, Said]:
    """The two amounts together, and what they bring at these shares."""
    both = (Named(_FIRST), Named(_SECOND))
    weighted = Added(tuple(Scaled(share, one) for share, one in zip(shares, both, strict=True)))
    return Said(said[0], Same(Added(both), whole)), Said(said[1], Same(weighted, total))


def _beasts(asked: Node, keeps: Node, heads: Node, said: str) -> StoryTask:
    names = [one.text for one in within(keeps, "beast")]
    wanted = [one.text for one in within(asked, "beast")]
    if len(set(names)) != 2 or not set(wanted) <= set(names) or len(set(wanted)) != len(wanted):
        raise NotUnderstood("which animals", asked.start)
    if len({name in _WHEELED for name in names}) > 1 or ("wheels" in heads.text) != (names[0] in _WHEELED):
        raise NotUnderstood("legs or wheels", heads.start)
    legs = [number_in(str(_LEGS.get(name, 4))) for name in names]
    if legs[0] == legs[1]:
        raise NotUnderstood("animals that no number of legs tells apart", heads.start)
    count, total = (Amount(number_in(one.text)) for one in within(heads, "number"))
    plural = {"goose": "geese", "ostrich": "ostriches", "sheep": "sheep"}
    meanings = {name: f"the number of {plural.get(name, f'{name}s')}" for name in names}
    keys = dict(zip(names, (_FIRST, _SECOND), strict=True))
    sought = tuple(Sought(keys[name], meanings[name], "", "not negative", True, "a number of them") for name in names)
    claims = _sums((said, said), count, (legs[0], legs[1]), total)
    return StoryTask(sought, claims, tuple(Wanted(Named(keys[name]), meanings[name]) for name in wanted))


def _rates(asked: Node, invested: tuple[Node, str], interest: tuple[Node, str]) -> StoryTask:
    whole = amount_of(next(within(invested[0], "money")))
    earned = amount_of(next(within(interest[0], "money")))
    one, other = (number_in(rate.text) for rate in within(invested[0], "percentage"))
    if whole.unit != earned.unit or one == other:
        raise NotUnderstood("two kinds of money", 0)
    meanings = [f"the amount at {rate.text}" for rate in within(invested[0], "percentage")]
    keys = (_FIRST, _SECOND)
    sought = tuple(Sought(key, meaning, whole.unit, "not negative", False, "an amount")
                   for key, meaning in zip(keys, meanings, strict=True))  # fmt: skip
    named = first(asked, "percentage")
    wanted = [at for at in (0, 1) if named is None or number_in(named.text) == (one, other)[at]]
    if not wanted:
        raise NotUnderstood("a rate that is not told", asked.start)
    claims = _sums((invested[1], interest[1]), whole, (one, other), earned)
    return StoryTask(sought, claims, tuple(Wanted(Named(keys[at]), meanings[at], whole.unit) for at in wanted))


def _priced(asked: Node, priced: Node, said: str) -> StoryTask:
    one, other, mixed = (amount_of(money) for money in within(priced, "money"))
    if len({one.unit, other.unit, mixed.unit}) > 1 or one.number.value == other.number.value:
        raise NotUnderstood("prices in different money", priced.start)
    quantity = next(within(priced, "quantity"))
    number = number_in(next(within(quantity, "number")).text)
    unit = unit_symbol(re.sub(r"^[\d ./]+", "", quantity.text))
    cheaper = 0 if one.number.value < other.number.value else 1
    kinds = ("the cheaper kind", "the dearer kind") if not cheaper else ("the dearer kind", "the cheaper kind")
    keys = (_FIRST, _SECOND)
    sought = tuple(Sought(key, f"the amount of {kind}", unit, "not negative", False, "an amount")
                   for key, kind in zip(keys, kinds, strict=True))  # fmt: skip
    which = re.search(r"\b(cheaper|dearer|more expensive|first|second)\b", asked.text)
    at = {"cheaper": [cheaper], "dearer": [1 - cheaper], "more expensive": [1 - cheaper], "first": [0],
          "second": [1]}.get(which[1] if which else "", [0, 1])  # fmt: skip
    both = (Named(_FIRST), Named(_SECOND))
    weighted = Added((Scaled(one.number, both[0]), Scaled(other.number, both[1])))
    claims = (Said(said, Same(Added(both), Amount(number, unit))),
              Said(said, Same(weighted, Scaled(mixed.number, Amount(number, unit)))))  # fmt: skip
    return StoryTask(sought, claims, tuple(Wanted(Named(keys[one_of]), f"the amount of {kinds[one_of]}", unit)
                                           for one_of in at))  # fmt: skip
