"""Asks about binomial expansions."""

import re
from typing import Literal

from parsimonious.nodes import Node

from paperaudit.maths.parse import read_expression
from paperaudit.maths.terms import expression_of
from paperaudit.maths.tree import every, has, the
from paperaudit.model.ask import Task, Transform
from paperaudit.model.expansion_task import BinomialExpansion, TermOfExpansion
from paperaudit.model.expression import Expression, Letter, Number, Power, Quotient, Root, Sum, letters_of, parts_of
from paperaudit.model.paper import Part, Question
from paperaudit.wording.asides import Asides
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.tasks import letters_named
from paperaudit.wording.topics.one_text import told_in_one
from paperaudit.wording.topics.topic import Readers, Told

_COUNTS = {"two": 2, "three": 3, "four": 4, "five": 5, "six": 6}
_PLACES = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth")
_RULES = ("first_terms", "up_to", "given", "coefficient", "term_in", "constant", "nth_term", "full")


def _task(node: Node, asides: Asides) -> Task:
    chosen = the(node, *_RULES)
    expressions = tuple(expression_of(one) for one in every(chosen, "expression"))
    if asides.unit or asides.accuracy is not None:
        raise NotUnderstood("a unit or an accuracy with an expansion", chosen.start)
    if not any(map(_has_binomial, expressions)):
        raise NotUnderstood("no power of two terms", chosen.start, "a power such as (1 + 2x)⁵")
    order, letter = _order(chosen)
    validity = has(node, "validity")
    match chosen.expr_name:
        case "first_terms":
            text = the(chosen, "count").text
            count = _COUNTS.get(text) or int(text)
            return BinomialExpansion(expressions[0], count, order or "ascending", letter, 0, validity)
        case "up_to":
            name, power = _power(chosen)
            return BinomialExpansion(expressions[0], 0, order or "ascending", letter or name, power, validity)
        case "full":
            return _full(node, chosen, expressions[0], order, letter)
        case "nth_term":
            return TermOfExpansion(expressions[0], place=_PLACES.index(the(chosen, "ordinal").text) + 1)
        case "constant":
            names = letters_of(expressions[0])
            named = re.search(r"independent of ([a-z])", chosen.text)
            if named is None and len(names) != 1:
                raise NotUnderstood("a constant term in several letters", chosen.start)
            return TermOfExpansion(expressions[0], named[1] if named else names[0])
        case "term_in":
            name, power = _power(chosen)
            return TermOfExpansion(expressions[0], name, power, "term")
    name, power = _power(chosen)
    if chosen.expr_name == "coefficient":
        return TermOfExpansion(expressions[0], name, power)
    unknown = letters_named(chosen)[-1]
    positive = "positive" in chosen.text
    return TermOfExpansion(expressions[0], name, power, "coefficient", 0, unknown, expressions[1], positive)


def _full(
    node: Node, chosen: Node, expression: Expression, order: Literal["", "ascending", "descending"], letter: str
) -> Task:
    """The whole expansion; a square or a cube that is only to be expanded is multiplied out."""
    named = "binomial" in node.text or "pascal" in node.text or bool(order) or has(chosen, "expansion_of")
    below = any(isinstance(part, Quotient) and letters_of(part.denominator) for part in _everything(expression))
    if not isinstance(expression, Power):
        raise NotUnderstood("more than one power", chosen.start)
    high = isinstance(expression.exponent, Number) and expression.exponent.value > 3
    return (
        BinomialExpansion(expression, 0, order, letter) if named or high or below else Transform("expand", expression)
    )


def _everything(expression: Expression) -> list[Expression]:
    return [expression, *(inner for part in parts_of(expression) for inner in _everything(part))]


def _has_binomial(expression: Expression) -> bool:
    inside = expression.base if isinstance(expression, Power) else None
    if isinstance(expression, Root):
        inside = expression.radicand
    if isinstance(expression, Quotient):
        inside = expression.denominator
    own = isinstance(inside, Sum) and len(inside.terms) == 2
    return own or any(map(_has_binomial, parts_of(expression)))


def _order(node: Node) -> tuple[Literal["", "ascending", "descending"], str]:
    found = re.search(r"in (asc|desc|incr|decr)\w+ (?:order of )?powers of ([a-z])", node.text)
    if found is None:
        return "", ""
    return "ascending" if found[1] in ("asc", "incr") else "descending", found[2]


def _power(node: Node) -> tuple[str, int]:
    """The letter and its exponent: x³."""
    match read_expression(the(node, "letter_power").text):
        case Letter(name):
            return name, 1
        case Power(Letter(name), Number(count)) if count.denominator == 1:
            return name, int(count)
    raise NotUnderstood("a term that is no power of a letter", node.start, "a power such as x³")


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    """An expansion and, in a sentence of its own, where it is valid; the whole of the part."""
    return told_in_one("binomial expansions", _task, question, part, scene)


READERS = Readers(task=_task, story=_story)
