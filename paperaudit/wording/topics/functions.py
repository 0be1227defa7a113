"""Asks and statements about functions: f(x) = 2x + 1, "Find f(g(3))", "Differentiate 3x² − 4x"."""

import re
from collections.abc import Callable

from parsimonious.nodes import Node

from paperaudit.maths.grammar import expression_grammar
from paperaudit.maths.peg import parsed
from paperaudit.maths.terms import expression_of
from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.ask import Task
from paperaudit.model.expression import Expression, letters_of
from paperaudit.model.fact import Fact
from paperaudit.model.function_task import (
    Derivative,
    Function,
    Integral,
    InverseOf,
    Stationary,
    Touching,
    ValueOf,
    WhereEqual,
)
from paperaudit.wording.asides import Asides
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.tasks import has_quantity
from paperaudit.wording.topics.topic import Readers

_ORDERS = {"first": 1, "second": 2, "third": 3}
_RAISED = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹⁻", "0123456789-")


def _expression(node: Node) -> Expression:
    value = expression_of(node)
    if has_quantity(value):
        raise NotUnderstood("a size of a figure", node.start, "a formula")
    return value


def _function(node: Node) -> Function:
    """The function that a `of_function`, `formula_said` or `definition` names or defines."""
    called = first(node, "called")
    formula = first(node, "expression")
    if called is None:
        text = node.text.strip()
        name = the(node, "name").text if has(node, "name") else text[0]
        if formula is None:
            return Function(name)
        value = _expression(formula)
        return Function(name, _letter_in(value), value)
    name, letter = the(called, "name").text, the(called, "variable").text
    return Function(name, letter, _expression(formula) if formula is not None else None)


def _letter_in(value: Expression) -> str:
    letters = [name for name in letters_of(value) if name != "π"]
    if len(letters) > 1:
        raise NotUnderstood("more than one letter", 0, "with respect to which letter")
    return letters[0] if letters else "x"


def _facts(node: Node, scene: Scene) -> tuple[Fact, ...]:
    facts: list[Fact] = []
    for definition in every(node, "definition"):
        function = _function(definition)
        if function.formula is None or ("y" in letters_of(function.formula) and function.name == "y"):
            raise NotUnderstood("no formula", definition.start, "a formula such as f(x) = 2x + 1")
        order = first(definition, "order_word")
        number = _ORDERS[order.text.strip()] if order is not None else 1 if "derivative" in definition.text else 0
        facts.append(Function(function.name, function.letter, function.formula, number))
    return tuple(facts)


def _task(node: Node, asides: Asides) -> Task:
    chosen = the(node, *_READERS)
    return _READERS[chosen.expr_name](chosen)


def _names(node: Node) -> tuple[str, ...]:
    return tuple(re.sub(r"\^\{?-1\}?", "⁻¹", name.text) for name in every(node, "fname"))


def _value(node: Node) -> Task:
    names: list[str] = []
    inner = the(node, "composed")
    while True:
        names.extend(_names(the(inner, "chain")))
        deeper = first(inner, "composed")
        if deeper is None:
            return ValueOf(tuple(names), _expression(the(inner, "expression")))
        inner = deeper


def _where_equal(node: Node) -> Task:
    first_call, *others = every(node, "called")
    name, letter = the(first_call, "name").text, the(first_call, "variable").text
    if others:
        return WhereEqual(name, letter, other=the(others[0], "name").text)
    return WhereEqual(name, letter, _expression(the(node, "expression")))


def _inverse(node: Node) -> Task:
    said = first(node, "of_function", "formula_said")
    return InverseOf(_function(said) if said is not None else Function(the(node, "inverse_sign").text[0]))


