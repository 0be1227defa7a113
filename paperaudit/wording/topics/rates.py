"""Asks and stories about speed, distance and time, and about mass, volume and density."""

import re

from parsimonious.nodes import Node

from paperaudit.maths.parse import read_expression
from paperaudit.maths.tree import every, has, the
from paperaudit.maths.units import unit_named
from paperaudit.model.ask import Task
from paperaudit.model.expression import Expression, Measured, Sum
from paperaudit.model.paper import Part, Question
from paperaudit.model.reckoning import Amount, Reckoning
from paperaudit.wording.asides import Asides
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.topics.registry import topic_named
from paperaudit.wording.topics.topic import Readers, Told
from paperaudit.wording.topics.whole_text import story_of

_ASKS = {"far_ask": "distance", "long_ask": "time", "speed_ask": "speed"}
_SPELLED = {"kmh": "km/h", "km per hour": "km/h", "g/ml": "g/cm³"}


def _task(node: Node, asides: Asides) -> Task:
    if asides.terms:
        raise NotUnderstood("letters", 0)
    return _reckoning(node)


def _reckoning(node: Node) -> Reckoning:
    if has(node, "thing_name"):
        return _density(node)
    amounts = [
        Amount({"duration": "time"}.get(piece.expr_name, piece.expr_name), _value(piece))
        for piece in every(node, "speed", "distance", "duration")
    ]
    wanted = [_ASKS[piece.expr_name] for piece in every(node, *_ASKS)]
    details: tuple[str, ...] = ()
    for piece in every(node, "long_ask"):
        if found := re.match(r"how many (hours|minutes|seconds)", piece.text):
            details = (f"in {found[1].rstrip('s')}",)
    return _told("motion", amounts, wanted, details)


def _told(kind: str, amounts: list[Amount], wanted: list[str], details: tuple[str, ...] = ()) -> Reckoning:
    unique = list(dict.fromkeys(amounts))
    names = [amount.name for amount in unique]
    if len(set(wanted)) != 1 or len(set(names)) != len(names) or set(wanted) & set(names) or len(names) != 2:
        raise NotUnderstood("not two amounts to find the third from", 0)
    return Reckoning(kind, tuple(unique), (wanted[0],), details)


def _density(node: Node) -> Reckoning:
    amounts: list[Amount] = []
    for piece in every(node, "density_size", "density_fact", "of_what"):
        amounts.extend(_sizes(piece))
    wanted = [the(piece, "thing_name").text for piece in every(node, "density_ask")]
    return _told("density", amounts, wanted)


def _sizes(piece: Node) -> list[Amount]:
    if piece.expr_name == "density_size":
        return [_named(the(piece, "thing_name").text, the(piece, "measure"))]
    found = [_named(the(one, "thing_name").text, the(one, "measure")) for one in every(piece, "density_size")]
    own = [one for one in every(piece, "density_size", "measure") if one.expr_name == "measure"]
    if own and piece.expr_name == "density_fact":
        return [_named(the(piece, "thing_name").text, own[0]), *found]
    if own:
        value = _value(own[0])
        unit = unit_named(value.unit) if isinstance(value, Measured) else None
        if unit is None or unit.dimension not in ("mass", "volume"):
            raise NotUnderstood("neither mass nor volume", 0)
        return [Amount(unit.dimension, value), *found]
    return found


def _named(name: str, node: Node) -> Amount:
    value = _value(node)
    unit = unit_named(value.unit) if isinstance(value, Measured) else None
    if unit is None or unit.dimension != name:
        raise NotUnderstood(f"{node.text} is no {name}", 0)
    return Amount(name, value)


def _value(node: Node) -> Expression:
    pieces = every(node, "one_time") or [node]
    parts = []
    for piece in pieces:
        number = the(piece, "number").text
        spelled = piece.text.replace(number, "", 1).strip(" \ue000-")
        unit = unit_named(_SPELLED.get(spelled, spelled).replace("^3", "³"))
        if unit is None:
            raise NotUnderstood(spelled, 0, "a unit")
        parts.append(Measured(read_expression(number), unit.symbol))
    return parts[0] if len(parts) == 1 else Sum(tuple(parts))


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    return story_of(lambda: topic_named("rates"), _reckoning, question, part, scene)


READERS = Readers(task=_task, story=_story)
