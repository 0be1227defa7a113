"""Asks and stories about percentages: one amount as a share of another, before and after a change."""

import re

from parsimonious.nodes import Node

from paperaudit.maths.parse import read_expression
from paperaudit.maths.tree import every, first, has, the
from paperaudit.maths.units import unit_named
from paperaudit.model.ask import Task
from paperaudit.model.expression import Expression, Measured, Negative
from paperaudit.model.paper import Part, Question
from paperaudit.model.reckoning import Amount, Reckoning
from paperaudit.wording.asides import Asides
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.topics.registry import topic_named
from paperaudit.wording.topics.topic import Readers, Told
from paperaudit.wording.topics.whole_text import story_of

_DOWN = re.compile(
    r"reduc|decreas|fall|fell|drop|marked down|discount|cut|goes down|lowered|loss|depreciat|\bless\b|saving"
)
_ASKS = {"new_ask": "new", "old_ask": "original", "part_ask": "change"}


def _task(node: Node, asides: Asides) -> Task:
    if asides.terms:
        raise NotUnderstood("letters", 0)
    return _reckoning(node)


def _reckoning(node: Node) -> Reckoning:
    if share := first(node, "as_share"):
        return _share(node, share)
    if unknown := first(node, "share_unknown"):
        if len(every(node, "clause")) > 1 and not has(node, "share_known"):
            raise NotUnderstood("more than a share of a number", 0)
        _only(node, "share_unknown", "share_known")
        part = _amount(the(unknown, "amount_in"))
        return Reckoning(
            "share of a whole", (Amount("percentage", _percent(unknown)), Amount("part", part)), ("whole",)
        )
    if has(node, "percent_ask"):
        return _change(node)
    if imperative := first(node, "imperative"):
        _only(node, "imperative")
        if len(every(node, "imperative")) > 1:
            raise NotUnderstood("two changes", 0)
        original = Amount("original", _amount(the(imperative, "amount_in")))
        return Reckoning("changed by percentages", (original, _by(imperative)), ("new",))
    return _changed(node)


def _only(node: Node, *names: str) -> None:
    """Every clause must be one of these."""
    for clause in every(node, "clause"):
        if clause.children[0].expr_name not in names:
            raise NotUnderstood(clause.text, clause.start)


def _share(node: Node, share: Node) -> Reckoning:
    _only(node, "as_share")
    if len(every(node, "as_share")) != 1:
        raise NotUnderstood("two shares", 0)
    one, other = (_amount(piece) for piece in every(share, "amount_in"))
    turned = re.match(r"(?:what|which) ", share.text) is not None and " is of " not in share.text
    part, whole = (other, one) if turned else (one, other)
    return Reckoning("percentage of", (Amount("part", part), Amount("whole", whole)), ("percentage",))


def _change(node: Node) -> Reckoning:
    _only(node, "percent_ask", "from_to", "sold", "stated_price", "new_ask")
    found = [piece for piece in every(node, "from_to", "sold", "percent_ask") if has(piece, "amount_in", "money")]
    if len(found) != 1 or has(node, "stated_price", "new_ask"):
        raise NotUnderstood("not one change from one amount to another", 0)
    old, new = (_amount(piece) for piece in every(found[0], "amount_in", "money"))
    words = the(node, "percent_ask").text
    down = re.search(r"decrease|loss|discount|reduction", words)
    up = re.search(r"increase|profit|gain", words)
    direction = ("down",) if down else ("up",) if up else ()
    return Reckoning("percentage change", (Amount("original", old), Amount("new", new)), ("percentage",), direction)


def _changed(node: Node) -> Reckoning:
    _only(node, "stated_price", "changes", "after_it", "with_tax", "new_ask", "old_ask", "part_ask")
    amounts: list[Amount] = []
    for piece in every(node, "stated_price", "change_told", "after_it", "with_tax"):
        if piece.expr_name == "stated_price":
            amounts.append(Amount("original", _amount(the(piece, "amount_in", "money"))))
            amounts.extend(_by(told) for told in every(piece, "change_told"))
        elif piece.expr_name in ("after_it", "with_tax"):
            amounts += [_by(piece), Amount("new", _amount(the(piece, "amount_in")))]
        else:
            amounts.append(_by(piece))
    asks = [_ASKS[piece.expr_name] for piece in every(node, *_ASKS)]
    names = [amount.name for amount in amounts]
    ends = [name for name in names if name != "percentage"]
    if len(ends) != 1 or "percentage" not in names or not asks or set(asks) & set(ends):
        raise NotUnderstood("not one amount with its changes", 0)
    if "change" in asks and names.count("percentage") > 1:
        raise NotUnderstood("which of the changes", 0)
    return Reckoning("changed by percentages", tuple(amounts), tuple(dict.fromkeys(asks)))


def _by(piece: Node) -> Amount:
    """A change with its sign."""
    percent = _percent(piece)
    return Amount("percentage", Negative(percent) if _DOWN.search(piece.text) else percent)


def _percent(piece: Node) -> Expression:
    text = the(piece, "percent").text.replace("per cent", "%").replace("percent", "%")
    return read_expression(text)


def _amount(piece: Node) -> Expression:
    text = piece.text.strip()
    unit = first(piece, "unit_name")
    if unit is None:
        return read_expression(text)
    known = unit_named(unit.text)
    number = read_expression(the(piece, "number").text)
    return Measured(number, known.symbol) if known is not None else number


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    return story_of(lambda: topic_named("percentages"), _reckoning, question, part, scene)


READERS = Readers(task=_task, story=_story)