def _derivative(node: Node) -> Task:
    order = first(node, "order_word")
    count = _ORDERS[order.text.strip()] if order is not None else 1
    dashed = first(node, "dashed")
    given = first(node, "given_formula", "given_first")
    at = first(node, "at_value")
    at_value = _expression(the(at, "expression")) if at is not None else None
    if dashed is not None:
        name, argument = the(dashed, "name").text, _expression(the(dashed, "expression"))
        function = _function(the(given, "formula_said")) if given is not None else Function(name)
        count = len(the(dashed, "dashes").text)
        plain = letters_of(argument) and argument == expression_of_letter(letters_of(argument)[0])
        return Derivative(function, count, None if plain else argument)
    thing = first(node, "derived_thing")
    if thing is None:
        return Derivative(_leibniz(node, given), count, at_value)
    respect = first(thing, "with_respect")
    letter = the(respect, "variable").text if respect is not None else ""
    said = first(thing, "formula_said", "called_alone", "function_name", "expression")
    assert said is not None
    if said.expr_name == "expression":
        value = _expression(said)
        return Derivative(Function("", letter or _letter_in(value), value), count, at_value)
    function = _function(said)
    if letter and function.formula is None and letter != function.letter:
        raise NotUnderstood("a derivative with respect to another letter", thing.start)
    return Derivative(Function(function.name, letter or function.letter, function.formula), count, at_value)


def expression_of_letter(name: str) -> Expression:
    """A letter as an expression."""
    return expression_of(parsed(expression_grammar(), "expression", name))


def _leibniz(node: Node, given: Node | None) -> Function:
    """What dy/dx, d/dx (…) and D_x[…] are taken of."""
    if given is not None:
        return _function(the(given, "formula_said"))
    formula = next((piece for piece in every(node, "expression", "at_value") if piece.expr_name == "expression"), None)
    if formula is None:
        return Function(node.text[node.text.index("/d") - 1])
    value = _expression(formula)
    letter = re.search(r"d/d([a-z])|D_?([a-z])", node.text)
    assert letter is not None
    return Function("", letter[1] or letter[2], value)


def _first_principles(node: Node) -> Task:
    if "first principles" not in node.text and "definition" not in node.text:
        raise NotUnderstood("no first principles", node.start)
    said = first(node, "formula_said")
    if said is not None:
        return Derivative(_function(said), first_principles=True)
    name = first(node, "function_name")
    return Derivative(Function(name.text[0] if name is not None else the(node, "first_dashed").text[0]),
                      first_principles=True)  # fmt: skip


def _place(node: Node) -> tuple[Expression, Expression | None]:
    """The x, and the y where it is said, of `at_point`."""
    values = [_expression(one) for one in every(the(node, "at_point"), "expression")]
    return values[0], values[1] if len(values) > 1 else None


def _slope_at(node: Node) -> Task:
    return Touching(_function(the(node, "of_function")), "gradient", *_place(node))


def _touch(node: Node) -> Task:
    normal = the(node, "touch_word").text == "normal"
    return Touching(_function(the(node, "of_function")), "normal" if normal else "tangent", *_place(node))


def _stationary(node: Node) -> Task:
    said = first(node, "of_function")
    return Stationary(Function("y", "x") if said is None else _function(said), has(node, "nature_asked"))


def _integral(node: Node) -> Task:
    body = first(node, "body_of")
    if body is not None:
        function = Function("", the(body, "variable").text, _expression(the(body, "expression")))
        limits = first(node, "limits_at", "limits_told")
    else:
        integrand = the(node, "integrand")
        said = first(integrand, "formula_said", "expression")
        assert said is not None
        if said.expr_name == "expression":
            value = _expression(said)
            function = Function("", _letter_in(value), value)
        else:
            function = _function(said)
        limits = first(integrand, "limits_said")
    if limits is None:
        return Integral(function)
    low, high = (_bound(one) for one in every(limits, "bound", "upper"))
    return Integral(function, low, high)


def _bound(node: Node) -> Expression:
    return expression_of(parsed(expression_grammar(), "expression", node.text.translate(_RAISED)))


def _area_under(node: Node) -> Task:
    limits = first(node, "area_limits")
    function = _function(the(node, "of_function"))
    if "x-axis" not in node.text and "under" not in node.text:
        raise NotUnderstood("down to where the area goes", node.start, "the x-axis")
    if limits is None:
        return Integral(function, area=True)
    low, high = (_bound(one) for one in every(limits, "bound"))
    return Integral(function, low, high, area=True)


_READERS: dict[str, Callable[[Node], Task]] = {
    "first_principles": _first_principles,
    "slope_at": _slope_at,
    "touch": _touch,
    "stationary": _stationary,
    "area_under": _area_under,
    "integral": _integral,
    "inverse": _inverse,
    "where_equal": _where_equal,
    "derivative": _derivative,
    "value": _value,
}

READERS = Readers(task=_task, facts=_facts)
