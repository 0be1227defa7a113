"""Asks and stories about ratio: simplest form, sharing R60 in the ratio 2 : 3, amounts in proportion."""

import re
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.maths.parse import read_expression
from paperaudit.maths.tree import every, first, has, the
from paperaudit.maths.units import unit_named
from paperaudit.model.ask import Task
from paperaudit.model.expression import Expression, Letter, Measured, Number, Power, Root
from paperaudit.model.paper import Part, Question
from paperaudit.model.reckoning import Amount, Reckoning
from paperaudit.wording.asides import Asides
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.topics.registry import topic_named
from paperaudit.wording.topics.topic import Readers, Told
from paperaudit.wording.topics.whole_text import story_of


def _task(node: Node, asides: Asides) -> Task:
    if asides.terms:
        raise NotUnderstood("letters", 0)
    return _reckoning(node)


def _reckoning(node: Node) -> Reckoning:
    kinds = {clause.children[0].expr_name for clause in every(node, "clause")}
    if kinds <= {"shared", "share_ask"} and len(every(node, "shared")) == 1:
        return _sharing(node)
    if kinds == {"simplified"} or kinds == {"unitary"}:
        if len(every(node, "ratio")) != 1:
            raise NotUnderstood("several ratios", 0)
        terms = tuple(Amount("term", _amount(piece)) for piece in every(node, "term_in"))
        if kinds == {"simplified"}:
            return Reckoning("ratio", terms, ("simplest form",))
        first_one = re.search(r"in the form 1", node.text) is not None
        return Reckoning("ratio", terms, (("form 1 : n" if first_one else "form n : 1"),))
    if kinds == {"prop_rate"}:
        return _in_proportion(node)
    if {"proportional", "prop_value"} < kinds and "prop_rate" not in kinds:
        return _proportional(node)
    raise NotUnderstood("what is asked of the ratio", 0)


def _sharing(node: Node) -> Reckoning:
    shared = the(node, "shared")
    terms = tuple(Amount("term", _amount(piece)) for piece in every(shared, "term_in"))
    if any(isinstance(term.value, Measured) for term in terms):
        raise NotUnderstood("units in the ratio", 0)
    persons = first(shared, "persons")
    if persons is not None and len(re.split(r",? and |, ", persons.text)) not in (1, len(terms)):
        raise NotUnderstood("as many persons as terms of the ratio", 0)
    asked = first(node, "share_ask")
    words = asked.text if asked is not None else ""
    wanted = "largest" if re.search(r"larg|big", words) else "smallest" if "small" in words else "every"
    total = Amount("total", _amount(the(shared, "amount_in")))
    return Reckoning("sharing", (total, *terms), (f"{wanted} share",))


def _in_proportion(node: Node) -> Reckoning:
    rate = the(node, "prop_rate")
    numbers = [piece for piece in every(rate, "number", "amount_in") if piece.expr_name == "number"]
    things = [re.sub(r"^(?:such|of the same|identical) |s$", "", piece.text) for piece in every(rate, "thing")]
    if len(numbers) != 2 or things[0] != things[1] or ("cost" not in rate.text and "weigh" not in rate.text):
        raise NotUnderstood("two different things", 0)
    amounts = (
        Amount("first number", read_expression(numbers[0].text)),
        Amount("first amount", _amount(the(rate, "amount_in"))),
        Amount("second number", read_expression(numbers[1].text)),
    )  # fmt: skip
    return Reckoning("direct proportion", amounts, ("second amount",))


def _proportional(node: Node) -> Reckoning:
    law, value, asked = the(node, "proportional"), the(node, "prop_value"), every(node, *_LETTER_ASKS)
    kinds = [clause.children[0].expr_name for clause in every(node, "clause")]
    if len(asked) != 1 or max(kinds.count(kind) for kind in kinds) > 1 or not set(kinds) <= _OF_LETTERS:
        raise NotUnderstood("one thing to be found", 0)
    name = the(law, "letter").text
    inner = the(law, "power_of")
    base = Letter(the(inner, "letter").text)
    power = _power(law.text, inner, base)
    told = [piece.text for piece in every(value, "letter")]
    asks = [piece.text for piece in every(asked[0], "letter")]
    numbers = [read_expression(piece.text) for piece in every(value, "number")]
    letters = {name, base.name}
    if set(told) != letters or not set(asks) <= letters or name == base.name or "k" in told:
        raise NotUnderstood("other letters than those in proportion", 0)
    known = dict(zip(told, numbers, strict=True))
    amounts = [Amount(name, known[name]), Amount(base.name, known[base.name]), Amount("power", power)]
    wanted = {"prop_constant": "k", "prop_formula": "formula"}.get(asked[0].expr_name, "")
    if not wanted:
        if len(asks) != 2 or asks[0] == asks[1]:
            raise NotUnderstood("one letter for a value of the other", 0)
        amounts.append(Amount(f"new {asks[1]}", read_expression(the(asked[0], "number").text)))
        wanted = asks[0]
    positive = "prop_positive" in kinds or "positive" in asked[0].text
    kind = f"{'inverse' if 'invers' in law.text else 'direct'} proportion in letters"
    return Reckoning(kind, tuple(amounts), (wanted,), ("positive",) * positive)


_LETTER_ASKS = ("prop_ask", "prop_constant", "prop_formula")
_OF_LETTERS = frozenset((*_LETTER_ASKS, "proportional", "prop_value", "prop_positive"))


def _power(words: str, inner: Node, base: Letter) -> Expression:
    squared = re.search(r"the square of|squared|²", words) is not None
    cubed = re.search(r"the cube of|cubed|³", words) is not None
    root = "the square root of" in words or has(inner, "root_sign")
    if squared + cubed + root > 1 or re.search(r"[⁰¹⁴⁵⁶⁷⁸⁹⁻∛∜]|³√|⁴√", inner.text):
        raise NotUnderstood("another power", 0)
    if root:
        return Root(base)
    return Power(base, Number(Fraction(2 if squared else 3))) if squared or cubed else base


def _amount(piece: Node) -> Expression:
    unit = first(piece, "unit_name")
    if unit is None:
        return read_expression(piece.text.strip())
    known = unit_named(unit.text)
    number = read_expression(the(piece, "number").text)
    return Measured(number, known.symbol) if known is not None else number


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    return story_of(lambda: topic_named("ratio"), _reckoning, question, part, scene, letters=True)


READERS = Readers(task=_task, story=_story)
