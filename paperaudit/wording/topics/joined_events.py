"""Probabilities of named events: "P(A) = 0.3", "A and B are independent", "Find P(A or B)"."""

import re
from fractions import Fraction
from typing import Literal

from parsimonious.nodes import Node

from paperaudit.maths.tree import every, first, the
from paperaudit.model.ask import Task
from paperaudit.model.event_task import AreEvents, ChanceIs, ChanceOf, EventName, EventsAre, EventTerm
from paperaudit.model.fact import Fact
from paperaudit.wording.asides import Asides
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.topics.topic import Readers

_JOINS: tuple[tuple[str, Literal["and", "or", "given"]], ...] = (
    ("∪", "or"), ("or", "or"), ("union", "or"), ("∩", "and"), ("and", "and"), ("intersection", "and"),
)  # fmt: skip


def _task(node: Node, asides: Asides) -> Task:
    chosen = the(node, "find", "decide")
    if chosen.expr_name == "find":
        return ChanceOf(_event(the(chosen, "happening")))
    kind = _kind(the(chosen, "kind").text)
    one, other = (name.text for name in every(chosen, "name"))
    return AreEvents(kind, (one, other))


def _kind(words: str) -> Literal["independent", "mutually exclusive"]:
    return "independent" if "independent" in words else "mutually exclusive"


def _facts(node: Node, scene: Scene) -> tuple[Fact, ...]:
    facts: list[Fact] = []
    for one in every(node, "chance_is", "relation_of"):
        if one.expr_name == "relation_of":
            names = [name.text for name in every(one, "name")]
            if names[0] == names[1]:
                raise NotUnderstood("an event and itself", one.start)
            facts.append(EventsAre(_kind(the(one, "kind").text), (names[0], names[1]), one.text))
        else:
            text = the(one, "amount").text
            facts.append(ChanceIs(_event(the(one, "happening")), amount_in(text), f"= {text}"))
    return tuple(facts)


def amount_in(text: str) -> Fraction:
    """A probability as a fraction, a decimal or a percentage."""
    plain = text.replace(" ", "").replace(",", ".")
    above, _, below = plain.rstrip("%").partition("/")
    if below and not int(below):
        raise NotUnderstood("a division by nought", 0)
    value = Fraction(above) / (Fraction(below) if below else 1)
    return value / 100 if plain.endswith("%") else value


def _event(node: Node) -> EventName:
    terms = [_term(one) for one in every(node, "term")]
    joined = first(node, "joined")
    negated = first(node, "negated_joint")
    if joined is None:
        return EventName(terms[0])
    sign = joined.text.strip()
    join: Literal["and", "or", "given"] = next((join for word, join in _JOINS if sign.startswith(word)), "given")
    if terms[0][0] == terms[1][0]:
        raise NotUnderstood("an event and itself", node.start)
    turned = negated is not None and (
        negated.text.startswith("not") or re.search(r"(?:′|\^c|c)$", negated.text) is not None
    )
    if turned and join == "given":
        raise NotUnderstood("the opposite of a condition", node.start)
    return EventName(terms[0], join, terms[1], turned)


def _term(node: Node) -> EventTerm:
    name = the(node, "name").text
    return name, node.text == name


READERS = Readers(task=_task, facts=_facts)
